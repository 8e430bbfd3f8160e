"""What measured sizes mean, held to numbers worked by hand, and the tap as it is.

The tap for M18x0.75 has a major diameter of 18.05 (least 18.028), a pitch diameter of 17.562 in a
zone of 17.541 to 17.583 (the hole: 17.513 to 17.653, major at least 18.000), a core of 8.1, four
flutes by a cutter of 8 mm that stands 2.743963 mm aside, a chamfer of 8.530766 deg from 17.15 on,
lands of 35.7628 deg and a shank of 14 h9 (0.043).
"""

import math
from dataclasses import replace

import pytest

from tapmodel.designing.design import design_tap
from tapmodel.designing.record import Lacking, TapDesign
from tapmodel.designing.settle import settle
from tapmodel.errors import InputError, NoWireError
from tapmodel.shop.measured.answer import MeasuredAnswer, answer_measured
from tapmodel.shop.measured.judged import with_measured
from tapmodel.shop.measured.read import with_wire
from tapmodel.shop.measured.verdicts import Judgement, Standing, Way, Why
from tapmodel.shop.measured.zones import wanted
from tapmodel.shop.wires.answer import answer_for
from tapmodel.spec.job_file import job_for
from tapmodel.spec.measured.record import Found, found_of, measured_of
from tapmodel.spec.measured.sizes import Size

JOB = job_for("M18x0.75")


@pytest.fixture(scope="module")
def design() -> TapDesign:
    return design_tap(JOB)


def found(size: Size, typed: object, wire: object = None) -> Found:
    return found_of(size, typed, size.option, wire)


def told(design: TapDesign, compound: float = 0.0, **sizes: object) -> MeasuredAnswer:
    wire = sizes.pop("wire", None)
    values = {
        Size(name): found(Size(name), value, wire if name == "over_wires" else None)
        for name, value in sizes.items()
    }
    return answer_measured(with_measured(design, JOB, measured_of(values)), compound)


def verdict(answer: MeasuredAnswer, size: Size) -> Judgement:
    return next(one for one in answer.judgements if one.size is size)


def test_over_wires_by_three_wire_arithmetic(design: TapDesign) -> None:
    answer = told(design, over_wires=18.25, wire=0.433)
    one = verdict(answer, Size.PITCH_DIAMETER)
    # d2 = M - 3 w + 0.8660254 P = 18.25 - 1.299 + 0.649519 = 17.600519; the lead takes 0.00005
    assert one.value == pytest.approx(17.600519, abs=1e-4)
    # infeed: (17.6005 - 17.562) / 2 to the target, - 17.583 and - 17.541 to the limits
    assert one.standing is Standing.TO_TAKE
    assert (one.take, one.take_least, one.take_most) == (
        pytest.approx(0.01926, abs=5e-5),
        pytest.approx(0.00876, abs=5e-5),
        pytest.approx(0.02976, abs=5e-5),
    )
    assert one.way is Way.SLIDE
    # at 29.5 deg from square: 0.01926 / cos 29.5 = 0.02213
    slanted = verdict(told(design, 29.5, over_wires=18.25, wire=0.433), Size.PITCH_DIAMETER)
    assert slanted.take == pytest.approx(0.02213, abs=5e-5)


def test_over_wires_and_the_pitch_diameter_agree(design: TapDesign) -> None:
    over = told(design, over_wires=18.2, wire=0.45)
    shown = verdict(over, Size.PITCH_DIAMETER)
    itself = told(design, pitch_diameter=shown.value)
    one = verdict(itself, Size.PITCH_DIAMETER)
    assert replace(one, reading=None) == replace(shown, reading=None)
    assert over.made is not None
    assert itself.made is not None
    assert over.made.tap == itself.made.tap


@pytest.mark.parametrize(
    ("pitch_diameter", "standing", "why"),
    [
        (17.5840, Standing.TO_TAKE, None),
        (17.5825, Standing.IN_LIMITS, None),
        (17.5415, Standing.IN_LIMITS, None),
        (17.5300, Standing.OF_USE, Why.WORN),
        # the hole's least, 17.513, and 5 % of its tolerance of 0.14: 17.520
        (17.5205, Standing.OF_USE, Why.WORN),
        (17.5195, Standing.SCRAP, Why.UNDER_HOLE),
    ],
)
def test_the_pitch_diameter_from_too_large_to_scrap(
    design: TapDesign, pitch_diameter: float, standing: Standing, why: Why | None
) -> None:
    one = verdict(told(design, pitch_diameter=pitch_diameter), Size.PITCH_DIAMETER)
    assert (one.standing, one.why) == (standing, why)


def test_what_is_worn_is_told_and_gauged(design: TapDesign) -> None:
    answer = told(design, pitch_diameter=17.53)
    # 17.530 - 17.513 of the tap itself; its hole is 0.02 larger than the tap
    assert verdict(answer, Size.PITCH_DIAMETER).values.number("wear") == pytest.approx(0.017)
    assert answer.made is not None
    foreseen = answer.made.prediction
    assert foreseen is not None
    assert foreseen.gauge.wear_left == pytest.approx(0.037)
    assert (foreseen.gauge.go, foreseen.gauge.no_go) == (True, True)


@pytest.mark.parametrize(
    ("major", "standing", "why", "take"),
    [
        (18.45, Standing.TO_TAKE, None, 0.2),
        (18.10, Standing.IN_LIMITS, None, 0.025),
        (18.03, Standing.IN_LIMITS, None, 0.0),
        (18.01, Standing.OF_USE, Why.WORN, 0.0),
        (17.99, Standing.SCRAP, Why.UNDER_HOLE, 0.0),
    ],
)
def test_the_major_diameter(
    design: TapDesign, major: float, standing: Standing, why: Why | None, take: float
) -> None:
    one = verdict(told(design, major=major), Size.MAJOR)
    assert (one.standing, one.why, one.way) == (standing, why, Way.RADIUS)
    # off the radius: half of what it is above 18.05
    assert one.take == pytest.approx(take, abs=1e-9)


def test_go_does_not_enter_behind_crests_that_are_too_low(design: TapDesign) -> None:
    # the hole's crest is the tap's and 0.02: 17.97 + 0.02 < 18 <= 17.985 + 0.02
    for major, enters in ((17.97, False), (17.985, True)):
        made = told(design, major=major).made
        assert made is not None
        assert made.prediction is not None
        assert made.prediction.gauge.go is enters


def test_the_cutter_goes_deeper_by_its_own_way(design: TapDesign) -> None:
    one = verdict(told(design, core=9.0), Size.CORE)
    # its centre is sqrt(((core + 8) / 2)^2 - 2.743963^2) from the axis:
    # sqrt(72.25 - 7.529332) = 8.044916 at 9.0, sqrt(64.8025 - 7.529332) = 7.567904 at 8.1
    assert (one.standing, one.way) == (Standing.TO_TAKE, Way.CUTTER)
    assert one.take == pytest.approx(8.044916 - 7.567904, abs=2e-6)
    # limits 7.9 and 8.3, ISO 2768 m: sqrt(66.4225 - 7.529332), sqrt(63.2025 - 7.529332)
    assert one.take_least == pytest.approx(8.044916 - 7.674188, abs=2e-6)
    assert one.take_most == pytest.approx(8.044916 - 7.461445, abs=2e-6)


def test_a_core_too_thin_is_told_by_what_it_bears(design: TapDesign) -> None:
    thin = verdict(told(design, core=6.0), Size.CORE)
    assert (thin.standing, thin.why, thin.way) == (Standing.OF_USE, Why.BEARS, None)
    before = design.prediction
    assert before is not None
    assert thin.values.number("designed") == before.strength.bears
    # the torque that a round core bears goes with its cube: (6 / 8.1)^3 = 0.41
    share = thin.values.number("bears") / before.strength.bears
    assert share == pytest.approx((6 / 8.1) ** 3, rel=0.1)
    # 0.15 of 18.05 is 2.7: below that nothing drives the tap
    none = verdict(told(design, core=2.6), Size.CORE)
    assert (none.standing, none.why) == (Standing.SCRAP, Why.NO_CORE)


def test_a_chamfer_that_binds_and_what_clears_it(design: TapDesign) -> None:
    one = verdict(told(design, heel_drop="0.005mm"), Size.HEEL_DROP)
    # while the land passes, the cone comes on by lead x land / 360 x tan(angle):
    # 0.75 x 35.7628 / 360 x 0.15 = 0.011176; to that lack 0.006176
    assert (one.standing, one.why, one.way) == (Standing.TO_TAKE, Why.BINDS, Way.HEEL)
    assert one.low == pytest.approx(0.011176, abs=2e-6)
    assert one.take_least == pytest.approx(0.006176, abs=2e-6)
    assert one.take is not None
    # a reserve of 0.009 at the heel goes beyond that
    assert one.take == pytest.approx(0.006176 + 0.009, abs=5e-4)
    proud = one.values.number("proud")
    assert proud == pytest.approx(0.0062, abs=5e-4)
    close = verdict(told(design, heel_drop="0.015mm"), Size.HEEL_DROP)
    assert (close.standing, close.why) == (Standing.IN_LIMITS, Why.CLOSE)
    enough = verdict(told(design, heel_drop=0.1), Size.HEEL_DROP)
    assert (enough.standing, enough.why, enough.way) == (Standing.IN_LIMITS, None, None)


def test_ground_as_much_as_told_the_chamfer_clears(design: TapDesign) -> None:
    one = verdict(told(design, heel_drop="0.005mm"), Size.HEEL_DROP)
    assert one.take is not None
    for share, binds in ((0.3, True), (1.0, False)):
        taken = f"{0.005 + share * one.take:.6f}mm"
        made = told(design, heel_drop=taken).made
        assert made is not None
        assert made.prediction is not None
        assert made.prediction.rubbing.chamfer.binds is binds


@pytest.mark.parametrize(
    ("size", "value", "standing", "way", "take"),
    [
        (Size.SHANK, 14.1, Standing.TO_TAKE, Way.RADIUS, 0.05),
        (Size.SHANK, 13.96, Standing.IN_LIMITS, Way.RADIUS, 0.0),
        (Size.SHANK, 13.95, Standing.OF_USE, Way.RADIUS, 0.0),
        # 11.2 h12: 11.02 to 11.2
        (Size.SQUARE, 11.3, Standing.TO_TAKE, Way.FLAT, 0.05),
        (Size.SQUARE, 11.0, Standing.OF_USE, Way.FLAT, 0.0),
        # 112 h16: 109.8 to 112
        (Size.OVERALL_LENGTH, 112.5, Standing.TO_TAKE, Way.LENGTH, 0.5),
        # the drill is 17.25, the point by design 17.15
        (Size.POINT_DIAMETER, 17.3, Standing.TO_TAKE, Way.RADIUS, 0.075),
        # at most 17.188, by design 17.074861
        (Size.MINOR, 17.2, Standing.TO_TAKE, Way.RADIUS, 0.0625697),
    ],
)
def test_turned_and_milled_sizes(
    size: Size, value: float, standing: Standing, way: Way, take: float
) -> None:
    one = verdict(told(design_tap(JOB), **{size.value: value}), size)
    assert (one.standing, one.way) == (standing, way)
    assert one.take == pytest.approx(take, abs=1e-6)


def test_the_root_follows_the_pitch_diameter_unless_it_was_measured(design: TapDesign) -> None:
    designed = design.tap.thread
    deeper = told(design, pitch_diameter=17.55).made
    assert deeper is not None
    assert deeper.tap.thread.minor == pytest.approx(designed.minor - 0.012)
    both = told(design, pitch_diameter=17.55, minor=17.1).made
    assert both is not None
    assert both.tap.thread.minor == 17.1


def test_length_and_point_give_the_angle_of_the_chamfer(design: TapDesign) -> None:
    made = told(design, chamfer_length=2.0, point_diameter=17.05).made
    assert made is not None
    # (18.05 - 17.05) / 2 over 2: atan 0.25
    assert made.tap.chamfer.angle == pytest.approx(math.degrees(math.atan(0.25)))
    assert made.figures.chamfer_length == pytest.approx(2.0)


def test_a_softer_tap_bears_what_its_hardness_says(design: TapDesign) -> None:
    soft = told(design, hardness=52)
    made, before = soft.made, design.prediction
    assert made is not None
    assert before is not None
    assert made.prediction is not None
    assert made.work.steel.hardness == 52
    assert made.prediction.strength.bears < 0.99 * before.strength.bears
    one = verdict(soft, Size.HARDNESS)
    assert one.values.number("bears") == made.prediction.strength.bears


@pytest.mark.parametrize(
    ("sizes", "why"),
    [
        ({"major": 17.5}, Lacking.ORDER),
        ({"major": 18.4}, Lacking.CREST),
        ({"minor": 16.5}, Lacking.ROOT),
        ({"point_diameter": 18.1}, Lacking.CHAMFER),
        ({"core": "0.5mm"}, Lacking.SOLID),
        ({"thread_heel_drop": "6mm"}, Lacking.DROP),
    ],
)
def test_sizes_that_leave_no_tap_say_why(
    design: TapDesign, sizes: dict[str, object], why: Lacking
) -> None:
    answer = told(design, **sizes)
    assert answer.made is None
    assert answer.lacking is not None
    assert answer.lacking.why is why
    # the verdicts are there all the same
    assert len(answer.judgements) == len(sizes)


def test_what_the_rules_find_of_the_tap_as_it_is(design: TapDesign) -> None:
    assert told(design, major=18.04).risen == ()
    codes = {finding.code for finding in told(design, heel_drop="0.005mm").risen}
    assert "chamfer-rubs" in codes


DESIGNATIONS = (
    *("M18x0.75", "M3", "Tr16x4", "1/4-20 UNC", "1/2 BSW", "2 BA", "1/2-10 ACME-2G-LH"),
    *("G 1/2", "M20xPh3P1.5", "M20x1.5-LH"),
)
SETS = ([], ["thread.back_taper=0.1"], ["relief.chamfer.kind=con-eccentric"])


@pytest.mark.parametrize("sets", SETS, ids=["plain", "taper", "con-eccentric"])
@pytest.mark.parametrize("designation", DESIGNATIONS)
def test_measured_as_designed_it_does_what_was_foretold(designation: str, sets: list[str]) -> None:
    job = job_for(designation, sets)
    design = settle(job)
    before = design.prediction
    if before is None:
        pytest.skip(f"{designation} {sets} breaks a rule of its geometry, so nothing is foretold")
    skipped = {Size.CHAMFER_LENGTH, Size.PITCH_DIAMETER}
    values = {
        size: found(size, to_be.aim)
        for size, to_be in wanted(design).items()
        if size not in skipped
    }
    over = found(Size.OVER_WIRES, answer_for(design).measurement_target)
    values[Size.OVER_WIRES] = with_wire(design, over)
    answer = answer_measured(with_measured(design, job, measured_of(values)))
    made = answer.made
    assert made is not None
    assert made.prediction is not None
    assert answer.risen == ()
    assert made.prediction.torque.band.likely == pytest.approx(before.torque.band.likely)
    assert made.prediction.strength.bears == pytest.approx(before.strength.bears)
    assert made.prediction.gauge.wear_left == pytest.approx(before.gauge.wear_left, abs=1e-8)
    now, then = made.prediction.rubbing.chamfer, before.rubbing.chamfer
    assert now.heel_clearance_um == pytest.approx(then.heel_clearance_um, abs=1e-5)
    for one in answer.judgements:
        if one.size is Size.HEEL_DROP and then.binds:
            # a margin on the chamfer binds by design, as its rule says
            assert (one.standing, one.why) == (Standing.TO_TAKE, Why.MARGIN)
            continue
        assert one.standing in {Standing.IN_LIMITS, Standing.NO_LIMITS}
        assert not one.take or one.take < 1e-9


def test_inches_are_the_same_lengths(design: TapDesign) -> None:
    mm = told(design, major=18.034, core=8.128, over_wires=18.2118, wire=0.4318)
    inch = told(design, major="0.71in", core="0.32in", over_wires="0.717in", wire="0.017in")
    assert mm.made is not None
    assert inch.made is not None
    for one, other in zip(mm.judgements, inch.judgements, strict=True):
        assert one.value == pytest.approx(other.value, abs=1e-9)
        assert one.take == pytest.approx(other.take, abs=1e-9)
        assert one.standing is other.standing
    assert inch.made.tap.thread.major == pytest.approx(mm.made.tap.thread.major, abs=1e-9)


@pytest.mark.parametrize(
    ("name", "typed", "meant"),
    [
        ("major", 0.71, "0.71in"),
        ("major", 710, "0.71in"),
        ("major", "18in", "18mm"),
        ("over_wires", 0.717, "0.717in"),
        ("pitch_diameter", 0.69, "0.69in"),
        ("core", 0.32, "0.32in"),
        ("shank", 0.55, "0.55in"),
        ("heel_drop", 0.0096, "0.0096in"),
    ],
)
def test_the_other_unit_is_asked_back(
    design: TapDesign, name: str, typed: object, meant: str
) -> None:
    with pytest.raises(InputError) as caught:
        told(design, **{name: typed})
    assert caught.value.field == Size(name).option
    assert f"write {meant}" in caught.value.allowed


def test_what_cannot_have_been_measured_is_refused(design: TapDesign) -> None:
    for sizes, words in (
        ({"over_wires": 18.0, "wire": 0.433}, "anvils rest on the crests"),
        ({"over_wires": 18.2, "wire": 3.0}, "stands clear of its crests"),
        ({"pitch_diameter": 18.5}, "between root and crest"),
        ({"neck": 12.0}, "this tap has no neck"),
        ({"square": 14.1}, "at most 14 mm, the shank that it is cut from; measure that too"),
        ({"square": 16.1, "shank": 16.0}, "at most 16 mm, the shank that it is cut from$"),
        ({"core": 18.2}, "at most 18.1 mm, the major that it is cut from"),
    ):
        with pytest.raises(InputError, match=words):
            told(design, **sizes)


def test_a_tap_that_another_follows_leaves_it_more() -> None:
    sets = ["set.number=1", "set.taps=2", "thread.pitch_diameter=17.3", "thread.major=17.8"]
    job = job_for("M18x0.75", sets)
    design = settle(job)
    values = {
        Size.PITCH_DIAMETER: found(Size.PITCH_DIAMETER, design.limits.pitch_min - 0.05),
        Size.MAJOR: found(Size.MAJOR, design.limits.major_min - 0.05),
    }
    answer = answer_measured(with_measured(design, job, measured_of(values)))
    for one in answer.judgements:
        assert (one.standing, one.why) == (Standing.OF_USE, Why.ROUGH)


def test_no_wire_no_value_over_wires(design: TapDesign) -> None:
    crowded = replace(design, wires=(5.0,))
    with pytest.raises((InputError, NoWireError)):
        with_wire(crowded, found(Size.OVER_WIRES, 18.2))
    listed = replace(design, wires=(0.5,))
    assert with_wire(listed, found(Size.OVER_WIRES, 18.45)).wire == 0.5
