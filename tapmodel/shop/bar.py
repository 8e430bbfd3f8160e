"""The bar that a tap is sawn from: how thick it must be, and how long a piece."""

from dataclasses import dataclass

from tapmodel.shop.cam import thickest
from tapmodel.shop.male_point import male_point
from tapmodel.standards.inches import MM
from tapmodel.tap.tap import Tap
from tapmodel.words import ToolSizes

SHARE, LEAST = 0.05, 0.5
"""What the bar is thicker by: a share of the largest finished diameter, or so much [mm]. It takes
the skin that has lost its carbon, and what the centres stand beside the bar's middle. Rule of this
program."""

FACING = 1.0
"""Faced off each end [mm], whereby a sawn end gets square. Rule of this program."""

KERF = 2.0
"""Of the bar, lost in the saw's cut beside the piece [mm]. Rule of this program."""

_METRIC = (
    *(step / 2 for step in range(2, 17)),
    *(9, 10, 11, 12, 13, 14, 15, 16, 18, 20, 22, 25, 28, 30, 32, 35, 40, 45, 50, 55, 60, 65, 70),
    *(75, 80, 90, 100, 110, 120, 130, 140, 150, 160, 180, 200, 220, 250, 280, 300, 320, 350, 400),
)
"""Round bars of tool steel [mm]; common practice."""

_INCH = (
    *(step / 32 for step in range(2, 17)),
    *(step / 16 for step in range(9, 25)),
    *(step / 8 for step in range(13, 25)),
    *(step / 4 for step in range(13, 25)),
    *(step / 2 for step in range(13, 33)),
)
"""The same in inches: drill rod, then bars; common practice."""


@dataclass(frozen=True, slots=True)
class Bar:
    """What is sawn [mm].

    Attributes:
        largest: finished diameter of thread or shank.
        least: that with its allowance.
        diameter: the next stocked size, None beyond all.
        facing: allowance for both ends together.
        stub: length of a male point with its stub in front of the front face; 0 without.
        length: of the piece.
        kerf: of the bar, beside the piece.
    """

    largest: float
    least: float
    diameter: float | None
    facing: float
    stub: float
    length: float
    kerf: float = KERF

    @property
    def turned(self) -> float:
        """The diameter that the lathe begins with, whether a size of that is stocked or not."""
        return self.least if self.diameter is None else self.diameter


def stocked(tools: ToolSizes) -> tuple[float, ...]:
    """Diameters of round bars [mm], thinnest first.

    Source: common practice.
    """
    return tuple(map(float, _METRIC)) if tools is ToolSizes.METRIC else tuple(n * MM for n in _INCH)


def bar_for(tap: Tap, tools: ToolSizes) -> Bar:
    """The thinnest stocked bar, and the shortest piece of it.

    Source: rules of this program, `SHARE` and `FACING`.
    """
    largest = 2 * thickest(tap)
    least = largest + max(LEAST, SHARE * largest)
    point = male_point(tap)
    stub = point.stub + point.cone if point else 0.0
    return Bar(
        largest=largest,
        least=least,
        diameter=next((size for size in stocked(tools) if size >= least), None),
        facing=2 * FACING,
        stub=stub,
        length=tap.blank.overall_length + 2 * FACING + stub,
    )
