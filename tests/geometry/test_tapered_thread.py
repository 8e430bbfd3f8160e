"""The back taper of the solid and of the preview: what is lost, and where."""

import sys
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from rounded import rounded

sys.path.insert(0, str(Path(__file__).parents[1] / "checks"))

import designs

from tapmodel.checks.ideal.deviation import distance_to_ideal
from tapmodel.checks.ideal.expected import solid_volume
from tapmodel.checks.ideal.laws import from_crest, profile_radius
from tapmodel.checks.proof.mesh import prove_mesh
from tapmodel.checks.proof.mesh_report import check_mesh
from tapmodel.checks.proof.solid import prove_solid
from tapmodel.checks.proof.verdict import differences, faults
from tapmodel.geometry.kernel.build import build, build_solid
from tapmodel.geometry.kernel.measure.sampling import sample_faces
from tapmodel.geometry.kernel.measure.trimmed import TrimmedFaces
from tapmodel.geometry.preview.quick_mesh import preview_mesh
from tapmodel.shape import relief
from tapmodel.shape.form import Form
from tapmodel.shape.walls import FACE
from tapmodel.tap.tap import Tap
from tapmodel.words import Hand, ReliefPlace

CHAMFER_END = 6.0
"""Of the hand-built M10, where its diameters are as stated [mm]."""


def narrowing(tap: Tap, back_taper: float) -> Tap:
    return replace(tap, thread=replace(tap.thread, back_taper=back_taper))


def with_relief(tap: Tap, place: ReliefPlace) -> Tap:
    made = relief.con_eccentric(place, tap.thread.major, 70.0, 20.0, 0.03)
    return replace(tap, relief=replace(tap.relief, thread=made))


def test_every_part_of_the_profile_narrows_by_half_of_what_is_stated() -> None:
    tap = narrowing(designs.m10(), 0.1)
    points = sample_faces(TrimmedFaces(build_solid(tap), None), 3, 6000).points
    radius, z = np.hypot(points[:, 0], points[:, 1]), points[:, 2]
    w = from_crest(tap.thread, np.degrees(np.arctan2(points[:, 1], points[:, 0])), z)
    lost = profile_radius(tap.thread, w) - radius
    on = distance_to_ideal(tap, points).surface == "thread"
    assert on.sum() > 500
    # 0.05 mm of radius on 100 mm.
    assert np.abs(lost[on] - 0.0005 * (z[on] - CHAMFER_END)).max() < 2e-8
    assert lost[on].min() < -0.001
    assert lost[on].max() > 0.0085
    for part in (np.abs(w) < 0.05, np.abs(np.abs(w) - 0.375) < 0.2, np.abs(w) > 0.7):
        assert (on & part).sum() > 20


@pytest.mark.parametrize(
    "kind", ["whole thread relieved", "crest relieved", "rounded", "left hand of two starts"]
)
def test_a_solid_that_narrows_passes_its_proof(kind: str, small_tap: Tap) -> None:
    tap = {
        "whole thread relieved": with_relief(small_tap, ReliefPlace.THREAD),
        "crest relieved": with_relief(small_tap, ReliefPlace.CREST),
        "rounded": rounded(small_tap),
        "left hand of two starts": replace(
            small_tap, thread=replace(small_tap.thread, hand=Hand.LEFT, starts=2)
        ),
    }[kind]
    tap = narrowing(tap, 0.5)
    made = build(tap, 0.02)
    proof = prove_solid(tap, made.solid, made.facets)
    assert faults(proof, prove_mesh(made.mesh, 0.02)) == []
    assert max(proof.deviation_um_max, proof.ideal_um_max) < 1e-3
    assert abs(proof.volume_relative_error) < 1e-7


def test_one_that_narrows_by_one_percent_more_does_not() -> None:
    tap = narrowing(designs.shortened(designs.m10(), 6), 0.1)
    solid = build_solid(tap)
    assert differences(prove_solid(tap, solid)) == []
    assert differences(prove_solid(narrowing(tap, 0.101), solid))


def test_the_quadrature_of_one_that_narrows_has_converged(small_tap: Tap) -> None:
    for tap in (narrowing(small_tap, 0.5), narrowing(rounded(small_tap), 0.5)):
        assert solid_volume(tap) == pytest.approx(solid_volume(tap, 3), rel=2e-8)


@pytest.mark.parametrize("place", [ReliefPlace.THREAD, ReliefPlace.CREST])
def test_the_preview_loses_as_much(place: ReliefPlace, small_tap: Tap) -> None:
    tap = with_relief(small_tap, place)
    lost = solid_volume(tap) - solid_volume(narrowing(tap, 0.5))
    meshes = [preview_mesh(made) for made in (tap, narrowing(tap, 0.5))]
    whole, less = (check_mesh(mesh.vertices, mesh.triangles).volume for mesh in meshes)
    shown = whole - less
    assert shown == pytest.approx(lost, rel=0.01)
    assert lost > 0.2


def test_a_crest_relieved_alone_behind_an_edge_of_negative_rake_closes(small_tap: Tap) -> None:
    """Thinner turns have their edge in front of the stated one, where the relief's arc rises."""
    flutes = replace(small_tap.flutes, offset=-2.2, cutter_diameter=3.0)
    eccentric = relief.eccentric_by_edge(ReliefPlace.CREST, small_tap.thread.major, 5.0)
    made = replace(small_tap, flutes=flutes)
    made = narrowing(replace(made, relief=replace(made.relief, thread=eccentric)), 0.5)
    built = build(made, 0.02)
    proof = prove_solid(made, built.solid, built.facets)
    assert faults(proof, prove_mesh(built.mesh, 0.02)) == []
    assert abs(proof.volume_relative_error) < 1e-7
    # the face leans the other way than with positive rake
    assert Form(made).wall_phi(FACE, np.array([4.0])) < 0
