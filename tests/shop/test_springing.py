"""How far a blank gives way, held to the closed forms for beams of one thickness."""

import math
from dataclasses import replace

import pytest
from asked import settled_of

from tapmodel.shop.springing import Beam, last_pass, milling_sag, threading_sag

LOAD, LENGTH, DIAMETER = 50.0, 100.0, 8.0
STIFF = 206_000 * math.pi / 64 * DIAMETER**4


@pytest.mark.parametrize("at", [12.5, 50.0, 80.0])
def test_between_centres_it_sags_as_a_beam_on_two_supports(at: float) -> None:
    beam = Beam((40.0, LENGTH), (DIAMETER, DIAMETER), held=False)
    beyond = LENGTH - at
    exact = LOAD * at**2 * beyond**2 / (3 * STIFF * LENGTH)
    assert beam.sag(LOAD, at) == pytest.approx(exact, rel=1e-3)


@pytest.mark.parametrize("at", [12.5, 50.0, 80.0])
def test_gripped_at_one_end_it_sags_as_a_propped_beam(at: float) -> None:
    beam = Beam((LENGTH,), (DIAMETER,), held=True)
    to_grip = LENGTH - at
    exact = LOAD * at**2 * to_grip**3 * (3 * LENGTH + at) / (12 * STIFF * LENGTH**3)
    assert beam.sag(LOAD, at) == pytest.approx(exact, rel=1e-3)


def test_a_thin_piece_gives_as_its_share_of_the_moment() -> None:
    # Half of the beam half as thick is 16 times as soft; loaded in the middle, both halves bend
    # alike, so that the whole gives 17/2 times as much.
    whole = Beam((50.0, 100.0), (8.0, 8.0), held=False)
    thinned = Beam((50.0, 100.0), (4.0, 8.0), held=False)
    assert thinned.sag(LOAD, 50.0) == pytest.approx(8.5 * whole.sag(LOAD, 50.0), rel=1e-3)


def test_the_force_is_that_of_both_flanks_of_the_last_pass() -> None:
    design = settled_of("M18x0.75")
    tap = design.tap
    assert tap.blank.rear_centre > 0
    assert not tap.blank.has_neck
    assert last_pass(tap.thread) == 0.02
    chip = 0.02 / 2
    depth = (tap.thread.major - tap.thread.minor) / 2
    # O1: 2300 N/mm² at a chip of 1 mm and a rake of 6 deg, 6 % more at none
    cutting = 2300 * 1.06 * chip ** (1 - 0.21) * 2 * depth / math.cos(math.radians(30))
    lengths = (tap.blank.thread_length, tap.blank.overall_length)
    beam = Beam(lengths, (tap.thread.minor, tap.blank.shank_diameter), held=False)
    most = max(beam.sag(0.5 * cutting, lengths[0] * n / 8) for n in range(1, 9))
    assert threading_sag(design) == pytest.approx(most, rel=1e-6)


def test_the_cutters_force_is_that_of_one_tooth_in_a_step() -> None:
    design = settled_of("M18x0.75")
    flutes, blank = design.tap.flutes, design.tap.blank
    assert flutes.cutter_diameter == pytest.approx(8)
    # a tooth feeds 0.04 mm and cuts 0.8 mm deep; the shank is gripped over two diameters
    cutting = 2300 * 0.04 ** (1 - 0.21) * 0.8
    ends = (blank.thread_length, blank.overall_length - 2 * blank.shank_diameter)
    beam = Beam(ends, (flutes.core_diameter, blank.shank_diameter), held=True)
    most = max(beam.sag(cutting, ends[0] * n / 8) for n in range(1, 9))
    assert milling_sag(design) == pytest.approx(most, rel=1e-6)


def test_a_thinner_core_gives_more_under_the_cutter() -> None:
    design = settled_of("M10")
    flutes = design.tap.flutes
    deeper = replace(flutes, centre_radius=flutes.centre_radius - 0.2)
    thinner = replace(design, tap=replace(design.tap, flutes=deeper))
    assert deeper.core_diameter < flutes.core_diameter
    assert milling_sag(thinner) > 1.05 * milling_sag(design)
