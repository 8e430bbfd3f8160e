"""Torque against its limits, and its course over the depth in and back."""

import math
from dataclasses import dataclass

import numpy as np

from tapmodel.designing.codes import Code
from tapmodel.designing.record import TapDesign
from tapmodel.prediction.prediction import Prediction
from tapmodel.prediction.torque.record import Course, Floats
from tapmodel.report.blocks import Torque as Moment
from tapmodel.report.chapters.in_the_hole.turning_it import AT_RISK, REACHED
from tapmodel.report.drawings.charts.measures import measures_of
from tapmodel.report.drawings.views.torque import READABLE, ways
from tapmodel.report.units import HOLE_DEPTH, MM_PER_INCH, Units, as_text, in_words
from tapmodel.report.view.charts.axes import Axis, axis_of
from tapmodel.report.view.judged import Judged, judged_by

_CODES = (Code.TAP_OVERLOADED, Code.TORQUE_NEAR)
_DIGITS = 5
"""Of the greatest number of a curve: more cannot be seen."""


@dataclass(frozen=True, slots=True)
class Level:
    """A torque that decides, or a span of them.

    Attributes:
        key: "stop", "bears", "yields" or "breaks".
        label: what happens there.
        text: its number, or both ends.
        low, high: on the axis, the same for one torque.
        beyond: whether its low end lies above the end of the axis.
    """

    key: str
    label: str
    text: str
    low: float
    high: float
    beyond: bool


@dataclass(frozen=True, slots=True)
class Way:
    """The band along one way, in the units of the axes; back it is told downwards, below 0."""

    depth: tuple[float, ...]
    low: tuple[float, ...]
    likely: tuple[float, ...]
    high: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class CourseView:
    """Torque against the depth of the tap's front.

    Attributes:
        text: what is seen, in words.
        depth, torque: the scales.
        way_in, way_back: the bands.
        stop: torque to stop at, on its scale.
        end: depth at which thread or work ends, on its scale.
    """

    text: str
    depth: Axis
    torque: Axis
    way_in: Way
    way_back: Way
    stop: float
    end: float


@dataclass(frozen=True, slots=True)
class TorqueView:
    """The torque of a tap against what it may be.

    Attributes:
        judged: what is to be thought of it.
        axis: from 0.
        low, likely, high: the band, on the axis.
        text: the band in words.
        levels: the limits, rising.
        course: over the depth.
    """

    judged: Judged
    axis: Axis
    low: float
    likely: float
    high: float
    text: str
    levels: tuple[Level, ...]
    course: CourseView


def torque_view(design: TapDesign, foreseen: Prediction, units: Units) -> TorqueView:
    """The likely torque and its band beside the torques that decide."""
    measures, band = measures_of(units), foreseen.torque.band
    top = _top(foreseen)
    likely, ends = _told(band.likely, units=units), _told(band.low, band.high, units=units)
    return TorqueView(
        judged=judged_by(design, _CODES, _fine(foreseen, units), units),
        axis=axis_of(f"torque [{measures.torque}]", 0.0, top * measures.per_nm, 5),
        low=band.low * measures.per_nm,
        likely=band.likely * measures.per_nm,
        high=band.high * measures.per_nm,
        text=f"likely {likely}, band {ends}",
        levels=tuple(_levels(foreseen, top, units)),
        course=_course(design, foreseen, units),
    )


def _top(foreseen: Prediction) -> float:
    """The highest torque that is drawn [N·m]."""
    strength, most = foreseen.strength, foreseen.torque.band.high
    told = (foreseen.stop_at, strength.bears, strength.yields.low, strength.breaks.low)
    return 1.08 * max(most, *(torque for torque in told if torque <= READABLE * most))


def _levels(foreseen: Prediction, top: float, units: Units) -> list[Level]:
    strength, stop = foreseen.strength, foreseen.stop_at
    alike = stop >= strength.bears
    spans = (
        ("stop", "stop turning at" + ", safe up to" * alike, (stop,)),
        *(() if alike else (("bears", "safe up to", (strength.bears,)),)),
        ("yields", "steel yields at", (strength.yields.low, strength.yields.high)),
        ("breaks", "breaks at", (strength.breaks.low, strength.breaks.high)),
    )
    per = measures_of(units).per_nm
    levels = [
        Level(key, label, _told(*span, units=units), span[0] * per, span[-1] * per, span[0] > top)
        for key, label, span in spans
    ]
    return sorted(levels, key=lambda level: level.low)


def _fine(foreseen: Prediction, units: Units) -> str:
    band, stop = foreseen.torque.band, foreseen.stop_at
    told = f"Likely {_told(band.likely, units=units)}, {_told(band.high, units=units)} at the most"
    if stop <= band.high / REACHED:
        return f"{told}. {AT_RISK}"
    return f"{told}: below the {_told(stop, units=units)} at which to stop."


def _course(design: TapDesign, foreseen: Prediction, units: Units) -> CourseView:
    way_in, way_back = ways(foreseen)
    measures, inch = measures_of(units), units is Units.INCH
    size = MM_PER_INCH if inch else 1.0
    stop, hole = float(way_in.depth[-1]), foreseen.task.hole
    top = 1.08 * max(foreseen.torque.band.high, 1e-6)
    if foreseen.stop_at <= READABLE / 2 * foreseen.torque.band.high:
        top = max(top, 1.04 * foreseen.stop_at)
    back = 1.08 * float(way_back.high.max())
    end = "thread" if design.work.blind else "work"
    deep = in_words(hole.depth, HOLE_DEPTH, units)
    return CourseView(
        text=f"{_READ} chain: the {end} ends, at {deep}. {_MODEL}",
        depth=axis_of(f"depth of the tap's front [{'in' if inch else 'mm'}]", 0.0, stop / size, 6),
        torque=axis_of(
            f"torque [{measures.torque}]", -back * measures.per_nm, top * measures.per_nm, 5
        ),
        way_in=_way(way_in, size, measures.per_nm),
        way_back=_way(way_back, size, -measures.per_nm),
        stop=foreseen.stop_at * measures.per_nm,
        end=hole.depth / size,
    )


_READ = (
    "Above zero on the way in, below it on the way back. Thick: likely; the band: least to "
    "greatest;"
)
_MODEL = "A model with its band, not a measurement: a new, sharp, well oiled tap, turned straight."


def _way(course: Course, size: float, per: float) -> Way:
    return Way(
        depth=_rounded(course.depth / size),
        low=_rounded(course.low * per),
        likely=_rounded(course.likely * per),
        high=_rounded(course.high * per),
    )


def _rounded(values: Floats) -> tuple[float, ...]:
    """To as many digits of the greatest of them: one rounding of all of a curve at once."""
    greatest = float(np.max(np.abs(values)))
    decimals = _DIGITS - 1 - math.floor(math.log10(greatest)) if greatest else 0
    return tuple(np.round(values, decimals).tolist())


def _told(*moments: float, units: Units) -> str:
    return as_text(Moment(moments), units)
