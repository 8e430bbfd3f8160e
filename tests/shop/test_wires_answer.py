"""The whole answer about wires for the small M8x1 tap and for free forms."""

import json
import math
from dataclasses import replace
from typing import Any

import pytest

from tapmodel.designing.design import design_tap
from tapmodel.designing.record import TapDesign
from tapmodel.errors import InputError
from tapmodel.shop.wires.answer import Wires, WiresAnswer, answer_wires
from tapmodel.shop.wires.asked import Overrides, free_thread, thread_of_design
from tapmodel.shop.wires.reading import Verdict
from tapmodel.shop.wires.record import wires_record
from tapmodel.spec.job_file import job_for
from tapmodel.words import Hand

BASIC = 7.350


def answer(design: TapDesign, wires: Wires, overrides: Overrides | None = None) -> WiresAnswer:
    return answer_wires(thread_of_design(design, BASIC, overrides or Overrides()), wires)


def over(design: TapDesign, pitch_diameter: float) -> float:
    """What a tap of that pitch diameter measures over a wire of 0.58 mm."""
    given = Overrides(pitch_diameter=pitch_diameter)
    return answer(design, Wires(wire=0.58), given).at_basic.exact


def test_limits_of_the_measurement(small_design: TapDesign):
    found = answer(small_design, Wires(wire=0.58))
    # E + 3w - 0.866025 P, and some 0.0007 for the lead angle of 2.5 degrees.
    assert found.measurement_min == pytest.approx(7.41 + 1.74 - 0.866025 + 0.0008, abs=0.0002)
    assert found.measurement_max == pytest.approx(7.43 + 1.74 - 0.866025 + 0.0008, abs=0.0002)
    assert found.at_basic.simple == pytest.approx(BASIC + 1.74 - 0.866025, abs=1e-6)
    assert found.reading is None


VERDICTS = [
    (7.40, Verdict.TOO_SMALL),
    (7.4101, Verdict.IN_LIMITS),
    (7.4299, Verdict.IN_LIMITS),
    (7.4301, Verdict.TOO_LARGE),
    (7.60, Verdict.TOO_LARGE),
]


@pytest.mark.parametrize(("pitch_diameter", "verdict"), VERDICTS)
def test_verdict_and_infeed(small_design: TapDesign, pitch_diameter: float, verdict: Verdict):
    measured = over(small_design, pitch_diameter)
    reading = answer(small_design, Wires(wire=0.58, measured=measured, compound=29.5)).reading
    assert reading is not None
    assert reading.pitch_diameter == pytest.approx(pitch_diameter, abs=1e-9)
    assert reading.verdict is verdict
    secant = 1.1489555
    assert reading.infeed == pytest.approx((pitch_diameter - 7.42) / 2 * secant, abs=1e-7)
    assert reading.infeed_least == pytest.approx((pitch_diameter - 7.43) / 2 * secant, abs=1e-7)
    assert reading.infeed_most == pytest.approx((pitch_diameter - 7.41) / 2 * secant, abs=1e-7)
    assert dict(reading.infeed_at_compound)[29.5] == reading.infeed


def test_wire_is_the_best_or_the_nearest_on_hand(small_design: TapDesign):
    best = answer(small_design, Wires())
    assert best.wire == best.allowed.best
    assert answer(small_design, Wires(on_hand=(0.5, 0.6, 0.7))).wire == 0.6
    with pytest.raises(InputError, match=r"wire: 0\.4 "):
        answer(small_design, Wires(wire=0.4))


def test_value_that_cannot_have_been_measured(small_design: TapDesign):
    """A groove too shallow for the wire, and a value in inches."""
    for measured in (over(small_design, 8.2), 0.33):
        with pytest.raises(InputError, match=r"measured: .*rests on the crests|two wires"):
            answer(small_design, Wires(wire=0.58, measured=measured))


def test_steep_trapezoid_that_a_straight_wire_cannot_measure(small_design: TapDesign):
    """12 starts at 50 degrees: the wire that stands level with the crests fouls them."""
    pitch_diameter = 12 / (math.pi * math.tan(math.radians(50)))
    flat = 0.5 - 0.54 * math.tan(math.radians(14.5))
    thread = replace(
        small_design.tap.thread,
        flank_angle=14.5,
        starts=12,
        pitch_diameter=pitch_diameter,
        major=pitch_diameter + 0.54,
        minor=pitch_diameter - 0.54,
    )
    assert (thread.lead, thread.crest_flat) == (12.0, pytest.approx(flat))
    assert thread.root_flat == pytest.approx(flat)
    steep = replace(small_design, tap=replace(small_design.tap, thread=thread))
    asked = thread_of_design(steep, pitch_diameter, Overrides())
    with pytest.raises(InputError, match=r"straight wires foul the crests at 50\.0 deg"):
        answer_wires(asked, Wires())
    assert answer_wires(asked, Wires(wire=0.46)).wire == 0.46


def test_left_hand_measures_the_same(small_design: TapDesign):
    tap = small_design.tap
    left = replace(small_design, tap=replace(tap, thread=replace(tap.thread, hand=Hand.LEFT)))
    wires = Wires(wire=0.58, measured=8.3)
    assert wires_record(answer(left, wires)) == wires_record(answer(small_design, wires))


def test_record_is_flat_json(small_design: TapDesign):
    record = wires_record(answer(small_design, Wires(wire=0.58, measured=8.3)))
    assert json.loads(json.dumps(record, allow_nan=False)) == record
    assert record["wire"] == 0.58
    assert record["lead_angle"] == pytest.approx(2.4797, abs=1e-4)
    at_basic = record["measurement_at_basic_pitch_diameter"]
    assert set(at_basic) == {"exact", "simple", "lead_corrected"}
    assert record["formula_error"]["simple"] == at_basic["simple"] - at_basic["exact"]
    assert record["measurement_min"] < record["measurement_max"]
    assert record["wire_min"] < record["best_wire"] < record["wire_max"]
    assert record["verdict"] == "in limits"
    assert set(record["infeed_at_compound"]) == {"0", "29", "29.5", "30"}


def test_record_without_a_measured_value(small_design: TapDesign):
    record = wires_record(answer(small_design, Wires(wire=0.58)))
    assert not {"pitch_diameter", "verdict", "infeed"} & set(record)


def test_free_form_has_no_limits():
    asked = free_thread(30.0, 1.0, Overrides(pitch_diameter=10.0))
    record = wires_record(answer_wires(asked, Wires(measured=10.9)))
    assert record["wire"] == record["best_wire"]
    assert record["wire_min"] is record["measurement_max"] is record["infeed_least"] is None
    assert record["verdict"] == "no limits to judge by"
    assert record["infeed"] == pytest.approx((record["pitch_diameter"] - 10.0) / 2, abs=1e-12)


def test_overrides_of_lead():
    """Lead from starts, from the lead angle, and pitch diameter from both."""
    by_starts = free_thread(15.0, 2.0, Overrides(pitch_diameter=10.0, starts=3)).groove
    assert by_starts.lead == 6.0
    by_angle = free_thread(15.0, 2.0, Overrides(pitch_diameter=10.0, lead_angle=45.0)).groove
    assert by_angle.lead == pytest.approx(10 * math.pi)
    derived = free_thread(15.0, 2.0, Overrides(starts=3, lead_angle=45.0)).groove
    assert (derived.lead, derived.pitch_diameter) == (6.0, pytest.approx(6 / math.pi))


NAN = float("nan")
NONSENSE = [
    ("--pitch-diameter", {}),
    ("--pitch-diameter", {"lead_angle": 0.0}),
    ("--pitch-diameter", {"pitch_diameter": 1e-300}),
    ("--pitch-diameter", {"pitch_diameter": NAN}),
    ("--starts", {"pitch_diameter": 10.0, "starts": 0}),
    ("--starts", {"pitch_diameter": 10.0, "starts": 9}),
    ("--lead-angle", {"pitch_diameter": 10.0, "lead_angle": 90.0}),
    ("--lead-angle", {"pitch_diameter": 10.0, "lead_angle": -1.0}),
]


@pytest.mark.parametrize(("field", "given"), NONSENSE)
def test_nonsense_overrides(field: str, given: dict[str, Any]):
    with pytest.raises(InputError) as caught:
        free_thread(30.0, 1.0, Overrides(**given))
    assert caught.value.field == field


@pytest.mark.parametrize(
    ("field", "given"),
    [
        ("--wire", {"wire": 0.0}),
        ("--on-hand", {"on_hand": (0.5, math.inf)}),
        ("--measured", {"measured": NAN}),
        ("--compound", {"compound": 90.0}),
    ],
)
def test_nonsense_at_hand(field: str, given: dict[str, Any]):
    with pytest.raises(InputError) as caught:
        Wires(**given)
    assert caught.value.field == field


def test_design_overrides(small_design: TapDesign):
    asked = thread_of_design(small_design, BASIC, Overrides(pitch_diameter=7.4, starts=2))
    assert (asked.groove.pitch_diameter, asked.groove.lead) == (7.4, 2.0)
    steep = thread_of_design(small_design, BASIC, Overrides(lead_angle=10.0))
    assert steep.groove.lead_angle == pytest.approx(10.0)


def test_notes_say_when_to_measure(small_design: TapDesign):
    odd = answer(small_design, Wires(compound=40.0)).notes
    assert "3 flutes every land faces a flute" in odd[0]
    assert "(0.5 mm) apart" in odd[1]
    assert "0.009 mm in the reading" in odd[1]
    assert "set it to 30°" in odd[2]
    tap = small_design.tap
    even = replace(small_design, tap=replace(tap, flutes=replace(tap.flutes, count=4)))
    notes = answer(even, Wires(), Overrides(starts=2)).notes
    assert "opposite each other" in notes[0]
    assert "two wires measure as three do" in notes[1]
    assert len(notes) == 2


@pytest.mark.parametrize(("designation", "thin"), [("M10x0.17", True), ("M10x0.18", False)])
def test_wires_too_thin_to_be_had_are_named(designation: str, thin: bool):
    # The best wire is 0.57735 P: 0.098 and 0.104 mm.
    design = design_tap(job_for(designation))
    asked = thread_of_design(design, design.basic_pitch_diameter, Overrides())
    notes = answer_wires(asked, Wires()).notes
    assert any("hardly to be had" in note for note in notes) is thin
