"""What a terminal shows of a design: what is looked for first, every number, the findings."""

import re

import pytest
from asked import design_of

from tapmodel.designing.record import TapDesign
from tapmodel.report.chapters.order import OPERATIONS
from tapmodel.report.screen.columns import Mark, columns
from tapmodel.report.screen.design import design_page
from tapmodel.report.screen.findings import findings_lines
from tapmodel.report.units import Units, told
from tapmodel.report.words.limits import actual, allowed
from tapmodel.shop.judged import judged
from tapmodel.shop.wires.answer import Wires, answer_wires
from tapmodel.shop.wires.asked import Overrides, thread_of_design
from tapmodel.words import Severity

UNITS = ((1.0, ".3f"), (25.4, ".4f"))


@pytest.fixture(scope="module")
def reference() -> TapDesign:
    return design_of("M18x0.75")


@pytest.fixture(scope="module")
def broken() -> TapDesign:
    return design_of("M18x0.75", ["flutes.core_diameter=1"])


def tagged(text: str, mark: Mark) -> str:
    return f"<{mark.name}>{text}</{mark.name}>"


def test_the_page_opens_with_what_a_machinist_looks_for(reference: TapDesign) -> None:
    tap, limits = reference.tap, reference.limits
    asked = thread_of_design(reference, reference.basic_pitch_diameter, Overrides())
    measured = answer_wires(asked, Wires())
    page = design_page(reference)
    wanted = (
        f"{reference.drill:.2f} mm",
        f"{tap.thread.major:.3f} mm",
        f"{2 * tap.thread.flank_angle:.2f}°",
        f"{tap.thread.root_flat:.3f} mm",
        f"{tap.thread.pitch_diameter:.4f} mm  {limits.pitch_min:.4f} to {limits.pitch_max:.4f} mm",
        f"{measured.wire:.4f} mm",
        f"{measured.measurement_target:.4f} mm",
        f"{tap.flutes.count} flutes",
        f"{tap.flutes.cutter_diameter:.2f} mm",
        f"{abs(tap.flutes.offset):.3f} mm",
        f"{reference.figures.depth_from_top:.3f} mm",
        f"{tap.flutes.core_diameter:.3f} mm",
    )
    # Each behind those before it: the order of the work.
    places = [page.index(text) for text in wanted]
    assert places == sorted(places)
    assert len(page.splitlines()) < 26


def test_all_numbers_are_those_of_the_sheet(reference: TapDesign) -> None:
    page = design_page(reference, every=True)
    labels = [
        told(row.label)
        for chapter_of in OPERATIONS
        for block in chapter_of(reference).blocks
        for row in getattr(block, "rows", ())
    ]
    assert len(labels) > 50
    assert all(label in page for label in labels)
    short = design_page(reference)
    assert sum(label in short for label in labels) < len(labels) / 4


def test_lengths_stand_in_the_units_asked_for(reference: TapDesign) -> None:
    inch = design_page(reference, Units.INCH).partition("note")[0]
    # only a drill or cutter is called by its millimetres, the inches beside them
    assert not re.search(r" mm(?! \()", inch)
    assert f"{reference.tap.thread.major / 25.4:.4f} in" in inch
    both = design_page(reference, Units.BOTH)
    assert (
        f"{reference.tap.thread.major:.3f} mm = {reference.tap.thread.major / 25.4:.4f} in" in both
    )


def test_reasons_and_sources_are_said_where_asked(reference: TapDesign) -> None:
    said = " ".join(design_page(reference, sources=True).split())
    for choice in reference.choices:
        assert f"{choice.field} = " in said
        assert str(choice.source or "as given") in said
    assert "from memory" not in design_page(reference)


def test_a_finding_says_what_is_and_what_is_allowed_once(broken: TapDesign) -> None:
    grave = [f for f in broken.findings if f.severity is not Severity.NOTE]
    assert grave
    for finding in grave:
        said = " ".join(" ".join(findings_lines([finding])).split())
        assert said.count(f"{finding.field} is {actual(finding)}; allowed {allowed(finding)}") == 1
        assert f"[{finding.code}]" in said
        for cure in finding.cures:
            assert all(f"{s.field} {s.bound} {s.text}" in said for s in cure.settings)
    kinds = [line.split()[0] for line in findings_lines(broken.findings) if line[0] != " "]
    assert kinds == sorted(kinds, key=["ERROR", "WARNING", "note"].index)


def test_a_pen_changes_no_letter(broken: TapDesign) -> None:
    for every in (False, True):
        marked = design_page(broken, pen=tagged, every=every, sources=True)
        assert re.sub(r"</?[A-Z]+>", "", marked) == design_page(broken, every=every, sources=True)
        assert marked.count("<ERROR>") == len(broken.errors)
        assert "<HEADING>At the machine" in marked or every


def test_columns_are_as_wide_as_their_widest_cell() -> None:
    assert columns([("a", "bbb", "c"), ("aaa", "b")]) == ["a    bbb  c", "aaa  b"]
    assert columns([("a", "bbb"), ("aaa", "b")], right=True) == ["  a  bbb", "aaa    b"]


@pytest.mark.parametrize(("wires", "told"), [([2.0, 3.0], True), ([0.95, 2.0], False), ([], False)])
def test_the_page_says_that_no_wire_on_hand_suits(wires: list[float], told: bool) -> None:
    sets = [f"shop.wires={wires}"] if wires else []
    page = design_page(judged(design_of("3/8-16", sets)))
    assert ("WARNING [wires] None of the wires on hand suits this thread" in page) is told


@pytest.mark.parametrize(
    ("designation", "label"),
    [("M10", "tool nose, flat at most"), ("1/2 BSW", "tool nose, radius")],
)
def test_the_nose_of_the_tool_has_one_label_wherever_it_stands(
    designation: str, label: str
) -> None:
    design = design_of(designation)
    for every in (False, True):
        assert label in design_page(design, every=every)


def test_blank_square_and_flutes_have_limits_and_a_word_of_hardening() -> None:
    page = " ".join(design_page(design_of("M10"), every=True).split())
    for line in (
        "overall length 80.00 mm 78.10 to 80.00 mm",
        "shank diameter 10.000 mm 9.964 to 10.000 mm",
        "neck diameter 8.000 mm 7.850 to 8.000 mm",
        "across flats 8.000 mm 7.850 to 8.000 mm",
        "core (web) left between the flutes 4.000 mm 3.900 to 4.100 mm",
        "In hardening steel grows or shrinks",
        "ISO 2768-1:1989, table 1, medium (from memory)",
        "ISO 286-1:2010, table 1 (from memory)",
    ):
        assert line in page
