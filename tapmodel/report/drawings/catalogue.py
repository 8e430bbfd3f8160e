"""All drawings of a tap, in the order in which they are used."""

from collections.abc import Callable
from dataclasses import dataclass

from tapmodel.design.tap_design import TapDesign
from tapmodel.report.drawings import (
    chamfer_teeth,
    cross_section,
    milling,
    relief_view,
    side,
    square,
    thread_form,
)
from tapmodel.report.drawings.sheet import Drawing


@dataclass(frozen=True, slots=True)
class DrawingKind:
    """One kind of drawing: its short name, and what draws it."""

    name: str
    draw: Callable[[TapDesign], Drawing]


DRAWINGS: tuple[DrawingKind, ...] = (
    DrawingKind("side", side.draw),
    DrawingKind("thread-form", thread_form.draw),
    DrawingKind("milling", milling.draw),
    DrawingKind("cross-section", cross_section.draw),
    DrawingKind("chamfer", chamfer_teeth.draw),
    DrawingKind("relief", relief_view.draw),
    DrawingKind("square", square.draw),
)


def all_drawings(design: TapDesign) -> dict[str, Drawing]:
    """Every drawing of `design` by name, in order of `DRAWINGS`."""
    return {kind.name: kind.draw(design) for kind in DRAWINGS}
