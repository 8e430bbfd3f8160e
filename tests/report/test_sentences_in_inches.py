"""Sentences of findings and notes in the reader's units."""

import re
import tomllib
from collections.abc import Iterator
from decimal import Decimal
from itertools import chain
from pathlib import Path

import pytest
from asked import design_of

from tapmodel.checks.proof.record import MeshProof, ModelProof
from tapmodel.designing.codes import Code
from tapmodel.designing.record import TapDesign
from tapmodel.designing.sets.need import set_of
from tapmodel.designing.settle import settle
from tapmodel.errors import NoTapError, NoWireError, RefusedError
from tapmodel.findings import Bound, Cure, Finding, Setting
from tapmodel.report.blocks import Block, Quantity, Rows, Table
from tapmodel.report.chapters import choices as choices_chapter
from tapmodel.report.chapters import findings as chapter
from tapmodel.report.chapters.proof import chapter as proof_chapter
from tapmodel.report.screen.design import design_page
from tapmodel.report.units import (
    HOLE_DEPTH,
    Units,
    force_in_words,
    in_words,
    range_in_words,
    shown,
    told,
    torque_in_words,
)
from tapmodel.report.words.choices import why
from tapmodel.report.words.cures import advice, setting_text
from tapmodel.report.words.findings import said
from tapmodel.report.words.limits import actual, allowed
from tapmodel.report.words.no_wire import no_wire
from tapmodel.report.words.refusal import refusal
from tapmodel.report.words.runners_up import runner_up_text
from tapmodel.report.words.sets import need
from tapmodel.shop.judged import judged
from tapmodel.spec.job_file import job_for

ROWS = tomllib.loads(Path(__file__).with_name("finding_words.toml").read_text())["said"]

AS_PRINTED = {Code.BEYOND_SCOPE, Code.UNLISTED_PAIR, Code.OTHER_UNIT}
"""What tells of a metric standard, or of what was typed, says so in mm."""


def test_the_depth_of_a_hole_keeps_eighths_of_an_inch() -> None:
    assert in_words(9.525, HOLE_DEPTH, Units.BOTH) == "9.5 mm = 0.375 in"
    assert range_in_words(3.175, 9.525, HOLE_DEPTH, Units.INCH) == "0.125 to 0.375 in"
    asked = ("hole.depth=9.525", "hole.kind=blind", "hole.material=EN AW-6082")
    design = design_of("3/8 BSW LH", asked)
    page = design_page(design, Units.INCH, every=True)
    assert "the hole is 0.375 in deep" in " ".join(page.split())
    assert re.search(r"blind hole, depth of thread +0\.375 in", page)
    depths = [line for line in page.splitlines() if "deep" in line or "depth" in line]
    assert not [line for line in depths if "0.38 in" in line]


def found(designation: str, sets: list[str]) -> tuple[Finding, ...]:
    try:
        return judged(settle(job_for(designation, sets))).findings
    except NoTapError as error:
        return error.findings


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row['code']}: {row['sentence'][:30]}")
def test_no_millimetre_is_left_on_an_inch_page_and_each_is_an_inch(row: dict[str, str]) -> None:
    for finding in found(row["designation"], list(row["sets"])):
        if finding.code != row["code"] or finding.code in AS_PRINTED:
            continue
        for tell in (said, actual, allowed):
            metric, inch = (tell(finding, units) for units in (Units.MM, Units.INCH))
            assert " mm" not in inch
            assert "N·m" not in inch
            assert metric.count("N·m") == inch.count("lbf·in")
            assert metric.count(" mm") == inch.count(" in") - metric.count(" in")
            lengths = re.findall(r"(-?[\d.]+(?:e-\d+)?) mm\b", metric)
            inches = re.findall(r"(-?\d[\d.]*) in\b", inch)
            for mm, written in zip(lengths, inches, strict=True):
                rounded = half_digit(mm) + 25.4 * half_digit(written)
                assert float(written) * 25.4 == pytest.approx(float(mm), abs=1.01 * rounded)


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row['code']}: {row['sentence'][:30]}")
def test_each_torque_is_in_pounds_and_inches_there(row: dict[str, str]) -> None:
    for finding in found(row["designation"], list(row["sets"])):
        for tell in (said, actual, allowed):
            metric, inch = (tell(finding, units) for units in (Units.MM, Units.INCH))
            assert "N·m" not in inch
            torques = re.findall(r"([\d.]+) N·m", metric)
            pounds = re.findall(r"([\d.]+) lbf·in", inch)
            for torque, pound in zip(torques, pounds, strict=True):
                # 1 lbf·in is 0.112985 N·m, and three digits are told at the least
                assert float(pound) == pytest.approx(float(torque) / 0.112985, rel=0.01)


def half_digit(number: str) -> float:
    """Half a unit of the last digit that is shown."""
    exponent = Decimal(number).as_tuple().exponent
    assert isinstance(exponent, int)
    return 0.5 * 10.0**exponent


def test_numbers_in_sentences_by_hand() -> None:
    assert in_words(0.05, ".3f", Units.INCH) == "0.0020 in"
    assert in_words(8.0, "g", Units.BOTH) == "8 mm = 0.31496 in"
    assert in_words(0.001, ".5g", Units.INCH) == "0.00003937 in"
    assert range_in_words(17.25, 17.378, ".6g", Units.INCH) == "0.67913 to 0.68417 in"
    assert range_in_words(25.4, 50.8, ".6g", Units.BOTH) == "25.4 to 50.8 mm = 1 to 2 in"


def test_torques_and_forces_by_hand() -> None:
    # 1 N·m is 8.850746 lbf·in, 1 N is 0.2248089 lbf
    assert torque_in_words(12.5, Units.INCH) == "111 lbf·in"
    assert torque_in_words(12.5, Units.BOTH) == "12.5 N·m = 111 lbf·in"
    assert force_in_words(150, Units.INCH) == "34 lbf"
    assert force_in_words(150, Units.BOTH) == "150 N = 34 lbf"


def test_an_overloaded_tap_is_told_in_pounds() -> None:
    (finding,) = [f for f in found("1/2-10 ACME", ["hole.material=C45"]) if "load" in f.code]
    told = [finding.values.number(name) for name in ("yields", "breaks")]
    torques = [finding.actual, finding.limit.high, *told]
    told_of = re.findall(r"([\d.]+) lbf·in", said(finding, Units.INCH))
    pounds = [8.850746 * torque for torque in torques if isinstance(torque, float)]
    assert [float(number) for number in told_of] == pytest.approx(pounds, rel=5e-3)
    assert allowed(finding, Units.INCH).endswith("lbf·in")


def test_whether_a_set_is_needed_is_told_in_pounds() -> None:
    design = design_of("1/2-13")
    assert design.prediction is not None
    words = need(design, set_of(design), Units.INCH)
    assert f"stopped at {8.850746 * design.prediction.stop_at:.3g} lbf·in" in words
    assert "N·m" not in words


def test_inch_papers_name_no_newton() -> None:
    page = design_page(design_of("1/2-13"), Units.INCH, every=True)
    assert re.search(r"pull of each hand reckoned with +34 lbf", page)
    assert not re.search(r"\bN\b", page)


def test_cures_have_inches_rounded_to_the_legal_side_with_digits_enough_to_be_legal() -> None:
    drop = Setting("relief.chamfer.heel_drop", Bound.AT_LEAST, 0.05, "mm", 4)
    core = Setting("flutes.core_diameter", Bound.AT_MOST, 8.1, "mm", 1)
    cutter = Setting("flutes.cutter_diameter", Bound.EXACTLY, 6.0, "mm")
    rake = Setting("flutes.rake", Bound.EXACTLY, 5.0, "deg", 1)
    told_of = advice((Cure((drop, core, cutter, rake)),), Units.INCH)
    # 0.05 / 25.4 = 0.0019685, 8.1 / 25.4 = 0.318898 and 6 / 25.4 = 0.236220
    assert "heel_drop at least 0.00197 in (0.0500 mm)" in told_of
    assert "core_diameter at most 0.3188 in (8.1 mm)" in told_of
    assert "cutter_diameter to 0.2362 in (6 mm)" in told_of
    assert told_of.endswith("flutes.rake to 5.0 deg")
    both = advice((Cure((core, cutter)),), Units.BOTH)
    assert "core_diameter at most 8.1 mm (0.3188 in)" in both
    assert "cutter_diameter to 6 mm (0.2362 in)" in both


def test_the_proof_of_the_model_is_told_in_inches() -> None:
    proof = ModelProof(
        solids=1,
        faces=99,
        sliver_faces=0,
        genus=0,
        valid=True,
        unmeasured=(),
        volume=1566.0,
        volume_expected=25.4**3,
        volume_relative_error=0.0,
        deviation_um_by_surface={"thread": 2.54},
        deviation_um_max=2.54,
        deviation_points=7,
        ideal_um_by_feature={"neck": 25.4},
        ideal_um_max=25.4,
        ideal_points=8,
        stations=(),
    )
    mesh = MeshProof(1, True, 2 * 25.4**3, 0, 0.01, False)
    texts = [
        text
        for block in proof_chapter(proof, mesh).blocks
        for cell in _cells(block)
        for text in shown(cell, Units.INCH)
    ]
    # 1566 / 25.4^3 = 0.0955632
    assert {"0.09556318 in³", "1.000000 in³", "2.000000 in³"} <= set(texts)
    assert {"0.0001 in", "0.001 in", "0.0001 in at 7 points", "0.001 in at 8 points"} <= set(texts)
    assert not re.search(r"\b(mm|µm)", " ".join(texts))


def _cells(block: Block) -> Iterator[Quantity]:
    if isinstance(block, Rows):
        yield from (row.value for row in block.rows)
    elif isinstance(block, Table):
        yield from chain.from_iterable(block.lines)


def test_page_and_sheet_tell_the_wear_in_inches() -> None:
    design = design_of("3/8 BSW LH")
    wear = next(finding for finding in design.findings if finding.code == Code.WEAR_RESERVE)
    inches = f"{wear.values.number('by') / 25.4:.5f} in in pitch diameter"
    assert inches in " ".join(design_page(design, Units.INCH).split())
    (paragraphs,) = chapter.chapter(design).blocks
    texts = [told(text, Units.INCH) for text in getattr(paragraphs, "texts", ())]
    assert any(inches in text for text in texts)
    assert not any(" mm" in text for text in texts)


def test_why_no_solid_and_no_wire_are_told_in_inches() -> None:
    crest = next(f for f in found("M18x0.75", ["thread.major=18.22"]) if f.code == "crest-flat")
    refused = RefusedError((crest,))
    refused.units = Units.INCH
    # 18.22 / 25.4
    assert "below the major diameter of 0.7173 in [crest-flat]" in refusal(refused)
    assert "below the major diameter of 18.220 mm [crest-flat]" in refusal(RefusedError((crest,)))
    with pytest.raises(NoTapError) as root:
        design_of("M10", ["thread.root_flat=1.4"])
    root.value.units = Units.INCH
    assert refusal(root.value).startswith("A root flat of 0.055118 in leaves no depth")
    told_of = no_wire(NoWireError("M8x1", 0.1), Units.INCH)
    assert "one that stands 0.003937 in clear of the crests" in told_of
    assert "thread micrometer" in told_of
    assert "stands 0.1 mm = 0.003937 in clear" in no_wire(NoWireError("M8x1", 0.1), Units.BOTH)


EVERY_FAMILY = (
    *("M10", "M3", "M18x0.75", "M70x4", "Tr16x4", "1/4-20 UNC", "0-80 UNF", "3 1/2-4 UNC"),
    *("3/8 BSW LH", "1/2-10 ACME", "G 1/4", "2 BA", "12 BA"),
)
"""Sizes that between them meet every rule whose reason holds a length, of every family."""

NAMED = re.compile(r"drills: [\d.]+ mm\b")
"""A metric drill is called by its size in mm, to whoever buys it."""


@pytest.mark.parametrize("designation", EVERY_FAMILY)
def test_reasons_of_choices_name_no_millimetre_on_an_inch_page(designation: str) -> None:
    design = settle(job_for(designation))
    page = design_page(design, Units.INCH, every=True, sources=True)
    (table,) = choices_chapter.chapter(design).blocks
    assert isinstance(table, Table)
    for choice, (_, _, _, reason, source) in zip(design.choices, table.lines, strict=True):
        (text,) = shown(reason, Units.INCH)
        assert not re.search(r"\d (mm|µm|°C|N·m)\b", NAMED.sub("", text)), text
        # what a standard is quoted with may be in its own unit
        assert choice.given or f"{text.partition('; next came')[0]} -- " in " ".join(page.split())
        assert shown(source, Units.INCH) == shown(source)


def test_reasons_of_choices_by_hand() -> None:
    small, large = design_of("3/8-16 UNC"), design_of("1/2-13 UNC")

    def told_of(field: str, design: TapDesign = small) -> str:
        choice = design.choice(field)
        assert choice is not None
        other = choice.runner_up
        later = f"; {runner_up_text(other, choice.unit, Units.INCH)}" if other else ""
        return why(choice, Units.INCH) + later

    # 12, 36 and 100 mm, and 12.7 mm, over 25.4
    assert told_of("flutes.count", large).startswith(
        "3 below 0.472 in for chip room, 4 up to 1.42 in, 6 up to 3.94 in, 8 above; this is 0.5 in"
    )
    assert told_of("flutes.count").startswith("more than the usual 3, whose edge would keep only")
    # 7.9375 and 0.05 mm
    assert told_of("chamfer.point_diameter") == (
        "0.1 P under the drill of 0.3125 in, down to the next 0.002 in, so that it starts"
    )
    # 4.715 mm, 0.495 of the diameter where 0.45 is usual
    assert "; next came 0.18563 in: " in told_of("flutes.core_diameter")
    # the heel stands 0.0206 mm proud
    assert "its heel 0.00081 in proud" in told_of("relief.chamfer.kind")
    assert told_of("tap.hardness") == "as tempered at 400 °F"


def test_a_great_length_in_a_reason_has_no_exponent() -> None:
    assert in_words(123.4, ".2g|.2g", Units.BOTH) == "120 mm = 4.9 in"
    assert in_words(0.001, "g|.1g", Units.INCH) == "0.00004 in"


@pytest.mark.parametrize(
    ("bound", "fahrenheit"),
    [(Bound.AT_LEAST, 490), (Bound.AT_MOST, 489), (Bound.EXACTLY, 489)],
)
def test_a_temperature_to_set_stands_in_both_scales_on_its_legal_side(
    bound: Bound, fahrenheit: int
) -> None:
    """254 °C are 489.2 °F."""
    setting = Setting("tap.temper", bound, 254.0, "°C")
    told = f"tap.temper {bound} "
    assert setting_text(setting, Units.MM) == f"{told}254 °C"
    assert setting_text(setting, Units.INCH) == f"{told}{fahrenheit} °F (254 °C)"
    assert setting_text(setting, Units.BOTH) == f"{told}254 °C ({fahrenheit} °F)"
