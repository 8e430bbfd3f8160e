"""Laws of the wire to use and of the verdict, over a sample of the listed sizes of every family."""

import sys
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "geometry"))

from listed_jobs import sampled

from tapmodel.designing.record import TapDesign
from tapmodel.designing.settle import settle
from tapmodel.report.blocks import Length
from tapmodel.report.units import Units, shown, shown_high, shown_low
from tapmodel.shape.profile import segments
from tapmodel.shop.wires.answer import Wires, WiresAnswer, answer_wires
from tapmodel.shop.wires.asked import Overrides, thread_of_design
from tapmodel.shop.wires.over_wires import at_pitch_diameter, measurement, seated
from tapmodel.shop.wires.reading import Verdict
from tapmodel.spec.job_file import job_for

ORDER = list(Verdict)

BELOW_EVERY_LIST = ["M5x0.05", "M1.5x0.06", "M0.3x0.08", "M20x0.05", "M300x8", "Tr300x44"]


@cache
def answers() -> tuple[tuple[TapDesign, WiresAnswer], ...]:
    """The tap and the wires of each."""
    return tuple(_answers())


def _answers() -> Iterator[tuple[TapDesign, WiresAnswer]]:
    for text in (*sampled(), *BELOW_EVERY_LIST):
        design = settle(job_for(text))
        asked = thread_of_design(design, design.basic_pitch_diameter, Overrides())
        yield design, answer_wires(asked, Wires())


def test_the_lists_are_met() -> None:
    flanks = {design.tap.thread.flank_angle for design, _ in answers()}
    assert flanks == {30.0, 27.5, 23.75, 15.0, 14.5}
    assert {design.tap.thread.starts for design, _ in answers()} == {1, 2, 3, 4}
    assert len(answers()) > 200


def test_wire_to_use_lies_in_the_range_as_printed_in_either_unit() -> None:
    outside: list[str] = []
    for design, answer in answers():
        assert answer.allowed is not None
        ends = Length(answer.allowed.least, 4), Length(answer.allowed.greatest, 4)
        for units in (Units.MM, Units.INCH):
            texts = (
                shown_low(ends[0], units),
                shown(Length(answer.wire, 4), units),
                shown_high(ends[1], units),
            )
            low, wire, high = (float(text[0].split()[0]) for text in texts)
            if not low <= wire <= high:
                outside.append(f"{design.designation}: {low} {wire} {high} {units}")
    assert outside == []


def test_anvils_clear_the_crests_at_the_lower_limit() -> None:
    """By 0.1 mm, or a tenth of a pitch below 1 mm; for the thinnest wire of the range as well."""
    low: list[str] = []
    for design, answer in answers():
        thread = design.tap.thread
        air = min(0.1, 0.1 * thread.pitch)
        assert answer.allowed is not None
        assert answer.measurement_min is not None
        groove = at_pitch_diameter(answer.asked.groove, design.limits.pitch_min)
        least = measurement(groove, answer.allowed.least)
        if min(least, answer.measurement_min) - thread.major < air - 1e-9:
            low.append(f"{design.designation}: {answer.measurement_min - thread.major:.4f}")
    assert low == []


def test_wires_touch_the_straight_flanks_at_both_limits() -> None:
    off: list[str] = []
    for design, answer in answers():
        thread, allowed = design.tap.thread, answer.allowed
        assert allowed is not None
        for diameter in (design.limits.pitch_min, design.limits.pitch_max):
            flank = segments(replace(thread, pitch_diameter=diameter))[1]
            groove = at_pitch_diameter(answer.asked.groove, diameter)
            for wire in (allowed.least, answer.wire, allowed.greatest):
                contact = seated(groove, wire).contact_radius
                if not flank.end_radius - 1e-9 <= contact <= flank.start_radius + 1e-9:
                    off.append(f"{design.designation}: {wire} at {diameter} touches at {contact}")
    assert off == []


def test_the_best_wire_is_used_wherever_it_suits() -> None:
    for design, answer in answers():
        thread = design.tap.thread
        touches = (
            2
            * seated(
                at_pitch_diameter(answer.asked.groove, thread.pitch_diameter), answer.wire
            ).contact_radius
        )
        at_the_pitch_line = abs(touches - thread.pitch_diameter) < 1e-9
        assert at_the_pitch_line == answer.is_best, design.designation
        if not answer.is_best:
            assert answer.allowed is not None
            # The next size beyond the end of the range, no thicker than it has to be.
            step = min(0.01, 0.02 * thread.pitch)
            assert 0 < answer.wire - answer.allowed.least < step + 0.001, design.designation


def test_verdict_is_monotone_and_no_infeed_negative() -> None:
    for design, answer in answers()[::4]:
        zone, hole = design.limits, design.hole
        width = zone.pitch_max - zone.pitch_min
        scrap = hole.pitch_min + 0.05 * (hole.pitch_max - hole.pitch_min)
        nearby = (-0.1, 0.1)
        limits = (hole.pitch_min, min(scrap, zone.pitch_min), zone.pitch_min, zone.pitch_max)
        seen: list[Verdict] = []
        for diameter in sorted(limit + share * width for limit in limits for share in nearby):
            over = measurement(at_pitch_diameter(answer.asked.groove, diameter), answer.wire)
            if over <= design.tap.thread.major:
                continue  # the anvils rest on the crests of so worn a tap, and it is said
            reading = answer_wires(answer.asked, Wires(answer.wire, measured=over)).reading
            assert reading is not None
            assert reading.pitch_diameter == pytest.approx(diameter, abs=1e-8)
            assert reading.infeed >= 0
            assert reading.infeed_least is not None
            assert reading.infeed_most is not None
            assert 0 <= reading.infeed_least <= reading.infeed <= reading.infeed_most
            seen.append(reading.verdict)
        places = [ORDER.index(verdict) for verdict in seen]
        assert places == sorted(places), design.designation
        assert seen[-1] is Verdict.TOO_LARGE, design.designation
        assert Verdict.IN_LIMITS in seen, design.designation
        sunk = measurement(
            at_pitch_diameter(answer.asked.groove, limits[0] - 0.1 * width), answer.wire
        )
        if sunk > design.tap.thread.major:
            assert seen[0] is Verdict.TOO_SMALL, design.designation
        if zone.pitch_min - 0.1 * width > scrap:
            assert Verdict.BELOW_ZONE in seen, design.designation


# Each was given a wire level with its crests, or sunk below them, at the lower limit.
ONCE_SUNK = [
    *("1/2-10 ACME-2G", "1/4-16 ACME-2G", "0.75-0.1667P-0.5000L-ACME-2G"),
    *("Tr8x1.5", "Tr20x4", "Tr40x7", "Tr10x2", "Tr14x6P3 LH"),
]


@pytest.mark.parametrize("text", ONCE_SUNK)
def test_wires_that_once_sank_below_the_crests(text: str) -> None:
    design = settle(job_for(text))
    asked = thread_of_design(design, design.basic_pitch_diameter, Overrides())
    answer = answer_wires(asked, Wires())
    major = design.tap.thread.major
    lowest = at_pitch_diameter(asked.groove, design.limits.pitch_min)
    assert measurement(lowest, answer.best_wire) < major + 0.1
    assert not answer.is_best
    assert answer.measurement_min is not None
    assert answer.measurement_min >= major + 0.1
