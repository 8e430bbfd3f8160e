"""What the page's script needs beside a mesh to show a tap, at work and in the making."""

import hashlib
from dataclasses import dataclass

from tapmodel.designing.record import TapDesign
from tapmodel.report.units import Units
from tapmodel.report.view.model.in_hole import InHole, in_hole
from tapmodel.report.view.model.look import LOOK, Look
from tapmodel.report.view.model.marks import Mark, marks_of
from tapmodel.report.view.model.milled import Milled, milled
from tapmodel.report.view.model.shape import Shape, shape_of


@dataclass(frozen=True, slots=True)
class ModelView:
    """A tap to turn.

    Attributes:
        shape: its surfaces.
        marks: points that are named.
        hole: the tap at work; None where nothing is foreseen.
        mill: its flutes in the making.
        look: colours and lamps.
    """

    shape: Shape
    marks: tuple[Mark, ...]
    hole: InHole | None
    mill: Milled
    look: Look


def model_view(design: TapDesign, units: Units) -> ModelView:
    """Everything but the mesh."""
    return ModelView(
        shape=shape_of(design),
        marks=marks_of(design, units),
        hole=in_hole(design, units),
        mill=milled(design, units),
        look=LOOK,
    )


def model_key(design: TapDesign, units: Units) -> str:
    """A short text that is another wherever `model_view` or the tap is another."""
    hangs_on = (design.tap, design.prediction and design.prediction.task, milled(design, units))
    return hashlib.sha1(repr((hangs_on, units)).encode(), usedforsecurity=False).hexdigest()[:16]
