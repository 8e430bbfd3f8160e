"""One drawing of a tap without the others."""

from tapmodel.designing.record import TapDesign
from tapmodel.report.drawings.catalogue import DRAWINGS
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.units import Projection, Units


def drawing_of(
    name: str,
    design: TapDesign,
    projection: Projection = Projection.FIRST,
    units: Units = Units.MM,
) -> Drawing:
    """The drawing of that name, as `all_drawings` has it among the others."""
    kind = next(kind for kind in DRAWINGS if kind.name == name)
    drawing = kind.draw(design, projection, units)
    assert drawing is not None
    return drawing
