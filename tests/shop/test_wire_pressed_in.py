"""The exact solution against a wire pressed numerically into the two flanks of its groove.

Another formulation: no contacts, no normals, no ball. Looking along a wire that leans by `lean`
from the plane square to the tap's axis, a point of metal at height x and lateral distance v from
the wire's plane of symmetry keeps the wire's axis at least at x + sqrt((w/2)**2 - v**2). The
largest of that over both flanks is where the wire comes to rest; it then leans to lie deepest.
"""

import math

import numpy as np
import pytest

from tapmodel.shop.wires.crest_clearance import fouls_crest
from tapmodel.shop.wires.groove import Groove
from tapmodel.shop.wires.over_wires import best_wire, measurement, seated

ZOOMS, GRID = 12, 41

# Height of crest above and depth of root below the pitch line, in pitches, by flank angle.
DEPTH = {30.0: 0.38, 27.5: 0.32, 23.75: 0.3, 15.0: 0.27, 14.5: 0.27}


def held_at(groove: Groove, wire: float, lean: float, hand: int) -> float:
    """Height of the axis of a wire that leans by `lean` [rad]."""
    return max(flank_holds(groove, wire, lean, side, hand) for side in (1, -1))


def flank_holds(groove: Groove, wire: float, lean: float, side: int, hand: int) -> float:
    slope, middle = math.tan(math.radians(groove.flank_angle)), groove.pitch_diameter / 2
    reach = DEPTH[groove.flank_angle] * groove.pitch
    low = np.array([max(middle - reach, middle * 0.05), -1.2])
    high = np.array([middle + reach, 1.2])
    centre, span = (low + high) / 2, (high - low) / 2
    for _ in range(ZOOMS):
        r = np.clip(np.linspace(*(centre[0] + span[0] * np.array([-1, 1])), GRID), low[0], high[0])
        theta = np.linspace(*(centre[1] + span[1] * np.array([-1, 1])), GRID)
        r, theta = np.meshgrid(r, theta, indexing="ij")
        z = hand * groove.lead * theta / math.tau
        z = z + side * (groove.pitch / 4 + (r - middle) * slope)
        lateral = z * math.cos(lean) - r * np.sin(theta) * math.sin(lean)
        room = (wire / 2) ** 2 - lateral**2
        height = np.where(room > 0, r * np.cos(theta) + np.sqrt(np.maximum(room, 0)), -np.inf)
        best = np.unravel_index(np.argmax(height), height.shape)
        centre = np.array([r[best], theta[best]])
        span = span * 0.2
    return float(height[best])


def deepest(groove: Groove, wire: float, hand: int = 1) -> tuple[float, float]:
    """Lean at which the wire lies deepest [rad], by golden section, and its axis's height there."""
    golden = (math.sqrt(5) - 1) / 2
    steepest = math.radians(groove.lead_angle)
    low, high = hand * steepest * 0.5, hand * steepest * 1.3
    for _ in range(26):
        inner = high - golden * (high - low), low + golden * (high - low)
        if held_at(groove, wire, inner[0], hand) < held_at(groove, wire, inner[1], hand):
            high = inner[1]
        else:
            low = inner[0]
    lean = (low + high) / 2
    return lean, held_at(groove, wire, lean, hand)


def pressed_in(groove: Groove, wire: float, hand: int = 1) -> float:
    """Measurement over the wire where it lies deepest."""
    return 2 * deepest(groove, wire, hand)[1] + wire


CASES = [
    (30.0, 3.0, 1.0),
    (30.0, 20.0, 1.05),
    (30.0, 45.0, 0.97),
    (27.5, 12.0, 0.95),
    (23.75, 30.0, 1.0),
    (15.0, 4.0, 1.0),
    (14.5, 7.0, 1.05),
    (14.5, 25.0, 0.97),
    (14.5, 40.0, 1.0),
    (14.5, 45.0, 1.1),
]


def inclined(flank_angle: float, lead_angle: float) -> Groove:
    """Pitch 1 and as many starts as leave a groove at that lead angle on a stout core."""
    starts = max(1, round(lead_angle / 4))
    return Groove(flank_angle, 1.0, starts, starts / (math.pi * math.tan(math.radians(lead_angle))))


@pytest.mark.parametrize(("flank_angle", "lead_angle", "share"), CASES)
def test_wire_rests_where_the_exact_solution_says(
    flank_angle: float, lead_angle: float, share: float
):
    groove = inclined(flank_angle, lead_angle)
    wire = share * best_wire(groove)
    assert measurement(groove, wire) == pytest.approx(pressed_in(groove, wire), abs=1e-7)


@pytest.mark.parametrize(("flank_angle", "lead_angle", "share"), CASES)
def test_wire_leans_as_the_exact_solution_says(flank_angle: float, lead_angle: float, share: float):
    groove = inclined(flank_angle, lead_angle)
    wire = share * best_wire(groove)
    lean, _ = deepest(groove, wire)
    assert seated(groove, wire).lean == pytest.approx(math.degrees(lean), abs=0.002)


@pytest.mark.parametrize(("share", "fouls"), [(1.0, True), (1.1, False)])
def test_crest_that_a_straight_wire_fouls_is_found(share: float, fouls: bool):
    """Acme at 45 degrees: the best wire rests on the crests' corners, a thicker one does not."""
    groove = inclined(14.5, 45.0)
    wire = share * best_wire(groove)
    crest = groove.pitch_diameter / 2 + DEPTH[14.5] * groove.pitch
    rests_higher = pressed_in(groove, wire) > measurement(groove, wire) + 1e-4
    assert rests_higher == fouls
    assert fouls_crest(groove, wire, crest) == fouls


def test_left_hand_measures_the_same():
    groove = inclined(15.0, 10.0)
    wire = best_wire(groove)
    assert pressed_in(groove, wire, hand=-1) == pytest.approx(measurement(groove, wire), abs=1e-7)
