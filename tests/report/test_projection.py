"""First and third angle put the views on opposite sides, and say so by their sign."""

import math
import re

import pytest
from alone import drawing_of
from asked import settled_of

from tapmodel.export.dxf.document import VISIBLE
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.drawings.projection import side_of, sign, sign_svg
from tapmodel.report.units import Projection


def _floors(drawing: Drawing, radius: float) -> list[float]:
    """Where the floors of the flutes stand along the side view [mm]."""
    arcs = drawing.document.modelspace().query("ARC")
    floors = [arc for arc in arcs if math.isclose(arc.dxf.radius, radius, rel_tol=1e-9)]
    return [float(arc.dxf.center.x) for arc in floors if arc.dxf.layer == VISIBLE]


def _circles(drawing: Drawing, radius: float) -> list[float]:
    circles = drawing.document.modelspace().query("CIRCLE")
    return [
        float(circle.dxf.center.x)
        for circle in circles
        if math.isclose(circle.dxf.radius, radius, rel_tol=1e-9)
    ]


@pytest.mark.parametrize("text", ["M18x0.75", "M10-LH"])
def test_the_cutting_end_is_seen_from_the_left(text: str) -> None:
    design = settled_of(text)
    ball, reach = design.tap.flutes.cutter_diameter / 2, design.tap.thread.major / 2
    first = _floors(drawing_of("side", design), ball)
    third = _floors(drawing_of("side", design, Projection.THIRD), ball)
    assert len(first) == len(third) == design.tap.flutes.count
    assert min(first) > design.tap.blank.overall_length + reach / 2
    assert max(third) < -reach / 2


def test_the_end_view_is_not_mirrored_with_its_place() -> None:
    design = settled_of("M18x0.75")
    ball = design.tap.flutes.cutter_diameter / 2
    views = [sorted(_floors(drawing_of("side", design, way), ball)) for way in Projection]
    first, third = ([x - sum(view) / len(view) for x in view] for view in views)
    assert first == pytest.approx(third)


def test_the_square_is_seen_from_the_right() -> None:
    design = settled_of("M18x0.75")
    shank = design.tap.blank.shank_diameter / 2
    (first,) = _circles(drawing_of("square", design), shank)
    (third,) = _circles(drawing_of("square", design, Projection.THIRD), shank)
    assert first < -shank
    assert third > design.tap.blank.square_length + shank


@pytest.mark.parametrize("projection", Projection)
def test_the_sign_follows_its_own_rule(projection: Projection) -> None:
    shape = sign(projection)
    heights = {x: abs(y) for x, y in shape.frustum}
    small, large = sorted(heights)
    assert heights[small] < heights[large]  # the small end is to the left, so seen from there
    seen_left = shape.centre[0] < small
    assert seen_left == (projection is Projection.THIRD)
    assert side_of(-1.0, projection) == (-1.0 if seen_left else 1.0)
    picture = sign_svg(projection)
    assert [float(x) for x in re.findall('cx="([-0-9.]+)"', picture)] == [shape.centre[0]] * 2
