"""Carbon that goes into a section: against exact solutions, measured gains and finer grids."""

import math
from dataclasses import replace

import numpy as np
import pytest
from steeped import thread_of
from sweeps import in_part

from tapmodel.designing.settle import settle
from tapmodel.prediction.heat.carburising import carburised, hours_for
from tapmodel.prediction.heat.diffusion import Bath, diffused
from tapmodel.prediction.heat.diffusivity import Floats, agren, reach
from tapmodel.prediction.heat.grid import spacing, strip
from tapmodel.prediction.heat.record import Carburising, Profile
from tapmodel.prediction.heat.tooth_grid import tooth_grid
from tapmodel.prediction.thread_section import section_above
from tapmodel.spec.job_file import job_for

USUAL = Carburising(steel=0.18, surface=1.10, celsius=925.0, hours=1.0)


def constant(value: float):
    """A diffusivity [mm²/s] that no carbon changes."""

    def law(carbon: Floats) -> Floats:
        return np.full_like(carbon, value)

    return law


def carbon_at(profile: Profile, depth: float) -> float:
    return next(place.carbon for place in profile.places if place.depth == depth)


CALLISTER = (
    # deg C, hours to 0.6 % at 0.75 mm from 0.2 % under a surface of 1 %: worked example 5.1 of
    # Callister as read in a textbook companion, with the exact z in place of the rounded 0.4747
    *((900, 29.31), (950, 15.76), (1000, 8.89), (1050, 5.24)),
)


@pytest.mark.parametrize(("celsius", "hours"), CALLISTER)
def test_a_constant_diffusivity_gives_the_error_function(celsius: float, hours: float) -> None:
    # As the book rounds them: the gas constant and the zero of temperature.
    value = 1e6 * 2.3e-5 * math.exp(-148000 / (8.31 * (celsius + 273)))
    law = constant(value)
    goes = reach(law, 1.0, 3600 * hours)
    grid = strip(8 * goes, spacing(goes, 3.0))
    found = diffused(grid, Bath(law, 0.2, 1.0), 3600 * hours, 96)
    line, depths = grid.under_root, np.linspace(0.0, 4 * goes, 60)
    exact = [1.0 - 0.8 * math.erf(depth / (2 * goes)) for depth in depths]
    told = grid.at_depth(found.carbon, line, depths)
    assert told == pytest.approx(exact, abs=4e-4)
    assert grid.at_depth(found.carbon, line, np.array([0.75]))[0] == pytest.approx(0.6, abs=6e-4)
    # What went in: 2 (Cs - C0) sqrt(D t / pi), through the width of the strip.
    width = float(np.ptp(grid.nodes[:, 0]))
    assert found.gained / width == pytest.approx(1.6 * goes / math.sqrt(math.pi), rel=1e-3)
    # As fine as usual it is good to a few thousandths.
    usual = strip(8 * goes, spacing(goes))
    coarse = diffused(usual, Bath(law, 0.2, 1.0), 3600 * hours)
    told = usual.at_depth(coarse.carbon, usual.under_root, depths)
    assert told == pytest.approx(exact, abs=2.5e-3)


GAINS = (
    # steel %, surface %, measured g/m2, g/m2 with the law of Ågren; 2 h at 900 deg C
    # (carburising of 16NiCrMo13 and 23MnCrMo5, read in the validation of a public code that quotes
    # Dal'Maz Silva 2017: 23.5 by the profile, 20.5 weighed); the last computed beforehand
    *((0.16, 1.00, 23.5, 23.00), (0.23, 0.95, 20.5, 19.61)),
)


@pytest.mark.parametrize(("steel", "surface", "measured", "computed"), GAINS)
def test_the_gain_of_carbon(steel: float, surface: float, measured: float, computed: float) -> None:
    found = carburised(Carburising(steel, surface, 900.0, 2.0), None)
    assert found.gained == pytest.approx(computed, rel=5e-3)
    assert found.gained == pytest.approx(measured, rel=0.05)


def test_harris_and_fick_agree_at_1700_f() -> None:
    # Harris's case ends some 0.07 % above the core; computed beforehand: at 1.2657 mm.
    asked = Carburising(0.20, 1.25, (1700 - 32) / 1.8, 4.0)
    law = agren(asked.celsius)
    goes = reach(law, 1.25, asked.seconds)
    grid = strip(8 * goes, spacing(goes))
    found = diffused(grid, Bath(law, 0.20, 1.25), asked.seconds)
    at = float(grid.at_depth(found.carbon, grid.under_root, np.array([1.2657]))[0])
    assert at == pytest.approx(0.27, abs=3e-3)
    assert carburised(asked, None).harris == pytest.approx(1.270, rel=2e-3)
    # computed beforehand, as the next
    assert carburised(asked, None).flat.case == pytest.approx(0.990, abs=5e-3)


def test_under_a_flat_surface() -> None:
    # Computed beforehand by another program: %C at 0.1, 0.3 and 0.5 mm, and the 0.4 % depth.
    flat = carburised(USUAL, None).flat
    told = [carbon_at(flat, depth) for depth in (0.1, 0.3, 0.5)]
    assert told == pytest.approx([0.946, 0.602, 0.320], abs=2.5e-3)
    assert flat.case == pytest.approx(0.431, abs=2.5e-3)


TEETH = {
    # pitch: %C in the middle of the tooth after 15 min, 30 min, 1 h and 2 h (60 degrees, depth
    # 0.65 P); computed beforehand by another program, told to 0.005 or 0.01
    0.2: (1.08, 1.085, 1.09, 1.09),
    0.35: (1.055, 1.07, 1.08, 1.09),
    0.5: (1.01, 1.05, 1.07, 1.08),
    0.75: (0.85, 0.99, 1.05, 1.07),
    1.0: (0.61, 0.88, 1.01, 1.055),
    1.5: (0.26, 0.55, 0.85, 0.99),
    2.5: (0.18, 0.205, 0.39, 0.725),
}


@pytest.mark.parametrize("pitch", TEETH)
def test_the_middle_of_a_tooth(pitch: float) -> None:
    told = [*zip((0.25, 0.5, 1.0, 2.0), TEETH[pitch], strict=True)]
    for hours, printed in in_part(told, [*TEETH].index(pitch)):
        asked = Carburising(0.18, 1.10, 925.0, hours)
        tooth = carburised(asked, thread_of(pitch)).tooth
        assert tooth
        assert tooth.middle.carbon == pytest.approx(printed, abs=0.0055), hours
        # Up to pitch 1 it is high carbon right through within half an hour.
        assert tooth.through == (printed >= 0.6)


TAPS = {
    # %C at 0.1, 0.2 and 0.4 mm under the crest, in the middle of the tooth, at 0.1, 0.3 and 0.5 mm
    # under the root after an hour, and the depth to 0.4 % under it [mm]; computed beforehand by
    # another program, good to 0.005 % and 3 um, of the ground tap, whose crest has its flat of then
    "M10": ((1.084, 1.054, 0.937), 0.853, (0.869, 0.478, 0.258), 0.353),
    "M18x0.75": ((1.092, 1.069, 0.947), 1.051, (0.848, 0.460, 0.248), 0.341),
}


@pytest.mark.parametrize("text", TAPS)
def test_the_tooth_of_a_tap(text: str) -> None:
    under_crest, middle, under_root, case = TAPS[text]
    thread = settle(job_for(text, ["thread.tap_class=2"])).tap.thread
    tooth = carburised(USUAL, thread).tooth
    assert tooth
    for profile, depths, wanted in (
        (tooth.under_crest, (0.1, 0.2, 0.4), under_crest),
        (tooth.under_root, (0.1, 0.3, 0.5), under_root),
    ):
        found = [carbon_at(profile, depth) for depth in depths]
        assert found == pytest.approx(wanted, abs=5e-3)
    assert tooth.middle.carbon == pytest.approx(middle, abs=2e-3)
    assert tooth.under_root.case == pytest.approx(case, abs=3e-3)


def test_a_very_large_tooth_is_plane() -> None:
    large, plane = carburised(USUAL, thread_of(24.0)), carburised(USUAL, None).flat
    assert large.tooth
    for depth in (0.1, 0.3, 0.5, 0.7):
        for profile in (large.tooth.under_root, large.tooth.under_crest):
            assert carbon_at(profile, depth) == pytest.approx(carbon_at(plane, depth), abs=4e-3)
    assert large.case == pytest.approx(plane.case, abs=2e-3)
    assert large.tooth.middle.carbon == pytest.approx(0.18, abs=1e-6)


def test_a_very_small_tooth_is_full_of_carbon() -> None:
    tooth = carburised(USUAL, thread_of(0.05)).tooth
    assert tooth
    assert tooth.middle.carbon == pytest.approx(1.10, abs=5e-3)
    assert tooth.under_crest.places[0].carbon == 1.10


@pytest.mark.parametrize("pitch", in_part([0.5, 2.5, 1.0]))
def test_a_finer_grid_changes_nothing_that_matters(pitch: float) -> None:
    usual, finer = (carburised(USUAL, thread_of(pitch), fineness) for fineness in (1.0, 2.0))
    assert usual.tooth
    assert finer.tooth
    assert usual.case == pytest.approx(finer.case, abs=5e-3)
    assert usual.tooth.middle.carbon == pytest.approx(finer.tooth.middle.carbon, abs=0.005)
    for line in ("under_crest", "under_root"):
        for one, other in zip(
            getattr(usual.tooth, line).places, getattr(finer.tooth, line).places, strict=False
        ):
            assert one.carbon == pytest.approx(other.carbon, abs=0.01)


@pytest.mark.parametrize("rounded", [False, True])
@pytest.mark.parametrize("hours", [0.02, 0.5, 20.0])
def test_what_went_in_is_there(rounded: bool, hours: float) -> None:
    thread = replace(thread_of(1.5), rounded_crest=rounded, rounded_root=rounded)
    if rounded:
        # a root of an arc is deeper than its flat
        thread = replace(thread, minor=thread.pitch_diameter - 0.9 * thread.pitch)
    law = agren(925.0)
    goes = reach(law, 1.1, 3600 * hours)
    grid = tooth_grid(thread, min(8 * goes, 10.0), spacing(goes))
    found = diffused(grid, Bath(law, 0.18, 1.1), 3600 * hours)
    assert found.gained == pytest.approx(found.entered, rel=1e-9)
    assert 0.18 - 1e-3 < found.carbon.min() <= found.carbon.max() < 1.1 + 1e-9


@pytest.mark.parametrize("rounded", [False, True])
def test_the_grid_covers_the_tooth(rounded: bool) -> None:
    """Its area is that of the profile above the bottom of the section."""
    thread = replace(thread_of(1.5), rounded_crest=rounded, rounded_root=rounded)
    grid = tooth_grid(thread, 2.0, spacing(0.05, 2.0))
    corners = grid.nodes[grid.triangles]
    first, second = corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0]
    twice = first[:, 0] * second[:, 1] - first[:, 1] * second[:, 0]
    assert np.all(np.abs(twice) > 0)
    # Every cell is parted twice, so all triangles cover the section twice.
    exact = section_above(thread, thread.minor - 4.0) / 2
    assert np.sum(np.abs(twice)) / 4 == pytest.approx(exact, rel=1e-4)


@pytest.mark.parametrize(
    ("pitch", "case"), [(None, 0.1), (None, 0.8), (0.75, 0.1), (0.75, 0.3), (3.0, 0.8)]
)
def test_the_time_for_a_depth_gives_that_depth(pitch: float | None, case: float) -> None:
    thread = None if pitch is None else thread_of(pitch)
    hours = hours_for(USUAL, thread, case)
    found = carburised(replace(USUAL, hours=hours), thread)
    assert found.case == pytest.approx(case, rel=2e-4)
