"""The sheet as a reader of PDF sees it."""

import math
import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
import typst
from asked import design_of
from printed import Page, pages_of, pieces_of, text_of
from set_columns import hold_headings
from sweeps import in_part

from tapmodel.designing.design import design_tap
from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Rows
from tapmodel.report.chapters.cautions import CAUTIONS
from tapmodel.report.chapters.order import OPERATIONS
from tapmodel.report.chapters.tap import relief, thread
from tapmodel.report.drawings.catalogue import all_drawings, at_machine
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.sheet.balanced import level
from tapmodel.report.sheet.flow import flow_of
from tapmodel.report.sheet.frame import TAKEN, row
from tapmodel.report.sheet.pages import dealt
from tapmodel.report.sheet.style import BOTTOM, TOP, style, title_block
from tapmodel.report.sheet.typeset import quoted, typeset
from tapmodel.report.sheet.write import write_sheet
from tapmodel.report.units import Look, Paper, Projection, Units
from tapmodel.report.words.findings import what
from tapmodel.report.words.limits import actual
from tapmodel.spec.job_file import read_job

SIZES = {Paper.A4: (210.0, 297.0), Paper.LETTER: (215.9, 279.4)}
# The shorter paper takes a page more.
MOST_PAGES = {Paper.A4: 6, Paper.LETTER: 7}
# Words of the last caution, with which the text ends.
LAST_WORDS = " ".join(CAUTIONS[-1].split()[:3])
IN_STRIP = 2.0  # white before the title of a drawing in its strip [mm]
BEARING = 0.35  # white that a letter has before its ink, at the most [mm]
# The reference.
TEXT, SETS = "M18x0.75", ("thread.tap_class=2",)
EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.toml"))


@pytest.fixture(scope="module")
def reference() -> TapDesign:
    return design_of(TEXT, SETS)


@pytest.fixture(scope="module")
def drawn() -> dict[str, Drawing]:
    return {drawing.name: drawing for drawing in at_machine(drawings_of(TEXT, sets=SETS))}


def drawings_of(
    text: str, units: Units = Units.MM, sets: tuple[str, ...] = ()
) -> dict[str, Drawing]:
    """All drawings of a tap, which take longer than a sheet of them: made once in each unit."""
    return _drawings(text, units, sets)


# The cache tells a value that is left out from the same one that is given.
@cache
def _drawings(text: str, units: Units, sets: tuple[str, ...]) -> dict[str, Drawing]:
    return all_drawings(design_of(text, sets), units=units)


@pytest.fixture(scope="module")
def sheet_of(tmp_path_factory: pytest.TempPathFactory) -> Callable[..., Path]:
    """The sheet of a tap by its designation, written once in each unit on each paper."""

    @cache
    def written(text: str, units: Units, paper: Paper, sets: tuple[str, ...]) -> Path:
        path = tmp_path_factory.mktemp("sheet") / "sheet.pdf"
        write_sheet(path, design_of(text, sets), drawings_of(text, units, sets), Look(paper, units))
        return path

    def sheet(
        text: str, units: Units = Units.MM, paper: Paper = Paper.A4, sets: tuple[str, ...] = ()
    ) -> Path:
        return written(text, units, paper, sets)

    return sheet


@pytest.fixture(scope="module")
def printed(sheet_of: Callable[..., Path]) -> Callable[[Look], Path]:
    """The reference's sheet in a look."""
    return lambda look: sheet_of(TEXT, look.units, look.paper, SETS)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "sheet.pdf"


@pytest.mark.parametrize("units", Units)
@pytest.mark.parametrize("paper", Paper)
def test_the_paper_has_its_size_and_the_sheet_few_pages(
    paper: Paper, units: Units, printed: Callable[[Look], Path]
) -> None:
    pages = pages_of(printed(Look(paper, units)))
    assert 2 <= len(pages) <= MOST_PAGES[paper]
    for page in pages:
        assert (page.width, page.height) == pytest.approx(SIZES[paper], abs=0.1)
    assert f"page 1 of {len(pages)}" in pages[0].text


@pytest.mark.parametrize("example", in_part(EXAMPLES, every=4), ids=lambda example: example.stem)
def test_every_example_fits_on_a_few_pages(example: Path, path: Path) -> None:
    design = design_tap(read_job(example, []))
    drawings = all_drawings(design)
    for paper in in_part([*Paper], EXAMPLES.index(example) // 4):
        write_sheet(path, design, drawings, Look(paper))
        assert 2 <= len(pages_of(path)) <= MOST_PAGES[paper]


FORMS = ("1/2 BSW", "2 BA", "G 1/2", "Tr16x6P3", "1/2-10 Acme-2G", "7/16-26 UNS-2B", "1/4-20 UNC")


@pytest.mark.parametrize("text", FORMS)
def test_every_thread_form_fits_on_a_few_pages(text: str, sheet_of: Callable[..., Path]) -> None:
    # On either paper, in both units, which take most room, and in mm: one of the four in turn.
    told = [(paper, units) for units in (Units.BOTH, Units.MM) for paper in Paper]
    for paper, units in in_part(told, FORMS.index(text), every=4):
        pages = pages_of(sheet_of(text, units, paper))
        assert 2 <= len(pages) <= MOST_PAGES[paper], (paper, units)
        assert f"Tap for {design_of(text).designation}" in pages[0].text


@pytest.mark.parametrize("text", ["M10", "Tr16x8(P4)", "M64x1"])
def test_what_is_foreseen_is_drawn_on_one_page_more_at_most(
    text: str, path: Path, sheet_of: Callable[..., Path]
) -> None:
    drawings = drawings_of(text)
    fewer = {n: d for n, d in drawings.items() if n not in {"chips", "torque", "strength"}}
    for paper in in_part([*Paper], text == "M10"):
        write_sheet(path, design_of(text), fewer, Look(paper))
        assert len(pages_of(sheet_of(text, paper=paper))) <= len(pages_of(path)) + 1, paper


def test_drawings_are_dealt_out_so_that_the_emptiest_page_is_fullest() -> None:
    assert dealt([90, 110, 100, 110], 0, 275) == ((), (0, 1), (2, 3))
    # in the order in which they come, 90 + 110 + 60 would fill the first page
    assert dealt([90, 110, 60, 100], 30, 275) == ((), (0, 3), (1, 2))
    # under the text only where that saves a page, or leaves none emptier
    assert dealt([90, 110, 100, 110], 95, 275) == ((), (0, 1), (2, 3))
    assert dealt([90, 110, 100, 70], 95, 275) == ((), (0, 2), (1, 3))
    assert dealt([60, 100, 90, 80], 65, 275) == ((0,), (1, 2, 3))
    assert dealt([300], 0, 275) == ((), (0,))
    assert dealt([], 0, 275) == ((),)


FULL = [
    (text, units)
    for number, text in enumerate(("M3", "1/2-13 UNC", "Tr16x8(P4)", "M64x1"))
    for units in in_part([Units.MM, Units.INCH], number // 2)
]


@pytest.mark.parametrize(("text", "units"), FULL)
def test_no_page_of_drawings_is_half_empty(
    text: str, units: Units, sheet_of: Callable[..., Path]
) -> None:
    drawings = drawings_of(text, units)
    pages = pages_of(sheet_of(text, units))
    # the strip under a drawing begins with its title, and says more where it is wide
    drawn = [[d for d in at_machine(drawings) if _shows(page, d)] for page in pages]
    wide = sorted(drawing.name for drawing in at_machine(drawings) if drawing.width_mm > 88.5)
    assert sorted(d.name for page in drawn for d in page if d.name in wide) == wide
    # text fills what the drawings leave of the page on which it ends
    text_ends = max(number for number, page in enumerate(pages) if LAST_WORDS in page.text)
    for page in filter(None, drawn[text_ends + 1 :]):
        below = sum(drawing.height_mm for drawing in page if drawing.name in wide)
        # Narrow ones stand beside each other, or in the columns of the text.
        beside = max((d.height_mm for d in page if d.name not in wide), default=0.0)
        assert below + beside > 275 / 2


def _shows(page: Page, drawing: Drawing) -> bool:
    """Whether the strip under a drawing, which begins with its title, stands on a page."""
    return any(line.startswith(drawing.title) for line in page.lines)


def test_headings_stand_in_the_column_of_what_they_head() -> None:
    chapters = [section_of(design_of("M18x0.75")) for section_of in OPERATIONS]
    words = "\n".join(typeset(each, Units.BOTH) for each in chapters)
    hold_headings(chapters, words, in_part(range(0, 270, 9)))


def test_words_do_not_squeeze_the_labels(sheet_of: Callable[..., Path]) -> None:
    design = design_of("1/2 BSW")
    # with the lines as they are set: a label that has room stands on one
    first = pages_of(sheet_of("1/2 BSW"))[0].lines
    for label in ("class of the tap", "minor diameter"):
        assert any(line.startswith(label) for line in first), label
    text = typeset(thread.chapter(design), Units.MM)
    assert f'table.cell(colspan: 3)[#"{design.limits.tap_class}"]' in text


@pytest.mark.parametrize("units", [Units.INCH, Units.BOTH])
def test_threads_per_inch_leave_the_labels_their_room(
    units: Units, sheet_of: Callable[..., Path]
) -> None:
    design = design_of("Tr16x8(P4) LH")
    text = typeset(thread.chapter(design), units)
    for mm, per_inch in ((4, "6.35"), (8, "3.175")):
        assert f'#"{mm / 25.4:.5f}\u00a0in" \\ #"({per_inch} per inch)"' in text
    lines = [line for page in pages_of(sheet_of("Tr16x8(P4) LH", units)) for line in page.lines]
    for label in ("class of the tap", "major diameter"):
        assert any(line.startswith(label) for line in lines), label


def test_no_number_is_parted_from_its_unit() -> None:
    design = design_of("M18x0.75")
    for section_of in OPERATIONS:
        chapter = section_of(design)
        tables = replace(chapter, blocks=tuple(b for b in chapter.blocks if isinstance(b, Rows)))
        for units in Units:
            assert not re.search(r"\d (mm|in|N·m|lbf·in|N|lbf)\b", typeset(tables, units))


CAUTIOUS = (("M64x1", Units.MM), ("M3", Units.MM), ("Tr12x3", Units.MM), ("3/8-16 UNC", Units.BOTH))


@pytest.mark.parametrize(("text", "units"), CAUTIOUS)
def test_cautions_stand_on_one_page(text: str, units: Units, sheet_of: Callable[..., Path]) -> None:
    page = _ending(sheet_of(text, units))
    for caution in ("Cautions", "Eye protection", *(words[:20] for words in CAUTIONS)):
        assert caution in page


def _ending(path: Path) -> str:
    """The page on which the text ends."""
    return next(page.text for page in pages_of(path) if LAST_WORDS in page.text)


def test_where_that_took_a_page_more_the_last_caution_has_another_with_it(
    sheet_of: Callable[..., Path],
) -> None:
    path = sheet_of("M18x0.75")
    assert len(pages_of(path)) == 5
    assert CAUTIONS[-2][:20] in _ending(path)


def test_drawings_take_the_column_that_the_text_leaves_free(sheet_of: Callable[..., Path]) -> None:
    pages = pieces_of(sheet_of("M5"))
    assert len(pages) == 6
    across = {piece.text: piece.left for piece in pages[2]}
    assert across["Cautions"] == pytest.approx(13, abs=BEARING)
    # 210 mm less both edges and the gutter, halved
    second = 13 + (210 - 26 - 6) / 2 + 6 + IN_STRIP
    assert across["The chamfer and its teeth"] == pytest.approx(second, abs=BEARING)
    assert across["The square"] == pytest.approx(second, abs=BEARING)


def test_columns_end_level_where_the_room_under_both_saves_a_page(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    # letters a little larger than usual, of which this text takes more than it leaves a drawing
    monkeypatch.setattr("tapmodel.report.sheet.style._SHARE", 0.8)
    design = design_of("Tr16x8(P4)")
    drawings = drawings_of("Tr16x8(P4)", Units.BOTH)
    write_sheet(path, design, drawings, Look(units=Units.BOTH))
    pages = pages_of(path)
    assert len(pages) == 6
    assert "Cautions" in pages[2].lines
    assert any(_shows(pages[2], drawing) for drawing in at_machine(drawings))
    # The last two chapters of the text begin in the second column.
    second = 13 + (210 - 26 - 6) / 2 + 6
    (left,) = [piece.left for piece in pieces_of(path)[2] if piece.text == "Cautions"]
    assert left == pytest.approx(second, abs=BEARING)
    whole = text_of(path)
    for caution in CAUTIONS:
        assert caution[:20] in whole
    for drawing in at_machine(drawings):
        assert sum(_shows(page, drawing) for page in pages) == 1, drawing.name


@pytest.mark.parametrize("beside", [False, True])
@pytest.mark.parametrize("lines", [2, 17, 40, 52, 70])
def test_what_follows_a_text_is_added_up_as_it_is_set(
    lines: int, drawn: dict[str, Drawing], *, beside: bool
) -> None:
    title = title_block(design_of("M18x0.75"), Look())
    head = f"{style(quoted('M18x0.75'), Paper.A4, 9.0)}\n{title}"
    columns = "\n".join(f"#block(height: 8mm, breakable: false)[row{n}]" for n in range(lines))
    narrow = [drawing for drawing in drawn.values() if drawing.width_mm < 88.5]
    assert len(narrow) > 1
    rows = "\n".join(row([drawing], "M18x0.75", fills=False) for drawing in narrow)
    heights = [drawing.height_mm + TAKEN for drawing in narrow]
    added = flow_of(head, columns).followed_by(heights, 297.0 - TOP - BOTTOM, beside=beside)
    aside = "#colbreak()\n" if beside else ""
    found = flow_of(head, f"{columns}\n{aside}{rows}")
    assert (added.page, added.second) == (found.page, found.second)
    assert (added.foot, added.depth) == pytest.approx((found.foot, found.depth), abs=0.01)


@pytest.mark.parametrize(("lines", "page"), [(9, 1), (40, 1), (68, 2), (150, 3)])
def test_level_columns_take_half_of_what_one_takes_and_lose_nothing(lines: int, page: int) -> None:
    head = f'#set page(paper: "a4", margin: (x: 13mm, top: {TOP}mm, bottom: {BOTTOM}mm))\nHead'
    rows = [
        f"#block(height: 9mm, above: 0pt, below: 0pt, breakable: false)[row{n}]"
        for n in range(lines)
    ]
    columns = "\n".join(rows)
    end = flow_of(head, columns)
    depth = end.depth
    assert end.page == page
    down, text = level(head, columns, end, 297.0 - TOP - BOTTOM)
    pdf = typst.compile(text.encode())
    found = [page.text for page in pages_of(pdf)]
    assert len(found) == page
    numbers = [int(n) for n in re.findall(r"row([0-9]+)", " ".join(found))]
    assert numbers == list(range(lines))
    # half of the rows there, on the first page under one line of 11 pt without what hangs below it
    taken = 9 * math.ceil(found[-1].count("row") / 2) + (2.55 if page == 1 else 0.0)
    assert taken <= down + 1
    assert down < taken + 9 + 0.02 * depth
    assert down < 0.8 * depth


@pytest.mark.parametrize("units", [Units.INCH, Units.BOTH])
def test_it_says_its_units(units: Units, printed: Callable[[Look], Path]) -> None:
    told = {Units.INCH: "units inch ", Units.BOTH: "units mm and inch; drawings mm (inch)"}
    assert told[units] in text_of(printed(Look(units=units)))


def test_narrow_tables_have_both_units_on_one_line() -> None:
    design = design_of("M18x0.75", ["thread.tap_class=2"])
    text = typeset(relief.chapter(design), Units.BOTH)
    # the heel of the land: 18.06 mm / 2 in the angle of the land
    along = math.radians(design.figures.land_angle) * 9.03
    assert f'[#"{along:.2f}\u00a0mm · {along / 25.4:.3f}\u00a0in"]' in text


def test_limits_settings_and_cautions_stand_on_it(
    printed: Callable[[Look], Path], reference: TapDesign, drawn: dict[str, Drawing]
) -> None:
    path = printed(Look())
    text, limits, offset = text_of(path), reference.limits, reference.tap.flutes.offset
    assert f"{limits.pitch_min:.4f} mm to {limits.pitch_max:.4f} mm" in text
    assert f"{limits.major_min:.3f} mm to 18.119 mm" in text
    assert f"{reference.figures.depth_from_top:.3f} mm" in text
    assert f"cutter axis left of the centre line {abs(offset):.3f} mm" in text
    assert "Eye protection" in text
    for drawing in drawn.values():
        assert drawing.title in text
    first = pages_of(path)[0].text
    for words in ("Tap for M18x0.75", "material", "hardness", "date", "check before cutting"):
        assert words in first


def test_inches_are_the_millimetres_over_25_4(printed: Callable[[Look], Path]) -> None:
    text = text_of(printed(Look(units=Units.INCH)))
    # 17.5578 mm, 18.060 mm and 112 mm, by hand
    for inches in ("0.69125 in", "0.7110 in", "4.409 in"):
        assert inches in text
    # the findings are sentences of the design and stay as they are
    operations = text.partition(" Hole ")[2]
    assert operations
    # drills and cutters are called by their millimetres, the inches beside them
    assert not re.search(r"\d mm\b(?! \()", operations)


def test_both_units_stand_together(printed: Callable[[Look], Path]) -> None:
    text = text_of(printed(Look(units=Units.BOTH)))
    assert "17.5578 mm 0.69125 in" in text
    assert "18.060 mm 0.7110 in" in text


def test_findings_stand_on_the_first_page_errors_in_full(path: Path) -> None:
    design = design_of("M10", ("thread.pitch_diameter=9.3",))
    write_sheet(path, design, all_drawings(design))
    first = pages_of(path)[0].text
    (error,) = (finding for finding in design.findings if finding.severity == "error")
    assert f"ERROR [{error.code}]: {what(error)} Is {actual(error)}" in first
    assert first.index("ERROR") < first.index("note: ")


def _titled(path: Path, settings: Sequence[str]) -> str:
    design = design_of("M10", settings)
    write_sheet(path, design, all_drawings(design))
    first = pages_of(path)[0].text
    block, _, _ = first.partition("Numbers calculated")
    return block


def test_the_title_block_names_steel_and_hardness_of_the_tap(path: Path) -> None:
    usual = design_of("M10").work.steel
    block = _titled(path, [])
    assert f"material {usual.name} hardness {usual.hardness:g} HRC after temper made by" in block
    block = _titled(path, ['tap.material="silver steel"', "tap.hardness=60.5"])
    assert "material silver steel hardness 60.5 HRC after temper made by" in block


def test_a_tap_of_a_set_is_called_so_on_every_page(path: Path) -> None:
    before = ("set.before_major=14.07", "set.before_pitch_diameter=14.044")
    design = design_of("Tr16x4", ("set.number=2", "set.taps=2", *before))
    write_sheet(path, design, all_drawings(design))
    for page in pages_of(path):
        assert f"Tap 2 of a set of 2 for Tr16x4 ({design.name})" in page.text


@pytest.mark.parametrize("projection", Projection)
def test_the_title_block_names_the_projection(
    projection: Projection, path: Path, reference: TapDesign
) -> None:
    write_sheet(path, reference, all_drawings(reference, projection), Look(projection=projection))
    assert f"{projection.value} angle" in pages_of(path)[0].text


def test_it_is_lines_and_letters_in_black_on_white(
    printed: Callable[[Look], Path], drawn: dict[str, Drawing]
) -> None:
    assert not re.search(rb"/Subtype\s*/Image\b", printed(Look()).read_bytes())
    for drawing in drawn.values():
        colours = set(re.findall("#[0-9a-fA-F]{6}", drawing.svg()))
        assert colours == {"#000000", "#ffffff"}


def test_what_is_measured_has_a_field_to_write_in(reference: TapDesign) -> None:
    for section_of in OPERATIONS:
        section = section_of(reference)
        text = typeset(section, Units.MM)
        tables = [block.rows for block in section.blocks if isinstance(block, Rows)]
        fields = [float(height) for height in re.findall(r"#box\(height: ([\d.]+)mm\)", text)]
        assert len(fields) == sum(row.measured for rows in tables for row in rows)
        assert all(height >= 5 for height in fields)
        widths = [float(width) for width in re.findall(r", ([\d.]+)mm,\)", text)]
        assert len(widths) == sum(any(row.measured for row in rows) for rows in tables)
        assert all(width >= 22 for width in widths)


def test_drawings_of_a_column_are_laid_abreast_rather_than_on_a_page_of_their_own(
    path: Path,
) -> None:
    design = design_of("Tr16x6P3")
    drawings = all_drawings(design, units=Units.BOTH)
    write_sheet(path, design, drawings, Look(Paper.LETTER, Units.BOTH))
    pages = pages_of(path)
    assert len(pages) == 7
    for drawing in at_machine(drawings):
        assert sum(_shows(page, drawing) for page in pages) == 1, drawing.name


@pytest.mark.parametrize(
    ("text", "told"),
    [("Tr16x8(P4)", "right, 2 starts"), ("M20xPh4.5P1.5-LH", "left, 3 starts"), ("M10", "right")],
)
def test_the_title_block_tells_several_starts_beside_the_hand(text: str, told: str) -> None:
    block = title_block(design_of(text), Look())
    assert f'[hand of the thread \\ #strong("{told}")]' in block
