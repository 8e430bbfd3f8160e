"""Laws of the measurement over wires, for all straight-flank forms."""

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapmodel.errors import InputError
from tapmodel.shop.wires.groove import Groove
from tapmodel.shop.wires.over_wires import (
    best_wire,
    conventional_wire,
    growth_with_flank_angle,
    growth_with_wire,
    lead_corrected_measurement,
    measurement,
    pitch_diameter_from,
    seated,
    simple_measurement,
    wire_touching_at,
)

forms = st.sampled_from((30.0, 27.5, 23.75, 15.0, 14.5))
pitches = st.floats(0.2, 12.0)
slender = st.floats(4.0, 60.0)
shares = st.floats(0.92, 1.5)
lead_angles = st.floats(0.1, 35.0)


def thread(flank_angle: float, pitch: float, slenderness: float, lead_angle: float) -> Groove:
    diameter = slenderness * pitch
    lead = math.pi * diameter * math.tan(math.radians(lead_angle))
    return Groove(flank_angle, pitch, lead, diameter)


threads = st.builds(thread, forms, pitches, slender, lead_angles)


@given(threads, shares)
def test_ring_groove_is_the_simple_formula(groove: Groove, share: float):
    ring = replace(groove, lead=0.0)
    wire = share * best_wire(ring)
    assert measurement(ring, wire) == pytest.approx(simple_measurement(ring, wire), rel=1e-13)
    assert best_wire(ring) == pytest.approx(
        ring.pitch / 2 / math.cos(math.radians(ring.flank_angle)), rel=1e-13
    )


@given(threads, shares)
def test_conventional_wire_is_the_best_of_the_ring_groove(groove: Groove, share: float):
    ring = replace(groove, lead=0.0)
    assert conventional_wire(groove) == pytest.approx(best_wire(ring), rel=1e-13)
    # In the ring groove M = E + w (1 + 1/sin a) - P/(2 tan a).
    sine = math.sin(math.radians(groove.flank_angle))
    wire = share * conventional_wire(groove)
    assert growth_with_wire(ring, wire) == pytest.approx(1 + 1 / sine, rel=1e-8)


@given(threads, shares)
def test_a_wrong_flank_angle_is_read_by_every_wire_but_the_best(groove: Groove, share: float):
    ring = replace(groove, lead=0.0)
    wire, step = share * best_wire(ring), 0.01
    steep, flat = (
        simple_measurement(replace(ring, flank_angle=ring.flank_angle + way * step), wire)
        for way in (1, -1)
    )
    grown = (steep - flat) / (2 * step)
    assert growth_with_flank_angle(ring, wire) == pytest.approx(
        grown, rel=1e-3, abs=1e-5 * ring.pitch
    )
    assert growth_with_flank_angle(groove, best_wire(groove)) == 0


@given(threads, shares)
def test_thicker_wire_is_read_as_a_larger_pitch_diameter(groove: Groove, share: float):
    """A micrometre of wire shows up in the pitch diameter found, by the growth of the reading."""
    wire, slip = share * best_wire(groove), 1e-5 * groove.pitch
    found = pitch_diameter_from(groove, wire - slip, measurement(groove, wire))
    in_diameter = (found - groove.pitch_diameter) / slip
    by_diameter = 1e-4 * groove.pitch
    grown = measurement(
        replace(groove, pitch_diameter=groove.pitch_diameter + by_diameter), wire
    ) - measurement(groove, wire)
    expected = growth_with_wire(groove, wire) / (grown / by_diameter)
    assert in_diameter == pytest.approx(expected, rel=1e-3)


@given(forms, pitches, slender, shares, st.floats(0.05, 1.0))
def test_exact_tends_to_simple_with_the_square_of_the_lead(
    flank_angle: float, pitch: float, slenderness: float, share: float, lead_angle: float
):
    groove = thread(flank_angle, pitch, slenderness, lead_angle)
    wire = share * best_wire(groove)

    def excess(groove: Groove) -> float:
        return measurement(groove, wire) - simple_measurement(groove, wire)

    whole, half = excess(groove), excess(replace(groove, lead=groove.lead / 2))
    assert whole > 0
    assert half == pytest.approx(whole / 4, rel=0.01, abs=1e-12 * groove.pitch_diameter)


@given(threads, shares)
def test_pitch_diameter_found_back(groove: Groove, share: float):
    wire = share * best_wire(groove)
    found = pitch_diameter_from(groove, wire, measurement(groove, wire))
    assert found == pytest.approx(groove.pitch_diameter, abs=1e-9)


@given(threads, shares, st.floats(1e-6, 0.1))
def test_grows_with_wire_and_pitch_diameter(groove: Groove, share: float, more: float):
    wire = share * best_wire(groove)
    larger = replace(groove, pitch_diameter=groove.pitch_diameter * (1 + more))
    base = measurement(groove, wire)
    assert measurement(larger, wire) > base
    # A thicker wire grows on its outer side alone by that much, and its axis is lifted as well.
    assert measurement(groove, wire * (1 + more)) > base + wire * more


@given(threads, shares, st.floats(0.01, 100.0))
def test_scales_with_all_lengths(groove: Groove, share: float, factor: float):
    wire = share * best_wire(groove)
    scaled = Groove(
        groove.flank_angle,
        groove.pitch * factor,
        groove.lead * factor,
        groove.pitch_diameter * factor,
    )
    expected = measurement(groove, wire) * factor
    assert measurement(scaled, wire * factor) == pytest.approx(expected, rel=1e-12)


@given(threads)
def test_best_wire_touches_at_the_pitch_diameter(groove: Groove):
    lying = seated(groove, best_wire(groove))
    assert 2 * lying.contact_radius == pytest.approx(groove.pitch_diameter, rel=1e-10)


@given(threads, st.floats(-0.2, 0.2))
def test_wire_for_a_contact_touches_there(groove: Groove, height: float):
    radius = groove.pitch_diameter / 2 + height * groove.pitch
    wire = wire_touching_at(groove, radius)
    assert seated(groove, wire).contact_radius == pytest.approx(radius, rel=1e-10)


def test_no_wire_touches_below_the_sharp_root():
    groove = Groove(30.0, 1.0, 1.0, 10.0)
    assert wire_touching_at(groove, 5.0 - 0.5) == 0.0


@given(threads)
def test_lead_correction_takes_up_most_of_the_lead(groove: Groove):
    """Formula (2) leaves less than a fifth of what the simple formula misses, up to 10 degrees."""
    tangent = min(math.tan(math.radians(10.0)), groove.lead / math.pi / groove.pitch_diameter)
    groove = replace(groove, lead=tangent * math.pi * groove.pitch_diameter)
    wire = best_wire(groove)
    exact = measurement(groove, wire)
    missed = exact - simple_measurement(groove, wire)
    left = lead_corrected_measurement(groove, wire) - exact
    assert 0 < left < 0.2 * missed


# Worked out beforehand by another program with the same model: pitch diameter, wire, lead, exact M.
WORKED = {
    "M3x0.5": (30.0, 0.5, 2.675, 0.2887, 0.5, 3.10881),
    "M6x1": (30.0, 1.0, 5.350, 0.5774, 1.0, 6.21763),
    "M20x2.5": (30.0, 2.5, 18.376, 1.4434, 2.5, 20.54309),
    "1/4-20": (30.0, 0.05, 0.2175, 0.02887, 0.05, 0.26092),
    "Tr20x4": (15.0, 4.0, 18.000, 2.07056, 4.0, 20.62456),
    "Acme 1/2-10": (14.5, 0.1, 0.4500, 0.051645, 0.1, 0.51504),
    "M10 P1.5 3-start": (30.0, 1.5, 9.026, 0.8660, 4.5, 10.34044),
}


@pytest.mark.parametrize("name", WORKED)
def test_worked_beforehand(name: str):
    flank_angle, pitch, diameter, wire, lead, expected = WORKED[name]
    found = measurement(Groove(flank_angle, pitch, lead, diameter), wire)
    # The inputs were written down rounded to as many digits as the result.
    assert found == pytest.approx(expected, abs=1e-5)


def test_lean_of_the_wire_for_acme():
    """The deepest seat is at about 0.965 of the lead angle (worked out beforehand)."""
    groove = thread(14.5, 1.0, 1 / math.pi / math.tan(math.radians(5.0)), 5.0)
    lying = seated(groove, best_wire(groove))
    assert lying.lean / groove.lead_angle == pytest.approx(0.965, abs=0.002)


BAD_GROOVES = [
    ("flank angle", (0.0, 1.0, 1.0, 10.0)),
    ("flank angle", (90.0, 1.0, 1.0, 10.0)),
    ("pitch", (30.0, 0.0, 1.0, 10.0)),
    ("pitch", (30.0, math.nan, 1.0, 10.0)),
    ("lead", (30.0, 1.0, -1.0, 10.0)),
    ("pitch diameter", (30.0, 1.0, 1.0, math.inf)),
]


@pytest.mark.parametrize(("field", "values"), BAD_GROOVES)
def test_nonsense_threads(field: str, values: tuple[float, float, float, float]):
    with pytest.raises(InputError) as caught:
        Groove(*values)
    assert caught.value.field == field


def test_nonsense_wires_and_measurements():
    groove = Groove(30.0, 1.0, 1.0, 10.0)
    for wire in (0.0, -1.0, math.nan, math.inf):
        with pytest.raises(InputError, match="wire"):
            measurement(groove, wire)
    for measured in (1.0, math.nan, math.inf):
        with pytest.raises(InputError, match=r"measured: .* two wires"):
            pitch_diameter_from(groove, 0.6, measured)
    with pytest.raises(InputError, match="pitch diameter above 0"):
        pitch_diameter_from(groove, 3.0, 6.1)
    with pytest.raises(InputError, match="no bottom"):
        measurement(Groove(5.0, 5.0, 0.0, 4.0), 0.1)
