"""Room for the chips: what is cut against what the flutes hold."""

import math
from dataclasses import replace

import numpy as np
import pytest
from trial_taps import designed, grown, unrelieved

from tapmodel.prediction.chips.record import Chips
from tapmodel.prediction.chips.room import BULKING, Room, room_of
from tapmodel.prediction.chips.teeth import chips_of
from tapmodel.shape.flute_section import section_of, wall_angles
from tapmodel.tap.tap import Tap


def long(tap: Tap) -> Tap:
    """Flutes that do not end before they are full."""
    return replace(tap, flutes=replace(tap.flutes, full_depth_length=1e6))


def cut_at(tap: Tap, chips: Chips, depth: float) -> float:
    """Metal cut when the front is `depth` deep [mm³]."""
    return sum(
        2 * math.pi * tooth.radius * tooth.area * max(0.0, depth - tooth.height) / tap.thread.lead
        for tooth in chips.teeth
    )


def roomy(designation: str, bulking: float = BULKING) -> tuple[Tap, Chips, Room]:
    design = designed(designation)
    tap = long(design.tap)
    chips = chips_of(tap, design.drill)
    return tap, chips, room_of(tap, design.drill, chips, bulking)


def test_the_metal_of_a_sharp_thread() -> None:
    # A flank's width falls by 2 tan 30 deg for each mm of radius; r times it, integrated by hand.
    design = designed("M10")
    tap, thread = unrelieved(design.tap), design.tap.thread
    room = room_of(tap, design.drill, chips_of(tap, design.drill))
    slope, low, high = 2 * math.tan(math.radians(30)), design.drill / 2, thread.major / 2
    widest = thread.crest_flat + slope * high
    moment = widest * (high**2 - low**2) / 2 - slope * (high**3 - low**3) / 3
    assert room.chip_area == pytest.approx(2 * math.pi * moment / thread.pitch, rel=1e-12)


def test_the_flutes_end_at_the_wall_of_the_hole() -> None:
    for designation in ("M10", "Tr20x4", "M3"):
        design = designed(designation)
        flutes, wall = design.tap.flutes, design.drill / 2
        core, steps = flutes.core_diameter / 2, 200_000
        # By the square of the distance from the core, where the flute opens like a root.
        share = (np.arange(steps) + 0.5) / steps
        radii = core + (wall - core) * share**2
        section = section_of(flutes)
        opening = np.radians(wall_angles(section, radii, 1) - wall_angles(section, radii, -1))
        area = float(np.sum(opening * radii * 2 * share)) * (wall - core) / steps
        room = room_of(design.tap, design.drill, chips_of(design.tap, design.drill))
        assert room.flute_area == pytest.approx(flutes.count * area, rel=1e-7)
        assert room.flute_area < flutes.count * design.figures.flute_area


@pytest.mark.parametrize("designation", ["M10", "M3", "Tr20x4", "M20xPh6P1.5"])
@pytest.mark.parametrize("bulking", [9.0, 40.0, 300.0])
def test_flutes_are_full_where_the_chips_fill_them(designation: str, bulking: float) -> None:
    tap, chips, room = roomy(designation, bulking)
    assert room.ratio < 1
    depth = room.through
    assert bulking * cut_at(tap, chips, depth) == pytest.approx(room.flute_area * depth, rel=1e-9)
    for less in (0.3, 0.9, 0.99):
        assert bulking * cut_at(tap, chips, less * depth) < room.flute_area * less * depth
    assert room.blind == max(0.0, depth - tap.chamfer_length)


def test_roomy_flutes_are_as_deep_as_they_are_long() -> None:
    design = designed("M10")
    chips = chips_of(design.tap, design.drill)
    room = room_of(design.tap, design.drill, chips, 1.01)
    assert room.ratio > 1
    assert room.through == design.tap.flutes.full_depth_length
    assert room.blind == pytest.approx(room.through - design.tap.chamfer_length)
    twice = room_of(design.tap, design.drill, chips, 2.02)
    assert twice.ratio == pytest.approx(room.ratio / 2)


def test_a_hole_in_which_nothing_is_cut_has_room_for_it() -> None:
    design = designed("M10")
    major = design.tap.thread.major
    room = room_of(design.tap, major, chips_of(design.tap, major))
    assert (room.chip_area, room.ratio) == (0.0, math.inf)
    assert room.through == design.tap.flutes.full_depth_length


def test_a_larger_tap_is_as_roomy() -> None:
    tap, chips, room = roomy("M10", 30.0)
    drill, factor = designed("M10").drill, 2.5
    large = room_of(
        grown(tap, factor), factor * drill, chips_of(grown(tap, factor), factor * drill), 30.0
    )
    assert large.ratio == pytest.approx(room.ratio, rel=1e-12)
    assert large.through == pytest.approx(factor * room.through, rel=1e-9)
    assert chips.area_sum > 0
