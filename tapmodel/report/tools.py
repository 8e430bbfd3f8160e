"""Drills, cutters and bars as they are asked for at the store."""

from fractions import Fraction

from tapmodel.report.blocks import Tool
from tapmodel.standards.drill_sets import inch_drills, inch_names
from tapmodel.standards.inches import MM
from tapmodel.words import ToolSizes

SAME = 1e-6
"""Diameters [mm] this close are one size."""


def drill_of(mm: float) -> Tool:
    """A drill as it is asked for at the store: by its name where it has one in inches."""
    names = inch_names(mm)
    return Tool(mm, 3 if names else 2, tuple(map(_called, names)))


def cutter_of(mm: float) -> Tool:
    """A milling cutter: inch sizes in 64ths of an inch."""
    same = (drill for drill in inch_drills("fraction") if abs(drill.diameter - mm) < SAME)
    names = tuple(drill.name for drill in same)
    return Tool(mm, 3 if names else 2, names)


def bar_of(mm: float, tools: ToolSizes) -> Tool:
    """A round bar: those of inches by whole inches and 32nds."""
    if tools is ToolSizes.METRIC:
        return Tool(mm, 1)
    whole, rest = divmod(Fraction(round(32 * mm / MM), 32), 1)
    return Tool(mm, 3, ("-".join(str(part) for part in (whole, rest) if part),))


def _called(name: str) -> str:
    return f"letter {name}" if name.isalpha() else name
