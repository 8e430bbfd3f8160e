"""Chips, torque and rubbing as the page shows them, against what is foreseen."""

import math
from dataclasses import asdict

import numpy as np
import pytest

from tapmodel.designing.record import TapDesign
from tapmodel.designing.settle import settle
from tapmodel.report.drawings.views.torque import ways
from tapmodel.report.units import Units
from tapmodel.report.view.charts.axes import axis_of, round_numbers
from tapmodel.report.view.figures import LABELS, named_figures
from tapmodel.report.view.in_the_hole.chips import chips_view
from tapmodel.report.view.in_the_hole.rubbing import rubbing_view
from tapmodel.report.view.in_the_hole.torque import torque_view
from tapmodel.report.view.tap import view_of
from tapmodel.spec.job_file import job_for

IN, LBF_IN = 25.4, 8.850745791


def designed(thread: str, *sets: str) -> TapDesign:
    return settle(job_for(thread, list(sets)))


@pytest.mark.parametrize("thread", ["M10", "Tr16x8(P4)", "M18x0.75"])
def test_each_tooth_has_a_bar_in_the_order_of_the_cut(thread: str) -> None:
    design = designed(thread)
    foreseen = design.prediction
    assert foreseen is not None
    view = chips_view(design, foreseen, Units.MM)
    heights = [bar.height for bar in view.bars]
    assert heights == [tooth.thickness for tooth in foreseen.chips.teeth]
    assert [bar.number for bar in view.bars] == list(range(1, len(heights) + 1))
    assert max(heights) == pytest.approx(foreseen.chips.thickness_max)
    assert max(heights) < view.axis.high


def test_limits_of_the_chip_are_those_by_which_it_is_judged() -> None:
    thin = designed("M10", "chamfer.pitches=30", "blank.thread_length=60mm")
    assert thin.prediction is not None
    assert thin.finds("chip-thin")
    view = chips_view(thin, thin.prediction, Units.MM)
    finding = next(one for one in thin.findings if one.code == "chip-thin")
    assert view.limits[0].at == pytest.approx(finding.limit.low)
    assert view.judged.weight == "warning"
    assert view.judged.sign == "▲"
    assert "rub more than they cut" in view.judged.text


def test_chips_in_inches_are_the_same() -> None:
    design = designed("1/4-20")
    assert design.prediction is not None
    mm, inch = (chips_view(design, design.prediction, units) for units in (Units.MM, Units.INCH))
    assert inch.bars[2].height * IN == pytest.approx(mm.bars[2].height)
    assert inch.limits[1].at * IN == pytest.approx(mm.limits[1].at)
    assert inch.axis.title == "thickness [in]"


def test_the_band_of_torque_stands_beside_what_decides() -> None:
    design = designed("M10")
    foreseen = design.prediction
    assert foreseen is not None
    view = torque_view(design, foreseen, Units.MM)
    assert (view.low, view.likely, view.high) == pytest.approx(
        (foreseen.torque.band.low, foreseen.torque.band.likely, foreseen.torque.band.high)
    )
    levels = {level.key: level for level in view.levels}
    assert levels["stop"].low == pytest.approx(foreseen.stop_at)
    assert levels["yields"].low == pytest.approx(foreseen.strength.yields.low)
    assert levels["breaks"].high == pytest.approx(foreseen.strength.breaks.high)
    # What it bears is told by itself only where the torque to stop at is another.
    assert ("bears" in levels) == (foreseen.stop_at < foreseen.strength.bears)
    assert [level.low for level in view.levels] == sorted(level.low for level in view.levels)
    inch = torque_view(design, foreseen, Units.INCH)
    assert inch.likely == pytest.approx(view.likely * LBF_IN, rel=1e-6)


def test_a_tap_that_is_stronger_than_needed_tells_both() -> None:
    design = designed("M20x1.5", "hole.material=brass")
    foreseen = design.prediction
    assert foreseen is not None
    assert foreseen.stop_at < 0.99 * foreseen.strength.bears
    levels = {level.key: level.low for level in torque_view(design, foreseen, Units.MM).levels}
    assert levels["bears"] == pytest.approx(foreseen.strength.bears)
    assert levels["stop"] == pytest.approx(2 * foreseen.torque.band.high)


def test_the_course_peaks_at_the_band() -> None:
    design = designed("M10")
    foreseen = design.prediction
    assert foreseen is not None
    course = torque_view(design, foreseen, Units.MM).course
    assert max(course.way_in.high) == pytest.approx(foreseen.torque.band.high, rel=1e-4)
    assert max(course.way_in.likely) == pytest.approx(foreseen.torque.band.likely, rel=1e-4)
    assert min(course.way_back.high) == pytest.approx(-foreseen.torque.back.high, rel=1e-4)
    assert course.torque.low <= min(course.way_back.high)
    assert course.end == design.work.depth
    # Fewer digits would show as steps.
    exact = ways(foreseen)[0].likely
    told = np.array(course.way_in.likely)
    assert np.max(np.abs(told - exact)) <= 0.5001 * 10 ** (math.floor(math.log10(max(exact))) - 4)
    assert len(str(told[len(told) // 2])) < 8


def test_curves_of_clearance_end_in_what_is_told() -> None:
    design = designed("M10")
    foreseen = design.prediction
    assert foreseen is not None
    view = rubbing_view(design, foreseen, Units.MM)
    for surface, contact in zip(
        view.surfaces,
        (foreseen.rubbing.crest, foreseen.rubbing.flank, foreseen.rubbing.chamfer),
        strict=True,
    ):
        assert surface.clearance[-1] == pytest.approx(contact.heel_clearance_um, abs=0.01)
        assert surface.along[-1] == pytest.approx(contact.land_width, rel=1e-3)
        assert surface.share == pytest.approx(contact.rubbing_length / contact.land_width)
        # Read off the curve where it leaves what touches, to a step of the curve.
        below = np.interp(view.touches, surface.clearance, surface.along)
        step = surface.along[1]
        if contact.rubbing_length < contact.land_width:
            assert below == pytest.approx(contact.rubbing_length, abs=step)


def test_a_chamfer_that_binds_is_told() -> None:
    design = designed("M10", "relief.chamfer.kind=concentric")
    assert design.prediction is not None
    view = rubbing_view(design, design.prediction, Units.MM)
    chamfer = view.surfaces[2]
    proud = -design.prediction.rubbing.chamfer.clearance_min_um / 1000
    assert chamfer.binds
    assert f"binds, {proud:.3f}" in chamfer.clear
    assert view.judged.weight == "warning"
    assert view.clearance.low < 0


def test_nothing_is_told_of_what_a_tap_without_core_does() -> None:
    view = view_of(designed("M10", "flutes.core_diameter=0.4mm"), Units.MM)
    assert view.verdict.weight == "error"
    assert (view.chips, view.torque, view.rubbing) == (None, None, None)
    likely = next(one for one in view.figures if one.key == "torque_likely")
    assert (likely.text, likely.value) == ("–", None)
    assert asdict(view)


def test_figures_are_those_of_comparisons() -> None:
    design = designed("M10")
    foreseen = design.prediction
    assert foreseen is not None
    found = {one.key: one for one in named_figures(design, Units.MM)}
    assert list(found) == list(LABELS)
    assert found["land_width"].value == pytest.approx(design.figures.land_width)
    assert found["land_width"].text == f"{design.figures.land_width:.2f} mm"
    assert found["margin"].value == pytest.approx(foreseen.margin)
    assert found["rake_at_wall"].text == f"{design.rake_at_wall:.2f}°"
    inch = {one.key: one.text for one in named_figures(design, Units.INCH)}
    likely = foreseen.torque.band.likely * LBF_IN
    assert float(inch["torque_likely"].split()[0]) == pytest.approx(likely, rel=5e-3)


@pytest.mark.parametrize(
    ("low", "high", "most", "expected"),
    [
        (0.0, 0.126, 4, [0.0, 0.05, 0.1]),
        (-6.3, 0.7, 7, [-6, -5, -4, -3, -2, -1, 0]),
        (-0.3, 15.1, 5, [0, 5, 10, 15]),
        (7.95, 8.05, 5, [7.96, 7.98, 8.0, 8.02, 8.04]),
    ],
)
def test_scales_have_round_numbers(
    low: float, high: float, most: int, expected: list[float]
) -> None:
    assert round_numbers(low, high, most) == pytest.approx(expected, abs=1e-9)


@pytest.mark.parametrize(
    ("low", "high", "expected"),
    [
        (17.985, 18.135, ["18", "18.05", "18.1"]),
        (1234.0, 1236.0, ["1234", "1235", "1236"]),
        (-0.011, 0.011, ["−0.01", "0", "0.01"]),
        (0.0, 2e4, ["0", "10000", "20000"]),
    ],
)
def test_no_two_numbers_of_a_scale_read_alike(low: float, high: float, expected: list[str]) -> None:
    assert [tick.text for tick in axis_of("x", low, high, 3).ticks] == expected


def test_a_scale_without_length_is_one_all_the_same() -> None:
    axis = axis_of("x", 3.0, 3.0, 4)
    assert (axis.low, axis.high) == (2.5, 3.5)
    assert axis_of("x", -2.0, 0.0, 2).ticks[0].text == "−2"
    assert all(math.isfinite(tick.at) for tick in axis.ticks)
