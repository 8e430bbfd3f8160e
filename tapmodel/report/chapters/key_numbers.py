"""The numbers that a machinist looks for first, in the order of the work."""

from tapmodel.designing.record import TapDesign
from tapmodel.errors import NoWireError
from tapmodel.report.blocks import (
    Angle,
    Chapter,
    Length,
    Row,
    Rows,
    Words,
)
from tapmodel.report.chapters.in_the_hole.turning_it import torque_rows
from tapmodel.report.chapters.machines.milling import axis_row
from tapmodel.report.chapters.machines.over_wires import wire_row
from tapmodel.report.chapters.machines.threading_tool import nose_row
from tapmodel.report.chapters.tap.hole import drill_row, drilled_depth_row, stop_depth_row
from tapmodel.report.chapters.tap.thread import crest_limits
from tapmodel.report.tools import cutter_of
from tapmodel.shop.flute_setting import flute_setting
from tapmodel.shop.lathe_tool import lathe_tool
from tapmodel.shop.wires.answer import WiresAnswer, answer_for


def chapter(design: TapDesign) -> Chapter:
    """Drill, blank, threading tool, what to measure, and the cutter with its setting."""
    thread, chamfer, flutes = design.tap.thread, design.tap.chamfer, design.tap.flutes
    limits, setting, answer = design.limits, flute_setting(design), _answer(design)
    tool = lathe_tool(thread)
    zone = Length(limits.pitch_min, 4), Length(limits.pitch_max, 4)
    rows = [
        drill_row(design),
        *(drilled_depth_row(design), stop_depth_row(design)) * design.work.blind,
        Row("blank diameter", Length(thread.major), *crest_limits(design)),
        Row("threading tool, included angle", Angle(tool.included_angle)),
        nose_row(tool),
        Row("pitch diameter", Length(thread.pitch_diameter, 4), *zone),
        *_over_wires(answer),
        Row("chamfer, to the axis", Angle(chamfer.angle)),
        Row("chamfer, length", Length(design.tap.chamfer_length)),
        Row(f"{flutes.count} flutes, ball-nose cutter", cutter_of(flutes.cutter_diameter)),
        axis_row(setting),
        Row("down from the top, over the axis", Length(setting.from_top)),
        Row("core (web) left", Length(flutes.core_diameter)),
        Row("rake at the crest", Angle(design.figures.rake_crest)),
        Row("rake at the drilled wall", Angle(design.rake_at_wall)),
        *torque_rows(design),
    ]
    return Chapter("key", "At the machine", (Rows(tuple(rows)),))


def _answer(design: TapDesign) -> WiresAnswer | None:
    """How the tap is measured over wires; None where no wire suits."""
    try:
        return answer_for(design)
    except NoWireError:
        return None


def _over_wires(answer: WiresAnswer | None) -> list[Row]:
    """Wire and measurement; nothing where no wire suits."""
    if answer is None:
        return [Row("over wires", Words("no wire suits"))]
    low, high = (
        None if end is None else Length(end, 4)
        for end in (answer.measurement_min, answer.measurement_max)
    )
    return [
        wire_row(answer),
        Row("over wires", Length(answer.measurement_target, 4), low, high),
    ]
