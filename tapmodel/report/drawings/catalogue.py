"""All drawings of a tap, in the order in which they are used."""

from collections.abc import Callable
from dataclasses import dataclass

from tapmodel.designing.record import TapDesign
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.drawings.views import (
    chamfer_teeth,
    cross_section,
    milling,
    side,
    square,
    thread_form,
)
from tapmodel.report.units import Projection, Units


@dataclass(frozen=True, slots=True)
class DrawingKind:
    """One kind of drawing: its short name, and what draws it."""

    name: str
    draw: Callable[[TapDesign, Projection, Units], Drawing]


def _of_one_view(
    draw: Callable[[TapDesign, Units], Drawing],
) -> Callable[[TapDesign, Projection, Units], Drawing]:
    """A drawing to which the projection makes no difference."""
    return lambda design, _projection, units: draw(design, units)


DRAWINGS: tuple[DrawingKind, ...] = (
    DrawingKind("side", side.draw),
    DrawingKind("thread-form", _of_one_view(thread_form.draw)),
    DrawingKind("milling", _of_one_view(milling.draw)),
    DrawingKind("cross-section", _of_one_view(cross_section.draw)),
    DrawingKind("chamfer", _of_one_view(chamfer_teeth.draw)),
    DrawingKind("square", square.draw),
)


def all_drawings(
    design: TapDesign, projection: Projection = Projection.FIRST, units: Units = Units.MM
) -> dict[str, Drawing]:
    """Every drawing of `design` by name, in order of `DRAWINGS`.

    Args:
        design: what is drawn.
        projection: where views of the same thing stand to each other.
        units: of the numbers lettered on them.
    """
    return {kind.name: kind.draw(design, projection, units) for kind in DRAWINGS}
