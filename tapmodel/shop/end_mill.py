"""The end mill for the driving square."""

from tapmodel.designing.choose.tools import tools_of
from tapmodel.designing.record import TapDesign
from tapmodel.standards.inches import MM
from tapmodel.words import ToolSizes

_DIAMETER = {ToolSizes.METRIC: 10.0, ToolSizes.INCH: 0.375 * MM}
"""[mm]; common practice. Any that is no wider than twice the square is long leaves the same."""


def end_mill(design: TapDesign) -> float:
    """Diameter of the end mill that route and program reckon with [mm]."""
    return _DIAMETER[tools_of(design)]
