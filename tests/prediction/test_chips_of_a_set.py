"""Chips and torque of a tap that follows another: what is left of the thread, and no more."""

import math
from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
from trial_taps import FAMILIES, designed, relieved, unrelieved

from tapmodel.prediction.chips.outlines import chip_outlines, gap_before
from tapmodel.prediction.chips.record import Chips
from tapmodel.prediction.chips.teeth import chips_of
from tapmodel.prediction.part import Part, earlier
from tapmodel.prediction.prediction import Prediction, predicted
from tapmodel.prediction.sets import split, usual_plan
from tapmodel.prediction.thread_section import moment_above, section_above
from tapmodel.prediction.torque.torque import torque_of
from tapmodel.shape.relief import eccentric_by_edge
from tapmodel.standards.materials.work import work_material
from tapmodel.tap.tap import Tap, TapThread
from tapmodel.words import ReliefPlace


def threads(thread: TapThread, bore: float, count: int) -> list[TapThread]:
    """Of the taps of a usual set, first to last."""
    taps = split(thread, bore, usual_plan(thread, count))
    return [*(earlier(thread, one.major, one.pitch_diameter) for one in taps[:-1]), thread]


def chips_of_all(tap: Tap, drill: float, count: int) -> list[Chips]:
    own = threads(tap.thread, drill, count)
    pairs = pairwise([None, *own])
    return [
        chips_of(replace(tap, thread=thread), drill, before)
        for before, thread in pairs
        if thread is not None
    ]


@pytest.mark.parametrize("count", [2, 3])
@pytest.mark.parametrize("designation", FAMILIES)
def test_the_taps_of_a_set_cut_the_thread_together(designation: str, count: int) -> None:
    design = designed(designation)
    tap = unrelieved(design.tap)
    all_chips = chips_of_all(tap, design.drill, count)
    for chips in all_chips:
        assert chips.area_sum == pytest.approx(chips.area_expected, rel=1e-12)
    whole = section_above(tap.thread, design.drill)
    assert sum(chips.area_sum for chips in all_chips) == pytest.approx(whole, rel=1e-9)
    shares = [chips.area_sum / whole for chips in all_chips]
    usual = usual_plan(tap.thread, count).shares
    assert shares == pytest.approx(list(usual), rel=1e-9)


@pytest.mark.parametrize("designation", ["M10", "1/2 BSW", "Tr40x14P7"])
def test_the_chips_of_a_set_have_the_moment_of_the_thread(designation: str) -> None:
    design = designed(designation)
    tap = unrelieved(design.tap)
    teeth = [tooth for chips in chips_of_all(tap, design.drill, 3) for tooth in chips.teeth]
    moment = math.fsum(tooth.area * tooth.radius for tooth in teeth)
    assert moment == pytest.approx(moment_above(tap.thread, design.drill), rel=2e-6)


@pytest.mark.parametrize("designation", ["M10", "1/2 BSW", "Tr20x4"])
def test_relieved_flanks_of_both_taps_fall_off_alike(designation: str) -> None:
    design = designed(designation)
    major = design.tap.thread.major
    flanks = eccentric_by_edge(ReliefPlace.THREAD, major, 5.0)
    tap = relieved(design.tap, flanks, eccentric_by_edge(ReliefPlace.CHAMFER, major, 8.0))
    whole = chips_of(tap, design.drill).area_sum
    together = sum(chips.area_sum for chips in chips_of_all(tap, design.drill, 2))
    assert together == pytest.approx(whole, rel=1e-5)


@pytest.mark.parametrize("count", [2, 3])
@pytest.mark.parametrize("designation", ["M10", "1/2 BSW", "Tr20x4", "Tr40x14P7"])
def test_outlines_are_of_what_the_taps_before_have_left(designation: str, count: int) -> None:
    design = designed(designation)
    drill = design.drill
    for before, thread in pairwise([None, *threads(design.tap.thread, drill, count)]):
        assert thread is not None
        tap = replace(design.tap, thread=thread)
        teeth = {(t.land, round(t.height, 6)): t for t in chips_of(tap, drill, before).teeth}
        gap = gap_before(tap, drill, before)
        assert (gap is None) == (before is None)
        outlines = chip_outlines(tap, drill, before)
        assert len(outlines) * thread.starts >= len(teeth)
        for chip in outlines:
            tooth = teeth[chip.land, round(chip.height, 6)]
            area = sum(area_of(part) for part in chip.parts)
            assert area == pytest.approx(tooth.area, rel=2e-3, abs=1e-6 * thread.pitch**2)
            if gap is not None:
                w, r = np.concatenate(chip.parts).T
                under = r < gap.crest - 1e-9 * thread.pitch
                half = np.interp(r[under], gap.radius, gap.half)
                assert np.all(np.abs(w[under]) >= half - 1e-9 * thread.pitch)


def area_of(points: np.ndarray) -> float:
    w, r = points.T
    return float(np.sum(w * np.roll(r, 1) - np.roll(w, 1) * r)) / 2


def test_a_gap_has_the_section_of_the_thread_that_left_it() -> None:
    design = designed("1/2 BSW")
    tap = unrelieved(design.tap)
    first, last = threads(tap.thread, design.drill, 2)
    gap = gap_before(replace(tap, thread=last), design.drill, first)
    assert gap is not None
    assert abs(area_of(gap.outline())) == pytest.approx(
        section_above(first, design.drill), rel=1e-3
    )


def test_a_tap_after_one_that_cut_nothing_cuts_all() -> None:
    design = designed("M10")
    small = earlier(design.tap.thread, design.drill - 0.01, design.drill - 0.3)
    assert chips_of(design.tap, design.drill, small) == chips_of(design.tap, design.drill)


def test_a_tap_after_one_like_it_cuts_nothing() -> None:
    design = designed("M10")
    tap = unrelieved(design.tap)
    chips = chips_of(tap, design.drill, tap.thread)
    assert chips.teeth == ()
    assert chips.area_expected == pytest.approx(0.0, abs=1e-12)


def test_strips_along_the_flanks_are_as_thick_as_any_chip() -> None:
    """Of a tap that takes nothing but the flanks: the strips are thin across, not along the cut."""
    design = designed("Tr20x4")
    tap = unrelieved(design.tap)
    thread, allowance = tap.thread, 0.08
    before = earlier(thread, thread.major - allowance, thread.pitch_diameter - allowance)
    alone = chips_of(tap, design.drill)
    strips = chips_of(tap, design.drill, before)
    deep = strips.teeth[3:12]
    across = allowance / 2 * math.tan(math.radians(15)) * 2
    slope = math.tan(math.radians(tap.chamfer.angle))
    lean = 1 - (slope * math.tan(math.radians(15))) ** 2
    for tooth in deep:
        full = next(one for one in alone.teeth if one.height == tooth.height)
        assert tooth.thickness == pytest.approx(full.thickness, rel=1e-9)
        assert tooth.mean_thickness == pytest.approx(full.thickness, rel=5e-3)
        along = across / lean / math.cos(math.radians(tap.chamfer.angle))
        assert tooth.width == pytest.approx(along, rel=5e-3)


def foreseen(designation: str, count: int, material: str) -> tuple[Prediction, list[Prediction]]:
    """Of the one tap, and of each of a set; all with the chamfer of the one."""
    design = designed(designation)
    task = replace(design.task, material=work_material(material))
    own = threads(design.tap.thread, design.drill, count)
    found = [
        predicted(
            replace(design.tap, thread=thread),
            replace(task, part=Part(number, count, before, own[-1])),
        )
        for number, (before, thread) in enumerate(pairwise([None, *own]), start=1)
        if thread is not None
    ]
    return predicted(design.tap, task), found


@pytest.mark.parametrize("count", [2, 3])
@pytest.mark.parametrize("designation", ["M10", "Tr20x4", "1/2-13 UNC"])
def test_torques_of_a_set_are_together_that_of_the_one(designation: str, count: int) -> None:
    """One specific force for all: the chips then matter by area and radius alone."""
    design = designed(designation)
    kind = work_material("C45")
    flat = replace(kind, kienzle=replace(kind.kienzle, mc=0.0))
    # So deep a hole that the whole chamfer cuts at once.
    tap, hole = unrelieved(design.tap), replace(design.task.hole, depth=200.0)
    one = torque_of(tap, chips_of(tap, design.drill), flat, 6.0, hole).cutting
    parts = [
        torque_of(tap, chips, flat, 6.0, hole).cutting
        for chips in chips_of_all(tap, design.drill, count)
    ]
    assert sum(parts) == pytest.approx(one, rel=1e-6)
    assert parts[0] > 0.5 * one


def test_printed_formulas_are_told_by_the_share_of_the_work() -> None:
    one, parts = foreseen("M10", 3, "C45")
    whole = one.torque.formula_b
    assert whole is not None
    told = [part.torque.formula_b or math.nan for part in parts]
    assert sum(told) == pytest.approx(whole, rel=1e-9)
    assert told[0] / whole == pytest.approx(0.58, abs=0.03)
    shares = [part.task.part.share(part.tap.thread, 8.5) for part in parts if part.task.part]
    assert told == pytest.approx([share * whole for share in shares], rel=1e-12)


def test_each_tap_of_a_set_is_pressed_less_than_the_one() -> None:
    one, parts = foreseen("Tr20x4", 2, "1.4301")
    for part in parts:
        assert part.torque.band.likely < 0.85 * one.torque.band.likely
