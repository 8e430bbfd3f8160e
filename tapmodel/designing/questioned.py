"""Bare numbers that make sense only as inches, or as thousandths of an inch."""

import math
from collections.abc import Iterator, Mapping

from tapmodel.designing.codes import Code
from tapmodel.designing.judging import ERROR, finding
from tapmodel.designing.provenance import OWN_RULE
from tapmodel.designing.record import TapDesign
from tapmodel.findings import Finding, Held, Limit
from tapmodel.spec.designations.reading.inches import MM
from tapmodel.spec.lengths import bare_number
from tapmodel.spec.listed import entries_of
from tapmodel.tap.tap import TapThread
from tapmodel.values import Values

NEAR = 2.5
"""By what factor a length may miss the one that the rules make and still be meant for it."""

NEAR_OFFSET = 1.25
"""The same of the cutter's offset, of which small values make sense in mm, too."""

FEWEST_TURNS = 2.0
"""Pitches below which a hole is hardly threaded: sheet and rings of mm are let be above it."""

UNITS = {"inches": float(MM), "thousandths": float(MM) / 1000}
"""Millimetres in what a shop in inches may have meant by a bare number."""


CREST_DROP = 0.004
"""Drop of a crest's relief, of the major diameter: what the rules give where they give one."""

GO_WITH_OFFSET = frozenset(
    {"flutes.cutter_diameter", "flutes.core_diameter", "flutes.depth_from_top"}
)
"""Where one of these is given, the offset by rule is no measure for the one given."""

THINNEST, THICKEST = 0.03, 26.0
"""Diameters between which measuring wires can be had [mm] (from memory)."""

_Slip = tuple[float, str]
"""A length and the unit that it was meant in."""


def questioned(given: Mapping[str, object], ruled: TapDesign) -> Iterator[Finding]:
    """An error for each bare length that is nowhere near the ruled one but would be in inches.

    A number that comes within the factor `NEAR` after it was multiplied by 25.4 is less than a
    tenth of the ruled one itself; after it was divided by 39.4, more than fifteen times. In
    thousandths only lengths are read that go with the size of the thread: a neck may well be long.

    Args:
        given: values of the job by dotted name, as typed: a length with its unit is a text, and
            no text is asked back.
        ruled: the design of the same thread in which every value is chosen by rule.

    Source: rule of this program.
    """
    sizes, pitch = _sizes(ruled), ruled.tap.thread.pitch
    for field, usual in usual_lengths(ruled).items():
        units = UNITS if field in sizes else {"inches": UNITS["inches"]}
        slip = _slip(field, given, usual, units, pitch)
        if slip is not None:
            length, unit = slip
            inches = length * UNITS[unit] / float(MM)
            values = Values(unit=unit, inches=inches, usual=usual)
            limit = Limit(unit="mm", held=Held.OTHER_UNIT)
            code = Code.OTHER_UNIT
            yield finding(code, ERROR, field, length, limit, OWN_RULE, values=values)


def _slip(
    field: str,
    given: Mapping[str, object],
    usual: float,
    units: Mapping[str, float],
    pitch: float,
) -> _Slip | None:
    """The length of a field that is in one of `units`, and in which; None where none is."""
    entries = _bare(given.get(field))
    match field:
        case "shop.wires":
            # One with its unit may be the one for this thread.
            return _of_set(entries, usual) if len(entries) == len(_all(given.get(field))) else None
        case "shop.cutters" if any(is_near(entry, usual) for entry in entries if usual > 0):
            # A shop has cutters for threads of all sizes; one of them suits as it stands.
            return None
        case "flutes.offset":
            return None if GO_WITH_OFFSET & given.keys() else _offset(entries, usual)
        case "hole.depth" if any(depth >= FEWEST_TURNS * pitch for depth in entries):
            return None
        case _:
            return _largest(entries, usual, units)


def _offset(entries: tuple[float, ...], usual: float) -> _Slip | None:
    """Of whatever sign: which way is plus is not told apart by the unit."""
    if not usual:
        return None
    close = (e for e in entries if is_near(abs(e * UNITS["inches"] / usual), 1, NEAR_OFFSET))
    return next(((entry, "inches") for entry in close), None)


def _largest(entries: tuple[float, ...], usual: float, units: Mapping[str, float]) -> _Slip | None:
    """The largest length and the unit in which it is near the usual one; None where none is."""
    if not entries or usual <= 0:
        return None
    largest = max(entries)
    near = (unit for unit, mm in units.items() if is_near(largest * mm, usual))
    return next(((largest, unit) for unit in near), None)


def _of_set(entries: tuple[float, ...], usual: float) -> _Slip | None:
    """The length nearest to the usual one and its unit; None where a set in mm has such a length.

    A set is in a unit in which all its wires can be had.
    """
    for unit, mm in {"": 1.0, **UNITS}.items():
        near = [length for length in entries if is_near(length * mm, usual)]
        if near and all(THINNEST <= length * mm <= THICKEST for length in entries):
            nearest = min(near, key=lambda length: abs(math.log(length * mm / usual)))
            return (nearest, unit) if unit else None
    return None


def is_near(length: float, usual: float, by: float = NEAR) -> bool:
    """Whether a length is about as large as the usual one, to so many times."""
    return 1 / by <= length / usual <= by


def _all(value: object) -> tuple[object, ...]:
    value = entries_of(value) if isinstance(value, str) else value
    return (*value,) if isinstance(value, list) else (value,)  # pyright: ignore[reportUnknownArgumentType, reportUnknownVariableType]


def _bare(value: object) -> tuple[float, ...]:
    """The numbers without a unit."""
    return tuple(number for entry in _all(value) if (number := bare_number(entry)) is not None)


def usual_lengths(ruled: TapDesign) -> dict[str, float]:
    """What the rules make of each length of the job, or would where they make none [mm].

    Source: the design handed in, and rules of this program where it has no such length.
    """
    return _sizes(ruled) | _details(ruled)


def _sizes(ruled: TapDesign) -> dict[str, float]:
    """Lengths that go with the size of the thread [mm]."""
    tap, blank = ruled.tap, ruled.tap.blank
    thread = tap.thread
    return {
        "hole.drill": ruled.drill,
        "thread.pitch_diameter": thread.pitch_diameter,
        "thread.major": thread.major,
        "set.before_major": thread.major,
        "set.before_pitch_diameter": thread.pitch_diameter,
        "chamfer.point_diameter": tap.chamfer.point_diameter,
        "flutes.cutter_diameter": tap.flutes.cutter_diameter,
        "flutes.core_diameter": ruled.figures.core_diameter,
        "flutes.full_depth_length": tap.flutes.full_depth_length,
        "blank.overall_length": blank.overall_length,
        "blank.thread_length": blank.thread_length,
        "blank.neck_diameter": blank.neck_diameter or thread.minor,
        "blank.shank_diameter": blank.shank_diameter,
        "blank.square_across_flats": blank.square_across_flats,
        "blank.square_start": blank.square_start,
        "shop.cutters": tap.flutes.cutter_diameter,
        # The conventional best wire, which touches at the pitch line.
        "shop.wires": thread.pitch / (2 * math.cos(math.radians(thread.flank_angle))),
    }


def _details(ruled: TapDesign) -> dict[str, float]:
    """Lengths that another wish may well make many times as long [mm]."""
    tap, blank, figures = ruled.tap, ruled.tap.blank, ruled.figures
    return {
        "hole.depth": ruled.work.depth,
        **_crest_and_root(tap.thread),
        "chamfer.length": figures.chamfer_length,
        "flutes.offset": tap.flutes.offset,
        "flutes.depth_from_top": figures.depth_from_top,
        "relief.thread.heel_drop": figures.thread_relief.heel_drop or CREST_DROP * tap.thread.major,
        "relief.chamfer.heel_drop": figures.chamfer_relief.heel_drop,
        # A neck where the rules make none is about as long as it is thick.
        "blank.neck_length": blank.neck_length or tap.thread.minor,
        "blank.square_length": blank.square_length,
        "blank.rear_chamfer": blank.rear_chamfer,
        "blank.front_centre": blank.front_centre,
        "blank.rear_centre": blank.rear_centre,
    }


def _crest_and_root(thread: TapThread) -> dict[str, float]:
    """By the flat and by the radius that reach as far [mm]."""
    flanks = thread.flanks
    crest = thread.major - thread.pitch_diameter
    root = thread.pitch_diameter - thread.minor
    return {
        "thread.crest_flat": flanks.flat(crest),
        "thread.crest_radius": flanks.radius(crest),
        "thread.root_flat": flanks.flat(root),
        "thread.root_radius": flanks.radius(root),
    }
