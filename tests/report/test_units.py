"""The reader's units: what is converted, what is called by name, and who says which."""

import re
import sys
from pathlib import Path

import pytest
from asked import design_of
from printed import pages_of

import tapmodel
from tapmodel.report.blocks import (
    Area,
    Force,
    Length,
    Pitch,
    Quantity,
    Torque,
    Words,
    hole_depth,
)
from tapmodel.report.drawings.catalogue import all_drawings
from tapmodel.report.look_wanted import look_of
from tapmodel.report.tools import cutter_of, drill_of
from tapmodel.report.units import (
    Look,
    Paper,
    Projection,
    range_in_words,
    shown,
    shown_high,
    shown_low,
    unparted,
)
from tapmodel.report.units_wanted import units_of
from tapmodel.spec.job_file import job_for, read_job
from tapmodel.words import Units

sys.path.insert(0, str(Path(__file__).parents[1] / "hostile"))
from entry import run

MM, INCH, BOTH = Units


@pytest.mark.parametrize(
    ("quantity", "mm", "inch"),
    [
        (Length(12.7), "12.700 mm", "0.5000 in"),
        (Length(112, 2), "112.00 mm", "4.409 in"),
        (hole_depth(9.525), "9.5 mm", "0.375 in"),
        (hole_depth(25.4 * 11 / 16), "17.5 mm", "0.688 in"),
        (Area(645.16), "645.2 mm²", "1.000 in²"),
        (Area(0.0123456), "0.01235 mm²", "0.00001914 in²"),
        (Area(25.4**2 * 12.3456, 7), "7964.887 mm²", "12.34560 in²"),
        (Pitch(1.27), "1.27 mm", "20 per inch"),
        (Pitch(25.4 / 2.75), "9.2364 mm", "2.75 per inch"),
        (Pitch(25.4 / 13), "1.9538 mm", "13 per inch"),
        (Pitch(0.75), "0.75 mm", "0.02953 in (33.8667 per inch)"),
        (drill_of(8.5), "8.50 mm", "8.5 mm (0.3346 in)"),
        (drill_of(0.332 * 25.4), "8.433 mm (letter Q)", "letter Q (0.3320 in)"),
        (drill_of(0.201 * 25.4), "5.105 mm (#7)", "#7 (0.2010 in)"),
        (drill_of(6.35), "6.350 mm (1/4 = letter E)", "1/4 = letter E (0.2500 in)"),
        (cutter_of(6.35), "6.350 mm (1/4)", "1/4 (0.2500 in)"),
        (cutter_of(6), "6.00 mm", "6 mm (0.2362 in)"),
        (Torque((5396.0, 12268.0)), "5400 to 12300 N·m", "47800 to 109000 lbf·in"),
        (Torque((0.0995,)), "0.0995 N·m", "0.881 lbf·in"),
        (Force(154.0), "150 N", "35 lbf"),
        (Words("concentric"), "concentric", "concentric"),
    ],
)
def test_a_quantity_reads_as_its_trade_writes_it(quantity: Quantity, mm: str, inch: str) -> None:
    assert (shown(quantity, MM), shown(quantity, INCH)) == ((mm,), (inch,))
    # beside its millimetres a drill without another name has just its inches
    beside = re.sub(r"^[\d.]+ mm \((.*)\)$", r"\1", inch)
    assert shown(quantity, BOTH) == ((mm,) if mm == inch else (mm.partition(" (")[0], beside))


def test_limits_are_rounded_into_their_zone_in_inches_too() -> None:
    low, high = Length(17.1881), Length(17.3779)
    assert shown_low(low, INCH) == ("0.6767 in",)  # 0.676697
    assert shown_high(high, INCH) == ("0.6841 in",)  # 0.684169
    for limit, shown_as, sign in ((low, shown_low, 1), (high, shown_high, -1)):
        number = float(shown_as(limit, INCH)[0].split()[0])
        assert 0 <= sign * (number - limit.mm / 25.4) < 1e-4


@pytest.mark.parametrize(
    ("designation", "by_rule"),
    [
        *(("M18x0.75", MM), ("Tr16x4", MM), ("2 BA", MM), ("0.50 UNM", MM)),
        *(("1/2-10 ACME", BOTH), ("1/2 BSW", BOTH), ("1/4-20", BOTH), ("G 1/2", BOTH)),
    ],
)
def test_the_option_goes_before_the_job_and_the_job_before_the_rule(
    designation: str, by_rule: Units
) -> None:
    assert units_of(job_for(designation)) is by_rule
    for units in Units:
        assert units_of(job_for(designation, [f"units={units}"])) is units
        assert units_of(job_for(designation, ["units=mm"]), units) is units


def test_units_never_change_the_tap() -> None:
    plain = tapmodel.design("3/8-16", {"blank.shank_diameter": 7})
    for units in Units:
        same = tapmodel.design("3/8-16", {"blank.shank_diameter": 7, "units": units.value})
        assert same.record() == plain.record()


def _words(units: Units) -> dict[str, str]:
    drawings = all_drawings(design_of("3/8-16"), units=units)
    return {
        name: " ".join(
            entity.dxf.text if entity.dxftype() == "TEXT" else entity.dxf.text or ""
            for entity in drawing.document.modelspace().query("TEXT DIMENSION")
        )
        for name, drawing in drawings.items()
    }


def test_drawings_follow_the_units_and_stay_true_to_scale() -> None:
    design = design_of("3/8-16")
    tap, metric, inch = design.tap, _words(MM), _words(INCH)
    both = _words(BOTH)
    for name, value, places in (
        ("side", tap.blank.overall_length, 3),
        ("side", design.limits.major_min, 4),
        ("square", tap.blank.square_length, 3),
        ("square", tap.blank.square_across_flats, 4),
        ("milling", design.figures.depth_from_top, 4),
        ("cross-section", tap.flutes.core_diameter, 4),
        ("chamfer", tap.chamfer.point_diameter, 4),
        ("chips", design.drill, 4),
    ):
        # idle zeros stay: 0.5000, not 0.5
        told = f"{value / 25.4:.{places}f}"
        assert f"({told})" in both[name], name
        assert re.search(rf"(?<![\d.]){re.escape(told)}(?!\d)", inch[name]), name
        assert not re.search(rf"(?<![\d.]){re.escape(told)}(?!\d)", metric[name]), name
    assert "pitch 0.0625, 16 per inch" in inch["thread-form"]
    assert "all numbers in inch" in inch["thread-form"]
    assert inch["side"].count("; inch") == 1
    for one, other in zip(
        all_drawings(design).values(), all_drawings(design, units=INCH).values(), strict=True
    ):
        assert other.scale == one.scale
    # With both units wanted the mm stand as they do alone, inches in brackets behind them.
    assert "pitch 1.588 (0.0625), 16 per inch" in both["thread-form"]
    for name, words in both.items():
        bare = re.sub(r" \([\d.]+\)", "", words)
        numbers = [sorted(re.findall(r"\d+\.\d+", text)) for text in (bare, metric[name])]
        assert numbers[0] == numbers[1], name


def test_inches_in_brackets_are_those_of_the_mm_before_them() -> None:
    pairs = [
        pair
        for words in _words(BOTH).values()
        for pair in re.findall(r"(?<![\d.])(\d+(?:\.\d+)?) \((\d+\.\d+)\)", words)
    ]
    assert len(pairs) > 20
    for mm, inches in pairs:
        digits = [len(number.partition(".")[2]) for number in (mm, inches)]
        assert digits[1] >= 2
        # lengths of few decimals keep no idle zeros in mm
        rounded = 25.4 * 1.01 * 10.0 ** -digits[1] + 1.01 * 10.0 ** -max(digits[0], 3)
        assert float(inches) * 25.4 == pytest.approx(float(mm), abs=rounded)


@pytest.mark.parametrize(("units", "told"), [(INCH, "inch"), (BOTH, "mm (inch)")])
def test_a_drawing_that_is_not_in_mm_alone_says_so(units: Units, told: str) -> None:
    words = _words(units)
    for name in ("side", "thread-form", "milling", "cross-section", "chamfer", "square"):
        assert told in words[name], name


def test_a_number_is_not_parted_from_its_unit() -> None:
    text = "full depth 0.6495 P, 62 HRC, 4 to 8 mm on 2 lands, 1550 MPa in M8 6H Parts"
    joined = "full depth 0.6495_P, 62_HRC, 4 to 8_mm on 2 lands, 1550_MPa in M8 6H Parts"
    assert unparted(text) == joined.replace("_", "\u00a0")


def test_dimensions_in_inches_have_three_decimals_or_more() -> None:
    words = _words(INCH)
    for name in ("side", "milling", "square"):
        numbers = re.findall(r"(?<![\d.:])\d*\.\d+(?!°)(?![\d.])", words[name])
        assert len(numbers) > 2
        assert {len(number.partition(".")[2]) for number in numbers} <= {3, 4}, name


def test_an_inch_sheet_gives_threads_per_inch_and_drills_by_name(tmp_path: Path) -> None:
    line = ["sheet", "1/4-20 UNC", "--set", 'shop.drills=["number"]', "--out", str(tmp_path)]
    assert run([*line, "--units", "INCH"]).code == 0
    text = _text(tmp_path, pages=None)
    assert "20 per inch" in text
    assert "#7 (0.2010 in)" in text
    assert re.search(r"area of one flute 0\.0\d+ in²", text)
    assert "mm²" not in text
    assert "units inch " in text


def test_the_job_says_the_units_and_an_inch_size_has_both(tmp_path: Path) -> None:
    line = ["sheet", "1/4-20 UNC", "--out", str(tmp_path)]
    for sets, options, told in (
        ([], [], "mm and inch; drawings mm (inch)"),
        (["--set", "units=inch"], [], "units inch "),
        (["--set", "units=inch"], ["--units", "mm"], "units mm "),
    ):
        assert run([*line, *sets, *options]).code == 0
        assert told in _text(tmp_path)


def test_words_of_options_are_read_in_any_case(tmp_path: Path) -> None:
    options = ["--units", "Both", "--paper", "a4", "--projection", "Third"]
    assert run(["sheet", "M10", "--out", str(tmp_path), *options]).code == 0
    assert "third angle" in _text(tmp_path)
    assert "mm and inch" in _text(tmp_path)


def test_new_keeps_the_units_in_the_job_file(tmp_path: Path) -> None:
    file = tmp_path / "job.toml"
    assert run(["new", "M10", str(file), "--units", "Inch"]).code == 0
    assert 'units = "inch"' in file.read_text()


def test_the_job_says_paper_and_projection_and_options_go_before(tmp_path: Path) -> None:
    line = ["sheet", "M10", "--out", str(tmp_path)]
    sets = ["--set", "report.paper=letter", "--set", "report.projection=Third"]
    for options, size, angle in (
        ([], (215.9, 279.4), "third angle"),
        (["--paper", "A4", "--projection", "first"], (210.0, 297.0), "first angle"),
    ):
        assert run([*line, *sets, *options]).code == 0
        (path,) = tmp_path.rglob("*-sheet.pdf")
        page = pages_of(path)[0]
        assert (page.width, page.height) == pytest.approx(size, abs=0.1)
        assert angle in _text(tmp_path)


def test_the_look_of_a_job_is_what_it_keeps() -> None:
    usual = Look()
    assert look_of(job_for("M10")) == usual == Look(Paper.A4, Units.MM, Projection.FIRST)
    kept = job_for("M10", ["report.paper=Letter", "report.projection=third", "units=inch"])
    assert look_of(kept) == Look(Paper.LETTER, Units.INCH, Projection.THIRD)
    assert look_of(kept, Units.MM, Paper.A4, Projection.FIRST) == usual


def test_new_names_paper_and_projection_as_comments_until_they_are_set(tmp_path: Path) -> None:
    file = tmp_path / "job.toml"
    assert run(["new", "M10", str(file)]).code == 0
    assert '\n# paper = "A4"\n' in file.read_text()
    assert '\n# projection = "first"\n' in file.read_text()
    assert run(["new", "M10", str(file), "--overwrite", "--set", "report.paper=Letter"]).code == 0
    assert '\npaper = "Letter"\n' in file.read_text()
    assert read_job(file).report.paper == "Letter"


def _text(out: Path, *, pages: int | None = 1) -> str:
    """Of the sheet's first page, where units and projection are told, or of as many as wanted."""
    (path,) = out.rglob("*-sheet.pdf")
    return " ".join(page.text for page in pages_of(path)[:pages])


def test_ends_that_read_alike_stand_once() -> None:
    assert range_in_words(2.76, 2.84, ".1f") == "2.8 mm"
    assert range_in_words(2.7, 2.9, ".1f") == "2.7 to 2.9 mm"
    # 2.76 and 2.84 mm are 0.1087 and 0.1118 in
    assert range_in_words(2.76, 2.84, ".1f", Units.BOTH) == "2.8 mm = 0.11 in"
    assert range_in_words(2.76, 2.84, ".2f", Units.INCH) == "0.109 to 0.112 in"
