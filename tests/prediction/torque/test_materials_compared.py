"""Bands of torque across materials: one of which less is printed has none the narrower for it."""

from collections import defaultdict
from functools import cache

import pytest
from ideal_chips import plain_tap, through, v_chips

from tapmodel.designing.record import TapDesign
from tapmodel.designing.settle import settle
from tapmodel.prediction.torque.formulas import (
    force_share,
    torque_by_c,
    torque_carried_over,
)
from tapmodel.prediction.torque.record import Estimate, Torque
from tapmodel.prediction.torque.torque import SPREAD, spread_of, torque_of
from tapmodel.spec.job_file import job_for
from tapmodel.standards.materials.work import work_material, work_materials
from tapmodel.standards.tables import read_table

TAP, CHIPS = plain_tap(), v_chips(10.0, 8.5, 6.0, 12)
M10_BY_C = 12.46
SIZES = ("M6", "M8", "M10", "M12", "M16", "M20")


def of(name: str) -> Torque:
    """An M10 in that material."""
    return torque_of(TAP, CHIPS, work_material(name), 6.0, through())


@pytest.mark.parametrize(
    ("name", "torque"),
    [
        # the row is one of 750 N/mm2, about C45
        ("C45", M10_BY_C),
        # A 3700 for 3900, B 2300 for 2500: sqrt(0.9487 x 0.92) = 0.9342
        ("mild steel", 0.9342 * M10_BY_C),
        # A 5500 for 3900, B 3600 for 2500: sqrt(1.4103 x 1.44) = 1.4251
        ("42CrMo4 40 HRC", 1.4251 * M10_BY_C),
        # B alone: 2300 for 2500
        ("11SMn30", 0.92 * M10_BY_C),
        # neither: 1610 x 0.05^-0.157 for 2220 x 0.05^-0.14, constants fitted to 1.5 %
        ("GE 240", 0.763 * M10_BY_C),
    ],
)
def test_formula_c_is_told_for_the_steel_that_is_tapped(name: str, torque: float) -> None:
    found = torque_by_c(work_material(name), TAP.thread, 10.0)
    assert found == pytest.approx(torque, rel=0.005)
    assert torque_carried_over(work_material(name), TAP.thread, 10.0) is None


@pytest.mark.parametrize(
    ("name", "torque"),
    [
        # A 4200 for 3900, B 3200 for 2500: sqrt(1.0769 x 1.28) = 1.1741
        ("1.4301", 1.1741 * M10_BY_C),
        # B alone, 1100 for 2500
        ("bronze", 0.44 * M10_BY_C),
        # 800 for 680 of the silumin row, 0.022 x 10^1.8 x 1.5^1.5 = 2.5501
        ("6082", 1.1765 * 2.5501),
        # 1100 for 1250 of the row of grey iron, 0.13 x 10^1.4 x 1.5^1.5 = 5.9988
        ("malleable iron", 0.88 * 5.9988),
    ],
)
def test_where_it_has_no_row_that_of_the_nearest_kind_is_carried_over(
    name: str, torque: float
) -> None:
    material = work_material(name)
    assert torque_by_c(material, TAP.thread, 10.0) is None
    assert torque_carried_over(material, TAP.thread, 10.0) == pytest.approx(torque, rel=0.001)


def test_stainless_steel_has_no_lower_upper_end_than_mild_steel() -> None:
    mild, stainless = of("mild steel"), of("1.4301")
    assert stainless.band.high == pytest.approx(1.1741 * M10_BY_C, rel=0.001)
    assert (stainless.high_by, stainless.formula_c) == (Estimate.CARRIED_OVER, None)
    for end in ("low", "likely", "high"):
        assert getattr(stainless.band, end) > 1.1 * getattr(mild.band, end)


def test_c45_and_4140_take_more_at_the_most_than_mild_steel() -> None:
    most = [of(name).band.high for name in ("mild steel", "C45", "42CrMo4 30 HRC", "O1")]
    assert most == sorted(most)
    assert most[1] > 1.06 * most[0]


def test_what_is_carried_over_is_never_the_least() -> None:
    # cast aluminium at M6: its own row gives half of the teeth; magnesium has that row carried over
    for material in work_materials():
        found = torque_of(TAP, CHIPS, material, 6.0, through())
        assert found.low_by is not Estimate.CARRIED_OVER, material.name
        assert Estimate.CARRIED_OVER not in found.likely_by
        carried = torque_carried_over(material, TAP.thread, 10.0)
        assert carried is None or found.band.high >= carried, material.name


def test_every_material_has_formula_c_of_its_own_or_of_another_kind() -> None:
    for material in work_materials():
        own = torque_by_c(material, TAP.thread, 10.0)
        carried = torque_carried_over(material, TAP.thread, 10.0)
        assert (own is None) != (carried is None), material.name


def test_forces_stand_to_each_other_as_printed() -> None:
    stainless, mild = work_material("1.4301"), work_material("mild steel")
    # 4200 for 3700 and 3200 for 2300
    assert force_share(stainless, mild) == pytest.approx((1.13514 * 1.39130) ** 0.5, rel=1e-4)
    assert force_share(stainless, mild) * force_share(mild, stainless) == pytest.approx(1.0)


@cache
def settled(size: str, material: str) -> TapDesign:
    return settle(job_for(size, [f"hole.material={material}", "chamfer.pitches=5"]))


def test_printed_torques_are_told_in_those_of_real_taps_in_each_material() -> None:
    """A and B in the torque of the teeth, by the taps that the rules make."""
    shares: dict[str, list[float]] = defaultdict(list)
    for material in work_materials():
        for size in SIZES:
            foreseen = settled(size, material.name).prediction
            assert foreseen is not None
            found = foreseen.torque
            printed = (found.formula_a, found.formula_b)
            shares[material.name] += [one / found.cutting for one in printed if one is not None]
    for row in read_table("work_materials"):
        seen = shares[row["name"]]
        if seen:
            told = (float(row["printed_low"]), float(row["printed_high"]))
            assert told == pytest.approx((min(seen), max(seen)), abs=0.0051), row["name"]
        elif row["group"] != "cast steel":
            assert row["printed_low"] == row["printed_high"] == "", row["name"]


@pytest.mark.parametrize(
    ("name", "low", "high"),
    [
        # none is printed for magnesium, nor for X20Cr13, which is told by the stainless steels
        ("magnesium", *SPREAD),
        ("X20Cr13", SPREAD[0], 1.18),
        # cast steel by low-carbon steel
        ("GE 240", SPREAD[0], 1.19),
        ("1.4301", SPREAD[0], 1.18),
        ("mild steel", SPREAD[0], 1.08),
        ("C105U", SPREAD[0], 1.44),
        # B alone: of CuSn7Zn4Pb7 it is 0.59 to 0.71, but the other bronze counts too
        ("CuSn7Zn4Pb7", 0.43, SPREAD[1]),
        ("42CrMo4 40 HRC", 0.50, SPREAD[1]),
    ],
)
def test_none_is_spread_less_than_the_three_that_stand_for_all(
    name: str, low: float, high: float
) -> None:
    assert spread_of(work_material(name)) == (low, high)


def test_on_a_trapezoidal_thread_the_teeth_are_spread_as_the_material_was_seen() -> None:
    # in a blind hole most teeth cut and most lands rub at the same moment, the last
    sets = ["hole.material=1.4301", "hole.kind=blind"]
    foreseen = settle(job_for("Tr16x4", sets)).prediction
    assert foreseen is not None
    found = foreseen.torque
    assert found.likely_by == (Estimate.TEETH,)
    assert found.band.likely == pytest.approx(found.cutting + found.friction.likely)
    assert found.band.high == pytest.approx(1.18 * found.cutting + found.friction.high)
    assert found.band.low == pytest.approx(0.51 * found.cutting + found.friction.low)


def test_with_one_formula_of_two_the_teeth_are_spread_as_well() -> None:
    found = of("2007")
    assert found.formula_a is None
    assert found.likely_by == (Estimate.TEETH, Estimate.FORMULA_B)
    assert found.high_by is Estimate.TEETH
    assert found.band.high == pytest.approx(1.06 * found.cutting + found.friction.high)
    assert found.band.low == pytest.approx(0.44 * found.cutting + found.friction.low)
