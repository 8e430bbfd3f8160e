"""Cross-sections of several taps over each other, each with a line of its own."""

from collections.abc import Sequence

from tapmodel.comparing.variant import Variant
from tapmodel.export.dxf.document import CENTRE, DOTTED, HIDDEN, PHANTOM, THIN, VISIBLE
from tapmodel.report.drawings.canvas import LINE, Canvas
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.drawings.lettering import fitting_scale, scale_text
from tapmodel.report.drawings.views.end_view import SEEN, placed_loop
from tapmodel.report.units import Units
from tapmodel.report.words.comparison import named
from tapmodel.shape.outlines.section import full_thread_height, section_outline
from tapmodel.tap.tap import Tap

_VIEW = 120.0  # of the sections on paper, at most [mm]
_SAMPLE = 16.0  # of each kind of line in the legend on paper [mm]

BEST = VISIBLE
OTHERS = (HIDDEN, DOTTED, CENTRE, PHANTOM, THIN)
"""Kinds of line that are told apart in print without colour: by width and by dashes."""


def draw(
    variants: Sequence[Variant], best: Variant, title: str, units: Units = Units.MM
) -> Drawing:
    """Sections through the full thread seen on the cutting end, the first flutes on top.

    Args:
        variants: at most six, the best among them; each has its tap.
        best: drawn in the widest line.
        title: above the legend.
        units: of its lengths.
    """
    taps = {variant.number: variant.tap for variant in variants if variant.tap}
    widest = max(tap.thread.major for tap in taps.values())
    canvas = Canvas("compared", title, fitting_scale(widest, _VIEW), units)
    lines = _lines(variants, best)
    heights = _heights(list(taps.values()))
    for (number, tap), height in zip(taps.items(), heights, strict=True):
        for loop in section_outline(tap, height).loops:
            canvas.ring(placed_loop(loop), lines[number])
    _legend(canvas, variants, best, -widest / 2 - canvas.paper(2 * LINE), title)
    return canvas.finished()


def _lines(variants: Sequence[Variant], best: Variant) -> dict[int, str]:
    """Kind of line of each variant, by its number."""
    others = [variant.number for variant in variants if variant is not best]
    return {best.number: BEST, **dict(zip(others, OTHERS, strict=False))}


def _heights(taps: Sequence[Tap]) -> list[float]:
    """One height in the full thread of all, where there is one: there their threads lie alike."""
    own = [full_thread_height(tap) for tap in taps]
    ends = [min(tap.blank.thread_length, tap.flutes.full_depth_length) for tap in taps]
    return [max(own)] * len(taps) if max(own) < min(ends) else own


def _legend(
    canvas: Canvas, variants: Sequence[Variant], best: Variant, top: float, title: str
) -> None:
    p, lines = canvas.paper, _lines(variants, best)
    left = -p(_VIEW / 2)
    canvas.text((left, top), f"{title}, {SEEN}; scale {scale_text(canvas.scale)}")
    for place, variant in enumerate(variants, 1):
        height = top - p(1.3 * LINE * place)
        canvas.line((left, height), (left + p(_SAMPLE), height), lines[variant.number])
        told = named(variant, canvas.units) + ", the best" * (variant is best)
        canvas.text((left + p(_SAMPLE + 3), height), told)
