"""Chips tooth by tooth: their sum is the thread, and each is what its tooth is first to reach."""

import math
from dataclasses import replace

import numpy as np
import pytest
from raster import raster_areas
from trial_taps import FAMILIES, designed, faced, grown, reliefs, relieved, unrelieved

from tapmodel.prediction.chips.edge import CuttingEdge
from tapmodel.prediction.chips.outlines import chip_outlines
from tapmodel.prediction.chips.record import Chips
from tapmodel.prediction.chips.teeth import chips_of
from tapmodel.shape.figures import chip_thickness, figures_of
from tapmodel.shape.flute_section import rake, section_of
from tapmodel.shape.profile import profile_radius, segments
from tapmodel.shape.relief import concentric, eccentric_by_edge
from tapmodel.tap.tap import Tap, TapThread
from tapmodel.words import Hand, ReliefPlace

RELIEFS = (
    (eccentric_by_edge, ReliefPlace.THREAD),
    (eccentric_by_edge, ReliefPlace.CHAMFER),
)


def above(thread: TapThread, radius: float) -> float:
    """Area of one unrelieved thread above a radius, by a fine sum over its profile [mm²]."""
    steps = 200_000
    w = (np.arange(steps) + 0.5) * thread.pitch / steps
    rest = np.maximum(profile_radius(segments(thread), w) - radius, 0.0)
    return float(np.sum(rest)) * thread.pitch / steps


def sized(tap: Tap, angle: float, point: float) -> Tap:
    return replace(tap, chamfer=replace(tap.chamfer, angle=angle, point_diameter=point))


def is_whole(chips: Chips) -> bool:
    return chips.area_sum == pytest.approx(chips.area_expected, rel=1e-12)


@pytest.mark.parametrize("designation", FAMILIES)
def test_the_chips_of_any_tap_are_its_finished_threads(designation: str) -> None:
    design = designed(designation)
    chips = chips_of(design.tap, design.drill)
    assert is_whole(chips)
    thread = design.tap.thread
    assert chips.area_sum == pytest.approx(
        thread.starts * above(thread, design.drill / 2), rel=2e-3
    )


@pytest.mark.parametrize("designation", FAMILIES)
def test_the_expected_area_is_that_of_the_profile(designation: str) -> None:
    design = designed(designation)
    tap, thread = unrelieved(design.tap), design.tap.thread
    for drill in (design.drill, thread.minor - 0.1 * thread.pitch, thread.pitch_diameter):
        expected = thread.starts * above(thread, drill / 2)
        assert chips_of(tap, drill).area_expected == pytest.approx(expected, rel=1e-8)


@pytest.mark.parametrize("designation", ["M10", "1/2 BSW", "Tr40x14P7"])
@pytest.mark.parametrize("hook", [-25.0, 0.0, 20.0])
def test_the_sum_holds_with_any_relief_rake_cone_point_and_drill(
    designation: str, hook: float
) -> None:
    tap = faced(designed(designation).tap, hook)
    thread = tap.thread
    drills = (thread.minor - 0.2 * thread.pitch, thread.minor, thread.pitch_diameter)
    for flanks in reliefs(ReliefPlace.THREAD, thread.major):
        for cone in reliefs(ReliefPlace.CHAMFER, thread.major):
            for drill in drills:
                for angle, share in ((4.0, 0.98), (20.0, 0.9), (45.0, 1.02)):
                    point = min(share * drill, 0.99 * thread.major)
                    changed = sized(relieved(tap, flanks, cone), angle, point)
                    assert is_whole(chips_of(changed, drill))


@pytest.mark.parametrize(
    ("designation", "hook"),
    [("M10", 12.0), ("1/2 BSW", -20.0), ("Tr20xPh8P4", 20.0), ("4 BA", 0.0)],
)
def test_each_chip_is_what_its_tooth_is_first_to_reach(designation: str, hook: float) -> None:
    design = designed(designation)
    tap = faced(design.tap, hook)
    major, thread = tap.thread.major, tap.thread
    shapes = [relief(place, major, 8.0) for relief, place in RELIEFS]
    tap = sized(relieved(tap, *shapes), 12.0, 0.96 * design.drill)
    for drill in (design.drill, thread.minor - 0.05 * thread.pitch):
        chips = chips_of(tap, drill)
        for start in range(thread.starts):
            found = raster_areas(tap, drill, start, 500)
            own = {round(tooth.height, 6): tooth.area for tooth in chips.teeth}
            assert len(found) >= 5
            for height, area in found.items():
                # Cells along the edges are counted whole or not at all.
                assert own[height] == pytest.approx(area, abs=1e-4 * thread.pitch**2)


def test_each_tooth_is_its_own_and_they_come_in_order() -> None:
    for designation in ("M10", "M20xPh6P1.5", "Tr40x14P7"):
        design = designed(designation)
        teeth, thread = chips_of(design.tap, design.drill).teeth, design.tap.thread
        assert len({(tooth.land, tooth.turn) for tooth in teeth}) == len(teeth)
        heights = [tooth.height for tooth in teeth]
        assert heights == pytest.approx(sorted(heights), abs=1e-6)
        for tooth in teeth:
            assert tooth.turn == math.floor(tooth.height / thread.pitch)
            assert design.drill / 2 < tooth.radius < thread.major / 2
            assert 0 < tooth.mean_thickness < tooth.thickness


def test_a_radial_face_makes_the_chip_that_the_figures_tell() -> None:
    for designation in FAMILIES:
        design = designed(designation)
        tap = unrelieved(faced(design.tap, 0.0))
        chips = chips_of(tap, design.drill)
        told = figures_of(tap).chip_thickness
        assert told == chip_thickness(tap.thread, tap.chamfer, 4)
        assert chips.thickness_max == pytest.approx(told, rel=1e-12)
        # All but the teeth that begin or end the thread cut as thick.
        full = [tooth for tooth in chips.teeth if tooth.thickness > 0.999999 * told]
        assert len(full) >= len(chips.teeth) - 5 * tap.thread.starts


def test_a_rake_turns_the_cones_edge() -> None:
    # A point of the face lies tan(rake)/r farther back for each mm farther in, and the helix
    # takes it lead/(2 pi) of that along the axis: by so much the edge leans more to the axis.
    drill = designed("M10").drill
    tap = unrelieved(faced(designed("M10").tap, 20.0))
    chips = chips_of(tap, drill)
    angle, lead, count = math.radians(tap.chamfer.angle), tap.thread.lead, tap.flutes.count
    leans: list[float] = []
    for radius in np.linspace(drill / 2 + 0.06, tap.thread.major / 2, 200).tolist():
        turn = math.tan(math.radians(rake(section_of(tap.flutes), radius))) / radius
        cotangent = 1 / math.tan(angle) + turn * lead / (2 * math.pi)
        leans.append(lead / count * math.sin(math.atan(1 / cotangent)))
    assert chips.thickness_max == pytest.approx(max(leans), rel=1e-5)
    assert chips.thickness_max < 0.998 * figures_of(tap).chip_thickness


@pytest.mark.parametrize("hook", [-15.0, 15.0])
def test_the_cones_edge_ends_with_the_chamfer_and_leans_as_it_runs(hook: float) -> None:
    tap = faced(designed("M10").tap, hook)
    for flanks in reliefs(ReliefPlace.THREAD, tap.thread.major):
        cone = replace(flanks, applies_to=ReliefPlace.CHAMFER)
        edge = CuttingEdge(relieved(tap, flanks, cone))
        crest = np.array([tap.thread.major / 2])
        assert edge.cone(crest)[0][0] == pytest.approx(tap.chamfer_length, rel=1e-12)
        radii, step = np.linspace(4.26, 5.0, 40), 1e-5
        runs = (edge.cone(radii + step)[0] - edge.cone(radii - step)[0]) / (2 * step)
        near = np.abs(runs - edge.cone(radii)[1]) < 1e-6 * runs
        # But where a law changes: the end of a margin, the foot of the straight face.
        assert np.sum(~near) <= 2


def test_the_published_feed_of_a_tooth() -> None:
    # Radial feed a = 0.5 P^2 / (z l4), l4 the chamfer's length: M10x1.5, z 3, l4 7.5 gives 0.05
    # mm: a tool maker's formula (LUB) with its row, as printed; 0.5 P stands for the depth cut.
    tap = unrelieved(faced(designed("M10").tap, 0.0))
    tap = replace(tap, flutes=replace(tap.flutes, count=3))
    angle = math.degrees(math.atan(0.5 * 1.5 / 7.5))
    tap = sized(tap, angle, tap.thread.major - 1.5)
    chips = chips_of(tap, tap.chamfer.point_diameter + 0.1)
    assert chips.thickness_max / math.cos(math.radians(angle)) == pytest.approx(0.05, abs=1e-12)


def test_which_teeth_cut() -> None:
    # A radial edge meets the wall where the cone is as wide as the hole; the rear flank of a tooth
    # reaches it first. It ends with the tooth whose crest lies wholly behind the cone.
    for designation in ("M10", "M20xPh6P1.5", "1/2-13 UNC"):
        design = designed(designation)
        tap = unrelieved(faced(design.tap, 0.0))
        thread, cone = tap.thread, tap.chamfer
        begins = (design.drill - cone.point_diameter) / 2 / math.tan(math.radians(cone.angle))
        begins -= thread.flanks.flat(design.drill - thread.pitch_diameter) / 2
        ends = tap.chamfer_length + thread.crest_flat / 2 + thread.lead / tap.flutes.count
        chips = chips_of(tap, design.drill)
        heights = [tooth.height for tooth in chips.teeth]
        first, last = min(heights), max(heights)
        assert begins < first
        assert last < ends
        counted = (ends - begins) / (thread.pitch / tap.flutes.count)
        assert abs(len(heights) - counted) <= thread.starts
        # The figures count crests between the front and the cone's end.
        told = figures_of(tap).chamfer_teeth
        inside = [z for z in heights if 0 <= z < tap.chamfer_length - 1e-9]
        assert len(inside) <= told
        before = told - len(inside)
        assert before == sum(
            z <= begins for z in all_crests(tap) if 0 <= z < tap.chamfer_length - 1e-9
        )


def all_crests(tap: Tap) -> list[float]:
    thread, count = tap.thread, tap.flutes.count
    edges = (360 * land / count for land in range(count))  # radial faces: the edge is at 0
    turns = range(-3 * thread.starts, int(tap.chamfer_length / thread.pitch) + 3)
    return [
        thread.first_z + thread.lead * edge / 360 + turn * thread.pitch
        for edge in edges
        for turn in turns
    ]


def test_a_larger_tap_cuts_as_its_square() -> None:
    for designation in ("M10", "G1/2", "M20xPh6P1.5"):
        design = designed(designation)
        small = chips_of(design.tap, design.drill)
        large = chips_of(grown(design.tap, 3.7), 3.7 * design.drill)
        assert large.area_sum == pytest.approx(3.7**2 * small.area_sum, rel=1e-12)
        assert large.area_expected == pytest.approx(3.7**2 * small.area_expected, rel=1e-12)
        for big, little in zip(large.teeth, small.teeth, strict=True):
            assert (big.land, big.turn) == (little.land, little.turn)
            assert big.area == pytest.approx(3.7**2 * little.area, rel=1e-8)
            for length in ("height", "thickness", "width", "radius"):
                expected = 3.7 * getattr(little, length)
                assert getattr(big, length) == pytest.approx(expected, rel=1e-7)


def test_a_left_hand_tap_cuts_the_same_chips() -> None:
    design = designed("M10")
    left = replace(design.tap, thread=replace(design.tap.thread, hand=Hand.LEFT))
    assert chips_of(left, design.drill) == chips_of(design.tap, design.drill)


def test_a_helix_moved_by_a_lands_share_changes_the_lands_alone() -> None:
    design = designed("M10")
    thread, count = design.tap.thread, design.tap.flutes.count
    moved = replace(thread, first_z=thread.first_z + thread.lead / count)
    own = chips_of(design.tap, design.drill).teeth
    others = chips_of(replace(design.tap, thread=moved), design.drill).teeth
    assert len(own) == len(others)
    for tooth, other in zip(own, others, strict=True):
        assert (other.land + 1) % count == tooth.land
        assert other.height == pytest.approx(tooth.height, abs=1e-9)
        assert other.area == pytest.approx(tooth.area, abs=1e-12)


def test_each_of_several_threads_is_cut_alike_where_the_lands_allow() -> None:
    # Two starts and four lands: the second thread's teeth stand at the heights of the first's.
    design = designed("M20xPh3P1.5", "flutes.count=4")
    areas: dict[float, list[float]] = {}
    for tooth in chips_of(design.tap, design.drill).teeth:
        areas.setdefault(round(tooth.height, 6), []).append(tooth.area)
    for pair in areas.values():
        assert len(pair) == 2
        assert pair[0] == pytest.approx(pair[1], rel=1e-6)


@pytest.mark.parametrize("designation", ["M10", "1/2-13 UNC"])
def test_a_larger_drill_takes_off_what_lies_below_it(designation: str) -> None:
    design = designed(designation)
    thread, drill = design.tap.thread, design.drill
    larger = drill + 0.1
    flats = [thread.flanks.flat(d - thread.pitch_diameter) for d in (drill, larger)]
    before, after = (chips_of(design.tap, d).area_sum for d in (drill, larger))
    assert before - after == pytest.approx(sum(flats) / 2 * 0.05, rel=1e-9)
    assert chips_of(design.tap, thread.major).teeth == ()
    assert chips_of(design.tap, thread.major + 1).area_expected == 0


def test_the_chips_have_the_moment_of_the_thread() -> None:
    design = designed("M10")
    thread = design.tap.thread
    radii = np.linspace(design.drill / 2, thread.major / 2, 100_001)
    widths = thread.flanks.sharp + thread.pitch_diameter - 2 * radii
    moments = widths * math.tan(math.radians(30)) * radii
    expected = float(np.sum(moments[1:] + moments[:-1]) / 2 * (radii[1] - radii[0]))
    chips = chips_of(unrelieved(design.tap), design.drill)
    found = sum(tooth.area * tooth.radius for tooth in chips.teeth)
    assert found == pytest.approx(expected, rel=1e-8)


@pytest.mark.parametrize("designation", ["M10", "1/2 BSW", "M20xPh6P1.5", "Tr20x4"])
@pytest.mark.parametrize("angle", [8.0, 20.0, 40.0])
def test_outlines_hold_the_chips_as_thick_and_wide_as_they_are_told(
    designation: str, angle: float
) -> None:
    design = designed(designation)
    tap = sized(unrelieved(faced(design.tap, 0.0)), angle, 0.97 * design.drill)
    own = {round(tooth.height, 6): tooth for tooth in chips_of(tap, design.drill).teeth}
    outlines = chip_outlines(tap, design.drill)
    assert len(outlines) * tap.thread.starts >= len(own)
    for outline in outlines:
        tooth = own[round(outline.height, 6)]
        (points,) = outline.parts
        w, r = points.T
        area = np.sum(w * np.roll(r, 1) - np.roll(w, 1) * r) / 2
        assert area == pytest.approx(tooth.area, rel=2e-3, abs=1e-6 * tap.thread.pitch**2)
        turned = math.radians(angle)
        along = w * math.cos(turned) + r * math.sin(turned)
        off = r * math.cos(turned) - w * math.sin(turned)
        assert np.ptp(along) == pytest.approx(tooth.width, rel=1e-9)
        assert longest_cut(along, off) == pytest.approx(tooth.thickness, rel=0.01)


def longest_cut(along: np.ndarray, off: np.ndarray) -> float:
    """The longest of many lines across a convex outline, all square to its first axis."""
    places = np.linspace(along.min(), along.max(), 4003)[1:-1]
    low, high = np.full_like(places, np.inf), np.full_like(places, -np.inf)
    ends = zip(along, off, np.roll(along, 1), np.roll(off, 1), strict=True)
    for a0, b0, a1, b1 in ends:
        if a0 != a1:
            share = (places - a0) / (a1 - a0)
            met = (share >= 0) & (share <= 1)
            at = b0 + share * (b1 - b0)
            low, high = (
                np.where(met, np.minimum(low, at), low),
                np.where(met, np.maximum(high, at), high),
            )
    return float(np.max(high - low))


def test_relief_of_the_crest_alone_leaves_the_chips() -> None:
    design = designed("M10")
    thread, chamfer = design.tap.thread, design.tap.relief.chamfer
    crest = eccentric_by_edge(ReliefPlace.CREST, thread.major, 6.0)
    plain = relieved(design.tap, concentric(ReliefPlace.CREST), chamfer)
    assert chips_of(relieved(design.tap, crest, chamfer), design.drill) == chips_of(
        plain, design.drill
    )
    whole = replace(crest, applies_to=ReliefPlace.THREAD)
    relieved_flanks = chips_of(relieved(design.tap, whole, chamfer), design.drill)
    assert relieved_flanks.area_sum < 0.9995 * chips_of(plain, design.drill).area_sum
