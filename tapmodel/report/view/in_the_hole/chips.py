"""The chips of the teeth as bars: how thick each is, and between which limits chips are usual."""

from dataclasses import dataclass

from tapmodel.designing.codes import Code
from tapmodel.designing.limits.chips import chip_range
from tapmodel.designing.record import TapDesign
from tapmodel.prediction.chips.record import Tooth
from tapmodel.prediction.prediction import Prediction
from tapmodel.report.blocks import Area
from tapmodel.report.drawings.lettering import lettered
from tapmodel.report.units import MM_PER_INCH, Units, as_text, unparted
from tapmodel.report.view.charts.axes import Axis, axis_of
from tapmodel.report.view.judged import Judged, judged_by

READABLE = 3.0
"""A limit higher than so many of the thickest chip is told, not drawn."""

_CODES = (Code.CHIP_THICK, Code.CHIP_THIN, Code.CHIP_KEEN)


@dataclass(frozen=True, slots=True)
class Bar:
    """What one tooth takes.

    Attributes:
        number: of the tooth, in the order in which they meet the work.
        height: thickness of its chip, in the unit of the axis.
        text: the same in words, with its land and its area.
    """

    number: int
    height: float
    text: str


@dataclass(frozen=True, slots=True)
class Limit:
    """A thickness from which on, or up to which, a chip is not as usual.

    Attributes:
        at: on the axis.
        text: in words.
        beyond: whether it lies above the end of the axis.
    """

    at: float
    text: str
    beyond: bool


@dataclass(frozen=True, slots=True)
class ChipsView:
    """The chips of a tap.

    Attributes:
        judged: what is to be thought of them.
        axis: of thickness.
        bars: of every tooth that cuts.
        limits: of thickness.
    """

    judged: Judged
    axis: Axis
    bars: tuple[Bar, ...]
    limits: tuple[Limit, ...]


def chips_view(design: TapDesign, foreseen: Prediction, units: Units) -> ChipsView:
    """Thickness of every chip, against the limits by which the rules judge them."""
    teeth, size = foreseen.chips.teeth, MM_PER_INCH if units is Units.INCH else 1.0
    wanted = chip_range(design.work.material.group, design.tap.thread.pitch)
    limits = (wanted.least, wanted.most)
    thickest = foreseen.chips.thickness_max
    drawn = [limit for limit in limits if limit <= READABLE * thickest]
    top = 1.05 * max(thickest, *drawn, 0.0)
    words = (f"thin below {_mm(limits[0], units)}", f"thick above {_mm(limits[1], units)}")
    return ChipsView(
        judged=judged_by(design, _CODES, _fine(design, foreseen, units), units),
        axis=axis_of(f"thickness [{'in' if size > 1 else 'mm'}]", 0.0, top / size, 4),
        bars=tuple(
            Bar(number, tooth.thickness / size, _told(number, tooth, units))
            for number, tooth in enumerate(teeth, start=1)
        ),
        limits=tuple(
            Limit(limit / size, text, limit not in drawn)
            for limit, text in zip(limits, words, strict=True)
        ),
    )


def _fine(design: TapDesign, foreseen: Prediction, units: Units) -> str:
    chips, material = foreseen.chips, design.work.material.told
    span = f"{_mm(chips.thickness_min, units)} to {_mm(chips.thickness_max, units)}"
    return (
        f"{len(chips.teeth)} teeth share the work, with chips of {span}: no rule finds the chamfer "
        f"too steep or too long for {material}."
    )


def _told(number: int, tooth: Tooth, units: Units) -> str:
    area = as_text(Area(tooth.area, 3), units)
    thick = _mm(tooth.thickness, units)
    return unparted(f"tooth {number}, land {tooth.land + 1}: {thick} thick, {area}")


def _mm(value: float, units: Units) -> str:
    texts = [f"{lettered(value, 4, Units.MM)} mm"] if units is not Units.INCH else []
    texts += [f"{lettered(value, 4, Units.INCH)} in"] if units is not Units.MM else []
    return " = ".join(texts)
