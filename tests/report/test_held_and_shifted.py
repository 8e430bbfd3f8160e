"""How a blank without front centre is held, and how a lathe finds the next start."""

import math

import pytest
from asked import settled_of

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Angle, Chapter, Length, Paragraphs, Quantity, Rows
from tapmodel.report.chapters import cautions
from tapmodel.report.chapters.machines import milling, threading_tool, turning
from tapmodel.report.route.order import route_of
from tapmodel.report.units import told
from tapmodel.shop.cam import ball_paths
from tapmodel.shop.lathe_tool import lathe_tool
from tapmodel.shop.order_of_work import Step


def designed(text: str, *sets: str) -> TapDesign:
    return settled_of(text, list(sets))


def values(chapter: Chapter) -> dict[str, Quantity]:
    blocks = [block for block in chapter.blocks if isinstance(block, Rows)]
    return {row.label: row.value for block in blocks for row in block.rows}


def words(chapter: Chapter) -> str:
    blocks = [block for block in chapter.blocks if isinstance(block, Paragraphs)]
    return " ".join(told(text) for block in blocks for text in block.texts)


def test_several_starts_have_both_shifts_and_the_slide_its_warning() -> None:
    chapter = threading_tool.chapter(designed("Tr16x8(P4)"))
    found = values(chapter)
    assert found["to the next start, along the axis"] == Length(4.0, 4)
    assert found["or the work turned in the spindle by"] == Angle(180.0)
    assert "swung for the infeed cannot make the shift to the next start" in words(chapter)
    three = values(threading_tool.chapter(designed("Tr24x15(P5)", "flutes.count=4")))
    assert three["or the work turned in the spindle by"] == Angle(120.0)


def test_one_start_has_no_shift() -> None:
    chapter = threading_tool.chapter(designed("M18x0.75"))
    assert not any("next start" in label for label in values(chapter))
    assert "shift" not in words(chapter)
    assert lathe_tool(designed("M18x0.75").tap.thread).included_angle == 60.0


@pytest.mark.parametrize("text", ["M6", "3/8 BSW LH"])
def test_without_a_front_centre_a_male_point_holds_the_front(text: str) -> None:
    design = designed(text)
    tap, chapter = design.tap, turning.chapter(design)
    assert tap.blank.front_centre == 0
    found = values(chapter)
    diameter = found["stub in front of the front face, diameter at most"]
    stub, cone = found["its length, at least"], found["male point 60° on its end, as long as"]
    assert isinstance(diameter, Length)
    assert isinstance(stub, Length)
    assert isinstance(cone, Length)
    room = 0.9 * min(tap.flutes.core_diameter, tap.chamfer.point_diameter)
    assert room - 0.01 < diameter.mm <= room
    assert stub.mm == pytest.approx(0.75 * tap.flutes.cutter_diameter)
    assert cone.mm == pytest.approx(diameter.mm * math.sqrt(3) / 2)
    assert "grind it away last of all" in words(chapter)
    assert "along from touching the front shoulder" in values(milling.chapter(design))
    assert "hollow centre, by its male point" in words(cautions.chapter(design))


def test_with_a_front_centre_nothing_is_said_of_one() -> None:
    design = designed("M18x0.75")
    turned = turning.chapter(design)
    assert "male" not in " ".join((*values(turned), words(turned)))
    assert "along from touching the front face" in values(milling.chapter(design))


def test_only_a_slender_blank_is_called_so() -> None:
    # 112 mm on a shank of 14 mm; 236 mm on one of 42 mm
    assert "the blank is slender. Hold it" in words(cautions.chapter(designed("M18x0.75")))
    assert "Loose work: hold it in chuck" in words(cautions.chapter(designed("M64x6")))


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("M18x0.75", "a centre that is turned down to the core"),
        ("M6", "in a hollow centre that is no thicker than the core"),
    ],
)
def test_what_holds_the_front_leaves_the_ball_room(text: str, words: str) -> None:
    """A plain centre of 60 degrees is wider than the core where the ball begins."""
    design = designed(text)
    tap = design.tap
    if tap.blank.front_centre > 0:
        start = ball_paths(tap)[0].front[2]
        rim = tap.blank.front_centre / 2
        assert rim - start * math.tan(math.radians(30)) > tap.flutes.core_diameter / 2
    (flutes,) = [one for one in route_of(design) if one.step is Step.FLUTES]
    assert words in told(flutes.holding)
