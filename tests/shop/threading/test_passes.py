"""Laws of the passes: equal chips, the whole depth, and every listed size within reason."""

import math
import sys
from dataclasses import replace
from functools import cache
from pathlib import Path

import numpy as np
import pytest

sys.path.insert(0, str(Path(__file__).parents[2] / "geometry"))

from listed_jobs import listed_designations
from sweeps import in_part

from tapmodel.designing.record import TapDesign
from tapmodel.designing.settle import settle
from tapmodel.shape.profile import profile_radius, segments
from tapmodel.shop.lathe_tool import lathe_tool
from tapmodel.shop.threading.over_wires import after_pass
from tapmodel.shop.threading.passes import (
    DEEPEST,
    Kind,
    Nose,
    Passes,
    deeper_by,
    finishing,
    nose_of,
    thread_passes,
)
from tapmodel.shop.wires.answer import answer_for
from tapmodel.shop.wires.over_wires import simple_measurement
from tapmodel.spec.job_file import job_for

NAMED = (
    *("M0.3x0.08", "M5x0.05", "M1", "M3", "M10", "M18x0.75", "M64x1", "M64x6", "1/4-20 UNC"),
    *("2 BA", "G 1/2", "1/2 BSW", "Tr16x4", "Tr16x8(P4)", "1/2-10 Acme", "0.50 UNM"),
)


def of(designation: str, *sets: str) -> tuple[TapDesign, Passes]:
    design = settle(job_for(designation, list(sets)))
    found = thread_passes(design.tap.thread)
    assert found is not None
    return design, found


@cache
def listed() -> tuple[tuple[TapDesign, Passes], ...]:
    return tuple(of(text) for text in in_part([*listed_designations()], every=13))


def test_a_sharp_v_goes_in_with_the_square_root_of_the_pass() -> None:
    nose = Nose(0.0, 0.0, 30.0)
    first = nose.depth_of(0.05)
    assert first == pytest.approx(math.sqrt(0.05 / math.tan(math.radians(30))))
    for number in range(1, 12):
        assert nose.depth_of(0.05 * number) == pytest.approx(first * math.sqrt(number))


@pytest.mark.parametrize("nose", [Nose(0.2, 0.0, 30), Nose(0.0, 0.25, 27.5), Nose(1.4, 0.0, 15)])
def test_depth_and_area_are_each_others_inverse(nose: Nose) -> None:
    for depth in np.linspace(0.001, 2.0, 40):
        # what the tool covers, by strips across
        heights = (np.arange(20000) + 0.5) * depth / 20000
        if nose.radius:
            lean = math.radians(nose.flank_angle)
            touch = nose.radius * (1 - math.sin(lean))
            arc = 2 * np.sqrt(np.maximum(heights * (2 * nose.radius - heights), 0))
            flanks = 2 * (nose.radius * math.cos(lean) + (heights - touch) * math.tan(lean))
            widths = np.where(heights < touch, arc, flanks)
        else:
            widths = nose.flat + 2 * heights * math.tan(math.radians(nose.flank_angle))
        assert nose.area(depth) == pytest.approx(widths.sum() * depth / 20000, rel=1e-4)
        assert nose.depth_of(nose.area(depth)) == pytest.approx(depth, rel=1e-9)


@pytest.mark.parametrize("designation", NAMED)
def test_the_whole_groove_is_taken(designation: str) -> None:
    """All chips together are the section between the blank and the tap's own profile."""
    design, found = of(designation)
    thread = design.tap.thread
    parts = segments(replace(thread, rounded_crest=False))
    across = (np.arange(200_000) + 0.5) * thread.pitch / 200_000
    taken = float(np.mean(thread.major / 2 - profile_radius(parts, across))) * thread.pitch
    assert sum(one.area for one in found.passes) == pytest.approx(taken, rel=1e-5)


def test_laws_of_a_sample_of_the_listed_sizes() -> None:
    assert len(listed()) > 100
    for design, found in listed():
        thread, infeeds = design.tap.thread, [one.infeed for one in found.passes]
        ways = np.diff([0.0, *infeeds])
        assert 3 <= len(infeeds) <= 60, design.designation
        equal = [one.area for one in found.passes if one.kind is Kind.EQUAL]
        assert equal
        assert np.ptp(equal) <= 1e-9 * equal[0]
        assert found.heavy or equal[0] <= 0.035 * thread.pitch * (1 + 1e-9)
        # of a coarser one than a small lathe cuts
        assert not found.heavy or thread.pitch > 5.9, design.designation
        for one, way in zip(found.passes, ways, strict=True):
            if one.kind in {Kind.EQUAL, Kind.DEEPEST}:
                assert way >= 0.01, design.designation
            if one.kind is Kind.DEEPEST:
                assert way == pytest.approx(DEEPEST, rel=1e-12)
            if not found.heavy:
                assert way <= DEEPEST + 1e-12
        assert infeeds[-1] == infeeds[-2] == pytest.approx(lathe_tool(thread).depth, rel=1e-12)
        assert dict(lathe_tool(thread).infeed_at_compound)[0.0] == pytest.approx(infeeds[-1])
        kinds = [one.kind for one in found.passes]
        assert kinds == sorted(kinds, key=list(Kind).index)
        assert kinds[-1] is Kind.SPRING
        assert found.count(Kind.LIGHT) in {1, 2}


def test_every_pitch_from_the_finest_to_six_millimetres() -> None:
    for pitch in (0.05, 0.06, 0.08, 0.1, 0.15, 0.2, 0.25, 0.35, 0.5, 0.8, 1.25, 2, 3.5, 5, 6):
        _, found = of(f"M64x{pitch}" if pitch > 0.2 else f"M5x{pitch}")
        assert 3 <= len(found.passes) <= 60
        assert not found.heavy
        assert len(found.passes) <= 10 * pitch + 6


def test_a_coarse_v_begins_no_deeper_than_may_be_and_the_rest_is_equal() -> None:
    _, found = of("M64x6")
    assert [one.kind for one in found.passes[:3]] == [Kind.DEEPEST, Kind.EQUAL, Kind.EQUAL]
    assert found.passes[0].infeed == DEEPEST
    assert found.passes[0].area < found.passes[1].area


def test_light_passes() -> None:
    assert finishing(1.0) == (0.02, 0.02)
    assert finishing(0.3) == (0.02,)
    # an eighth of a thread that is hardly deeper than such a pass
    assert finishing(0.032) == pytest.approx((0.004,))


@pytest.mark.parametrize("field", ["root_flat", "root_radius"])
def test_a_nose_that_is_ground_smaller_goes_deeper_by_what_is_told(field: str) -> None:
    wide, narrow = (of("M20x2", f"thread.{field}={size}") for size in (0.2, 0.19))
    deeper = narrow[1].passes[-1].infeed - wide[1].passes[-1].infeed
    assert deeper == pytest.approx(0.01 * deeper_by(wide[0].tap.thread), rel=1e-9)
    # half the flat by tan 30 deg, or the radius by 1/sin 30 deg less 1
    assert deeper == pytest.approx({"root_flat": 0.00866, "root_radius": 0.01}[field], rel=1e-3)
    nose = nose_of(narrow[0].tap.thread)
    assert nose.flat + nose.radius == pytest.approx(0.19)


@pytest.mark.parametrize("designation", NAMED)
def test_readings_over_wires_end_at_the_target(designation: str) -> None:
    design, _ = of(designation)
    answer = answer_for(design)
    assert after_pass(answer, 0.0) == pytest.approx(answer.measurement_target, abs=1e-12)
    left = 0.01 * design.tap.thread.pitch
    reading = after_pass(answer, left)
    assert reading is not None
    grown = replace(answer.asked.groove, pitch_diameter=answer.asked.target)
    rings = [
        simple_measurement(replace(grown, pitch_diameter=size), answer.wire)
        for size in (answer.asked.target, answer.asked.target + 2 * left)
    ]
    assert reading - answer.measurement_target == pytest.approx(rings[1] - rings[0], rel=0.03)


def test_a_back_taper_ends_at_its_own_reading() -> None:
    answer = answer_for(of("M18x0.75", "thread.back_taper=0.1")[0])
    assert after_pass(answer, 0.0) == pytest.approx(answer.measurement_target, abs=1e-12)


def test_a_groove_too_shallow_for_the_wire_has_no_reading() -> None:
    design, found = of("M18x0.75")
    assert after_pass(answer_for(design), found.passes[-1].infeed) is None
