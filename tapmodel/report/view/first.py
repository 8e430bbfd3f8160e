"""The verdict on a tap in one line, and the numbers that its maker looks for first."""

from collections import Counter
from dataclasses import dataclass

from tapmodel.designing.record import TapDesign
from tapmodel.errors import NoWireError
from tapmodel.report.blocks import Length, Quantity, Torque
from tapmodel.report.chapters.machines.milling import axis_row
from tapmodel.report.chapters.tap.hole import drill_row
from tapmodel.report.tools import cutter_of
from tapmodel.report.units import Units, shown, told
from tapmodel.report.view.findings import SIGNS
from tapmodel.shop.flute_setting import flute_setting
from tapmodel.shop.wires.answer import answer_for
from tapmodel.words import Severity

_GOOD = "✔"


@dataclass(frozen=True, slots=True)
class Figure:
    """A number with its name.

    Attributes:
        key: short name.
        label: what it is, in the trade's words.
        text: the number with its unit.
        beside: its limits, or what else belongs to it; empty for nothing.
    """

    key: str
    label: str
    text: str
    beside: str = ""


@dataclass(frozen=True, slots=True)
class Verdict:
    """What is to be thought of a tap.

    Attributes:
        weight: "good", or the gravest severity of what was found.
        sign: that stands for it, for whoever sees no colour.
        text: one line.
    """

    weight: str
    sign: str
    text: str


def verdict_of(design: TapDesign) -> Verdict:
    """Whether the tap can be made, and how many findings there are of each kind."""
    counted = Counter(finding.severity for finding in design.findings)
    for severity, said in (
        (Severity.ERROR, "This tap cannot be made so"),
        (Severity.WARNING, "It can be made, but"),
    ):
        if counted[severity]:
            number = counted[severity]
            words = f"{number} {severity.value}{'s' if number > 1 else ''}"
            return Verdict(severity.value, SIGNS[severity], f"{said}: {words}")
    return Verdict("good", _GOOD, "No rule is broken, and nothing is warned of")


def first_figures(design: TapDesign, units: Units) -> tuple[Figure, ...]:
    """Drill, blank, over wires, cutter with its setting, torque to stop at."""
    thread, setting = design.tap.thread, flute_setting(design)
    drill, axis = drill_row(design), axis_row(setting)
    at_least = " = ".join(shown(Length(design.limits.major_min), units))
    set_to = f"{told(axis.label, units)} {_text(axis.value, units)}, "
    set_to += f"down from the top {_text(Length(setting.from_top), units)}"
    major = _text(Length(thread.major), units)
    cutter = _text(cutter_of(design.tap.flutes.cutter_diameter), units)
    return (
        Figure("drill", "tap drill", _text(drill.value, units)),
        Figure("blank", "blank diameter", major, f"at least {at_least}"),
        _over_wires(design, units),
        Figure("cutter", "cutter", cutter, set_to),
        _stop(design, units),
    )


def _over_wires(design: TapDesign, units: Units) -> Figure:
    try:
        answer = answer_for(design)
    except NoWireError:
        return Figure("wires", "over wires", "no wire suits")
    target = _text(Length(answer.measurement_target, 4), units)
    return Figure("wires", "over wires", target, f"wire {_text(Length(answer.wire, 4), units)}")


def _stop(design: TapDesign, units: Units) -> Figure:
    foreseen = design.prediction
    if foreseen is None:
        return Figure("stop", "stop turning at", "not foreseen")
    likely = _text(Torque((foreseen.torque.band.likely,)), units)
    stop = _text(Torque((foreseen.stop_at,)), units)
    return Figure("stop", "stop turning at", stop, f"likely {likely}")


def _text(quantity: Quantity, units: Units) -> str:
    return " = ".join(shown(quantity, units))
