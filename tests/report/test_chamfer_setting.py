"""How a lathe is set for the chamfer: by the top slide, or the tailstock where that goes so far."""

import math

import pytest
from asked import settled_of

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Paragraphs, Quantity, Rows, Words
from tapmodel.report.chapters.tap import chamfer
from tapmodel.report.route.order import chapters_of, route_of
from tapmodel.report.screen.route import route_page
from tapmodel.report.units import Units, told
from tapmodel.shop.male_point import male_point
from tapmodel.shop.set_over import MOST_LEAN, MOST_SET_OVER, chamfer_set_over


def designed(text: str, *sets: str) -> TapDesign:
    return settled_of(text, list(sets))


def values(design: TapDesign) -> dict[str, Quantity]:
    (rows,) = (block for block in chamfer.chapter(design).blocks if isinstance(block, Rows))
    return {told(row.label): row.value for row in rows.rows}


def words(design: TapDesign, units: Units = Units.MM) -> str:
    blocks = [block for block in chamfer.chapter(design).blocks if isinstance(block, Paragraphs)]
    return " ".join(told(text, units) for block in blocks for text in block.texts)


@pytest.mark.parametrize("text", ["M10", "Tr16x4", "3/8-16 UNC-LH"])
def test_the_top_slide_is_told_as_either_kind_of_slide_reads_it(text: str) -> None:
    design = designed(text)
    found = values(design)
    # from the cone alone: half of what the diameters differ by, over its length
    tap = design.tap
    rise = (tap.thread.major - tap.chamfer.point_diameter) / 2
    angle = math.degrees(math.atan(rise / tap.chamfer_length))
    slide = found["top slide: zero along the bed; zero square to it"]
    assert slide == Words(f"{angle:.2f}°; {90 - angle:.2f}°")


def test_a_slender_chamfer_may_be_turned_with_the_tailstock_set_over() -> None:
    design = designed("M10", "chamfer.form=taper")
    # 80 mm between centres, 0.86 mm of rise in 12 mm: 80 * 0.86 / hypot(0.86, 12) = 5.72
    rise = (design.tap.thread.major - 8.35) / 2
    expected = 80 * rise / math.hypot(rise, 12)
    assert chamfer_set_over(design.tap) == pytest.approx(expected, rel=1e-6)
    assert expected == pytest.approx(5.72, abs=0.02)
    over = f"Or set the tailstock over towards the tool by {expected:.2f} mm, the 80.0 mm between"
    assert over in words(design)
    assert "at most by 5°" in words(design)
    assert "some 10 mm" in words(design)
    inch = words(design, Units.INCH)
    assert "some 0.4 in" in inch
    assert " mm" not in inch
    assert f"by {expected / 25.4:.3f} in, the 3.15 in between the centres" in inch


def test_a_male_point_makes_the_work_longer() -> None:
    sets = ("chamfer.form=taper", "blank.front_centre=0")
    design = designed("M10", *sets)
    point = male_point(design.tap)
    assert point is not None
    longer = 80 + point.stub + point.cone
    sine = math.sin(math.radians(design.tap.chamfer.angle))
    assert chamfer_set_over(design.tap) == pytest.approx(longer * sine, rel=1e-9)


@pytest.mark.parametrize(
    ("text", "sets"),
    [
        ("M10", ()),  # 8 deg
        ("M36", ("chamfer.form=taper",)),  # 4 deg, but of a long tap
        ("M10", ("chamfer.form=taper", "blank.rear_centre=0")),  # in the chuck
    ],
)
def test_out_of_reach_the_tailstock_stays(text: str, sets: tuple[str, ...]) -> None:
    design = designed(text, *sets)
    assert chamfer_set_over(design.tap) is None
    assert not words(design)


def test_both_limits_are_what_the_words_say() -> None:
    assert (MOST_LEAN, MOST_SET_OVER) == (5.0, 10.0)
    tap = designed("M36", "chamfer.form=taper").tap
    assert tap.chamfer.angle < MOST_LEAN
    assert tap.blank.overall_length * math.sin(math.radians(tap.chamfer.angle)) > MOST_SET_OVER


def test_the_route_has_it_among_the_settings() -> None:
    design = designed("M10", "chamfer.form=taper")
    page = route_page(design, chapters_of(route_of(design)))
    turned = page.partition("Turn the chamfer")[2].partition("Speed and feed")[0]
    flowing = " ".join(turned.split())
    assert "top slide: zero along the bed; zero square to it 4.10°; 85.90°" in flowing
    assert "feeding it towards the headstock draws the tool off the axis" in flowing
    assert "Or set the tailstock over towards the tool by 5.72 mm" in flowing
