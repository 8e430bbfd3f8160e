"""What can be measured of a tap, and between which numbers each size makes sense."""

from dataclasses import dataclass
from enum import StrEnum

from tapmodel.spec.lengths import HOW


class Size(StrEnum):
    """What can be measured, by its name in the file, in the order of the work."""

    OVERALL_LENGTH = "overall_length"
    SHANK = "shank"
    MAJOR = "major"
    THREAD_LENGTH = "thread_length"
    NECK = "neck"
    OVER_WIRES = "over_wires"
    PITCH_DIAMETER = "pitch_diameter"
    MINOR = "minor"
    CHAMFER_ANGLE = "chamfer_angle"
    CHAMFER_LENGTH = "chamfer_length"
    POINT_DIAMETER = "point_diameter"
    SQUARE = "square"
    SQUARE_LENGTH = "square_length"
    CORE = "core"
    LAND = "land"
    HEEL_DROP = "heel_drop"
    THREAD_HEEL_DROP = "thread_heel_drop"
    HARDNESS = "hardness"

    @property
    def option(self) -> str:
        """Of the command line."""
        return f"--{self.replace('_', '-')}"


@dataclass(frozen=True, slots=True)
class Range:
    """What a number may be; beyond it are slips of the keyboard.

    Attributes:
        least, most: of it.
        how: it is written.
        unit: of both.
    """

    least: float
    most: float
    how: str
    unit: str = ""

    def holds(self, number: float) -> bool:
        """Whether a number lies in it; not a number lies in none."""
        return self.least <= number <= self.most

    @property
    def told(self) -> str:
        """What is allowed."""
        return f"{self.how}, from {self.least:g} to {self.most:g}{self.unit}"


LENGTH = Range(1e-3, 2000.0, HOW, " mm")
_DROP = Range(0.0, 2000.0, HOW, " mm")
_ANGLE = Range(0.1, 89.0, "degrees to the axis, a bare number")
_HARDNESS = Range(20.0, 70.0, "Rockwell C, a bare number")

_OTHERS = {
    Size.CHAMFER_ANGLE: _ANGLE,
    Size.HEEL_DROP: _DROP,
    Size.THREAD_HEEL_DROP: _DROP,
    Size.HARDNESS: _HARDNESS,
}

LENGTHS = frozenset(size for size in Size if _OTHERS.get(size, LENGTH) in {LENGTH, _DROP})
"""Sizes that take a unit."""

EXCLUSIVE = (
    frozenset({Size.OVER_WIRES, Size.PITCH_DIAMETER}),
    frozenset({Size.CHAMFER_ANGLE, Size.CHAMFER_LENGTH}),
)
"""Of each row the later reading counts: both settle the same."""


def range_of(size: Size) -> Range:
    """Between which numbers a size makes sense."""
    return _OTHERS.get(size, LENGTH)


def rivals(size: Size) -> frozenset[Size]:
    """Sizes that settle the same."""
    return frozenset(other for row in EXCLUSIVE if size in row for other in row if other != size)
