"""Surfaces that meet are parted by less than the proof allows; others are left as they are."""

from dataclasses import replace
from itertools import islice

import numpy as np
import pytest

from tapmodel import precision
from tapmodel.checks.proof.mesh import prove_mesh
from tapmodel.designing.settle import settle
from tapmodel.geometry.kernel.build import build, build_solid
from tapmodel.geometry.kernel.measure.trimmed import TrimmedFaces
from tapmodel.geometry.trace.skin import CLEAR, skins
from tapmodel.shape.form import Form
from tapmodel.shape.parting import AS_DESIGNED, partings, shifts
from tapmodel.spec.job_file import job_for
from tapmodel.tap.tap import Tap

BAR = (
    *("thread.major=10.1", "blank.shank_diameter=10.1"),
    *("blank.neck_length=0", "blank.thread_length=9"),
)
"""A bar of the thread's own diameter, with few turns."""


def _with_shank(tap: Tap, diameter: float) -> Tap:
    return replace(tap, blank=replace(tap.blank, shank_diameter=diameter))


@pytest.mark.parametrize("shank", [0.5, 2.2, 6.0, 40.0])
def test_the_moves_stay_within_half_of_what_the_proof_allows(small_tap: Tap, shank: float) -> None:
    tap = _with_shank(small_tap, shank)
    least = min(shank, tap.blank.neck_diameter) / 2
    moves = [parting for group in partings(tap) for parting in group]
    assert {(p.turned > 0, p.depth > 0) for p in moves} == {
        *((True, True), (True, False), (False, True), (False, False))
    }
    for parting in moves:
        # The volume of a cylinder changes by twice the share of its radius.
        assert 0 < 2 * abs(parting.turned) / least <= precision.VOLUME / 2
        assert abs(parting.turned) <= precision.ANY_FACE / 10
        assert 0 < abs(parting.depth) <= precision.ANY_FACE / 10


def test_a_tap_without_contacts_is_made_as_designed(small_tap: Tap) -> None:
    assert next(skins(small_tap)).form.parting is AS_DESIGNED


def test_a_shank_as_thick_as_the_crests_is_parted_first() -> None:
    tap = settle(job_for("M10", BAR)).tap
    first, second = islice(skins(tap), 2)
    for skin in (first, second):
        gap = skin.form.turned[0].start_radius - skin.form.crest_radius
        assert abs(gap) == pytest.approx(1e-5, rel=1e-6)
    assert Form(tap).turned[0].start_radius == Form(tap).crest_radius


def test_a_corner_that_all_but_meets_the_end_of_the_thread_is_moved_clear() -> None:
    sets = ("blank.thread_length=4", "thread.tap_class=1", "flutes.cutter_diameter=6")
    tap = settle(job_for("M10x0.2", [*sets, "relief.thread.margin_angle=16.6"])).tap
    skin = next(skins(tap))
    assert abs(skin.form.parting.thread) == 1e-5 <= precision.THREAD_FACE / 2
    assert (skin.form.parting.turned, skin.form.parting.depth) == (0, 0)
    assert skin.form.parting in shifts()
    lengths = [np.linalg.norm(edge.end - edge.start) for edge in skin.edges]
    assert min(lengths) > CLEAR


def test_a_ball_that_stops_where_the_thread_ends_is_moved(small_tap: Tap) -> None:
    # The wall between the two planes has no height: its edges close, but it is no face.
    flutes = replace(small_tap.flutes, full_depth_length=small_tap.blank.thread_length)
    form = next(skins(replace(small_tap, flutes=flutes))).form
    assert abs(form.full_depth - form.thread_end) == pytest.approx(abs(form.parting.depth))
    assert form.parting.depth != 0


@pytest.mark.parametrize(("step", "lengths"), [(0.0, 1), (1e-9, 1), (-1e-9, 1), (1e-6, 3)])
def test_a_neck_like_the_shank_but_for_rounding_is_part_of_it(
    small_tap: Tap, step: float, lengths: int
) -> None:
    neck = small_tap.blank.shank_diameter - step
    blank = replace(small_tap.blank, neck_diameter=neck)
    assert len(Form(replace(small_tap, blank=blank)).turned) == lengths


def test_the_mesh_of_a_hairline_is_that_of_a_stand_in() -> None:
    design = settle(job_for("M10", [*BAR, "relief.thread.kind=concentric"]))
    chord = 0.01
    built = build(design.tap, chord)
    assert abs(built.stand_in) == chord / 2
    assert built.facets is None
    assert 0 < abs(built.parting.turned) <= 1e-5
    assert prove_mesh(built.mesh, chord).watertight
    # The shank alone tells the mesh from the solid: its radius is the stand-in's.
    z = design.tap.blank.square_start - 1.0
    radii = np.hypot(*built.mesh.vertices[np.abs(built.mesh.vertices[:, 2] - z) < 15][:, :2].T)
    assert radii.max() == pytest.approx(10.1 / 2 + built.stand_in, abs=1e-6)


def test_where_to_look_in_a_solid_with_a_hairline_is_told_by_few_triangles() -> None:
    """A chord of nanometres would give the faces beside the ring a thousand triangles each."""
    two_starts = [
        *("thread.major=10.05", "blank.shank_diameter=10.05"),
        *("blank.neck_length=0", "blank.thread_length=1.2mm"),
        *("flutes.count=3", "flutes.cutter_diameter=1.25", "flutes.offset=0", "chamfer.angle=45"),
        *("relief.thread.kind=concentric", "relief.chamfer.kind=eccentric"),
    ]
    solid = build_solid(settle(job_for("M10xPh0.4P0.2", two_starts)).tap)
    faces = TrimmedFaces(solid)
    assert min(faces.sizes) > 0
    assert len(faces.owner) / len(faces.faces) < 200
