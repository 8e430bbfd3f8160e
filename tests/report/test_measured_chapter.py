"""What was measured, on sheet, page and route."""

import subprocess
import sys
from pathlib import Path

import pytest
from printed import text_of

sys.path.insert(0, str(Path(__file__).parents[1] / "hostile"))

from entry import run

from tapmodel.designing.design import design_tap, without_prediction
from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Chapter, Row, Rows
from tapmodel.report.chapters import measured
from tapmodel.report.chapters.machines.over_wires import chapter as over_wires
from tapmodel.report.chapters.order import operations
from tapmodel.report.chapters.tap.thread import chapter as thread
from tapmodel.report.page.html import chapter_html
from tapmodel.report.sheet.typeset import typeset
from tapmodel.report.units import Units, shown, told
from tapmodel.report.words.measured import LABELS
from tapmodel.shop.measured.answer import answer_measured
from tapmodel.shop.measured.judged import with_measured
from tapmodel.shop.measured.zones import wanted
from tapmodel.spec.job_file import job_for
from tapmodel.spec.measured.record import found_of, measured_of
from tapmodel.spec.measured.sizes import Size

JOB = job_for("M18x0.75")


@pytest.fixture(scope="module")
def design() -> TapDesign:
    return design_tap(JOB)


def made(design: TapDesign, wire: object = None, **sizes: object) -> TapDesign:
    found = {
        Size(name): found_of(Size(name), value, name, wire if name == "over_wires" else None)
        for name, value in sizes.items()
    }
    return with_measured(design, JOB, measured_of(found))


def rows(chapter: Chapter) -> list[Row]:
    return [row for block in chapter.blocks if isinstance(block, Rows) for row in block.rows]


def fields(chapters: list[Chapter]) -> dict[str, str]:
    return {
        told(row.label): " ".join(shown(row.found))
        for chapter in chapters
        for row in rows(chapter)
        if row.found is not None
    }


def test_nothing_measured_changes_nothing(design: TapDesign) -> None:
    assert measured.chapter(design).blocks == ()
    plain = operations(design)
    assert [chapter.key for chapter in plain][-1] != "measured"
    assert measured.filled(plain[:1], design)[0] is plain[0]
    assert fields(plain) == {}


def test_the_fields_of_the_sheet_hold_what_was_measured(design: TapDesign) -> None:
    tap = made(
        design,
        shank=13.98,
        major="0.7100in",
        over_wires=18.2,
        wire=0.433,
        chamfer_angle=8.6,
        core=8.2,
        heel_drop=0.2,
        square_length=14.1,
    )
    # 0.71 in = 18.034 mm; d2 = 18.2 - 1.299 + 0.649519 = 17.5505
    assert fields(operations(tap)) == {
        "shank diameter": "13.980 mm",
        "blank diameter, thread part": "18.034 mm",
        "major diameter": "18.034 mm",
        "pitch diameter": "17.5505 mm",
        "over the wire to use": "18.2000 mm",
        "angle to the axis": "8.60°",
        "core (web) left between the flutes": "8.200 mm",
        "radial drop at the heel": "0.200 mm",
        "length, from the rear end": "14.100 mm",
    }


def test_a_value_over_other_wires_leaves_the_field_empty(design: TapDesign) -> None:
    tap = made(design, over_wires=18.4, wire=0.5)
    assert [row.found for row in rows(measured.filled([over_wires(tap)], tap)[0])] == [None] * 4
    assert any(row.found for row in rows(measured.filled([thread(tap)], tap)[0]))


def test_every_size_has_its_words_and_its_field(design: TapDesign) -> None:
    assert set(LABELS) == set(Size)
    asked = {row.size for chapter in operations(design) for row in rows(chapter)}
    # a neck that this tap does not have, and a length that follows from angle and point
    assert asked - {None} == set(Size) - {Size.NECK, Size.CHAMFER_LENGTH}
    assert set(wanted(design)) | {Size.OVER_WIRES, Size.NECK} == set(Size)


@pytest.mark.parametrize("units", Units)
def test_the_chapter_is_set_alike_on_sheet_and_page(design: TapDesign, units: Units) -> None:
    tap = made(design, major=18.1, over_wires=18.25, wire=0.433, hardness=60, square=11.3)
    chapter = measured.chapter(tap)
    paper, page = typeset(chapter, units), chapter_html(chapter, units)
    for words in ("As measured", "GO gauge", "stays out", "too large: take more", "60\u00a0HRC"):
        assert words in paper
        assert words in page
    # as many cells in each line of a table as its head has
    table = paper[paper.index("#table(") :]
    assert table.startswith("#table(columns: (1fr, auto, auto,),")
    number = "18.1000" if units is not Units.INCH else "0.71260"
    assert number in paper
    assert number in page
    assert ("mm" in page.replace("summary", "")) is (units is not Units.INCH)


def test_who_wants_nothing_foretold_gets_the_verdicts_alone(design: TapDesign) -> None:
    silent = without_prediction(made(design, core=6.0))
    answer = answer_measured(silent)
    assert answer.made is not None
    assert answer.made.prediction is None
    text = typeset(measured.chapter(silent), Units.MM)
    assert "too small: of use all the same" in text
    assert "N·m" not in text


def test_sheet_page_and_route_read_the_file_beside_the_job(tmp_path: Path) -> None:
    job = tmp_path / "cell.toml"
    job.write_text('designation = "M18x0.75"\n', encoding="utf-8")
    kept = tmp_path / "cell.measured.toml"
    kept.write_text("major = 18.0777\nsquare = 11.111\n", encoding="utf-8")
    out = tmp_path / "out"
    assert run(["sheet", str(job), "--out", str(out)]).code == 0
    folder = out / "M18x0.75"
    paper = text_of(folder / "M18x0.75-sheet.pdf")
    assert paper.count("18.078 mm") == 2
    assert "11.111 mm" in paper
    assert "As measured" in paper
    page = (folder / "M18x0.75-sheet.html").read_text(encoding="utf-8")
    assert 'id="measured"' in page
    assert "18.0777" in page
    assert run(["route", str(job), "--out", str(out)]).code == 0
    assert "18.078 mm" in text_of(folder / "M18x0.75-route.pdf")
    # with another value laid over the job it is another tap
    assert "As measured" not in run(["design", str(job), "--all", "--set", "tap.temper=200"]).out
    assert "As measured" in run(["design", str(job), "--all"]).out


def test_a_whole_build_shows_it_too(tmp_path: Path) -> None:
    (tmp_path / "cell.toml").write_text('designation = "M4"\n', encoding="utf-8")
    (tmp_path / "cell.measured.toml").write_text("major = 4.0333\n", encoding="utf-8")
    words = ("build", "cell.toml", "--formats", "page", "--out", "out")
    command = [sys.executable, "-m", "tapmodel", *words]
    subprocess.run(command, cwd=tmp_path, check=True, capture_output=True)
    (page,) = (tmp_path / "out").glob("*/*.html")
    assert "4.0333" in page.read_text(encoding="utf-8")


def test_a_size_without_any_wear_left_is_told_so(design: TapDesign) -> None:
    for major, told_of_it in (
        (18.0, "take no more: GO just enters, and with any wear it does not"),
        (18.001, "take no more: GO still enters, until another 0.0010 mm is worn off"),
    ):
        text = chapter_html(measured.chapter(made(design, major=major)), Units.MM)
        assert told_of_it in text.replace("Take", "take")


def test_over_wires_it_says_between_which_lands_they_lie(design: TapDesign) -> None:
    across = "the lands stand opposite each other"
    assert across in chapter_html(measured.chapter(made(design, 0.433, over_wires=18.2)), Units.MM)
    assert across not in chapter_html(measured.chapter(made(design, major=18.05)), Units.MM)


def test_wear_is_told_until_go_enters_no_more(design: TapDesign) -> None:
    # The design's reserve is 0.0490 mm; a hole is taken to be 0.020 mm larger than its tap.
    text = typeset(measured.chapter(made(design, major=18.05)), Units.MM)
    assert "wear until GO enters no more, that included" in text
    assert "0.0690" in text


def test_where_the_tap_as_it_is_breaks_first(design: TapDesign) -> None:
    text = chapter_html(measured.chapter(made(design, square=6.0)), Units.MM)
    (line,) = [line for line in text.split("<tr>") if "breaks first" in line]
    assert "square" in line.split("</td>")[0]
    assert "thread end" in line.split("</td>")[1]
