"""The chapter on change gears: told where leadscrew and wheels are named, else not at all."""

import pytest
from asked import settled_of

from tapmodel.report.blocks import Chapter, Paragraphs, Table
from tapmodel.report.chapters.machines import gears
from tapmodel.report.chapters.order import operations
from tapmodel.report.units import Units, shown, told

LATHE = ["shop.leadscrew=8tpi", "shop.gears=30,50,60,63,80,100"]


def chapter(designation: str, *sets: str) -> Chapter:
    return gears.chapter(settled_of(designation, list(sets)))


def words(found: Chapter, units: Units = Units.MM) -> str:
    blocks = [block for block in found.blocks if isinstance(block, Paragraphs)]
    return " ".join(told(text, units) for block in blocks for text in block.texts)


def lines(found: Chapter, units: Units = Units.MM) -> list[list[str]]:
    table = next(block for block in found.blocks if isinstance(block, Table))
    assert all(len(line) == len(table.head) for line in table.lines)
    return [[" = ".join(shown(cell, units)) for cell in line] for line in table.lines]


@pytest.mark.parametrize("sets", [[], LATHE[:1], LATHE[1:]])
def test_without_leadscrew_or_wheels_there_is_none(sets: list[str]) -> None:
    design = settled_of("M20x3", sets)
    assert "gears" not in [each.key for each in operations(design)]


def test_it_stands_behind_the_threading_tool() -> None:
    keys = [each.key for each in operations(settled_of("M20x3", LATHE))]
    assert keys.index("gears") == keys.index("tool") + 1


def test_the_best_trains_with_what_they_take_of_the_zone() -> None:
    design = settled_of("M20x3", LATHE)
    told_lines = lines(gears.chapter(design))
    assert len(told_lines) == 5
    drivers, driven, made, error, along, share = told_lines[0]
    assert (drivers, driven, made, error) == ("63, 60", "50, 80", "3.000375 mm", "+125.0 ppm")
    length, limits = design.tap.blank.thread_length, design.limits
    # The exact lead is 3.175 x 189/200 = 3.000375.
    off = length * 125e-6
    assert float(along.removesuffix(" µm")) == pytest.approx(1000 * off, abs=0.051)
    wanted = 1.7320508 * off / (limits.pitch_max - limits.pitch_min)
    assert float(share.removesuffix("%")) == pytest.approx(100 * wanted, abs=0.051)


def test_a_reader_of_inches_is_told_threads_per_inch() -> None:
    # 4 mm x 20 x 127 / (65 x 80) is 25.4/13 mm.
    found = chapter("1/2-13 UNC", "shop.leadscrew=4mm", "shop.gears=20,65,80,127")
    best = ["127, 20", "65, 80", "13.00000 per inch", "exact", "+0.00000 in", "0.0%"]
    assert lines(found, Units.INCH)[0] == best
    assert "in long" not in words(found, Units.INCH)
    # 4 mm x 40 x 43 / (35 x 100) is 1.965714 mm: 6074 millionths of 1.66 in are 0.0101 in.
    found = chapter("1/2-13 UNC", "shop.leadscrew=4mm", "shop.gears=35,40,43,100")
    assert lines(found, Units.INCH)[0][2:5] == ["12.92151 per inch", "+6074.2 ppm", "+0.01008 in"]
    assert "whole thread, 1.66 in long" in words(found, Units.INCH)


def test_a_reader_of_both_units_is_told_the_lead_in_its_own() -> None:
    assert lines(chapter("M20x3", *LATHE), Units.BOTH)[0][2] == "3.000375 mm"
    found = chapter("1/2-13 UNC", "shop.leadscrew=4mm", "shop.gears=20,65,80,127")
    assert lines(found, Units.BOTH)[0][2] == "13.00000 per inch"


def test_hand_starts_and_a_missing_wheel_are_told() -> None:
    left = words(chapter("M20xPh3P1.5-LH", *LATHE))
    assert "Left hand: one idler more or less" in left
    assert "2 starts: the gears cut the lead of 3 mm; the pitch of 1.5 mm is set by the" in left
    assert "Only a wheel of 127 teeth" in left
    right = words(chapter("M20x3", "shop.leadscrew=8tpi", "shop.gears=30,50,80,127"))
    assert "Right hand" in right
    assert "Only a wheel of 127" not in right
    assert "starts" not in right


def test_wheels_that_do_not_do_are_called_so() -> None:
    found = chapter("M20x3", "shop.leadscrew=4mm", "shop.gears=20,65")
    # 20/65 of 4 mm is 1.2308 mm, 0.58974 less of 3 mm, and as much less of 37 mm.
    assert lines(found)[0][3:] == ["-59.0%", "-21820.5 µm", "over 1000%"]
    assert "takes more than the whole zone" in words(found)
    assert "takes more than the whole zone" not in words(chapter("M20x3", *LATHE))


def test_wheels_stand_in_the_order_that_fits_and_small_ones_are_warned_of() -> None:
    found = words(chapter("M20x3", *LATHE))
    assert "the first driver, on the spindle's stud, turns the first driven" in found
    assert "foul" not in found
    assert "stud" not in words(chapter("M20x3", "shop.leadscrew=4mm", "shop.gears=30,40"))
    small = words(chapter("M20x5", "shop.leadscrew=4mm", "shop.gears=9,10,8,9"))
    assert "9, 10 driving 8, 9 may foul a shaft in any order" in small
