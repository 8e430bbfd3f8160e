"""Sections of the tap square to its axis, as the page shows them."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from tapmodel.designing.record import TapDesign
from tapmodel.report.drawings.views.end_view import placed_loop
from tapmodel.shape.outlines.outline import Arc, Piece
from tapmodel.shape.outlines.section import section_outline
from tapmodel.shape.turned import turned_lengths

STEPS = {"chamfer": 22, "thread": 20, "flute run-out": 12, "square": 6}
"""Sections in each region that changes along the tap; two in any other."""

_DIGITS = 3
_ALL_ROUND = 359.999


@dataclass(frozen=True, slots=True)
class Region:
    """A length of the tap between two heights [mm]."""

    name: str
    start: float
    end: float


def regions(design: TapDesign) -> list[Region]:
    """From the front to the rear, each beginning where the one before it ends."""
    blank, flutes = design.tap.blank, design.tap.flutes
    marks = {0.0: "chamfer", min(design.tap.chamfer_length, blank.thread_length): "thread"}
    names = ("neck", "shoulder") if blank.neck_length > 0 else ()
    behind = turned_lengths(blank, design.tap.thread.major)[1:]
    for number, piece in enumerate(behind):
        name = names[number] if number < len(names) and number < len(behind) - 1 else "shank"
        marks[piece.start] = name
    run_out = max(flutes.full_depth_length, blank.thread_length)
    if run_out < design.figures.runout_end:
        beyond = marks[max(start for start in marks if start <= design.figures.runout_end)]
        marks.setdefault(design.figures.runout_end, beyond)
        marks[run_out] = "flute run-out"
    marks[blank.square_start] = "square"
    ends = [*sorted(marks), blank.overall_length]
    return [Region(marks[a], a, b) for a, b in pairwise(ends) if b > a]


@dataclass(frozen=True, slots=True)
class Section:
    """The tap cut at one height, seen on the cutting end as the drawings show it.

    Attributes:
        z: from the front [mm].
        region: of the tap, e.g. "chamfer".
        area: of the metal [mm²].
        path: of an SVG drawing [mm], y downwards.
    """

    z: float
    region: str
    area: float
    path: str


def sections(design: TapDesign) -> list[Section]:
    """Sections all along the tap, rising: `STEPS` of them in each region."""
    return [
        _section(design, region.name, region.start + (region.end - region.start) * share)
        for region in regions(design)
        for share in _shares(STEPS.get(region.name, 2))
    ]


def section_at(design: TapDesign, z: float) -> Section:
    """The section at a height [mm]; the nearest one for a height beyond the tap."""
    found = regions(design)
    within = min(max(z, found[0].start), found[-1].end)
    name = next(region.name for region in found if within <= region.end)
    return _section(design, name, within)


def _shares(count: int) -> list[float]:
    return [(n + 0.5) / count for n in range(count)]


def _section(design: TapDesign, name: str, z: float) -> Section:
    outline = section_outline(design.tap, z)
    path = "".join(_loop(placed_loop(loop)) for loop in outline.loops)
    return Section(round(z, 4), name, round(outline.area, 4), path)


def _loop(loop: Sequence[Piece]) -> str:
    parts = [f"M{_at(loop[0].start)}"]
    for piece in loop:
        if not isinstance(piece, Arc):
            parts.append(f"L{_at(piece.end)}")
            continue
        turn = piece.end_angle - piece.start_angle
        # A whole circle has no direction; two halves have.
        halves = 2 if abs(turn) > _ALL_ROUND else 1
        for n in range(1, halves + 1):
            end = piece.at(piece.start_angle + turn * n / halves)
            large = int(abs(turn) / halves > 180.0)
            r = _number(piece.radius)
            parts.append(f"A{r} {r} 0 {large} {int(turn < 0)} {_at(end)}")
    return "".join(parts) + "Z"


def _at(point: tuple[float, float]) -> str:
    return f"{_number(point[0])} {_number(-point[1])}"


def _number(value: float) -> str:
    return f"{round(value, _DIGITS) + 0.0:g}"
