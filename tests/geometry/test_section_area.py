from math import pi, sqrt

import cadquery as cq
import numpy as np
import pytest

from tapmodel.checks.ideal.expected import section_area as expected_area
from tapmodel.errors import KernelError
from tapmodel.geometry.kernel.measure.section import section_area, section_areas
from tapmodel.geometry.kernel.measure.section_general import general_section_area
from tapmodel.tap.tap import Tap

UP = cq.Vector(0, 0, 1)
# Chamfer, thread, its last turn, neck with run-out, shoulder, shank, square, bevelled end.
STATIONS = np.array([0.71, 1.83, 3.37, 5.52, 8.03, 9.91, 12.24, 14.3, 20.0, 33.3, 35.87])


def test_round_bodies_beside_the_axis():
    at = cq.Vector(7, -4, 0)
    assert section_area(cq.Solid.makeCylinder(3, 5, at), 2.2) == pytest.approx(9 * pi, rel=1e-7)
    cone = cq.Solid.makeCone(4, 1, 6, at)
    assert section_area(cone, 2.0) == pytest.approx(9 * pi, rel=2e-7)
    ball = cq.Solid.makeSphere(5, at, UP, -90, 90, 360)
    assert section_area(ball, 3.0) == pytest.approx(16 * pi, rel=2e-7)


def test_holes_count_negative():
    plate = (
        cq.Workplane()
        .box(50, 20, 4)
        .faces(">Z")
        .workplane()
        .pushPoints([(-10, 3), (12, -2)])
        .hole(6)
        .val()
    )
    assert section_area(plate, 0.3) == pytest.approx(1000 - 2 * 9 * pi, rel=1e-9)


def test_lying_cylinder_is_cut_in_a_rectangle_even_close_to_its_top():
    lying = cq.Solid.makeCylinder(5, 20, cq.Vector(3, -2, 0), cq.Vector(1, 0.5, 0))
    # Off its own axis by an angle that puts no sample of the end circles on the top.
    lying = lying.rotate(cq.Vector(3, -2, 0), cq.Vector(4, -1.5, 0), 41.0)
    for z in (-1.0, 3.0, 4.9999):
        width = 2 * sqrt(25 - z**2)
        assert section_area(lying, z) == pytest.approx(20 * width, rel=2e-3 / 20 / width + 1e-7)


def test_drilled_across_leaves_two_pieces():
    block = cq.Solid.makeBox(10, 10, 10, cq.Vector(-5, -5, -5))
    drill = cq.Solid.makeCylinder(3, 12, cq.Vector(0, -6, 0), cq.Vector(0, 1, 0))
    drilled = block.cut(drill).Solids()[0]
    assert section_area(drilled, 1.5) == pytest.approx(100 - 20 * sqrt(9 - 2.25), rel=1e-6)


def test_plane_through_a_face_or_corner_gives_the_section_just_before():
    step = cq.Solid.makeBox(4, 4, 4).fuse(cq.Solid.makeBox(2, 2, 8)).clean().Solids()[0]
    assert section_areas(step, [0.0, 4.0, 4.1, 8.0, 8.1]) == pytest.approx([0, 16, 4, 4, 0])
    pyramid = cq.Solid.extrudeLinear(
        cq.Wire.makePolygon([(0, 0), (6, 0), (0, 6)], close=True), [], cq.Vector(0, 0, 2)
    ).rotate((0, 0, 0), (1, 0, 0), 90)
    # A right prism on its side: the plane holds its upper edge.
    assert section_area(pyramid, 6.0) == pytest.approx(0.0, abs=1e-6)
    assert section_area(pyramid, 3.0) == pytest.approx(6.0, rel=1e-6)


def test_tap_against_quadrature_of_the_definitions(small_tap: Tap, small_solid: cq.Solid):
    found = np.array(section_areas(small_solid, STATIONS.tolist()))
    assert found == pytest.approx(expected_area(small_tap, STATIONS), rel=1e-7)


def test_every_corner_of_the_tap_is_a_harmless_height(small_tap: Tap, small_solid: cq.Solid):
    corners = sorted({round(vertex.Z, 9) for vertex in small_solid.Vertices()})
    inside = [z for z in corners if 0.1 < z < small_tap.blank.overall_length]
    found = np.array(section_areas(small_solid, inside))
    # A plane that holds a step shows what lies in front of it.
    before = expected_area(small_tap, np.array(inside) - 1e-6)
    assert found == pytest.approx(before, rel=1e-5)


def test_mirror_image_has_the_same_areas(small_solid: cq.Solid):
    mirrored = small_solid.mirror("XZ").Solids()[0]
    heights = STATIONS.tolist()
    assert section_areas(mirrored, heights) == pytest.approx(
        section_areas(small_solid, heights), rel=1e-8
    )


def test_areas_do_not_depend_on_where_the_body_stands(small_solid: cq.Solid):
    moved = small_solid.moved(cq.Location((3, 4, 0), (0, 0, 1), 25))
    heights = STATIONS.tolist()
    # Curves follow their loci within 50 pm, which a turn of the body spreads anew.
    assert section_areas(moved, heights) == pytest.approx(
        section_areas(small_solid, heights), rel=1e-8
    )


def test_unknown_surfaces_are_refused():
    with pytest.raises(KernelError, match="Torus"):
        section_area(cq.Solid.makeTorus(10, 3), 0.5)


def test_any_surface_is_cut_by_the_kernel():
    leaning = cq.Solid.makeCylinder(2, 20, cq.Vector(0, 0, -10), cq.Vector(1, 0, 2))
    assert general_section_area(leaning, 0.3) == pytest.approx(4 * pi * sqrt(5) / 2, rel=1e-9)
    plate = cq.Workplane().box(50, 20, 4).faces(">Z").workplane().hole(6).val()
    assert general_section_area(plate, 0.3) == pytest.approx(1000 - 9 * pi, rel=1e-9)
    assert general_section_area(plate, 9.0) == 0.0


def test_both_ways_of_cutting_agree_on_a_tap(small_solid: cq.Solid):
    heights = STATIONS[[0, 2, 4]].tolist()
    found = [general_section_area(small_solid, z) for z in heights]
    assert found == pytest.approx(section_areas(small_solid, heights), rel=2e-7)
