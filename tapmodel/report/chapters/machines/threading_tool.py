"""The tool that cuts the tap's thread on the lathe: its form, and how deep it is fed."""

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import (
    Angle,
    Chapter,
    Length,
    Paragraphs,
    Row,
    Rows,
    Words,
    small_length,
)
from tapmodel.shop.lathe_tool import LatheTool, lathe_tool


def chapter(design: TapDesign) -> Chapter:
    """Insert or ground tool; depths from the blank turned to the major diameter."""
    tool = lathe_tool(design.tap.thread)
    rows = [
        Row("angle between its edges", Angle(tool.included_angle)),
        _nose(tool),
        Row("lead angle at the pitch diameter", Angle(tool.helix_pitch)),
        Row(
            f"clearance ground on the {tool.leading_side.value} side, at least",
            Angle(tool.leading_clearance, 1),
        ),
        Row("on the other side, at least", Words(_trailing(tool))),
    ]
    feeds = [
        Row(f"feed in all, compound at {angle:g}°", Length(feed))
        for angle, feed in tool.infeed_at_compound
    ]
    blocks = [Rows((*rows, *feeds))]
    if design.tap.thread.crest_radius:
        note = (
            "The crest is round: use a full-profile tool, or break it with a form file after the "
            "last pass."
        )
        return Chapter("tool", "Threading tool", (*blocks, Paragraphs((note,))))
    return Chapter("tool", "Threading tool", tuple(blocks))


def _nose(tool: LatheTool) -> Row:
    if tool.nose_radius:
        return Row("nose radius", small_length(tool.nose_radius))
    return Row("nose flat, at most", small_length(tool.nose_flat))


def _trailing(tool: LatheTool) -> str:
    if tool.trailing_clearance <= 0:
        return "none, the helix clears it"
    return f"{tool.trailing_clearance:.1f}°"
