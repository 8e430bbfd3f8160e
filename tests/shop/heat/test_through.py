"""The thickest round of the fluted section, and which sections stay soft inside."""

import math

import numpy as np
import pytest
from asked import settled_of

from tapmodel.shape.thickest import thickest_round
from tapmodel.shape.turned import Turned, thickest_behind
from tapmodel.shop.heat.through import Where, of_design


@pytest.mark.parametrize("size", ["M3", "M10", "M18x0.75", "M64", "Tr16x4"])
def test_it_stands_about_the_axis_between_three_flutes_and_more(size: str) -> None:
    tap = settled_of(size, []).tap
    assert thickest_round(tap) == pytest.approx(tap.flutes.core_diameter, rel=2e-3)


def test_between_few_small_flutes_it_stands_in_a_land() -> None:
    sets = ["flutes.count=2", "flutes.cutter_diameter=3", "flutes.core_diameter=2"]
    tap = settled_of("M12", sets).tap
    # Derived another way: a fine polar raster of a land, and both flutes as discs and strips.
    outer, flutes = tap.thread.minor / 2, tap.flutes
    radius, turn = np.meshgrid(np.linspace(0, outer, 600), np.linspace(0, 2 * math.pi, 1500))
    x, y = radius * np.cos(turn), radius * np.sin(turn)
    room = outer - radius
    for side in (1, -1):
        u, t = side * x, side * y - flutes.offset
        gap = np.where(u > flutes.centre_radius, np.abs(t), np.hypot(u - flutes.centre_radius, t))
        room = np.minimum(room, gap - flutes.cutter_diameter / 2)
    assert 2 * room.max() > 1.2 * flutes.core_diameter
    assert thickest_round(tap) == pytest.approx(2 * room.max(), rel=3e-3)


def test_each_section_is_judged_by_its_own_thickness() -> None:
    sets = ["tap.material=W1", "blank.shank_diameter=14"]
    judged = of_design(settled_of("M18x0.75", sets))
    assert [section.where for section in judged.sections] == [Where.SHANK, Where.FLUTED]
    assert [section.where for section in judged.too_thick] == [Where.SHANK]
    assert of_design(settled_of("M18x0.75", [])).too_thick == ()


def test_what_is_solid_behind_the_flutes_is_judged_where_it_is_thicker_than_the_shank() -> None:
    design = settled_of("M64x1")
    blank, runout = design.tap.blank, design.figures.runout_end
    # The flutes leave the neck, which is thicker than the shank, before it ends.
    assert blank.thread_length < runout < blank.thread_length + blank.neck_length
    judged = of_design(design)
    assert [(s.where, s.diameter) for s in judged.sections[:2]] == [
        (Where.SHANK, blank.shank_diameter),
        (Where.BEHIND, blank.neck_diameter),
    ]
    assert [section.where for section in judged.too_thick] == [Where.BEHIND]
    lengths = (Turned(0, 10, 5, 5), Turned(10, 14, 5, 3), Turned(14, 30, 3, 3))
    assert thickest_behind(lengths, 12.0) == pytest.approx(8.0)
    assert thickest_behind(lengths, 14.0) == 6.0
