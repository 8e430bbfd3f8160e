"""Clearance behind the edge, held to points of the tap against the surface its edge has swept."""

import math
from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest
from swept import Swept, swept_cone, swept_flank

from tapmodel.prediction.rubbing.back_taper import back_taper_clearance
from tapmodel.prediction.rubbing.land import clearances, heel_phi
from tapmodel.prediction.rubbing.record import Threshold
from tapmodel.prediction.rubbing.rubbing import clearance_along, rubbing_of
from tapmodel.prediction.rubbing.surfaces import Surface, surfaces_of
from tapmodel.shape.figures import figures_of
from tapmodel.shape.form import Form
from tapmodel.shape.profile import Part
from tapmodel.shape.relief import con_eccentric, concentric, drop, eccentric_by_edge
from tapmodel.tap.tap import Chamfer, Relief, Tap
from tapmodel.words import ReliefPlace

CREST, THREAD, CHAMFER = ReliefPlace.CREST, ReliefPlace.THREAD, ReliefPlace.CHAMFER

THREAD_RELIEFS = {
    "as cut": concentric(CREST),
    "crest": con_eccentric(CREST, 8.05, 70.0, 20.0, 0.05),
    "margin": con_eccentric(THREAD, 8.05, 70.0, 20.0, 0.03),
    "whole": eccentric_by_edge(THREAD, 8.05, 3.0),
}
CHAMFER_RELIEFS = {
    "concentric": concentric(CHAMFER),
    "margin": con_eccentric(CHAMFER, 8.05, 70.0, 20.0, 0.15),
    "shallow": eccentric_by_edge(CHAMFER, 8.05, 0.4),
    "eccentric": eccentric_by_edge(CHAMFER, 8.05, 5.0),
}


def with_reliefs(tap: Tap, thread: Relief | None = None, chamfer: Relief | None = None) -> Tap:
    now = tap.relief
    return replace(
        tap, relief=replace(now, thread=thread or now.thread, chamfer=chamfer or now.chamfer)
    )


def as_it_is(tap: Tap) -> Tap:
    return tap


def three_starts(tap: Tap) -> Tap:
    """Trapezoidal flanks and a steep helix, a steep chamfer, and a face without rake."""
    thread = replace(tap.thread, pitch=1.0, starts=3, flank_angle=15.0, minor=6.9)
    flutes = replace(tap.flutes, offset=-0.9)
    return replace(tap, thread=thread, flutes=flutes, chamfer=Chamfer(25.0, 6.85))


def close(found: float, right: float) -> bool:
    """To 1 % or 0.01 µm, in mm."""
    return abs(found - right) <= max(0.01 * abs(right), 1e-5)


def held_to_points(surface: Surface, swept: Swept, slope: float | None) -> None:
    """Clearances of a surface against distances of points.

    That of a cone of `slope` is told along the radius, and turned square to it here.
    """
    edges, relief, advance = surface.edges, surface.relief, surface.advance
    heels = heel_phi(edges, relief, advance)
    radii = edges.radii
    assert np.degrees(swept.heel(radii)) == pytest.approx(heels, abs=0.02)
    phi = edges.phi[:, None] + (heels - edges.phi)[:, None] * np.array([0.07, 0.4, 1.0])
    radial = clearances(edges, relief, advance, phi)
    for row in (0, 1, 9):
        for column in range(phi.shape[1]):
            angle, found = math.radians(phi[row, column]), float(radial[row, column])
            point = swept.land_point(angle, float(radii[row]))
            assert close(found, swept.lead_of_edge(point))
            square = surface.square[row]
            if slope is not None:
                steep = slope * math.hypot(1.0, float(edges.tan_helix[row]))
                square = 1 / math.hypot(1.0, steep)
            assert close(found * square, swept.distance(point))


@pytest.mark.parametrize("kind", list(CHAMFER_RELIEFS))
@pytest.mark.parametrize("shape", [as_it_is, three_starts])
def test_chamfer_clearance_is_what_its_points_have(
    small_tap: Tap, kind: str, shape: Callable[[Tap], Tap]
) -> None:
    tap = shape(with_reliefs(small_tap, chamfer=CHAMFER_RELIEFS[kind]))
    slope = math.tan(math.radians(tap.chamfer.angle))
    held_to_points(surfaces_of(tap, 7.0).chamfer, swept_cone(Form(tap)), slope)


@pytest.mark.parametrize("kind", ["margin", "whole"])
@pytest.mark.parametrize("part", [Part.REAR_FLANK, Part.FRONT_FLANK])
@pytest.mark.parametrize("shape", [as_it_is, three_starts])
def test_flank_clearance_is_what_its_points_have(
    small_tap: Tap, kind: str, part: Part, shape: Callable[[Tap], Tap]
) -> None:
    tap = shape(with_reliefs(small_tap, thread=THREAD_RELIEFS[kind]))
    held_to_points(surfaces_of(tap, 7.0).flank, swept_flank(Form(tap), part), None)


@pytest.mark.parametrize("chamfer", list(CHAMFER_RELIEFS))
def test_the_least_clearance_of_a_chamfer_is_that_of_all_its_points(
    small_tap: Tap, chamfer: str
) -> None:
    tap = with_reliefs(small_tap, chamfer=CHAMFER_RELIEFS[chamfer])
    found = rubbing_of(tap, 7.0).chamfer
    least = 1000 * swept_cone(Form(tap)).least(np.linspace(3.5, 4.025, 60))
    assert found.clearance_min_um == pytest.approx(min(least, 0.0), rel=0.01, abs=0.01)
    assert found.binds == (least < -0.01)


def test_a_concentric_chamfer_binds_by_the_advance_times_the_slope(small_tap: Tap) -> None:
    tap = with_reliefs(small_tap, chamfer=concentric(CHAMFER))
    land = figures_of(tap).land_angle
    turn = 1.0 * (8.05 - 6.85) / 2 / 2.0
    trace = clearance_along(tap, 50).chamfer
    assert trace.clearance_um == pytest.approx(-1000 * turn * (trace.phi - trace.phi[0]) / 360)
    found = rubbing_of(tap).chamfer
    assert found.binds
    assert found.rubbing_length == pytest.approx(found.land_width)
    assert found.clearance_min_um <= -1000 * turn * land / 360


@pytest.mark.parametrize("degrees", [5.0, 12.0, 30.0])
@pytest.mark.parametrize("lead", [0.25, 1.0, 4.0])
def test_every_concentric_chamfer_binds(small_tap: Tap, degrees: float, lead: float) -> None:
    tap = with_reliefs(small_tap, chamfer=concentric(CHAMFER))
    tap = replace(tap, thread=replace(tap.thread, pitch=lead), chamfer=Chamfer(degrees, 7.0))
    found = rubbing_of(tap)
    assert found.chamfer.binds
    assert found.cure.land_angle is not None


def test_the_crest_clears_by_its_drop_and_guides_on_the_margin(small_tap: Tap) -> None:
    relief = THREAD_RELIEFS["crest"]
    tap = with_reliefs(small_tap, thread=relief)
    figures, found = figures_of(tap), rubbing_of(tap, threshold=Threshold(0.001, 0.004)).crest
    trace = clearance_along(tap, 80).crest
    assert trace.clearance_um == pytest.approx(1000 * drop(relief, 8.05, trace.phi))
    assert trace.along[-1] == pytest.approx(
        math.radians(trace.phi[-1]) * math.hypot(4.025, 1 / (2 * math.pi))
    )
    assert np.all(trace.clearance_um[trace.phi <= 20.0] == 0)
    assert (found.clearance_min_um, found.binds) == (0.0, False)
    # The heel wall leans: where the crest has dropped it stands at another angle.
    assert found.heel_clearance_um == pytest.approx(1000 * figures.thread_relief.heel_drop, rel=0.1)
    reached = np.interp(5.0, trace.clearance_um[trace.phi >= 20.0], trace.phi[trace.phi >= 20.0])
    way = math.hypot(4.025, 1 / (2 * math.pi)) * math.radians(float(reached))
    assert found.rubbing_length == pytest.approx(way, rel=2e-3)


@pytest.mark.parametrize("kind", list(THREAD_RELIEFS))
def test_a_crest_never_stands_proud_unless_its_arc_comes_out_again(
    small_tap: Tap, kind: str
) -> None:
    found = rubbing_of(with_reliefs(small_tap, thread=THREAD_RELIEFS[kind])).crest
    assert (found.clearance_min_um, found.binds) == (0.0, False)


def test_flanks_without_relief_rub_on_the_whole_land_along_the_helix(small_tap: Tap) -> None:
    for kind in ("as cut", "crest"):
        tap = with_reliefs(small_tap, thread=THREAD_RELIEFS[kind])
        found = rubbing_of(tap).flank
        form = Form(tap)
        at = np.array(tap.thread.pitch_diameter / 2)
        land = float(form.wall_phi(-1, at) - form.wall_phi(1, at))
        width = land * math.hypot(tap.thread.pitch_diameter / 2, 1 / (2 * math.pi))
        assert found.rubbing_length == found.land_width == pytest.approx(width, rel=1e-9)
        assert (found.heel_clearance_um, found.binds) == (0.0, False)


def test_a_flank_clears_by_the_drop_times_the_sine_of_its_angle(small_tap: Tap) -> None:
    thread = replace(small_tap.thread, pitch=0.05)
    relief = THREAD_RELIEFS["margin"]
    tap = with_reliefs(replace(small_tap, thread=thread), thread=relief)
    found = rubbing_of(tap, 7.3)
    trace = clearance_along(tap, 90, 7.3).flank
    assert trace.clearance_um == pytest.approx(500 * drop(relief, 8.05, trace.phi), rel=1e-4)
    # Only the margin and a little behind it touch.
    margin = math.radians(20.0 - trace.phi[0]) * found.flank.radius
    assert margin < found.flank.rubbing_length < found.flank.land_width
    assert rubbing_of(tap, 7.3, Threshold(1e-9, 0.0)).flank.rubbing_length == pytest.approx(
        margin, rel=5e-3
    )


def test_a_crest_relieved_alone_is_wider_at_its_heel(small_tap: Tap) -> None:
    tap = with_reliefs(small_tap, thread=THREAD_RELIEFS["crest"])
    found = rubbing_of(tap)
    wider = 2 * found.crest.heel_clearance_um / 1000 * math.tan(math.radians(30))
    assert found.heel_crest_width - found.crest_width == pytest.approx(wider)
    assert found.crest_width == pytest.approx(tap.thread.crest_flat)
    whole = rubbing_of(with_reliefs(small_tap, thread=THREAD_RELIEFS["whole"]))
    assert whole.heel_crest_width == whole.crest_width


@pytest.mark.parametrize("by", [0.2, 3.0])
def test_a_tap_of_another_size_has_clearances_of_that_size(small_tap: Tap, by: float) -> None:
    for chamfer in CHAMFER_RELIEFS.values():
        for thread in THREAD_RELIEFS.values():
            tap = with_reliefs(small_tap, thread, chamfer)
            now, then = rubbing_of(tap, 7.0), rubbing_of(scaled(tap, by), 7.0 * by)
            for name in ("crest", "flank", "chamfer"):
                one, other = getattr(now, name), getattr(then, name)
                for field in ("clearance_min_um", "heel_clearance_um", "land_width"):
                    right = by * getattr(one, field)
                    assert getattr(other, field) == pytest.approx(right, rel=1e-4, abs=1e-9)
                assert one.binds == other.binds


def scaled(tap: Tap, by: float) -> Tap:
    thread, flutes, chamfer = tap.thread, tap.flutes, tap.chamfer
    reliefs = tap.relief
    return replace(
        tap,
        thread=replace(
            thread,
            pitch=thread.pitch * by,
            major=thread.major * by,
            pitch_diameter=thread.pitch_diameter * by,
            minor=thread.minor * by,
        ),
        chamfer=Chamfer(chamfer.angle, chamfer.point_diameter * by),
        flutes=replace(
            flutes,
            cutter_diameter=flutes.cutter_diameter * by,
            offset=flutes.offset * by,
            centre_radius=flutes.centre_radius * by,
        ),
        relief=replace(
            reliefs,
            thread=replace(reliefs.thread, arc_offset=reliefs.thread.arc_offset * by),
            chamfer=replace(reliefs.chamfer, arc_offset=reliefs.chamfer.arc_offset * by),
        ),
    )


def test_the_other_hand_has_the_same_clearances(small_tap: Tap, left_tap: Tap) -> None:
    assert rubbing_of(left_tap) == rubbing_of(small_tap)


def test_a_rounded_crest_is_flat_nowhere(small_tap: Tap) -> None:
    thread = replace(small_tap.thread, rounded_crest=True, rounded_root=True)
    tap = with_reliefs(replace(small_tap, thread=thread), thread=THREAD_RELIEFS["whole"])
    found = rubbing_of(tap)
    assert (found.crest_width, found.heel_crest_width) == (0.0, 0.0)
    assert found.crest.heel_clearance_um > 0


def test_more_swelling_of_the_wall_means_more_contact(small_tap: Tap) -> None:
    lengths = [
        rubbing_of(small_tap, threshold=Threshold(0.001, swell)).flank.rubbing_length
        for swell in (0.0, 0.002, 0.005)
    ]
    assert lengths == sorted(lengths)
    assert lengths[-1] > 1.05 * lengths[0]
    assert Threshold().clearance == pytest.approx(0.003)
    assert Threshold().spring_back_certainty == "from memory"


def test_back_taper_clears_by_half_its_loss_of_diameter() -> None:
    found = back_taper_clearance(0.001, np.array([-2.0, 0.0, 10.0]))
    assert found.tolist() == pytest.approx([0.0, 0.0, 0.005])


def test_the_flanks_of_a_tap_clear_by_half_of_that(small_tap: Tap) -> None:
    """Flanks of 30 degrees; one turn is 1 mm, and 4 mm of full thread stand behind the chamfer."""
    tap = replace(small_tap, thread=replace(small_tap.thread, back_taper=0.1))
    found, plain = rubbing_of(tap), rubbing_of(small_tap)
    assert found.flank_clears_each_turn == pytest.approx(0.25)
    assert found.flank_clears_at_end == pytest.approx(1.0)
    assert (plain.flank_clears_each_turn, plain.flank_clears_at_end) == (0.0, 0.0)
