"""What is foretold of the hole, in words that a reader can follow from the top."""

import math
import re

import pytest
from asked import settled_of

from tapmodel.report.blocks import Force, Length, Paragraphs, Row, Rows, Table, Tool, Torque, Words
from tapmodel.report.chapters.in_the_hole import turning_it
from tapmodel.report.chapters.order import OPERATIONS
from tapmodel.report.drawings.catalogue import all_drawings
from tapmodel.report.drawings.charts.axis import figure
from tapmodel.report.screen.design import design_page
from tapmodel.report.units import Units, shown, told

TEXTS = ("M10", "M18x0.75", "3/8-16 UNC")


@pytest.mark.parametrize("text", TEXTS)
def test_band_and_likely_are_explained_before_they_are_used(text: str) -> None:
    page = " ".join(design_page(settled_of(text), every=True).split())
    at = page.index(turning_it.MODEL)
    for word in ("likely", "band"):
        assert re.search(rf"\b{word}\b", page.replace(turning_it.MODEL, ""))
        assert not re.search(rf"\b{word}\b", page[:at], re.IGNORECASE), word
    assert "a model, not from a measurement" in turning_it.MODEL


@pytest.mark.parametrize(
    ("text", "material", "likely"),
    [
        ("M10", "mild steel", "Likely is the geometric mean of the teeth and of the two formulas"),
        ("M10", "6082", "Likely is the geometric mean of the teeth and of the one formula printed"),
        ("M10", "magnesium", "No printed formula holds here: likely is what the teeth alone tell"),
        ("Tr16x4", "brass", "No printed formula holds here: likely is what the teeth alone tell"),
    ],
)
def test_what_is_likely_is_told_as_it_was_made(text: str, material: str, likely: str) -> None:
    sets = [f"hole.material={material}", "hole.kind=blind"]
    design = settled_of(text, sets)
    assert design.prediction is not None
    torque = design.prediction.torque
    told_of = turning_it.likely_told(design.prediction)
    assert told_of.startswith(likely)
    assert told_of in " ".join(design_page(design, every=True).split())
    printed = [one for one in (torque.formula_a, torque.formula_b) if one is not None]
    # the rest of the mean is the teeth with their likely friction
    teeth = torque.band.likely ** (1 + len(printed)) / math.prod(printed)
    assert teeth == pytest.approx(torque.cutting + torque.friction.likely, rel=0.005)


def test_no_label_is_a_word_that_does_not_say_of_what_it_is() -> None:
    design = settled_of("M10")
    for chapter in (section(design) for section in OPERATIONS):
        for block in chapter.blocks:
            assert not isinstance(block, Table) or not {"likely", "band"} & set(block.head)
            if isinstance(block, Rows):
                assert not {"likely", "band"} & {row.label for row in block.rows}


def test_the_short_page_calls_its_torque_a_models() -> None:
    design = settled_of("M10")
    assert design.prediction is not None
    likely = f"{design.prediction.torque.band.likely:.2f} N"
    line = rf"likely torque \(a model\) in mild steel, assumed +{likely}"
    assert re.search(line, design_page(design))


@pytest.mark.parametrize("text", ["M18x0.75", "M64x1", "M3"])
def test_drawings_stop_at_the_torque_of_the_table(text: str) -> None:
    """A large tap is stopped by what tells of a fault, long before it could break."""
    design = settled_of(text)
    table = next(
        row.value
        for block in turning_it.chapter(design).blocks
        if isinstance(block, Rows)
        for row in block.rows
        if row.label == "stop turning at"
    )
    assert isinstance(table, Torque)
    (stop,) = table.newton_metres
    drawings = all_drawings(design)
    lettered = {
        name: " / ".join(text.dxf.text for text in drawing.document.modelspace().query("TEXT"))
        for name, drawing in drawings.items()
    }
    assert f"stop at {figure(stop)}" in lettered["torque"]
    assert f"at the torque to stop at, {figure(stop)} N" in lettered["strength"]


def test_no_table_of_an_inch_sheet_names_a_metric_unit_but_of_tools() -> None:
    design = settled_of("3/8-16 UNC")
    for chapter in (section(design) for section in OPERATIONS):
        for block in chapter.blocks:
            for row in block.rows if isinstance(block, Rows) else ():
                text = row.label if isinstance(row.value, Tool) else _told(row)
                assert not re.search(r"\b(mm|µm|N|N·m|MPa)\b", text), text


def _told(row: Row) -> str:
    return " ".join((told(row.label, Units.INCH), *shown(row.value, Units.INCH)))


@pytest.mark.parametrize(
    ("text", "told"), [("M10", "thread root"), ("M18x0.75", "thread end, whole section")]
)
def test_where_it_breaks_first_is_told_once(text: str, told: str) -> None:
    blocks = turning_it.chapter(settled_of(text)).blocks
    rows = [row for block in blocks if isinstance(block, Rows) for row in block.rows]
    assert [row.value for row in rows if row.label == "breaks first"] == [Words(told)]


def test_the_wrench_is_no_longer_than_two_hands_may_turn() -> None:
    design = settled_of("M64x1")
    assert design.prediction is not None
    rows = [block for block in turning_it.chapter(design).blocks if isinstance(block, Rows)]
    values = {row.label: row.value for block in rows for row in block.rows}
    # 150 N at each end, half of it from the middle: T = F*l
    longest = 1000 * design.prediction.stop_at / 150
    wrench = values["wrench over both hands, at most"]
    assert isinstance(wrench, Length)
    assert 0.9 * longest < wrench.mm <= longest
    assert wrench.mm % 10 == pytest.approx(0.0)
    assert values["pull of each hand reckoned with"] == Force(150.0)


def _said(text: str, *sets: str, units: Units = Units.MM) -> str:
    blocks = turning_it.chapter(settled_of(text, list(sets))).blocks
    texts = [text for block in blocks if isinstance(block, Paragraphs) for text in block.texts]
    return " ".join(told(text, units) for text in texts)


def test_it_is_told_what_sets_the_torque_to_stop_at() -> None:
    design = settled_of("M10")
    assert design.prediction is not None
    strength = design.prediction.strength
    least = min(strength.yields.low, strength.breaks.low)
    share = f"{100 * strength.bears / least:g} % of the least at which the tap yields or breaks"
    assert share in _said("M10")
    large = settled_of("1 3/8-24 UNS LH", ["hole.material=brass"]).prediction
    assert large is not None
    times = f"{large.stop_at / large.torque.band.high:g} times the greatest torque of a sharp tap"
    bears = f"the tap itself is safe up to {float(f'{large.strength.bears:.2e}'):g} N·m"
    said = _said("1 3/8-24 UNS LH", "hole.material=brass")
    assert times in said
    assert bears in said


@pytest.mark.parametrize(
    ("text", "material", "near"),
    [
        # mild steel takes 0.934 of what C45 does by the formula that tells the most
        ("1/2 BSW LH", "C45", True),
        ("1/2 BSW LH", "mild steel", False),
        ("1/2 BSW LH", "stainless", True),
        ("M3", "mild steel", True),
        ("M10", "mild steel", False),
        ("M18x0.75", "mild steel", False),
    ],
)
def test_a_band_that_reaches_the_torque_to_stop_at_is_a_risk(
    text: str,
    material: str,
    near: bool,
) -> None:
    sets = f"hole.material={material}"
    foreseen = settled_of(text, [sets]).prediction
    assert foreseen is not None
    assert near == (foreseen.torque.band.high > 0.95 * foreseen.stop_at)
    assert (turning_it.AT_RISK in _said(text, sets)) == near


def test_a_dry_hole_is_a_fault_only_where_oil_is_asked_for() -> None:
    assert "a hole left dry" in _said("M10", "hole.material=mild steel")
    for dry in ("brass", "grey cast iron"):
        said = _said("M10", f"hole.material={dry}")
        assert "two to four times as much" in said
        assert "left dry" not in said


def test_worn_edges_are_told_by_the_width_of_their_wear() -> None:
    blocks = turning_it.chapter(settled_of("M10")).blocks
    labels = [row.label for block in blocks if isinstance(block, Rows) for row in block.rows]
    assert "edges worn 0.10 mm wide add" in [told(label) for label in labels]
    assert "Edges duller than that" in _said("M10")


@pytest.mark.parametrize("text", ["M10", "3/8-16 UNC"])
def test_the_speed_of_a_tap_is_turns_and_of_a_machine(text: str) -> None:
    """By hand a tap goes half a turn on and a quarter back; no metres in a minute mean anything."""
    design = settled_of(text)
    rows = {told(row.label): row.value for row in turning_it.work_rows(design)}
    assert "speed under power" not in rows
    value = rows["speed in a machine, not by hand"]
    assert isinstance(value, Words)
    turns = re.fullmatch(r"(\d+) to (\d+) turns a minute", value.text)
    assert turns is not None
    around = math.pi * design.tap.thread.major / 1000
    metres = [float(number) * around for number in turns.groups()]
    assert metres == pytest.approx(design.work.material.group.speed, rel=0.05)
    page = design_page(design, every=True)
    assert "m/min" not in page
    for line in page.splitlines():
        assert "turns a minute" not in line or line.startswith("  speed in a machine, not by hand")


def test_a_long_lead_has_no_speed_in_a_machine() -> None:
    rows = {told(row.label) for row in turning_it.work_rows(settled_of("Tr24x5"))}
    assert "speed" in rows
    assert not any("machine" in label for label in rows)


def test_the_usual_wrench_is_round_in_the_one_unit_of_the_reader() -> None:
    """254 mm are 10 in: what each hand gives there is 1.6 % less than at 250 mm."""
    design = settled_of("Tr16x8(P4)")
    assert design.prediction is not None
    stop = design.prediction.stop_at
    row = list(turning_it.wrench_rows(design.prediction))[-1]
    for units, length, pull in (
        (Units.MM, "250 mm", shown(Force(stop / 0.250), Units.MM)),
        (Units.INCH, "10 in", shown(Force(stop / 0.254), Units.INCH)),
        (Units.BOTH, "250 mm = 9.8 in", (" = ".join(shown(Force(stop / 0.250), Units.BOTH)),)),
    ):
        assert told(row.label, units) == f"at a wrench of {length} that is for each hand"
        assert shown(row.value, units) == pull
