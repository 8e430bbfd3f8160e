"""Fine pitches and small diameters: every pair is a sound design, or refused with a number."""

import itertools
import math
from functools import cache

import pytest

from tapmodel.designing.choose.steps import down, step_for, up
from tapmodel.designing.design import design_tap
from tapmodel.designing.limits.flutes import clearance
from tapmodel.designing.record import TapDesign
from tapmodel.designing.settle import settle
from tapmodel.errors import InputError
from tapmodel.precision import mesh_chord
from tapmodel.report.words.findings import what
from tapmodel.spec.job_file import job_for
from tapmodel.words import Severity

PITCHES = (0.05, 0.06, 0.075, 0.09, 0.1, 0.125, 0.15, 0.19, 0.2, 0.25, 0.35)
DIAMETERS = (
    *(0.3, 0.35, 0.45, 0.6, 0.8, 0.99, 1.3, 1.7, 2, 2.3, 3, 4.4, 6, 8, 10, 12.5, 16, 20, 25),
    *(36, 50, 100, 300),
)
LISTED = (
    *("M1", "M1.1", "M1.2", "M1.4", "M1.6", "M1x0.2", "M1.1x0.2", "M1.4x0.2", "M1.6x0.2"),
    *("M2x0.25", "M2.5x0.35", "M0.3", "M0.5", "M0.9", "14 BA", "15 BA", "16 BA", "0-80 UNF"),
    *("3/16-100 UNS", "1/4-254 UNS", "1/4-300 UNS", "0.375-170 UNS-3B", "1.000-150 UNS"),
    *("0.30 UNM", "0.50 UNM", "0.90 UNM", "1.40 UNM LH"),
)


@cache
def designed(designation: str) -> TapDesign | str:
    """The design, or why there is none."""
    try:
        return settle(job_for(designation))
    except InputError as error:
        return str(error)


def _pairs() -> list[str]:
    return [f"M{d:g}x{p:g}" for d, p in itertools.product(DIAMETERS, PITCHES) if p <= d / 2]


GRID = [*_pairs(), *LISTED]

WHOLE = frozenset([*GRID[::18], *LISTED[::9]])
"""Of which cures and runners-up are sought too: that costs ten times the design."""


@pytest.mark.parametrize("designation", GRID)
def test_a_fine_thread_is_a_sound_design_or_refused_with_the_finest_pitch(designation: str) -> None:
    found = designed(designation)
    if isinstance(found, str):
        diameter, pitch = map(float, designation.removeprefix("M").split("x"))
        finest = float(found.partition("allowed: ")[2].partition(" mm or coarser")[0])
        # The depth above the pitch line, in whole micrometres of tolerance: nothing in scope.
        assert pitch < finest <= 0.075
        assert isinstance(designed(f"M{diameter:g}x{finest:g}"), TapDesign)
        return
    errors = [what(f) for f in found.findings if f.severity is Severity.ERROR]
    warned = {f.code for f in found.findings if f.severity is Severity.WARNING}
    assert errors == []
    if designation in WHOLE:
        whole = design_tap(job_for(designation))
        assert (whole.tap, whole.prediction) == (found.tap, found.prediction)
        assert [f.code for f in whole.findings] == [f.code for f in found.findings]
    # Coarse threads of the smallest sizes leave no room for wide flutes, 8 flutes of the largest
    # taps still long lands: test_lands_and_chips.py holds such warnings to their reasons. Chips of
    # a few micrometres cost more force than so thin a core bears.
    flutes, thread = found.tap.flutes, found.tap.thread
    forced = thread.major > 95 or flutes.cutter_diameter <= 0.9
    assert warned <= {"beyond-scope", "drill-between"} | (
        {"land-rubs", "rake-at-wall", "tap-overloaded"} if forced else set()
    )
    _hole_holds(found)
    _thread_holds(found)
    _blank_holds(found)


def _hole_holds(design: TapDesign) -> None:
    hole, drill = design.hole, design.drill
    assert 0 < hole.minor_min < hole.pitch_min < hole.pitch_max < hole.major_min
    # The smallest Unified miniature sizes may be drilled up to their pitch line.
    assert hole.minor_min < hole.minor_max < hole.pitch_max
    assert hole.minor_min <= drill <= hole.minor_max
    assert drill < hole.pitch_min
    assert design.tap.chamfer.point_diameter < drill


def _thread_holds(design: TapDesign) -> None:
    thread, limits, hole = design.tap.thread, design.limits, design.hole
    assert hole.pitch_min < limits.pitch_min < thread.pitch_diameter < limits.pitch_max
    assert limits.pitch_max < hole.pitch_max
    assert thread.major >= limits.major_min > hole.major_min
    assert thread.minor <= hole.minor_min
    if thread.crest_radius == 0:
        slope = math.tan(math.radians(thread.flank_angle))
        crest = thread.pitch / 2 - (thread.major - thread.pitch_diameter) * slope
        assert thread.crest_flat == pytest.approx(crest)
        assert thread.crest_flat >= thread.pitch / 16 - 1e-9
        assert thread.pitch / 25 < thread.root_flat <= thread.pitch / 8 + 1e-6
    depth = (thread.major - thread.minor) / 2
    assert design.figures.thread_relief.heel_drop <= depth / 4 + 1e-4
    assert mesh_chord(thread.pitch, thread.major) <= depth / 15


def _blank_holds(design: TapDesign) -> None:
    thread, blank, flutes = design.tap.thread, design.tap.blank, design.tap.flutes
    gap = clearance(thread.major)
    assert flutes.core_diameter <= thread.minor - 2 * gap
    assert flutes.cutter_diameter < thread.major
    if blank.neck_length:
        assert flutes.core_diameter / 2 + gap <= blank.neck_diameter / 2 < thread.minor / 2
    assert blank.shank_diameter >= 2.5  # thinner ones cannot be held
    full = blank.thread_length - design.tap.chamfer_length
    assert full >= 8 * thread.pitch - 1e-9
    assert full <= max(8 * thread.major, 105 * thread.pitch, thread.major + 0.5)


def test_formulas_beyond_their_scope_are_a_warning_that_says_what_they_rest_on() -> None:
    for designation, share in (("M8x0.1", 59), ("M0.5x0.125", 39)):
        design = designed(designation)
        assert isinstance(design, TapDesign)
        finding = next(f for f in design.findings if f.code == "beyond-scope")
        assert finding.severity is Severity.WARNING
        assert f"{share}% of the depth above the pitch line" in what(finding)
        assert "ISO 965-1 begins at 1 mm diameter and 0.2 mm pitch" in what(finding)
        assert "clause 13" in str(finding.source)
    inside = designed("M20x0.2")
    assert isinstance(inside, TapDesign)
    assert "beyond-scope" not in {f.code for f in inside.findings}


def test_too_fine_a_pitch_is_refused_with_both_depths() -> None:
    with pytest.raises(InputError) as caught:
        design_tap(job_for("M25x0.05"))
    # TD2 grade 4 = 0.85 * 90 * 0.05^0.4 * 31.75^0.1 = 32.6, as R40 33 or 34; 0.649519 * 50 = 32.5.
    assert "0.034 mm" in caught.value.allowed
    assert "0.0325 mm above that line" in caught.value.allowed
    assert caught.value.field == "designation M25x0.05: pitch"


def test_steps_follow_the_thread() -> None:
    assert [step_for(0.05, most) for most in (0.1, 0.05, 0.049, 0.01, 0.0012, 0.0001)] == [
        *(0.05, 0.05, 0.02, 0.01, 0.001, 0.001)
    ]
    assert (down(7.8999, 0.01), up(7.8901, 0.01)) == (7.89, 7.9)
    assert (down(0.3, 0.1), up(0.3, 0.1)) == (0.3, 0.3)
