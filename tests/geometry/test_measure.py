from math import pi

import cadquery as cq
import pytest

from tapmodel.checks.ideal.expected import solid_volume
from tapmodel.errors import KernelError
from tapmodel.geometry.kernel.build import build_solid
from tapmodel.geometry.kernel.measure.solid import Counts, counts, is_valid, volume
from tapmodel.geometry.kernel.solid import shapes as kernel
from tapmodel.geometry.kernel.topology import faces
from tapmodel.tap.tap import Tap


def _plate(holes: int) -> cq.Solid:
    places = [(10.0 * n, 0.0) for n in range(holes)]
    return cq.Workplane().box(50, 20, 3).faces(">Z").workplane().pushPoints(places).hole(4).val()


def test_genus_counts_through_holes_whatever_the_seams_and_inner_wires():
    torus = cq.Solid.makeTorus(10, 3)
    assert counts(torus) == Counts(solids=1, faces=1, edges=2, genus=1)
    assert [counts(_plate(holes)).genus for holes in (1, 2, 3)] == [1, 2, 3]


def test_genus_of_round_bodies_with_shrunken_edges_is_zero():
    bodies = [
        cq.Solid.makeSphere(5, angleDegrees1=-90, angleDegrees2=90),
        cq.Solid.makeCone(3, 0, 5),
        cq.Solid.makeCylinder(3, 5),
        cq.Workplane().box(5, 5, 5).faces(">Z").workplane().hole(2, depth=1).val(),
    ]
    assert [counts(body).genus for body in bodies] == [0, 0, 0, 0]


def test_a_hollow_body_has_two_shells_without_holes():
    hollow = cq.Solid.makeBox(9, 9, 9).cut(cq.Solid.makeBox(1, 1, 1, cq.Vector(4, 4, 4)))
    assert counts(hollow.Solids()[0]) == Counts(solids=1, faces=12, edges=24, genus=0)


def test_an_open_shell_is_no_boundary():
    five = cq.Solid(kernel.solid(faces(cq.Solid.makeBox(1, 2, 3).wrapped)[:5]))
    assert not is_valid(five)
    with pytest.raises(KernelError, match="not closed"):
        counts(five)


def test_volume_of_known_bodies():
    assert volume(cq.Solid.makeTorus(10, 3)) == pytest.approx(2 * pi**2 * 10 * 3**2, rel=1e-9)
    assert volume(cq.Solid.makeCone(3, 1, 6)) == pytest.approx(pi * 2 * 13, rel=1e-9)


def test_the_stated_precision_is_asked_of_the_kernel():
    # Four turns on one face: the kernel's plain integral stops at 1e-6.
    twisted = cq.Workplane().center(8, 0).rect(3, 2).twistExtrude(20, 1500).val()
    coarse, fine = volume(twisted, 1e-3), volume(twisted, 1e-9)
    assert abs(coarse - fine) > 1e-6 * fine
    assert volume(twisted) == pytest.approx(fine, rel=1e-8)


def test_a_body_inside_out_has_negative_volume_but_passes_as_valid():
    box = cq.Solid.makeBox(1, 2, 3)
    turned = cq.Solid(box.wrapped.Complemented())
    assert is_valid(turned)
    assert volume(turned) == pytest.approx(-6.0, rel=1e-12)


def test_tap_is_one_sound_body_of_the_volume_by_quadrature(small_tap: Tap, small_solid: cq.Solid):
    found = counts(small_solid)
    assert (found.solids, found.genus) == (1, 0)
    assert found.faces == len(small_solid.Faces())
    assert found.edges == len(small_solid.Edges())
    assert is_valid(small_solid)
    assert volume(small_solid) == pytest.approx(solid_volume(small_tap), rel=1e-7)


def test_left_hand_has_the_same_measures(left_tap: Tap, small_solid: cq.Solid):
    left = build_solid(left_tap)
    assert counts(left) == counts(small_solid)
    assert is_valid(left)
    assert volume(left) == pytest.approx(volume(small_solid), rel=1e-9)
