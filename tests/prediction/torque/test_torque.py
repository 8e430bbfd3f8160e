"""The torque of a tap in a hole: its band, and its course tooth by tooth."""

import math
from dataclasses import asdict, replace

import numpy as np
import pytest
from ideal_chips import blind, of_one_force, plain_tap, through, unrelieved, v_chips

from tapmodel.prediction.chips.record import Chips, Tooth
from tapmodel.prediction.torque.friction import CHIP_ROOT
from tapmodel.prediction.torque.record import Course, Estimate, HoleToTap, Torque
from tapmodel.prediction.torque.torque import SPREAD, THRUST, torque_along, torque_of
from tapmodel.shape.relief import eccentric_by_edge
from tapmodel.standards.materials.work import work_material
from tapmodel.tap.tap import Tap
from tapmodel.words import Hand, ReliefPlace

TAP, CHIPS, STEEL = plain_tap(), v_chips(10.0, 8.5, 6.0, 12), work_material("C45")
ENDS = ("low", "likely", "high")


def of(tap: Tap = TAP, chips: Chips = CHIPS, name: str = "C45", **hole: float) -> Torque:
    return torque_along(tap, chips, work_material(name), 6.0, through(**hole))


def course(torque: Torque) -> Course:
    assert torque.course_in is not None
    return torque.course_in


def back(torque: Torque) -> Course:
    assert torque.course_back is not None
    return torque.course_back


def test_the_numbers_of_m10_in_c45() -> None:
    found = of()
    # A 7.69, B 7.03, C 12.46; by the teeth 2220 x 0.0625^-0.14 x 1.461 mm3 of moment
    assert found.cutting == pytest.approx(2.220 * 0.0625**-0.14 * 1.4614, rel=1e-4)
    assert found.formula_a == pytest.approx(7.69, abs=0.006)
    assert found.formula_b == pytest.approx(7.03, abs=0.006)
    assert found.formula_c == pytest.approx(12.46, abs=0.006)
    assert found.engaged == 1.0
    assert found.thin == 1.0


def test_the_band_is_the_least_and_greatest_of_all_estimates() -> None:
    found = of()
    assert (found.low_by, found.high_by) == (Estimate.TEETH, Estimate.FORMULA_C)
    assert found.band.high == found.formula_c
    assert found.band.low == pytest.approx(found.cutting + found.friction.low)
    iron = torque_of(TAP, CHIPS, work_material("GG25"), 2.0, through())
    assert (iron.low_by, iron.high_by) == (Estimate.FORMULA_B, Estimate.FORMULA_C)
    assert (iron.band.low, iron.band.high) == (iron.formula_b, iron.formula_c)
    light = of(name="6082")
    assert (light.low_by, light.formula_a) == (Estimate.TEETH, None)


def test_the_likely_torque_is_the_geometric_mean_of_teeth_a_and_b() -> None:
    found = of()
    assert found.formula_a is not None
    assert found.formula_b is not None
    teeth = found.band.likely**3 / (found.formula_a * found.formula_b)
    assert teeth == pytest.approx(found.cutting + found.friction.likely)


def test_without_a_printed_formula_the_teeth_are_spread_as_they_were_seen_to_miss_it() -> None:
    found = of(name="magnesium")
    assert (found.formula_a, found.formula_b, found.formula_c) == (None, None, None)
    assert (found.low_by, found.high_by) == (Estimate.TEETH, Estimate.TEETH)
    # the whole pressed-on thread is in the work before the first tooth leaves it
    for end, share in zip(ENDS, (SPREAD[0], 1.0, SPREAD[1]), strict=True):
        expected = share * found.cutting + getattr(found.friction, end)
        assert getattr(found.band, end) == pytest.approx(expected)
    # formula C alone, from memory, widens it upwards only
    cast = of(name="GE 260")
    assert (cast.low_by, cast.high_by) == (Estimate.TEETH, Estimate.FORMULA_C)
    assert cast.band.low == pytest.approx(SPREAD[0] * cast.cutting + cast.friction.low)


def test_friction_of_a_sharp_tap_is_a_small_part_of_the_whole() -> None:
    for name in ("C45", "42CrMo4", "GG25", "brass", "1.4301"):
        found = of(name=name)
        assert found.friction.low / found.band.likely > 0.01
        assert found.friction.likely / found.band.likely < 0.15
        assert found.friction.high / found.band.likely < 0.35


def scaled(tap: Tap, k: float) -> Tap:
    """A tap whose every length is k times as great."""
    angles = {"flank_angle", "angle", "shoulder_angle", "margin_angle"}

    def larger(part: object) -> dict[str, object]:
        return {
            name: value * k if isinstance(value, float) and name not in angles else value
            for name, value in asdict(part).items()  # type: ignore[call-overload]
        }

    return replace(
        tap,
        thread=replace(tap.thread, **larger(tap.thread)),
        chamfer=replace(tap.chamfer, **larger(tap.chamfer)),
        flutes=replace(tap.flutes, **larger(tap.flutes)),
        blank=replace(tap.blank, **larger(tap.blank)),
    )


def test_a_tap_k_times_as_large_needs_k_cubed_times_the_torque_at_the_same_specific_force() -> None:
    tap, material, k = unrelieved(TAP), of_one_force("magnesium", 2000.0), 2.5
    small = torque_along(tap, CHIPS, material, 6.0, blind(15.0))
    chips = v_chips(10.0 * k, 8.5 * k, 6.0 * k, 12)
    hole = HoleToTap(10.0 * k, 8.5 * k, 15.0 * k, blind=True)
    large = torque_along(scaled(tap, k), chips, material, 6.0, hole)
    assert large.cutting == pytest.approx(k**3 * small.cutting)
    for part in ("friction", "band", "back"):
        for end in ENDS:
            grown = getattr(getattr(large, part), end) / k**3
            assert grown == pytest.approx(getattr(getattr(small, part), end))
    assert large.axial_force.likely == pytest.approx(k**2 * small.axial_force.likely)
    # a wear land of one width is k times smaller beside it
    assert large.wear.likely == pytest.approx(k**2 * small.wear.likely)
    # both sides of a step lie a nanometre or two off it, whatever the size
    assert course(large).depth == pytest.approx(k * course(small).depth, abs=1e-5)
    assert course(large).high == pytest.approx(k**3 * course(small).high, rel=1e-5, abs=1e-5)


def test_more_thread_in_the_hole_needs_more_torque() -> None:
    torques = [of(chips=v_chips(10.0, drill, 6.0, 12), drill=drill) for drill in (8.9, 8.5, 8.2)]
    for part in ("cutting", "formula_a"):
        assert sorted(values := [getattr(t, part) for t in torques]) == values
        # half as much again from 8.9 to 8.5: the square of the depth, 1.1 and 1.5 mm
        assert values[1] / values[0] > 1.5
    assert torques[0].friction.likely < torques[1].friction.likely < torques[2].friction.likely
    assert [t.formula_b for t in torques] == [torques[0].formula_b] * 3


def test_the_mirrored_hand_needs_the_same() -> None:
    left = replace(TAP, thread=replace(TAP.thread, hand=Hand.LEFT))
    for hole in (through(), blind()):
        one, other = (torque_of(tap, CHIPS, STEEL, 6.0, hole) for tap in (TAP, left))
        assert one == other


def test_more_rake_cuts_more_freely_and_rubs_no_less() -> None:
    low, high = (torque_of(TAP, CHIPS, STEEL, rake, through()) for rake in (6.0, 11.0))
    assert high.cutting == pytest.approx(0.95 * low.cutting)
    assert high.friction == low.friction


def test_relief_of_the_whole_thread_takes_friction_away_and_cuts_no_less() -> None:
    relief = eccentric_by_edge(ReliefPlace.THREAD, TAP.thread.major, 3.0)
    free = of(tap=replace(TAP, relief=replace(TAP.relief, thread=relief)))
    assert free.friction.likely < 0.3 * of().friction.likely
    assert free.cutting == of().cutting


def test_thin_work_is_cut_by_a_part_of_the_chamfer() -> None:
    found = of(depth=2.0)
    # teeth stand half a millimetre apart: in 2 mm a fifth enters as the first leaves, and the first
    # are the widest
    shares = [tooth.area * tooth.radius for tooth in CHIPS.teeth]
    assert found.engaged == pytest.approx(sum(shares[:5]) / sum(shares))
    assert found.formula_a == pytest.approx(7.69, abs=0.006)
    assert found.band.high == pytest.approx(found.engaged * 12.459, rel=1e-3)
    assert of(depth=6.0).engaged == 1.0


def test_the_torque_rises_tooth_by_tooth_holds_and_falls_to_friction() -> None:
    found = of()
    way, rub = course(found), found.friction
    single = [2.220 * 0.0625**-0.14 * tooth.area * tooth.radius for tooth in CHIPS.teeth]
    assert found.formula_c is not None
    factor = (found.formula_c - rub.high) / found.cutting
    at = [float(np.interp(depth, way.depth, way.high)) for depth in (0.2, 0.3, 0.8)]
    assert at == pytest.approx(
        [0.0, factor * single[0], factor * (single[0] + single[1])], rel=2e-3, abs=1e-9
    )
    full = (way.depth > 6.5) & (way.depth < 15.2)
    assert np.all(np.diff(way.high[full]) >= -1e-9)
    assert np.min(way.high[full]) > 0.85 * found.band.high
    # last tooth out at 15 + 5.75
    after = way.depth > 20.76
    assert np.any(after)
    assert way.likely[after] == pytest.approx(_friction_alone(found, way, after), rel=1e-6)
    assert np.max(way.high[after]) <= rub.high < 0.15 * found.band.high
    middle = (way.depth > 15.3) & (way.depth < 20.7)
    cutting = way.low[middle] - _friction_of(found, "low") * _part(way.depth[middle])
    assert np.all(np.diff(cutting) <= 1e-9)


def _part(fronts: np.ndarray) -> np.ndarray:
    """Length of the pressed-on thread, z 3 to 15, in work of 15 mm [mm]."""
    return np.maximum(np.minimum(fronts, 15.0) - np.maximum(fronts - 15.0, 3.0), 0.0)


def _friction_of(found: Torque, end: str) -> float:
    """Friction of a millimetre: the whole of 12 mm is in the work when it is greatest [N·m/mm]."""
    return getattr(found.friction, end) / 12.0


def _friction_alone(found: Torque, way: Course, where: np.ndarray) -> np.ndarray:
    return _friction_of(found, "likely") * _part(way.depth[where])


@pytest.mark.parametrize("name", ["C45", "GG25", "brass", "magnesium", "6082"])
@pytest.mark.parametrize("depth", [1.0, 4.0, 15.0, 40.0])
@pytest.mark.parametrize("bottom", [True, False])
def test_no_place_of_the_way_has_more_than_the_band_and_one_has_as_much(
    name: str, depth: float, bottom: bool
) -> None:
    hole = blind(depth) if bottom else through(depth)
    found = torque_along(TAP, CHIPS, work_material(name), 6.0, hole)
    for end in ENDS:
        greatest = float(np.max(getattr(course(found), end)))
        assert greatest == pytest.approx(getattr(found.band, end), rel=1e-9)
        assert greatest >= getattr(found.friction, end)
        assert float(np.max(getattr(back(found), end))) == pytest.approx(
            getattr(found.back, end), rel=1e-9
        )
    way = course(found)
    assert np.all(way.low <= way.likely + 1e-12)
    assert np.all(way.likely <= way.high + 1e-12)
    assert np.all(np.diff(way.depth) >= 0)


def test_in_a_hole_with_a_bottom_the_tap_stops_in_the_cut() -> None:
    found = torque_along(TAP, CHIPS, STEEL, 6.0, blind())
    way = course(found)
    assert way.depth[-1] == pytest.approx(15.0 + TAP.chamfer_length)
    assert way.high[-1] == pytest.approx(found.band.high)
    moment = sum(tooth.area * tooth.radius for tooth in CHIPS.teeth)
    roots = [share * 0.22 * 9.81 * 188 * moment / 1000 for share in CHIP_ROOT]
    by_hand = [root + getattr(found.friction, end) for root, end in zip(roots, ENDS, strict=True)]
    assert [getattr(found.back, end) for end in ENDS] == pytest.approx(by_hand)


def test_through_the_work_nothing_is_left_to_shear() -> None:
    found = of()
    assert found.back.high <= found.friction.high
    way = back(found)
    assert np.all(np.diff(way.depth) <= 0)
    assert (way.depth[-1], way.high[-1]) == (0.0, 0.0)
    # all of it is in the work until the front has come back to 15 mm; it first was at 18 - 3
    for depth in (18.0, 16.5, 15.0, 9.0, 3.0, 1.0):
        told = float(np.interp(depth, way.depth[::-1], way.likely[::-1]))
        length = float(_part(np.array([depth]))[0])
        assert told == pytest.approx(_friction_of(found, "likely") * length, abs=1e-9)


def test_the_first_turn_pushes_back_by_the_angle_of_the_cone() -> None:
    found = of()
    # 1.5 mm of lead: the first three of twelve teeth on 6 mm
    force = sum(2220 * 0.0625**-0.14 * tooth.area for tooth in CHIPS.teeth[:3])
    lean = math.sin(math.radians(TAP.chamfer.angle))
    by_hand = [share * force * lean for share in THRUST]
    assert [getattr(found.axial_force, end) for end in ENDS] == pytest.approx(by_hand)


def test_wear_is_a_term_of_its_own() -> None:
    found = of()
    edges = sum(tooth.width * tooth.radius for tooth in CHIPS.teeth)
    assert found.wear.likely == pytest.approx(0.2 * 9.81 * 188 * 0.1 * edges / 1000)
    assert found.wear.likely < found.cutting


def test_a_hole_as_wide_as_the_tap_needs_nothing_to_be_cut() -> None:
    none = Chips((), 0.0, 0.0, 0.0, 0.0)
    for hole in (through(drill=10.2), blind(drill=10.2)):
        found = torque_along(TAP, none, STEEL, 6.0, hole)
        assert (found.cutting, found.engaged, found.band.low) == (0.0, 0.0, 0.0)
        assert np.all(np.isfinite(course(found).high))
        assert found.axial_force.high == 0.0


def test_one_tooth_alone_cuts() -> None:
    tooth = Tooth(0, 0, 1.0, 0.02, 0.05, 0.4, 4.5)
    found = of(chips=Chips((tooth,), 0.02, 0.02, 0.05, 0.05))
    assert found.cutting == pytest.approx(2220 * 0.05**-0.14 * 0.02 * 4.5 / 1000)


def test_the_course_is_left_out_where_it_is_not_asked_for() -> None:
    plain, whole = torque_of(TAP, CHIPS, STEEL, 6.0, through()), of()
    assert plain.course_in is None
    assert plain == replace(whole, course_in=None, course_back=None)
