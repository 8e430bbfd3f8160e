"""The route in the shop: what every operation has, in which order, and how the paper shows it."""

import math
import re
from collections.abc import Sequence
from pathlib import Path

import pytest
from asked import settled_of
from printed import text_of
from set_columns import hold_headings

from tapmodel.designing.choose.tools import tools_of
from tapmodel.designing.design import design_tap
from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Length, Paragraphs, Row, Rows, Table, Tool, Words
from tapmodel.report.chapters import cautions
from tapmodel.report.chapters.machines import sequence
from tapmodel.report.route.operation import MEASURE, Operation
from tapmodel.report.route.order import OPERATIONS, chapters_of, route_of
from tapmodel.report.route.write import write_route
from tapmodel.report.screen.route import route_page
from tapmodel.report.sheet.typeset import typeset
from tapmodel.report.units import Look, Paper, Units, shown, told
from tapmodel.shop.bar import FACING, bar_for, stocked
from tapmodel.shop.cutting_speed import SHARES, Cut, speed, table_feed
from tapmodel.shop.male_point import male_point
from tapmodel.shop.order_of_work import Step, order_of_work
from tapmodel.spec.job_file import read_job
from tapmodel.standards.materials.steels import steel_names
from tapmodel.words import ToolSizes

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.toml"))
TEXTS = (
    "M10",
    "M18x0.75-LH",
    "3/8-16 UNC",
    "1/2 BSW LH",
    "M20xPh3P1.5",
    "M3",
    "M64x1",
    "1/2-10 Acme",
)
SETS = {"M10": ("flutes.count=3",), "1/2 BSW LH": ("flutes.count=3",)}
JOBS = (*EXAMPLES, *TEXTS)


def _design(job: Path | str) -> TapDesign:
    if isinstance(job, Path):
        return design_tap(read_job(job, []))
    return settled_of(job, SETS.get(job, ()))


@pytest.fixture(
    scope="module", params=JOBS, ids=lambda job: job.stem if isinstance(job, Path) else str(job)
)
def design(request: pytest.FixtureRequest) -> TapDesign:
    return _design(request.param)


def _steps(operations: Sequence[Operation]) -> dict[Step, Operation]:
    return {one.step: one for one in operations}


def _rows(operation: Operation) -> list[Row]:
    tables = [block.rows for block in operation.settings if isinstance(block, Rows)]
    return [row for rows in (*tables, operation.speeds, operation.measure) for row in rows]


def test_every_operation_says_where_how_and_why(design: TapDesign) -> None:
    for one in route_of(design):
        assert one.title
        assert one.machine
        for sentence in (one.holding, one.tool, one.why):
            words = told(sentence)
            assert len(words) > 3
            assert not words.endswith("."), words
        assert _rows(one)
        assert one.instead == "" or one.instead.endswith(".")


def test_sheet_and_route_have_one_order(design: TapDesign) -> None:
    operations = route_of(design)
    (paragraphs,) = sequence.chapter(design).blocks
    assert isinstance(paragraphs, Paragraphs)
    steps = re.findall(r"(\d+) ([^;.]+)", told(paragraphs.texts[0]))
    assert [one.step for one in operations] == list(order_of_work(design))
    words = [sequence.told_step(one.step, design.tap) for one in operations]
    assert steps == [(str(number), told) for number, told in enumerate(words, start=1)]
    assert set(OPERATIONS) == set(Step)


def test_the_order_keeps_its_laws(design: TapDesign) -> None:
    order = order_of_work(design)
    laws = (
        (Step.SAW, Step.CENTRE),
        (Step.CENTRE, Step.SHANK),
        (Step.SHANK, Step.BODY),
        (Step.BODY, Step.THREAD),
        (Step.NECK, Step.THREAD),
        (Step.THREAD, Step.CHAMFER),
        (Step.THREAD, Step.FLUTES),
        (Step.CHAMFER, Step.FLUTES),
        (Step.SQUARE, Step.FLUTES),
        (Step.SQUARE, Step.HARDEN),
        (Step.FLUTES, Step.RELIEVE),
        (Step.MARK, Step.HARDEN),
        (Step.DEBURR, Step.HARDEN),
        (Step.RELIEVE, Step.HARDEN),
        (Step.RELIEVE, Step.CARBURISE),
        (Step.MARK, Step.CARBURISE),
        (Step.CARBURISE, Step.HARDEN),
        (Step.HARDEN, Step.TEMPER),
        (Step.TEMPER, Step.HONE),
        (Step.CLEAN, Step.HONE),
        (Step.HONE, Step.STUB),
        (Step.STUB, Step.PROVE),
    )
    for before, after in laws:
        if before in order and after in order:
            assert order.index(before) < order.index(after), (before, after)
    assert (Step.NECK in order) is design.tap.blank.has_neck
    assert (Step.STUB in order) is (design.tap.blank.front_centre == 0)
    assert order.index(Step.TEMPER) == order.index(Step.HARDEN) + 1


def _over_wires(operation: Operation) -> bool:
    return any(row.label == "over the wire to use" for row in operation.measure)


@pytest.mark.parametrize("count", [3, 4])
@pytest.mark.parametrize("place", ["thread", "crest"])
def test_wires_measure_while_a_land_faces_a_land(count: int, place: str) -> None:
    sets = (f"flutes.count={count}", f"relief.thread.applies_to={place}")
    design = settled_of("M18x0.75", sets)
    steps = _steps(route_of(design))
    assert _over_wires(steps[Step.THREAD])
    later = count == 4 and place == "crest"
    assert _over_wires(steps[Step.CLEAN]) is later
    assert _over_wires(steps[Step.FLUTES]) is (count == 4)
    assert ("last time" in told(steps[Step.THREAD].why)) is (count == 3)


def test_each_caution_stands_at_one_operation(design: TapDesign) -> None:
    (paragraphs,) = cautions.chapter(design).blocks
    assert isinstance(paragraphs, Paragraphs)
    told_once = [caution for one in route_of(design) for caution in one.cautions]
    assert sorted(told_once) == sorted(map(str, paragraphs.texts))
    steps = _steps(route_of(design))
    assert cautions.CUTTER in steps[Step.FLUTES].cautions
    assert cautions.HARDENING in steps[Step.HARDEN].cautions
    ground = Step.RELIEVE if Step.RELIEVE in steps else Step.HONE
    assert cautions.GRINDING in steps[ground].cautions


def test_without_any_relief_grinding_is_cautioned_at_the_faces() -> None:
    sets = ("relief.thread.kind=concentric", "relief.chamfer.kind=concentric")
    steps = _steps(route_of(settled_of("M10", sets)))
    assert Step.RELIEVE not in steps
    assert cautions.GRINDING in steps[Step.HONE].cautions


def test_the_bar_is_the_next_that_takes_the_blank(design: TapDesign) -> None:
    tools = tools_of(design)
    bar, sizes = bar_for(design.tap, tools), stocked(tools)
    largest = max(design.tap.thread.major, design.tap.blank.shank_diameter)
    assert bar.diameter is not None
    assert bar.diameter >= largest + max(0.5, 0.05 * largest) - 1e-9
    thinner = sizes[sizes.index(bar.diameter) - 1]
    assert thinner < largest + max(0.5, 0.05 * largest)
    point = male_point(design.tap)
    stub = 0.0 if point is None else point.stub + point.cone
    assert bar.length == pytest.approx(design.tap.blank.overall_length + 2 * FACING + stub)
    row = next(row for row in _rows(OPERATIONS[Step.SAW](design)) if isinstance(row.value, Tool))
    assert row.value.mm == bar.diameter
    assert bool(row.value.names) is (tools is ToolSizes.INCH)


def test_bars_are_called_as_they_are_asked_for() -> None:
    (inch,), (metric,) = (
        [
            shown(row.value, Units.INCH)
            for row in _rows(OPERATIONS[Step.SAW](settled_of(text)))
            if isinstance(row.value, Tool)
        ]
        for text in ("1/2-13 UNC", "M18x0.75")
    )
    # 0.502 in and a twentieth: 9/16 in; 18.05 mm and a twentieth: 20 mm
    assert inch == ("9/16 (0.5625 in)",)
    assert metric == ("20 mm (0.7874 in)",)


def test_beyond_all_stocked_bars_the_least_is_told() -> None:
    design = settled_of("M300x4", ("blank.shank_diameter=399",))
    bar = bar_for(design.tap, tools_of(design))
    assert bar.diameter is None
    assert bar.turned == pytest.approx(399 * 1.05)
    labels = [told(row.label) for row in _rows(OPERATIONS[Step.SAW](design))]
    assert "no bar so thick is stocked: forged or cut, at least" in labels


def test_every_steel_has_a_speed_and_turns_follow_from_it() -> None:
    for steel in steel_names():
        assert 5 < speed(steel, Cut.MILLING) < speed(steel, Cut.TURNING) < 50
    assert SHARES[Cut.THREADING] == pytest.approx(1 / 3)
    # 16 m/min on 8 mm: 636.6 turns, two teeth of 0.04 mm
    assert table_feed("O1", 8.0) == pytest.approx(16000 / (8 * math.pi) * 2 * 0.04)
    steps = _steps(route_of(settled_of("M18x0.75")))
    turns = {
        told(row.label): row.value.text
        for step in (Step.THREAD, Step.FLUTES, Step.BODY)
        for row in steps[step].speeds
        if isinstance(row.value, Words)
    }
    # HSS taps run at 40 ft/min or more in mild steel, a drill at twice that; M10 is of 11 mm bar
    drill = _steps(route_of(settled_of("M10")))[Step.PROVE].speeds
    assert [shown(row.value) for row in drill] == [("24 m/min",), ("910",)]
    feeds = _steps(route_of(settled_of("M10")))[Step.CENTRE].speeds[2:4]
    assert [row.value for row in feeds] == [Length(11 / 80), Length(11 / 160)]
    # 20 m/min / (pi x 18.05 mm) = 353, a third of it, and 637
    assert turns == {
        "turns a minute on the thread part, 18.05 mm": "350",
        "turns a minute on the thread, 18.05 mm": "120",
        "turns a minute of the cutter, 8.00 mm": "640",
    }


def test_what_is_measured_has_a_target_or_limits_and_a_field(design: TapDesign) -> None:
    for chapter, one in zip(chapters_of(route_of(design)), route_of(design), strict=True):
        for row in one.measure:
            assert row.measured, row.label
            assert row.low or row.high or row.value != Words("–"), row.label
            # words in a column beside limits would leave the labels no room
            assert not isinstance(row.value, Words) or len(row.value.text) <= 22, row.label
        fields = sum(
            row.measured
            for block in chapter.blocks
            if isinstance(block, Rows)
            for row in block.rows
        )
        assert typeset(chapter, Units.MM).count("box(height: 5.0mm)") == fields
        captions = [block.caption for block in chapter.blocks if isinstance(block, Rows)]
        assert (MEASURE in captions) is bool(one.measure)


def test_no_number_of_the_sheet_is_another_here(design: TapDesign) -> None:
    """Sizes and limits are the chapters' own rows."""
    steps = _steps(route_of(design))
    (pitch,) = [row for row in steps[Step.THREAD].measure if row.label == "pitch diameter"]
    assert pitch.value == Length(design.tap.thread.pitch_diameter, 4)
    assert (pitch.low, pitch.high) == (
        Length(design.limits.pitch_min, 4),
        Length(design.limits.pitch_max, 4),
    )
    assert any(
        row.value == Length(design.tap.blank.square_across_flats)
        for row in steps[Step.SQUARE].measure
    )
    (heat,) = [row for row in _rows(steps[Step.TEMPER]) if told(row.label).startswith("temper")]
    assert heat in [
        row
        for block in OPERATIONS[Step.TEMPER](design).settings
        if isinstance(block, Rows)
        for row in block.rows
    ]
    if design.prediction is not None:
        (stop,) = [row for row in _rows(steps[Step.PROVE]) if row.label == "stop turning at"]
        assert f"{design.prediction.stop_at:.3g}" in shown(stop.value)[0].replace(".0 ", " ")


@pytest.mark.parametrize("text", ["3/8-16 UNC", "1/2 BSW LH", "1/2-10 Acme", "#4-40 UNC"])
def test_inches_have_no_millimetres(text: str, tmp_path: Path) -> None:
    design = settled_of(text)
    chapters = chapters_of(route_of(design))
    page = route_page(design, chapters, Units.INCH)
    # the names of centre drills and of thread pairs aside, every length is in inches
    assert " mm" not in page
    assert "m/min" not in page
    assert "ft/min" in page
    write_route(tmp_path / "route.pdf", design, chapters, Look(units=Units.INCH))
    assert not re.search(r"\d\s?mm\b", text_of(tmp_path / "route.pdf").partition("1 Saw")[2])


@pytest.mark.parametrize("units", Units)
@pytest.mark.parametrize("paper", Paper)
def test_the_paper_has_every_operation_with_its_box(
    paper: Paper, units: Units, tmp_path: Path
) -> None:
    design = settled_of("M3")
    chapters = chapters_of(route_of(design))
    write_route(tmp_path / "route.pdf", design, chapters, Look(paper, units))
    text = text_of(tmp_path / "route.pdf")
    places = [text.index(f"{chapter.title} • Machine:") for chapter in chapters]
    assert places == sorted(places)
    assert "date" in text
    assert "page 1 of " in text
    assert all("#box(width: 3.2mm" in typeset(c, units, ticked=True) for c in chapters)


def test_a_heading_stands_in_the_column_of_what_it_heads() -> None:
    chapters = chapters_of(route_of(settled_of("M18x0.75")))
    words = "\n".join(typeset(each, Units.BOTH, ticked=True) for each in chapters)
    hold_headings(chapters, words, range(0, 270, 27))


def test_change_gears_stand_where_the_thread_is_cut() -> None:
    lathe = ("shop.leadscrew=8tpi", "shop.gears=30,50,60,63,80,100")
    for sets, told_there in ((lathe, True), ((), False)):
        operations = _steps(route_of(settled_of("M20x3", sets)))
        labels = {step: [told(row.label) for row in _rows(one)] for step, one in operations.items()}
        assert ("leadscrew" in labels.pop(Step.THREAD)) is told_there
        assert not any("leadscrew" in others for others in labels.values())


def test_the_way_of_turning_is_that_of_the_hand() -> None:
    for text, way in (("M10", "turn it in clockwise"), ("M10-LH", "turn it in counter-clockwise")):
        design = settled_of(text)
        assert way in route_page(design, chapters_of(route_of(design)))


BROKEN = (
    ("chamfer.point_diameter=3", "flutes.core_diameter=4"),
    ("blank.square_length=60",),
    ("thread.pitch_diameter=9.3",),
    ("chamfer.angle=70",),
    ("flutes.core_diameter=1",),
    ("blank.shank_must_pass=true", "blank.shank_diameter=12"),
)


@pytest.mark.parametrize("sets", BROKEN, ids=lambda sets: sets[0])
def test_a_tap_that_breaks_a_rule_is_told_whole(sets: tuple[str, ...]) -> None:
    design = settled_of("M10", sets)
    assert design.errors
    operations = route_of(design)
    page = route_page(design, chapters_of(operations), Units.BOTH)
    for one in operations:
        assert one.title in page
    assert not re.search(r"\b(nan|inf)\b", page)


def test_what_helps_a_blank_that_gives_way_is_told_where_it_does() -> None:
    thin, thick = (
        route_page(design, chapters_of(route_of(design)))
        for design in (settled_of(text) for text in ("M3", "M64x1"))
    )
    assert "The thread gets thick where the blank gives way" in thin
    assert "The flutes get shallow where the blank gives way" in thin
    assert "where the blank gives way" not in thick
    assert "How far the blank gives way (a model" in thick


def _cells(operation: Operation) -> list[list[str]]:
    tables = [block for block in operation.settings if isinstance(block, Table)]
    passes = [table for table in tables if table.head[0] == "pass"]
    return [[shown(cell)[0] for cell in line] for table in passes for line in table.lines]


DIALS = (
    "shop.cross_slide=0.02mm, 4mm a turn, on diameter",
    "shop.top_slide=0.001in, 100 divisions",
)


def test_every_pass_has_its_infeed_and_readings_of_the_dials() -> None:
    thread = _steps(route_of(settled_of("M10", DIALS)))[Step.THREAD]
    lines = _cells(thread)
    assert [line[0] for line in lines] == [str(number + 1) for number in range(len(lines))]
    for _, infeed, cross, top in lines:
        depth = float(infeed.removesuffix(" mm"))
        # on the one a division takes 0.02 mm off the diameter, along the other 0.0254 mm
        assert abs(int(cross) * 0.01 - depth) <= 0.005 + 0.0005
        assert abs(int(top) * 0.0254 * math.cos(math.radians(29.5)) - depth) <= 0.0127
    # 0.978 mm: 97.8 divisions, and 0.978 / cos 29.5 deg / 0.0254 = 44.2
    assert lines[-1] == ["17", "0.978 mm", "98", "44"]
    plain = _cells(_steps(route_of(settled_of("M10")))[Step.THREAD])
    assert plain[-1] == ["17", "0.978 mm", "1.123 mm"]
    assert [line[1] for line in plain] == [line[1] for line in lines]


def test_wires_are_expected_after_the_last_passes_and_end_at_the_target(design: TapDesign) -> None:
    thread = _steps(route_of(design))[Step.THREAD]
    rows = {told(row.label): row for row in _rows(thread)}
    after = [row for label, row in rows.items() if label.startswith("after pass ")]
    (target,) = [row for row in thread.measure if row.label == "over the wire to use"]
    assert isinstance(target.value, Length)
    values = [row.value.mm for row in after if isinstance(row.value, Length)]
    assert 2 <= len(values) <= 3
    assert all(row.measured for row in after)
    assert values == sorted(values, reverse=True)
    assert values[-1] == pytest.approx(target.value.mm, abs=1e-9)
    # a light pass of 0.02 mm takes 0.04 mm off the pitch diameter, and as much of the reading
    if design.tap.thread.pitch > 0.7 and design.tap.thread.lead < 4:
        assert values[-2] - values[-1] == pytest.approx(0.04, rel=0.01)


def _turns(text: str, *sets: str) -> dict[str, str]:
    speeds = _steps(route_of(settled_of(text, sets)))[Step.THREAD].speeds
    return {told(row.label): shown(row.value)[0] for row in speeds}


def test_the_spindle_turns_so_slowly_that_a_hand_stops_it() -> None:
    long, short = (_turns("M10", f"blank.neck_length={length}") for length in (5.5, 3))
    stops = "turns a minute at which a hand, in 0.7 s (from memory), stops in the neck of {} mm"
    # (5.5 - 1.5) mm / (1.5 mm x 0.7 s) = 229 a minute, 86 in the short neck; 6.7 m/min are 211
    assert long[stops.format("5.5")] == "230"
    assert long["the lesser of both, turns a minute to set"] == "210"
    assert short[stops.format("3.0")] == "86"
    assert short["the lesser of both, turns a minute to set"] == "86"
    tight = _turns("M10", "blank.neck_length=1.5")
    assert tight[stops.format("1.5")] == "turn it by hand"
    assert not any("stops" in label for label in _turns("M18x0.75"))
    assert any("in the last turn" in label for label in _turns("M10", "blank.neck_length=0"))


@pytest.mark.parametrize(
    ("text", "heavy", "steep", "starts"),
    [
        ("Tr16x4", False, True, False),
        ("Tr100x12", True, True, False),
        ("Tr16x8(P4)", False, True, True),
        ("M64x6", False, False, False),
        ("M20xPh3P1.5", False, False, True),
    ],
)
def test_what_to_do_about_coarse_and_steep_threads_and_several_starts(
    text: str, heavy: bool, steep: bool, starts: bool
) -> None:
    design = settled_of(text)
    page = " ".join(route_page(design, chapters_of(route_of(design))).split())
    assert ("rough the groove with a narrower tool first" in page) is heavy
    assert ("squeeze a tool that is fed straight in" in page) is steep
    assert ("each of the 2 takes them" in page) is starts
