"""Sections of the tap along its axis, as the page's slider shows them."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

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


def stations(design: TapDesign) -> list[dict[str, Any]]:
    """Height [mm], region, area [mm²] and outline of each section, rising.

    The outline is the path of an SVG drawing, seen on the cutting end as the drawings show it.
    """
    found: list[dict[str, Any]] = []
    for region in regions(design):
        count = STEPS.get(region.name, 2)
        length = region.end - region.start
        for n in range(count):
            z = region.start + length * (n + 0.5) / count
            outline = section_outline(design.tap, z)
            path = "".join(_loop(placed_loop(loop)) for loop in outline.loops)
            found.append(
                {
                    "z": round(z, 4),
                    "region": region.name,
                    "area": round(outline.area, 4),
                    "path": path,
                }
            )
    return found


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
