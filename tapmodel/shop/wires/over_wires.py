"""Measurement over wires: the exact value, the two usual formulas, and back to the pitch diameter.

M is the distance between parallel anvils that touch the wires on opposite sides of the tap.
"""

import math
from dataclasses import replace

from tapmodel.errors import InputError
from tapmodel.numerics import rising_root
from tapmodel.shop.wires.groove import Groove, Seat, groove_width_needed, seat
from tapmodel.sources import Source
from tapmodel.words import Certainty

EXACT_SOURCE = Source("tapmodel", "cylinder on two helicoids", Certainty.DERIVED)
SIMPLE_SOURCE = Source("Machinery's Handbook 31st ed.", "p. 2129", Certainty.READ)
LEAD_CORRECTED_SOURCE = Source(
    "NBS Handbook H28 (1944)",
    "as formula (2) of Machinery's Handbook 31st ed. p. 2127: correction read, rest recalled",
    Certainty.MEMORY,
)


def seated(groove: Groove, wire: float) -> Seat:
    """How a wire lies at the bottom of its way into the groove.

    Args:
        groove: the thread.
        wire: diameter [mm].

    Raises:
        InputError: the flanks meet only beyond the tap's axis, so that the wire falls through.

    Source: derived here; `tapmodel.shop.wires.groove` shows how.
    """
    if not 0 < wire < math.inf:
        raise InputError("wire", wire, "more than 0 mm")
    wanted = groove.pitch_diameter

    def excess(radius: float) -> float:
        return seat(groove, wire, radius).pitch_diameter - wanted

    # Half the width at the contacts is at most half a wire plus the helix's advance in a quarter
    # turn; a contact this high belongs to a groove of more than the wanted pitch diameter.
    highest = wanted / 2 + (wire / 2 + groove.lead / 4) / groove.slope
    lowest = highest * 1e-9
    if excess(lowest) > 0:
        raise InputError("wire", wire, "a wire that the flanks hold; this groove has no bottom")
    return seat(groove, wire, rising_root(excess, lowest, highest))


def measurement(groove: Groove, wire: float) -> float:
    """Exact measurement over wires of a diameter [mm].

    Args:
        groove: the thread.
        wire: diameter [mm].

    Source: derived here; `tapmodel.shop.wires.groove` shows how.
    """
    return 2 * seated(groove, wire).axis_radius + wire


def simple_measurement(groove: Groove, wire: float) -> float:
    """Measurement over wires as if the grooves were rings [mm].

    `M = E + w*(1 + 1/sin(a)) - pitch/(2*tan(a))`; for 60 degrees `E + 3*w - 0.866025*pitch`.

    Source: Machinery's Handbook 31st ed. p. 2129 for 60 degrees (read), the same for any angle by
    the geometry of the ring groove (derived here).
    """
    sine = math.sin(math.radians(groove.flank_angle))
    return groove.pitch_diameter + wire * (1 + 1 / sine) - groove.pitch / (2 * groove.slope)


def lead_corrected_measurement(groove: Groove, wire: float) -> float:
    """Measurement over wires by the formula that allows for most of the lead angle [mm].

    The simple value plus `w/2 * tan(lead angle)**2 * cos(a)/tan(a)`.

    Source: Machinery's Handbook 31st ed. p. 2127, formula (2), there from NBS Handbook H28 (1944)
    and ASME B1.2 (correction term read; formula as a whole from memory).
    """
    tangent = math.tan(math.radians(groove.lead_angle))
    cosine = math.cos(math.radians(groove.flank_angle))
    return simple_measurement(groove, wire) + wire / 2 * tangent**2 * cosine / groove.slope


def pitch_diameter_from(groove: Groove, wire: float, measured: float) -> float:
    """Pitch diameter of a thread that measures so over wires [mm]; inverse of `measurement`.

    Args:
        groove: gives form, pitch and lead; its pitch diameter is not used.
        wire: diameter [mm].
        measured: over the wires [mm].

    Raises:
        InputError: no thread of this form and pitch measures so.

    Source: derived here; `tapmodel.shop.wires.groove` shows how.
    """
    if not 2 * wire < measured < math.inf:
        raise InputError("measured", measured, f"more than two wires, {2 * wire:g} mm")
    axis = (measured - wire) / 2
    radius = rising_root(lambda r: seat(groove, wire, r).axis_radius - axis, axis * 1e-9, axis)
    found = seat(groove, wire, radius).pitch_diameter
    if found <= 0:
        raise InputError("measured", measured, "a value that leaves a pitch diameter above 0 mm")
    return found


def wire_touching_at(groove: Groove, radius: float) -> float:
    """Diameter of the wire that touches the flanks at a radius from the tap's axis [mm].

    Args:
        groove: the thread.
        radius: where the groove is open, i.e. above the meeting point of its flanks [mm].

    Source: derived here; `tapmodel.shop.wires.groove` shows how.
    """
    half_width = groove.half_width(radius)
    if half_width <= 0:
        return 0.0
    # Without the helix's advance from the x axis to the contact the wire would be this thick.
    widest = 2 * half_width * math.sqrt(1 + groove.slope**2 + (groove.rise / radius) ** 2)
    return rising_root(
        lambda wire: groove_width_needed(groove, wire, radius) - half_width, 0.0, widest
    )


def best_wire(groove: Groove) -> float:
    """Diameter of the wire that touches at the pitch diameter, where the flank angle matters least.

    At lead 0 this is `pitch/(2*cos(a))`.

    Source: definition of the best wire (common practice); solved exactly, derived here.
    """
    return wire_touching_at(groove, groove.pitch_diameter / 2)


def conventional_wire(groove: Groove) -> float:
    """Diameter of the best wire as tables have it, without regard to the lead [mm].

    Source: half the pitch by the cosine of the flank angle, Machinery's Handbook 31st ed. p. 2129
    for 60 degrees (read); for any angle by the geometry of the ring groove (derived here).
    """
    return groove.pitch / 2 / math.cos(math.radians(groove.flank_angle))


def growth_with_wire(groove: Groove, wire: float) -> float:
    """By how much the measurement grows for each mm that the wires are thicker.

    The pitch diameter that a reading shows comes out too small by as much for a wire that is
    thicker than it is taken to be.

    Args:
        groove: the thread.
        wire: diameter [mm].

    Source: the exact measurement, by differences (derived here); at lead 0 it is `1 + 1/sin(a)`.
    """
    step = 1e-4 * wire
    grown = measurement(groove, wire + step) - measurement(groove, wire - step)
    return grown / (2 * step)


def growth_with_flank_angle(groove: Groove, wire: float) -> float:
    """By how much the measurement grows for each degree that both flanks lean more [mm].

    Args:
        groove: the thread.
        wire: diameter [mm].

    Source: the simple formula `E + w*(1 + 1/sin(a)) - P/2*cot(a)` by its angle, the pitch diameter
    held (derived here); a lead moves the wire at which it is 0, `best_wire`, and hardly more.
    """
    angle = math.radians(groove.flank_angle)
    off = (best_wire(groove) - wire) * math.cos(angle) / math.sin(angle) ** 2
    return off * math.radians(1)


def at_pitch_diameter(groove: Groove, pitch_diameter: float) -> Groove:
    """The same thread cut to another pitch diameter [mm]; the lead is the lathe's and stays.

    Source: definition.
    """
    return replace(groove, pitch_diameter=pitch_diameter)


def measurement_touching_at(groove: Groove, wire: float, radius: float) -> float:
    """Measurement over wires of the thread whose flanks they touch at a given radius [mm].

    Args:
        groove: gives form, pitch and lead; its pitch diameter is not used.
        wire: diameter [mm].
        radius: of the contacts, from the tap's axis [mm].

    Source: derived here; `tapmodel.shop.wires.groove` shows how.
    """
    return 2 * seat(groove, wire, radius).axis_radius + wire
