"""The verdict on a tap in one line, and the numbers that its maker looks for first."""

import re
from collections import Counter
from dataclasses import dataclass, replace

from tapmodel.designing.codes import Code
from tapmodel.designing.record import TapDesign
from tapmodel.errors import NoWireError
from tapmodel.findings import Finding, gravest_first
from tapmodel.report.blocks import Length, Torque
from tapmodel.report.chapters.machines.milling import axis_row
from tapmodel.report.chapters.tap.hole import drill_row, drilled_depth_row
from tapmodel.report.chapters.tap.thread import crest_limits
from tapmodel.report.screen.chapter import span
from tapmodel.report.tools import cutter_of
from tapmodel.report.units import Units, aimed, as_text, told, unparted
from tapmodel.report.view.judged import Judged, judged_as
from tapmodel.report.words.findings import said
from tapmodel.shop.flute_setting import flute_setting
from tapmodel.shop.wires.answer import answer_for
from tapmodel.words import Severity


@dataclass(frozen=True, slots=True)
class Figure:
    """A number with its name.

    Attributes:
        key: short name.
        label: what it is, in the trade's words.
        text: the number with its unit.
        beside: its limits, or what else belongs to it, units on the lines of their numbers; empty
            for nothing.
    """

    key: str
    label: str
    text: str
    beside: str = ""


def under(design: TapDesign, units: Units) -> str:
    """What stands under the heading."""
    text = f"{design.name}; {design.tap.thread.hand.value} hand; z counts from the front"
    return (
        text
        + {
            Units.MM: "",
            Units.INCH: "; in inches",
            Units.BOTH: "; mm and inch, drawings mm (inch)",
        }[units]
    )


def verdict_of(design: TapDesign, units: Units) -> Judged:
    """Whether the tap can be made; how many findings speak against it, and the gravest of them."""
    counted = Counter(finding.severity for finding in design.findings)
    for severity, told_first in (
        (Severity.ERROR, "This tap cannot be made so:"),
        (Severity.WARNING, "It can be made, but"),
    ):
        if counted[severity]:
            number = counted[severity]
            words = f"{number} {severity.value}{'s' if number > 1 else ''}"
            gravest = in_short(said(_gravest(design, severity), units))
            which = ": " if number == 1 else "; the gravest: "
            return judged_as(severity, f"{told_first} {words}{which}{gravest}")
    return judged_as(None, "No rule is broken, and nothing is warned of")


def _gravest(design: TapDesign, severity: Severity) -> Finding:
    """Of a severity what is told before all else: that the tap breaks, where it does."""
    found = [one for one in gravest_first(design.findings) if one.severity is severity]
    return next((one for one in found if one.code == Code.TAP_OVERLOADED), found[0])


_ENOUGH = 24
"""Letters below which the beginning of a sentence says too little by itself."""


def in_short(sentence: str) -> str:
    """The beginning of a sentence that can stand alone, for within another one."""
    plain = re.sub(r"\s*\([^)]*\)", "", sentence).removesuffix(".")
    ends = (found.start() for found in re.finditer(r"[:;,.](?= )", plain))
    short = plain[: next((end for end in ends if end >= _ENOUGH), None)]
    return short if short[1:2].isupper() else short[:1].lower() + short[1:]


def first_figures(design: TapDesign, units: Units) -> tuple[Figure, ...]:
    """Drill, blank, over wires, cutter with its setting, torque to stop at."""
    thread, setting = design.tap.thread, flute_setting(design)
    axis = axis_row(setting)
    set_to = f"{told(axis.label, units)} {as_text(axis.value, units)}, "
    set_to += f"down from the top {as_text(Length(setting.from_top), units)}"
    major = as_text(Length(thread.major), units)
    cutter = as_text(cutter_of(design.tap.flutes.cutter_diameter), units)
    figures = (
        _drill(design, units),
        Figure("blank", "blank diameter", major, span(*crest_limits(design), units)),
        _over_wires(design, units),
        Figure("cutter", "cutter", cutter, set_to),
        _stop(design, units),
    )
    return tuple(
        replace(one, text=unparted(one.text), beside=unparted(one.beside)) for one in figures
    )


def _drill(design: TapDesign, units: Units) -> Figure:
    """The drill beside the limits of the hole, which a worn one or a reamer has to keep."""
    drill, hole = drill_row(design), design.hole
    limits = span(Length(hole.minor_min), Length(hole.minor_max), units)
    label = "bore or ream to" if design.bored else "tap drill"
    beside = f"minor diameter {limits}"
    if design.work.blind:
        deep = " = ".join(aimed(drilled_depth_row(design), units))
        beside += f"; full diameter at least {deep} deep"
    return Figure("drill", label, as_text(drill.value, units), beside)


def _over_wires(design: TapDesign, units: Units) -> Figure:
    try:
        answer = answer_for(design)
    except NoWireError:
        return Figure("wires", "over wires", "no wire suits")
    target = as_text(Length(answer.measurement_target, 4), units)
    return Figure("wires", "over wires", target, f"wire {as_text(Length(answer.wire, 4), units)}")


def _stop(design: TapDesign, units: Units) -> Figure:
    foreseen = design.prediction
    if foreseen is None:
        return Figure("stop", "stop turning at", "not foreseen")
    likely = as_text(Torque((foreseen.torque.band.likely,)), units)
    stop = as_text(Torque((foreseen.stop_at,)), units)
    return Figure("stop", "stop turning at", stop, f"likely {likely}")
