"""One tap's work shared among several: when, how, and that each job makes a tap that bears it."""

from dataclasses import replace
from itertools import pairwise

import pytest

from tapmodel.designing.cures.fix import cured, fixed
from tapmodel.designing.design import design_tap
from tapmodel.designing.record import TapDesign
from tapmodel.designing.sets.jobs import jobs_of
from tapmodel.designing.sets.mending import cures_of_set
from tapmodel.designing.sets.need import Reason, Set, set_of
from tapmodel.designing.sets.sharing import Sharing, Way, sharing_of
from tapmodel.designing.settle import settle
from tapmodel.errors import InputError, NoTapError
from tapmodel.findings import Cure
from tapmodel.prediction.sets import FLANK_ALLOWANCE, SHARES, tallest_before
from tapmodel.report.chapters.machines import turning
from tapmodel.report.words.findings import said
from tapmodel.run.record.compose import design_record
from tapmodel.spec.job import Job
from tapmodel.spec.job_file import job_for
from tapmodel.words import Severity

STAINLESS = ["hole.material=1.4301"]
SIZES = ("M10", "1/2 BSW", "Tr10x3", "Tr20xPh8P4", "1/2-10 ACME-2G", "G1/2", "M1", "4 BA", "M10-LH")
FIRST = ["set.number=1", "set.taps=2", "thread.major=15.03", "thread.pitch_diameter=14.044"]
SECOND = ["set.number=2", "set.taps=2"]
BEFORE = ["set.before_major=15.03", "set.before_pitch_diameter=14.044"]


def shared(designation: str, count: int, *sets: str) -> tuple[TapDesign, Sharing, list[TapDesign]]:
    job = job_for(designation, list(sets))
    design = settle(job)
    sharing = sharing_of(design, count)
    assert sharing is not None
    return design, sharing, [settle(each) for each in jobs_of(job, design, sharing)]


def codes(design: TapDesign) -> set[str]:
    return {found.code for found in design.findings if found.severity is not Severity.NOTE}


@pytest.mark.parametrize("count", [2, 3])
@pytest.mark.parametrize("designation", SIZES)
def test_each_job_of_a_set_designs_without_error(designation: str, count: int) -> None:
    whole, sharing, designs = shared(designation, count)
    assert len(designs) == count
    assert [design.errors for design in designs] == [()] * count
    assert sum(tap.share for tap in sharing.taps) == pytest.approx(1, rel=1e-9)
    # The last tap is the one that was asked for, but for its chamfer and what goes by that.
    assert designs[-1].tap.thread == whole.tap.thread
    for before, after in pairwise(designs):
        assert after.part is not None
        assert after.part.before is not None
        # What the one leaves is what the next is told.
        left, made = after.part.before, before.tap.thread
        assert (left.major, left.pitch_diameter) == (made.major, made.pitch_diameter)
        assert left.major <= tallest_before(after.tap.thread, left.pitch_diameter)
        assert not before.tap.thread.rounded_crest
    # One setting of the cutter and one tool for all.
    for design in designs:
        own, one = design.tap.flutes, whole.tap.flutes
        assert (own.count, own.cutter_diameter) == (one.count, one.cutter_diameter)
        assert own.offset == pytest.approx(one.offset, abs=5.1e-5)
        assert own.core_diameter == pytest.approx(one.core_diameter, abs=1.1e-4)
        assert design.tap.thread.root_flat == pytest.approx(whole.tap.thread.root_flat, abs=1e-6)
        assert design.drill == whole.drill


@pytest.mark.parametrize("designation", SIZES)
def test_what_was_foreseen_of_a_tap_is_what_its_job_gives(designation: str) -> None:
    _, sharing, designs = shared(designation, 2)
    for tap, design in zip(sharing.taps, designs, strict=True):
        assert design.prediction is not None
        own, foreseen = design.prediction, tap.prediction
        assert own.chips.area_sum == pytest.approx(foreseen.chips.area_sum, rel=5e-3)
        assert own.strength.bears == pytest.approx(foreseen.strength.bears, rel=0.02)
        assert own.torque.band.likely == pytest.approx(foreseen.torque.band.likely, rel=0.08)


def test_a_usual_set_of_two_does_its_shares() -> None:
    whole, sharing, designs = shared("Tr20x4", 2)
    assert sharing.way is Way.USUAL
    assert [tap.rings for tap in sharing.taps] == [1, 0]
    areas = [d.prediction.chips.area_sum for d in designs if d.prediction]
    assert whole.prediction is not None
    assert sum(areas) == pytest.approx(whole.prediction.chips.area_sum, rel=1e-4)
    assert areas[0] / sum(areas) == pytest.approx(SHARES[2][0], abs=0.005)
    sunk = whole.tap.thread.pitch_diameter - designs[0].tap.thread.pitch_diameter
    assert sunk == pytest.approx(4 * FLANK_ALLOWANCE, abs=6e-4)


def test_a_tap_too_weak_alone_is_strong_enough_in_its_set() -> None:
    job = job_for("Tr20x4", ["hole.material=C45"])
    whole = settle(job)
    assert "tap-overloaded" in codes(whole)
    assert set_of(whole) == Set(True, Reason.TOO_MUCH, 2)
    sharing = sharing_of(whole)
    assert sharing is not None
    assert sharing.worst < 0.9
    for each in jobs_of(job, whole, sharing):
        design = settle(each)
        assert "tap-overloaded" not in codes(design)
        assert set_of(design) == Set(True, Reason.OF_A_SET, 2)


def test_one_tap_is_enough_for_a_common_thread() -> None:
    assert set_of(settle(job_for("M10", STAINLESS))) == Set(False, Reason.ONE_DOES, 1)
    broken = settle(job_for("M10", ["flutes.cutter_diameter=9"]))
    assert set_of(broken) == Set(False, Reason.UNKNOWN, 1)


def test_more_taps_or_even_shares_are_taken_where_two_usual_ones_do_not() -> None:
    """Cores ever thinner press the taps ever harder, until not even three are enough."""
    found: list[tuple[int, bool]] = []
    ways: list[Way] = []
    for core in (8.75, 7.8, 7.0, 5.6):
        design = settle(job_for("Tr16x4", [*STAINLESS, f"flutes.core_diameter={core}"]))
        need, sharing = set_of(design), sharing_of(design)
        assert sharing is not None
        assert len(sharing.taps) == need.taps
        assert (need.reason is Reason.TOO_MUCH) is sharing.bears
        found.append((need.taps, sharing.bears))
        ways.append(sharing.way)
    assert found == [(2, True), (2, True), (3, True), (3, False)]
    assert ways[:2] == [Way.USUAL, Way.EQUAL_TORQUE]


def test_shares_of_equal_torque_press_all_taps_alike() -> None:
    design = settle(job_for("Tr16x4", [*STAINLESS, "flutes.core_diameter=5.8"]))
    sharing = sharing_of(design, 2)
    assert sharing is not None
    assert sharing.way is Way.EQUAL_TORQUE
    low, high = sorted(tap.pressed for tap in sharing.taps)
    assert high / low < 1.25


LEVELLED = (
    *(("Tr16x4", "1.4301"), ("Tr16x4", "42CrMo4"), ("Tr10x3", "C45"), ("M3", "42CrMo4")),
    *(("Tr16x8(P4)", "mild steel"), ("Tr16x8(P4)", "1.4301"), ("Tr24x20(P5)", "C45")),
    *(("1/2-10 Acme", "1.4301"), ("1/4-16 Acme", "1.4301")),
)


@pytest.mark.parametrize(("designation", "material"), LEVELLED)
def test_a_hard_pressed_set_presses_its_taps_alike(designation: str, material: str) -> None:
    job = job_for(designation, [f"hole.material={material}"])
    design = settle(job)
    sharing = sharing_of(design)
    assert sharing is not None
    assert (sharing.way, sharing.bears) == (Way.EQUAL_TORQUE, True)
    assert sharing.worst == max(tap.pressed for tap in sharing.taps)
    assert sharing.worst <= 1.05 * min(tap.pressed for tap in sharing.taps)
    made = [settle(each).prediction for each in jobs_of(job, design, sharing)]
    loads = [foreseen.load for foreseen in made if foreseen]
    assert len(loads) == len(sharing.taps)
    # The jobs choose their own reliefs and blanks, which make a few per cent.
    assert max(loads) <= 1.1 * min(loads)


@pytest.mark.parametrize(
    ("designation", "material"), [("Tr20x4", "C45"), ("M24", "42CrMo4"), ("1-8 UNC", "42CrMo4")]
)
def test_the_usual_shares_are_taken_only_where_no_tap_may_come_to_its_stop(
    designation: str, material: str
) -> None:
    sharing = sharing_of(settle(job_for(designation, [f"hole.material={material}"])))
    assert sharing is not None
    assert sharing.way is Way.USUAL
    for tap in sharing.taps:
        assert tap.prediction.torque.band.high <= tap.prediction.strength.bears


def test_usual_shares_by_which_a_tap_may_come_to_its_stop_are_not_taken() -> None:
    sharing = sharing_of(settle(job_for("M3", ["hole.material=42CrMo4"])), 2)
    assert sharing is not None
    # By the usual ones the first of two likely takes 0.61 of its stop, and 1.23 of it at most.
    assert [tap.pressed for tap in sharing.taps] == pytest.approx([0.43, 0.43], abs=0.02)


def test_chamfers_of_a_set_cut_chips_neither_thick_nor_thin() -> None:
    for count in (2, 3):
        _, sharing, designs = shared("Tr20x4", count)
        assert sharing.taps[0].chamfer_leads == {2: 7, 3: 8}[count]
        for design in designs:
            assert 0.01 <= design.figures.chip_thickness <= 0.12


def test_the_last_tap_of_a_blind_hole_reaches_its_bottom() -> None:
    _, sharing, designs = shared("Tr20x4", 2, "hole.kind=blind")
    assert sharing.taps[-1].chamfer_leads == 2
    assert [design.work.kind for design in designs] == ["blind", "blind"]
    _, _, through = shared("Tr8x1.5", 2)
    assert [design.work.kind for design in through] == ["through", "through"]


@pytest.mark.parametrize(
    ("sets", "field"),
    [
        (["set.number=1"], "set.taps"),
        (["set.taps=2"], "set.number"),
        (["set.number=3", "set.taps=2"], "set.number"),
        ([*FIRST[:2], "thread.major=15"], "thread.pitch_diameter"),
        ([*FIRST[:2], "thread.pitch_diameter=14.04"], "thread.major"),
        ([*FIRST, *BEFORE], "set.before_major"),
        (SECOND, "set.before_major"),
        ([*SECOND, BEFORE[0]], "set.before_pitch_diameter"),
        (BEFORE, "set.number"),
        ([*SECOND, "set.before_major=16.7", BEFORE[1]], "set.before_major"),
        ([*SECOND, "set.before_major=12.1", BEFORE[1]], "set.before_major"),
        ([*SECOND, BEFORE[0], "set.before_pitch_diameter=14.2"], "set.before_pitch_diameter"),
        ([*FIRST[:2], FIRST[3], "thread.crest_radius=0.4"], "thread.crest_radius"),
    ],
)
def test_a_tap_of_a_set_is_told_in_full(sets: list[str], field: str) -> None:
    with pytest.raises(InputError) as refused:
        settle(job_for("Tr16x4", sets))
    assert refused.value.field == field


def test_limits_of_the_hole_are_left_to_the_last_tap() -> None:
    first = settle(job_for("Tr16x4", FIRST))
    assert first.errors == ()
    assert {"major-size", "pitch-size", "wear-reserve"} & {f.code for f in first.findings} == set()
    alone = settle(job_for("Tr16x4", FIRST[2:]))
    assert {"major-size", "pitch-size"} <= codes(alone)
    usual = settle(job_for("Tr16x4")).limits
    zone = usual.pitch_max - usual.pitch_min
    assert first.limits.pitch_min == pytest.approx(14.044 - zone / 2, rel=1e-12)
    # two taps in limits must leave the last one all flanks to finish
    assert first.limits.pitch_max == usual.pitch_min < 14.044 + zone / 2
    assert first.limits.major_min == pytest.approx(15.03 - zone, rel=1e-12)


def test_a_first_tap_may_end_below_the_pitch_line_but_not_below_its_root() -> None:
    low = [*FIRST[:2], "thread.major=13.4", FIRST[3]]
    assert settle(job_for("Tr16x4", low)).errors == ()
    with pytest.raises(NoTapError):
        settle(job_for("Tr16x4", [*FIRST[:2], "thread.major=11.3", FIRST[3]]))


def test_the_sheet_tells_how_the_taps_are_marked() -> None:
    def marks(*sets: str) -> str:
        return str(turning.chapter(settle(job_for("Tr16x4", sets))))

    assert "one ring round the shank, below the square" in marks(*FIRST)
    assert "Tap 2 of a set of 2. Mark: none" in marks(*SECOND, *BEFORE)
    middle = [*BEFORE, "set.number=2", "set.taps=3", "thread.major=16", FIRST[3]]
    assert "two rings round the shank, below the square" in marks(*middle)
    assert "ring" not in marks()


def test_a_named_material_makes_an_overload_an_error_and_an_assumed_one_a_warning() -> None:
    sets = ["flutes.core_diameter=5"]
    assumed = settle(job_for("Tr16x4", sets))
    named = settle(job_for("Tr16x4", [*sets, "hole.material=mild steel"]))
    for design, severity in ((assumed, Severity.WARNING), (named, Severity.ERROR)):
        (found,) = (f for f in design.findings if f.code == "tap-overloaded")
        assert found.severity is severity
        assert "tapmodel set JOB" in said(found)
        assert design.prediction is not None
    sharing = settle(job_for("Tr16x4", [*sets, *STAINLESS, *FIRST]))
    (found,) = (f for f in sharing.findings if f.code == "tap-overloaded")
    assert found.severity is Severity.WARNING
    assert "Two taps are not enough: in 1.4301" in said(found)


@pytest.mark.parametrize("designation", ["Tr16x4", "Tr20x4", "Tr8x1.5", "1/2-10 ACME-2G"])
def test_fix_mends_an_overload_without_spoiling_the_hole(designation: str) -> None:
    job = job_for(designation, STAINLESS)
    before = design_tap(job)
    (error,) = before.errors
    assert error.cures
    mended, applied = fixed(job)
    assert applied == (error.cures[0],)
    # Neither lands that rub now nor a drill beyond the minor limits.
    assert codes(settle(mended)) <= codes(before) - {"tap-overloaded"}


TOO_MUCH = (
    ("Tr16x4", ("hole.material=C45", "flutes.core_diameter=5")),
    ("Tr10x8(P2)", ("hole.material=1.2379",)),
    ("Tr16x4", ("hole.material=42CrMo4", "flutes.depth_from_top=5.8")),
)


@pytest.mark.parametrize(("designation", "sets"), TOO_MUCH)
def test_what_is_named_lets_a_set_of_three_bear_what_it_does_not(
    designation: str, sets: tuple[str, ...]
) -> None:
    job = job_for(designation, sets)
    before = settle(job)
    assert set_of(before).reason is Reason.TOO_MUCH_FOR_THREE
    cures = cures_of_set(job, before)
    assert cures
    assert cures[0].settings[0].field == "flutes.core_diameter"
    for cure in cures:
        mended = cured(job, cure)
        after = settle(mended)
        sharing = sharing_of(after, 3)
        assert sharing is not None
        assert sharing.worst <= 0.9
        assert codes(after) <= codes(before) | {"tap-overloaded"}
        for each in jobs_of(mended, after, sharing):
            assert "tap-overloaded" not in codes(settle(each))
    # The nearest: a core 4 % thinner presses a tap harder than is wanted of any set.
    core = cures[0].settings[0]
    thin = replace(core, value=round(0.96 * float(core.value), 2))
    less = settle(cured(job, Cure((thin, *cures[0].settings[1:]))))
    sharing = sharing_of(less, 3)
    assert sharing is not None
    assert sharing.worst > 0.9


def test_nothing_is_named_where_nothing_lets_a_set_bear_it() -> None:
    job = job_for("Tr10x12(P3)", ["hole.material=1.2379"])
    assert cures_of_set(job, settle(job)) == ()


def test_the_record_tells_whether_a_set_is_needed() -> None:
    def told(job: Job) -> dict[str, object]:
        return design_record(settle(job))["prediction"]["set"]

    assert told(job_for("M10")) == {"needed": False, "reason": "one-does", "taps": 1}
    whole = job_for("Tr20x4", STAINLESS)
    assert told(whole) == {"needed": True, "reason": "too-much-for-one", "taps": 2}
