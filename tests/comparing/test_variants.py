"""Combinations settled: numbers that are those of the tap itself, and rows for what is none."""

import math

import pytest

from tapmodel.comparing.figures import UNITS, clearance
from tapmodel.comparing.variant import UNUSABLE, Merit
from tapmodel.comparing.variants import Asked, compare_taps
from tapmodel.designing.settle import settle
from tapmodel.errors import InputError
from tapmodel.prediction.rubbing.rubbing import rubbing_of
from tapmodel.spec.job_file import job_for


def test_figures_are_those_of_the_tap_settled_alone() -> None:
    asked = Asked({"designation": "M10"}, {"flutes.count": (3, 4)}, [("hole.kind", "blind")])
    first, second = compare_taps(asked).variants
    design = settle(job_for("M10", ["flutes.count=4", "hole.kind=blind"]))
    foreseen = design.prediction
    assert foreseen is not None
    assert set(second.figures) == set(UNITS)
    rubbing = rubbing_of(design.tap, design.drill)
    expected = {
        "rake_at_wall": design.rake_at_wall,
        "land_width": design.figures.land_width,
        "chamfer_relief.heel_drop": design.figures.chamfer_relief.heel_drop,
        "torque_low": foreseen.torque.band.low,
        "torque_likely": foreseen.torque.band.likely,
        "torque_high": foreseen.torque.band.high,
        "bears": foreseen.strength.bears,
        "margin": foreseen.strength.bears / foreseen.torque.band.high,
        "chamfer_clearance_um": rubbing.chamfer.heel_clearance_um,
        "flank_rubbing": rubbing.flank.rubbing_length,
        "chamfer_rubbing": rubbing.chamfer.rubbing_length,
        "chip_room": foreseen.room.blind,
        "chip_min": foreseen.chips.thickness_min,
        "chip_max": foreseen.chips.thickness_max,
    }
    assert {name: second.figures[name] for name in expected} == pytest.approx(expected, rel=1e-12)
    assert second.merit == Merit(
        binds=False,
        warnings=len(second.warnings),
        margin=expected["margin"],
        rubbing=expected["flank_rubbing"] + expected["chamfer_rubbing"],
    )
    assert first.figures["land_width"] != second.figures["land_width"]
    assert second.figures["material"] == design.work.material.name


def test_the_clearance_of_a_chamfer_is_negative_just_where_it_binds() -> None:
    kinds = ("concentric", "con-eccentric", "eccentric")
    asked = Asked({"designation": "M18x0.75"}, {"relief.chamfer.kind": kinds})
    for variant in compare_taps(asked).variants:
        assert variant.tap
        assert variant.merit
        chamfer = rubbing_of(variant.tap, 17.25).chamfer
        told = variant.number_of("chamfer_clearance_um")
        assert told == clearance(chamfer)
        assert (
            (told < 0)
            == chamfer.binds
            == variant.merit.binds
            == ("chamfer-rubs" in variant.warnings)
        )
    # Without relief the heel follows the edge on one circle, while the cone has sunk by what the
    # tap goes forward meanwhile; by the land's angle at the crest within half a per cent.
    concentric = compare_taps(asked).variants[0]
    assert concentric.tap
    sunk = concentric.tap.thread.lead * concentric.number_of("land_angle") / 360
    proud = 1000 * sunk * math.tan(math.radians(concentric.tap.chamfer.angle))
    assert concentric.number_of("chamfer_clearance_um") == pytest.approx(-proud, rel=0.005)


def test_whatever_cannot_be_is_a_row_with_its_code() -> None:
    asked = Asked({"designation": "M8"}, {"thread.root_flat": (0.1, 0.7, -1.0)})
    sound, none, refused = compare_taps(asked).variants
    assert sound.errors == ()
    assert (none.errors, none.figures["core_diameter"], none.refusal) == (
        ("thread-depth",),
        None,
        "",
    )
    assert refused.errors == (UNUSABLE,)
    assert "thread.root_flat: -1.0" in refused.refusal


def test_a_tap_that_breaks_a_rule_has_figures_but_no_merit() -> None:
    (variant,) = compare_taps(
        Asked({"designation": "M10"}, {"flutes.core_diameter": (1,)})
    ).variants
    assert variant.figures["core_diameter"] == pytest.approx(1.0)
    assert (variant.figures["margin"], variant.merit) == (None, None)
    assert "core" in variant.errors


def test_where_nothing_makes_a_job_the_first_reason_is_told() -> None:
    with pytest.raises(InputError, match=r"flutes\.count: 13 cannot"):
        compare_taps(Asked({"designation": "M8"}, {"flutes.count": (13, 14)}))


def test_a_value_that_is_varied_goes_before_one_that_is_set() -> None:
    asked = Asked({"designation": "M8"}, {"flutes.count": (3,)}, [("flutes.count", 5)])
    (variant,) = compare_taps(asked).variants
    assert variant.tap
    assert variant.tap.flutes.count == 3


def test_lengths_with_their_unit_stand_in_mm() -> None:
    asked = Asked({"designation": "M18x0.75"}, {"flutes.cutter_diameter": ("1/4in", 6)})
    found = compare_taps(asked)
    assert [one.values["flutes.cutter_diameter"] for one in found.variants] == [6.35, 6]
    assert [one.figures["cutter_diameter"] for one in found.variants] == [6.35, 6]


def test_each_combination_is_told_when_it_is_done() -> None:
    told: list[int] = []
    compare_taps(
        Asked({"designation": "M8"}, {"flutes.count": (3, 4), "flutes.rake": (4, 8)}), told.append
    )
    assert told == [1, 2, 3, 4]
