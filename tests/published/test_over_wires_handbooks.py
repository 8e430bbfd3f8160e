"""Over-wire formulas, constants and worked examples of handbooks, to the last printed digit.

Values are inches as printed. Status of every row: read in the source named, unless it says memory.
"""

import math

import pytest

from tapmodel.shop.wires.groove import Groove
from tapmodel.shop.wires.over_wires import best_wire, lead_corrected_measurement, simple_measurement


def half_digit(text: str) -> float:
    """Half a unit of the last printed digit, and a hair for values that lie just between two."""
    return 0.5 * 10 ** -len(text.partition(".")[2]) * (1 + 1e-6)


def ring(flank_angle: float, pitch: float, pitch_diameter: float) -> Groove:
    return Groove(flank_angle, pitch, 0.0, pitch_diameter)


# Machinery's Handbook 31st ed. p. 2130: diameter, threads per inch, wire, US form, V form.
OVER_GIVEN_WIRES = [
    (1 / 4, 18, 0.035, "0.2708", "0.2588"),
    (1 / 4, 20, 0.035, "0.2792", "0.2684"),
    (5 / 16, 18, 0.035, "0.3333", "0.3213"),
    (3 / 8, 16, 0.040, "0.4003", "0.3867"),
    (1 / 2, 12, 0.050, "0.5237", "0.5057"),
    (1 / 2, 13, 0.050, "0.5334", "0.5168"),
    (9 / 16, 12, 0.050, "0.5862", "0.5682"),
    (5 / 8, 11, 0.070, "0.6972", "0.6775"),
    (3 / 4, 10, 0.070, "0.8085", "0.7868"),
    (1, 8, 0.090, "1.0806", "1.0535"),
    (9 / 8, 7, 0.090, "1.1785", "1.1476"),
    (3 / 2, 6, 0.150, "1.6974", "1.6613"),
    (3, 3.5, 0.200, "3.1670", "3.1051"),
]

# The print reckons the US form with 1.5155 pitches for 7/4 of the sharp height.
FACTOR_SLIP = 1.7500 * math.cos(math.radians(30)) - 1.5155


@pytest.mark.parametrize("row", OVER_GIVEN_WIRES)
def test_us_and_sharp_v_form_over_given_wires(row: tuple[float, float, float, str, str]):
    """3/4-10: the print rounds 0.80845 up, which is 0.7500 - 1.5155/10 + 0.2100; exact 0.808446."""
    diameter, per_inch, wire, us_form, v_form = row
    height = math.cos(math.radians(30)) / per_inch
    for drop, text in ((3 / 4, us_form), (1, v_form)):
        found = simple_measurement(ring(30.0, 1 / per_inch, diameter - drop * height), wire)
        slip = FACTOR_SLIP / per_inch if drop == 3 / 4 else 0.0
        assert found == pytest.approx(float(text), abs=half_digit(text) + slip)


EXAMPLES = [
    # F. D. Jones, Turning and Boring, p. 88: 1 1/2 in, 6 threads, US standard.
    (1.5 - 0.649519 / 6, 6, 0.140, "1.6674"),
    # Society page on three-wire measuring (neme-s.org): 7/16-14.
    (0.4375 - 0.649519 / 14, 14, 0.045, "0.464"),
    # Thread calculations sheet (scribd 236796121): 3/4-10. It prints 0.7716 for its wire of 0.0577
    # because it rounds the sharp diameter to 0.5985 first; its unrounded best wire gives that too.
    (0.6850, 10, 0.057735, "0.7716"),
]


@pytest.mark.parametrize(("pitch_diameter", "per_inch", "wire", "printed"), EXAMPLES)
def test_worked_example(pitch_diameter: float, per_inch: int, wire: float, printed: str):
    found = simple_measurement(ring(30.0, 1 / per_inch, pitch_diameter), wire)
    assert found == pytest.approx(float(printed), abs=half_digit(printed))


# Factor of the wire and of the pitch in M = E + factor*w - factor*pitch.
FACTORS = [
    (30.0, "3.00000", "0.866025"),  # Machinery's Handbook 31st ed. p. 2129
    (27.5, "3.16568", "0.96049"),  # Whitworth, sheet of formulas (scribd 582762296)
    (14.5, "4.9939", "1.933357"),  # Acme, the same sheet
]


@pytest.mark.parametrize(("flank_angle", "of_wire", "of_pitch"), FACTORS)
def test_factors(flank_angle: float, of_wire: str, of_pitch: str):
    thread = ring(flank_angle, 1.0, 10.0)
    wire_factor = simple_measurement(thread, 2.0) - simple_measurement(thread, 1.0)
    pitch_factor = 10.0 + wire_factor - simple_measurement(thread, 1.0)
    assert wire_factor == pytest.approx(float(of_wire), abs=half_digit(of_wire))
    assert pitch_factor == pytest.approx(float(of_pitch), abs=half_digit(of_pitch))


# Best wire for a pitch of 1 without regard to the lead (scribd 582762296).
BEST = [
    (30.0, "0.57735"),
    (27.5, "0.56369"),
    (23.75, "0.54626"),
    (14.5, "0.51645"),
    (15.0, "0.51764"),
]


@pytest.mark.parametrize(("flank_angle", "printed"), BEST)
def test_best_wire(flank_angle: float, printed: str):
    found = best_wire(ring(flank_angle, 1.0, 10.0))
    assert found == pytest.approx(float(printed), abs=half_digit(printed))


def test_correction_for_the_lead_angle_in_the_acme_example():
    """5 in Acme, pitch 0.5, lead 1 in, wire 0.258, tooth 0.2454 thick at the basic pitch line.

    Source: Machinery's Handbook 31st ed. p. 2135, which prints 5.056 by formula (2). A tooth
    thinner by t stands for a pitch diameter smaller by t/tan(14.5 deg).
    """
    thinner = (0.25 - 0.2454) / math.tan(math.radians(14.5))
    groove = Groove(14.5, 0.5, 1.0, 4.75 - thinner)
    assert lead_corrected_measurement(groove, 0.258) == pytest.approx(
        5.056, abs=half_digit("5.056")
    )
