"""What is to be heeded when a thread is measured over wires: codes and numbers, no sentences."""

import math
from dataclasses import dataclass
from enum import StrEnum

from tapmodel.shop.wires.asked import MeasuredThread
from tapmodel.shop.wires.over_wires import best_wire
from tapmodel.values import Value, Values

THINNEST = 0.1
"""Thread-measuring wires thinner than this are hardly to be had [mm]; common practice."""


class Heed(StrEnum):
    """What is to be heeded, in the order in which it is told."""

    THIN_WIRE = "thin-wire"
    ODD_FLUTES = "odd-flutes"
    EVEN_FLUTES = "even-flutes"
    NONE_ON_HAND = "none-on-hand"
    NOT_THE_BEST = "not-the-best-wire"
    CRESTS_TOO_LOW = "crests-too-low"
    OFF_THE_PITCH_LINE = "off-the-pitch-line"
    TWO_WIRES = "two-wires-askew"
    EVEN_STARTS = "even-starts"
    GOES_BEFORE = "goes-before"
    PAST_THE_FLANK = "compound-past-the-flank"


@dataclass(frozen=True, slots=True)
class WireNote:
    """One thing to heed, and the numbers that its sentence needs, in mm and degrees."""

    code: Heed
    values: Values


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


def thread_notes(asked: MeasuredThread, compound: float) -> tuple[WireNote, ...]:
    """What to heed about the thread: thin wires, flutes, number of wires, setting of the compound.

    Args:
        asked: the thread.
        compound: angle of the slide, from square to the axis [deg].

    Source: geometry (derived here) and common practice.
    """
    notes: list[WireNote] = []
    thin = best_wire(asked.groove)
    if thin < THINNEST:
        notes.append(note(Heed.THIN_WIRE, wire=thin))
    if asked.flutes:
        code = Heed.ODD_FLUTES if asked.flutes % 2 else Heed.EVEN_FLUTES
        notes.append(note(code, count=asked.flutes))
    notes.append(_number_of_wires(asked))
    notes += _goes_before(asked)
    limit = asked.groove.flank_angle
    if compound > limit:
        notes.append(note(Heed.PAST_THE_FLANK, compound=compound, limit=limit))
    return tuple(notes)


def note(code: Heed, **values: Value) -> WireNote:
    """A note of that code with what its sentence needs."""
    return WireNote(code, Values(**values))


def _goes_before(asked: MeasuredThread) -> list[WireNote]:
    """What is told of a tap that does not cut to size."""
    if asked.goes_before is None or asked.pitch_min is None or asked.pitch_max is None:
        return []
    number, taps = asked.goes_before
    limits = {"low": asked.pitch_min, "high": asked.pitch_max}
    return [note(Heed.GOES_BEFORE, number=number, taps=taps, **limits)]


def _number_of_wires(asked: MeasuredThread) -> WireNote:
    offset = opposite_offset(asked.starts, asked.groove.pitch)
    if offset == 0:
        return note(Heed.EVEN_STARTS, starts=asked.starts)
    return note(Heed.TWO_WIRES, offset=offset, error=offset * math.radians(1))
