"""All drawings of a tap, in the order in which they are used."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from tapmodel.designing.record import TapDesign
from tapmodel.prediction.prediction import Prediction
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.drawings.views import (
    chamfer_teeth,
    chips,
    clearance,
    cross_section,
    milling,
    side,
    square,
    strength,
    thread_form,
    torque,
)
from tapmodel.report.units import Projection, Units


@dataclass(frozen=True, slots=True)
class DrawingKind:
    """One kind of drawing.

    Attributes:
        name: short, of its files.
        draw: what draws it, if the design has what it shows.
        at_machine: whether the sheet has it, too; what only helps to choose a relief has no place
            beside a lathe.
    """

    name: str
    draw: Callable[[TapDesign, Projection, Units], Drawing | None]
    at_machine: bool = True


def _of_one_view(
    draw: Callable[[TapDesign, Units], Drawing],
) -> Callable[[TapDesign, Projection, Units], Drawing]:
    """A drawing to which the projection makes no difference."""
    return lambda design, _projection, units: draw(design, units)


def _foreseen(
    draw: Callable[[TapDesign, Prediction, Units], Drawing],
) -> Callable[[TapDesign, Projection, Units], Drawing | None]:
    """A drawing of what the tap will do, which a design that breaks a rule may not tell."""

    def drawn(design: TapDesign, _projection: Projection, units: Units) -> Drawing | None:
        return draw(design, design.prediction, units) if design.prediction else None

    return drawn


DRAWINGS: tuple[DrawingKind, ...] = (
    DrawingKind("side", side.draw),
    DrawingKind("thread-form", _of_one_view(thread_form.draw)),
    DrawingKind("milling", _of_one_view(milling.draw)),
    DrawingKind("cross-section", _of_one_view(cross_section.draw)),
    DrawingKind("chamfer", _of_one_view(chamfer_teeth.draw)),
    DrawingKind("square", square.draw),
    DrawingKind("chips", _foreseen(chips.draw)),
    DrawingKind("torque", _foreseen(torque.draw)),
    DrawingKind("strength", _foreseen(strength.draw)),
    DrawingKind("clearance", _foreseen(clearance.draw), at_machine=False),
)


def all_drawings(
    design: TapDesign, projection: Projection = Projection.FIRST, units: Units = Units.MM
) -> dict[str, Drawing]:
    """Every drawing of `design` by name, in order of `DRAWINGS`.

    Where nothing can be foreseen of the design, what shows that is left out.

    Args:
        design: what is drawn.
        projection: where views of the same thing stand to each other.
        units: of the numbers lettered on them.
    """
    drawn = ((kind.name, kind.draw(design, projection, units)) for kind in DRAWINGS)
    return {name: drawing for name, drawing in drawn if drawing}


def at_machine(drawings: Mapping[str, Drawing]) -> list[Drawing]:
    """Those of the drawings, by name, that the sheet has."""
    elsewhere = {kind.name for kind in DRAWINGS if not kind.at_machine}
    return [drawing for name, drawing in drawings.items() if name not in elsewhere]
