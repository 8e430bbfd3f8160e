"""Sentences that go with a measurement over wires."""

import math

from tapmodel.shop.wires.asked import MeasuredThread
from tapmodel.shop.wires.over_wires import best_wire

THINNEST = 0.1
"""Thread-measuring wires thinner than this are hardly to be had [mm]; common practice."""


def opposite_offset(starts: int, pitch: float) -> float:
    """Axial distance from a groove to the nearest one straight across the tap [mm].

    Half a turn on, a groove has moved half a lead: half a pitch off with an odd number of starts,
    straight across with an even one.

    Args:
        starts: number of threads side by side.
        pitch: [mm].

    Source: derived here from the definition of the lead.
    """
    return pitch / 2 if starts % 2 else 0.0


def wire_notes(asked: MeasuredThread, compound: float) -> tuple[str, ...]:
    """What to heed: flutes, number of wires, setting of the compound.

    Args:
        asked: the thread.
        compound: angle of the slide, from square to the axis [deg].

    Source: geometry (derived here) and common practice.
    """
    notes = [_number_of_wires(asked)]
    if asked.flutes:
        notes.insert(0, _flutes(asked.flutes))
    thin = best_wire(asked.groove)
    if thin < THINNEST:
        notes.insert(0, _thin(thin))
    limit = asked.groove.flank_angle
    if compound > limit:
        notes.append(
            f"The compound at {compound:g}° is swung past the flank angle of {limit:g}°: the "
            f"trailing flank is left in steps; set it to {limit:g}° or less."
        )
    return tuple(notes)


def _thin(wire: float) -> str:
    return (
        f"Measuring wires as thin as {wire:.3f} mm are hardly to be had: measure the pitch "
        "diameter by its shadow, under a toolmaker's microscope or on a profile projector."
    )


def _flutes(count: int) -> str:
    if count % 2:
        return (
            f"With {count} flutes every land faces a flute: measure over wires before the flutes "
            "are milled."
        )
    return (
        f"With {count} flutes the lands stand opposite each other: measure before the flutes are "
        "milled, or across two lands at their cutting edges before any thread relief."
    )


def _number_of_wires(asked: MeasuredThread) -> str:
    offset = opposite_offset(asked.starts, asked.groove.pitch)
    if offset == 0:
        return (
            f"With {asked.starts} starts a groove lies straight across from every groove: two "
            "wires measure as three do."
        )
    error = offset * math.radians(1)
    return (
        "Two wires give the same value as three, but lie half a pitch "
        f"({offset:g} mm) apart along the axis: each degree that the tap stands askew between the "
        f"anvils is {error:.3f} mm in the reading, where a third wire holds it straight."
    )
