"""Bare numbers that make sense only as inches, or as thousandths of an inch."""

from collections.abc import Iterator, Mapping

from tapmodel.designing.codes import Code
from tapmodel.designing.judging import WARNING, finding
from tapmodel.designing.provenance import OWN_RULE
from tapmodel.designing.record import TapDesign
from tapmodel.findings import Finding, Held, Limit
from tapmodel.spec.designations.inches import MM
from tapmodel.values import Values

NEAR = 2.0
"""By what factor a length may miss the one that the rules make and still be meant for it."""

UNITS = {"inches": float(MM), "thousandths": float(MM) / 1000}
"""Millimetres in what a shop in inches may have meant by a bare number."""


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
        entries = _lengths(given.get(field))
        unit = _meant(entries, usual)
        if unit:
            inches = max(entries) * UNITS[unit] / float(MM)
            values = Values(unit=unit, inches=inches, usual=usual)
            limit = Limit(unit="mm", held=Held.OTHER_UNIT)
            code = Code.OTHER_UNIT
            yield finding(code, WARNING, field, max(entries), limit, OWN_RULE, values=values)


def _meant(entries: tuple[float, ...], usual: float) -> str:
    """The unit in which the largest length is near the usual one, "" where it is so in mm."""
    if not entries or usual <= 0:
        return ""
    largest = max(entries)
    near = (unit for unit, mm in UNITS.items() if 1 / NEAR <= largest * mm / usual <= NEAR)
    return next(near, "")


def _lengths(value: object) -> tuple[float, ...]:
    entries: tuple[object, ...] = (*value,) if isinstance(value, list) else (value,)  # pyright: ignore[reportUnknownArgumentType, reportUnknownVariableType]
    return tuple(float(entry) for entry in entries if isinstance(entry, int | float))


def _usual(ruled: TapDesign) -> dict[str, float]:
    """Lengths that go with the size of the thread [mm]."""
    tap, blank = ruled.tap, ruled.tap.blank
    return {
        "hole.drill": ruled.drill,
        "thread.pitch_diameter": tap.thread.pitch_diameter,
        "thread.major": tap.thread.major,
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
    }
