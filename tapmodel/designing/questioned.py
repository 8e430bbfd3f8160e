"""Bare numbers that make sense only as inches, or as thousandths of an inch."""

import math
from collections.abc import Iterator, Mapping

from tapmodel.designing.codes import Code
from tapmodel.designing.judging import WARNING, finding
from tapmodel.designing.provenance import OWN_RULE
from tapmodel.designing.record import TapDesign
from tapmodel.findings import Finding, Held, Limit
from tapmodel.spec.designations.reading.inches import MM
from tapmodel.values import Values

NEAR = 2.0
"""By what factor a length may miss the one that the rules make and still be meant for it."""

UNITS = {"inches": float(MM), "thousandths": float(MM) / 1000}
"""Millimetres in what a shop in inches may have meant by a bare number."""


SETS = frozenset({"shop.wires"})
"""Lists that hold a length for each thread: any of them may be the one for this."""

THINNEST, THICKEST = 0.03, 26.0
"""Diameters between which measuring wires can be had [mm] (from memory)."""

_Slip = tuple[float, str]
"""A length and the unit that it was meant in."""


def questioned(given: Mapping[str, object], ruled: TapDesign) -> Iterator[Finding]:
    """A warning for each length given that is nowhere near the ruled one but would be in inches.

    A number that comes within the factor `NEAR` after it was multiplied by 25.4 is less than a
    twelfth of the ruled one itself; after it was divided by 39.4, more than nineteen times. Only
    lengths that go with the size of the thread are looked at: a flat or a drop may well be small.

    Args:
        given: lengths of the job by dotted name [mm].
        ruled: the design of the same thread in which every value is chosen by rule.

    Source: rule of this program.
    """
    for field, usual in _usual(ruled).items():
        slip = (_of_set if field in SETS else _largest)(_lengths(given.get(field)), usual)
        if slip is not None:
            length, unit = slip
            inches = length * UNITS[unit] / float(MM)
            values = Values(unit=unit, inches=inches, usual=usual)
            limit = Limit(unit="mm", held=Held.OTHER_UNIT)
            code = Code.OTHER_UNIT
            yield finding(code, WARNING, field, length, limit, OWN_RULE, values=values)


def _largest(entries: tuple[float, ...], usual: float) -> _Slip | None:
    """The largest length and the unit in which it is near the usual one; None where none is."""
    if not entries or usual <= 0:
        return None
    largest = max(entries)
    near = (unit for unit, mm in UNITS.items() if _near(largest * mm, usual))
    return next(((largest, unit) for unit in near), None)


def _of_set(entries: tuple[float, ...], usual: float) -> _Slip | None:
    """The length nearest to the usual one and its unit; None where a set in mm has such a length.

    A set is in a unit in which all its wires can be had.
    """
    for unit, mm in {"": 1.0, **UNITS}.items():
        near = [length for length in entries if _near(length * mm, usual)]
        if near and all(THINNEST <= length * mm <= THICKEST for length in entries):
            nearest = min(near, key=lambda length: abs(math.log(length * mm / usual)))
            return (nearest, unit) if unit else None
    return None


def _near(length: float, usual: float) -> bool:
    return 1 / NEAR <= length / usual <= NEAR


def _lengths(value: object) -> tuple[float, ...]:
    entries: tuple[object, ...] = (*value,) if isinstance(value, list) else (value,)  # pyright: ignore[reportUnknownArgumentType, reportUnknownVariableType]
    return tuple(float(entry) for entry in entries if isinstance(entry, int | float))


def _usual(ruled: TapDesign) -> dict[str, float]:
    """Lengths that go with the size of the thread [mm]."""
    tap, blank = ruled.tap, ruled.tap.blank
    thread = tap.thread
    return {
        "hole.drill": ruled.drill,
        "thread.pitch_diameter": tap.thread.pitch_diameter,
        "thread.major": tap.thread.major,
        "set.before_major": tap.thread.major,
        "set.before_pitch_diameter": tap.thread.pitch_diameter,
        "chamfer.point_diameter": tap.chamfer.point_diameter,
        "flutes.cutter_diameter": tap.flutes.cutter_diameter,
        "flutes.core_diameter": ruled.figures.core_diameter,
        "flutes.full_depth_length": tap.flutes.full_depth_length,
        "blank.overall_length": blank.overall_length,
        "blank.thread_length": blank.thread_length,
        "blank.neck_diameter": blank.neck_diameter,
        "blank.shank_diameter": blank.shank_diameter,
        "blank.square_across_flats": blank.square_across_flats,
        "blank.square_start": blank.square_start,
        "shop.cutters": tap.flutes.cutter_diameter,
        # The conventional best wire, which touches at the pitch line.
        "shop.wires": thread.pitch / (2 * math.cos(math.radians(thread.flank_angle))),
    }
