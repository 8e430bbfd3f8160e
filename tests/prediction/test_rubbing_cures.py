"""What is said to clear a chamfer clears it, and nothing less does."""

import math
from dataclasses import replace

import numpy as np
import pytest

from tapmodel.prediction.rubbing.record import ChamferCure, Threshold
from tapmodel.prediction.rubbing.rubbing import rubbing_of
from tapmodel.shape.figures import figures_of
from tapmodel.shape.flute_section import FluteSection, rake
from tapmodel.shape.relief import (
    con_eccentric,
    concentric,
    eccentric_by_drop,
    eccentric_by_edge,
)
from tapmodel.tap.tap import Chamfer, Flutes, Relief, Tap
from tapmodel.words import ReliefPlace

CHAMFER = ReliefPlace.CHAMFER


def on_chamfer(tap: Tap, relief: Relief) -> Tap:
    return replace(tap, relief=replace(tap.relief, chamfer=relief))


def cut(tap: Tap, angle: float, lead: float, flutes: Flutes | None = None) -> Tap:
    thread = replace(tap.thread, pitch=lead)
    return replace(tap, thread=thread, chamfer=Chamfer(angle, 6.85), flutes=flutes or tap.flutes)


def taps(tap: Tap) -> list[Tap]:
    narrow = replace(tap.flutes, count=6, cutter_diameter=1.6, offset=0.2, centre_radius=3.3)
    wide = replace(tap.flutes, count=2, cutter_diameter=3.0, offset=-1.0, centre_radius=3.6)
    return [
        cut(tap, angle, lead, flutes)
        for angle in (6.0, 30.0)
        for lead in (0.3, 3.0)
        for flutes in (tap.flutes, narrow, wide)
    ]


def cure(tap: Tap, relief: Relief) -> ChamferCure:
    return rubbing_of(on_chamfer(tap, relief), 7.0).cure


def test_the_least_drop_clears_the_whole_land_and_less_does_not(small_tap: Tap) -> None:
    for tap in taps(small_tap):
        found = cure(tap, concentric(CHAMFER))
        land = figures_of(tap).land_angle
        assert found.heel_drop is not None
        assert found.edge_angle is not None
        by_drop = eccentric_by_drop(CHAMFER, 8.05, land, found.heel_drop)
        by_edge = eccentric_by_edge(CHAMFER, 8.05, found.edge_angle)
        assert by_drop.arc_offset == pytest.approx(found.arc_offset, rel=1e-6)
        assert by_edge.arc_offset == pytest.approx(found.arc_offset, rel=1e-9)
        assert rubbing_of(on_chamfer(tap, by_edge), 7.0).chamfer.clearance_min_um > -0.001
        less = eccentric_by_drop(CHAMFER, 8.05, land, 0.99 * found.heel_drop)
        short = rubbing_of(on_chamfer(tap, less), 7.0).chamfer
        assert short.binds
        assert short.clearance_min_um < -0.005 * 1000 * found.heel_drop


def test_the_least_drop_is_what_the_advance_takes_where_the_land_ends_at_one_angle(
    small_tap: Tap,
) -> None:
    """At the crests the land is as wide as below them only by chance, so it is no less."""
    for tap in taps(small_tap):
        found = cure(tap, concentric(CHAMFER))
        slope = math.tan(math.radians(tap.chamfer.angle))
        at_crest = tap.thread.lead * slope * figures_of(tap).land_angle / 360
        assert found.heel_drop is not None
        assert found.heel_drop > 0.999 * at_crest


def test_the_safe_drop_has_its_reserve_at_the_heel(small_tap: Tap) -> None:
    threshold = Threshold(reserve=0.02)
    for tap in taps(small_tap):
        bare = on_chamfer(tap, concentric(CHAMFER))
        safe = rubbing_of(bare, 7.0, threshold).cure
        assert safe.safe_edge_angle is not None
        assert safe.safe_heel_drop is not None
        relief = eccentric_by_edge(CHAMFER, 8.05, safe.safe_edge_angle)
        heels = [
            rubbing_of(on_chamfer(tap, relief), bore).chamfer.heel_clearance_um
            for bore in (7.0, 7.4, 8.0)
        ]
        assert min(heels) > 0.99 * 20
        assert safe.heel_drop is not None
        assert safe.safe_heel_drop > safe.heel_drop
        land = figures_of(tap).land_angle
        assert safe.safe_arc_offset == pytest.approx(
            eccentric_by_drop(CHAMFER, 8.05, land, safe.safe_heel_drop).arc_offset, rel=1e-6
        )


def test_no_reserve_means_that_the_worst_heel_just_clears(small_tap: Tap) -> None:
    found = cure(small_tap, concentric(CHAMFER))
    assert found.edge_angle is not None
    relief = eccentric_by_edge(CHAMFER, 8.05, found.edge_angle)
    heels = [
        rubbing_of(on_chamfer(small_tap, relief), bore).chamfer.heel_clearance_um
        for bore in np.linspace(7.0, 8.04, 9)
    ]
    assert min(heels) > -1e-3


def test_the_widest_concentric_land_is_one_that_the_noise_covers(small_tap: Tap) -> None:
    found = cure(small_tap, concentric(CHAMFER))
    widest = 0.001 * 360 / (1.0 * (8.05 - 6.85) / 2 / 2.0)
    assert found.land_angle == pytest.approx(widest, rel=1e-6)
    assert found.land_width == pytest.approx(math.radians(widest) * 4.025, rel=1e-6)
    assert found.margin_angle is None


def test_the_widest_margin_leaves_the_noise(small_tap: Tap) -> None:
    tap = cut(small_tap, 8.0, 0.6)
    land = figures_of(tap).land_angle
    found = cure(tap, con_eccentric(CHAMFER, 8.05, land, 20.0, 0.2))
    assert found.margin_angle is not None
    proud = [
        rubbing_of(
            on_chamfer(tap, con_eccentric(CHAMFER, 8.05, land, margin, 0.2)), 7.0
        ).chamfer.clearance_min_um
        for margin in (found.margin_angle, 1.03 * found.margin_angle)
    ]
    assert proud[0] >= -1.01
    assert proud[1] < -1.0
    deep = cure(cut(small_tap, 30.0, 3.0), con_eccentric(CHAMFER, 8.05, land, 20.0, 0.02))
    assert deep.margin_angle is None


def test_a_chamfer_that_clears_needs_no_narrower_land(small_tap: Tap) -> None:
    found = cure(small_tap, eccentric_by_edge(CHAMFER, 8.05, 5.0))
    assert (found.land_angle, found.land_width, found.margin_angle) == (None, None, None)


def test_a_lead_that_no_arc_follows_has_no_drop_that_clears(small_tap: Tap) -> None:
    found = cure(cut(small_tap, 60.0, 40.0), concentric(CHAMFER))
    assert (found.heel_drop, found.edge_angle, found.safe_arc_offset) == (None, None, None)


@pytest.mark.parametrize("core", [2.0, 4.5, 6.6])
def test_a_larger_offset_never_takes_rake_at_the_same_core(core: float) -> None:
    """The ball's part of the face turns about the axis with it; its straight wall gains."""
    ball = 1.7
    offsets = np.linspace(-ball, min(0.95 * (core / 2 + ball), 4.0 - ball), 60)
    centres = [math.sqrt((core / 2 + ball) ** 2 - offset**2) for offset in offsets]
    rakes = [
        rake(FluteSection(ball, float(offset), centre), 4.025)
        for offset, centre in zip(offsets, centres, strict=True)
    ]
    assert np.all(np.diff(rakes) > -1e-9)
    # A shallow flute's edge stays on the arc whatever the offset.
    assert (rakes[-1] - rakes[0] > 1.0) == (core < 6.0)
