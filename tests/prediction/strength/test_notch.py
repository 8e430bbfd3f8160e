"""The grooves of a thread against a solution for the body of revolution with the same profile.

It was computed with quadratic finite elements (accurate to 1 %) for four taps; here the grooves
are a row in antiplane shear.
"""

import math
from dataclasses import replace

import pytest

from tapmodel import design
from tapmodel.prediction.strength.notch import (
    critical_distance,
    notch_of,
    row_of_grooves,
    widest_corner,
)
from tapmodel.prediction.strength.record import Notch, RadiusHeld
from tapmodel.shape.profile import Part, Segment
from tapmodel.standards.materials.steels import TapSteel, steel_named
from tapmodel.tap.tap import TapThread

CORNERS = (0.1, 0.05, 0.03, 0.02, 0.01)
ROWS = {
    "M10": (8.108, (2.06, 2.29, 2.56, 2.82, 3.34), 8.46),
    "M6": (4.748, (2.03, 2.26, 2.53, 2.78, 3.30), 4.98),
    "M18x0.75": (17.07, (2.24, 2.48, 2.78, 3.05, 3.62), 17.25),
    "Tr16x4": (11.81, (1.66, 1.95, 2.23, 2.49, 3.04), 12.37),
}
CASES = [(name, n) for name in ROWS for n in range(len(CORNERS))]


def glass() -> TapSteel:
    """So brittle that no notch is too sharp for it."""
    return replace(steel_named("O1"), toughness=0.5)


def thread_of(name: str) -> TapThread:
    return design(name).tap.thread


def notch(thread: TapThread, nose: float | None) -> Notch:
    return notch_of(thread, glass(), 2000.0, nose)


@pytest.mark.parametrize(("name", "n"), CASES)
def test_concentration_of_four_taps(name: str, n: int):
    minor, factors, effective = ROWS[name]
    thread = thread_of(name)
    assert thread.minor == pytest.approx(minor, abs=0.01)
    found = notch(thread, CORNERS[n] * thread.pitch)
    assert found.factor == pytest.approx(factors[n], rel=0.008)
    assert found.held is RadiusHeld.TOOL
    assert found.effective_diameter == pytest.approx(effective, rel=0.005)


def test_sharp_corners_grow_by_the_power_of_their_angle():
    # A corner of 240 deg of steel: the stress at its tip grows with radius**-(1 - 180/240).
    thread = thread_of("M10")
    sharp, sharper = (notch(thread, share * thread.pitch).factor for share in (0.004, 0.002))
    assert math.log2(sharper / sharp) == pytest.approx(0.25, abs=0.01)


def test_a_lone_half_round_groove_doubles_the_stress():
    # Exact for one in a half space; in a row a radius of a hundredth of the pitch is as good.
    radius, half = 0.01, 0.5 - 0.01
    profile = (
        Segment(Part.CREST, -half, half, radius, radius),
        Segment(Part.REAR_FLANK, half, half, radius, radius),
        Segment(Part.ROOT, half, 1 - half, radius, radius, -radius * (1 + 1e-9)),
        Segment(Part.FRONT_FLANK, 1 - half, 1 - half, radius, radius),
    )
    factor, lift = row_of_grooves(profile, 0.0)
    assert factor == pytest.approx(2.0, abs=1e-3)
    # It seems to take away a layer of as much as its own area by the pitch, twice over.
    assert radius - lift == pytest.approx(math.pi * radius**2, rel=1e-3)


def test_the_radius_has_two_ends_and_says_which_held_it():
    thread, steel = thread_of("M6"), steel_named("O1")
    distance = critical_distance(18.0, 2000.0)
    assert distance == pytest.approx(0.0258, abs=5e-5)
    sharp = notch_of(thread, steel, 2000.0, 0.001)
    assert (sharp.held, sharp.radius) == (RadiusHeld.MATERIAL, pytest.approx(distance))
    blunt = notch_of(thread, steel, 2000.0, 5.0)
    assert (blunt.held, blunt.radius) == (RadiusHeld.ROOM, pytest.approx(widest_corner(thread)))
    assert notch_of(thread, steel, 2100.0, None).radius == pytest.approx(0.025 * thread.pitch)
    fits = math.tan(math.radians(30))
    assert widest_corner(thread) * fits == pytest.approx(thread.root_flat / 2)


def test_a_round_root_keeps_its_own_radius():
    thread = thread_of("1/2 BSW")
    found = notch(thread, 0.01)
    assert (found.held, found.radius) == (RadiusHeld.THREAD, thread.root_radius)
    assert notch(thread_of("1/2-13 UNC"), None).factor > found.factor > 1.5
