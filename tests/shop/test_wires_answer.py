"""The whole answer about wires for the small M8x1 tap and for free forms."""

import json
import math
from dataclasses import replace
from typing import Any

import pytest
from asked import settled_of

from tapmodel.designing.record import TapDesign
from tapmodel.errors import InputError, NoWireError
from tapmodel.report.words.wires import sentence
from tapmodel.shop.wires.answer import Wires, WiresAnswer, answer_wires
from tapmodel.shop.wires.asked import Overrides, free_thread, thread_of_design
from tapmodel.shop.wires.crest_clearance import fouls_crest
from tapmodel.shop.wires.groove import Groove
from tapmodel.shop.wires.notes import Heed
from tapmodel.shop.wires.over_wires import measurement
from tapmodel.shop.wires.reading import Verdict
from tapmodel.shop.wires.record import wires_record
from tapmodel.standards.limits import HoleLimits
from tapmodel.words import Hand, Units

BASIC = 7.350


@pytest.fixture
def design(small_design: TapDesign) -> TapDesign:
    """The small tap for a hole M8x1-6H by ISO 965-1; its own zone is 7.41 to 7.43 mm."""
    return replace(small_design, hole=HoleLimits(8.0, 7.350, 7.500, 6.917, 7.153))


def answer(design: TapDesign, wires: Wires, overrides: Overrides | None = None) -> WiresAnswer:
    return answer_wires(thread_of_design(design, BASIC, overrides or Overrides()), wires)


def over(design: TapDesign, pitch_diameter: float) -> float:
    """What a tap of that pitch diameter measures over a wire of 0.58 mm."""
    given = Overrides(pitch_diameter=pitch_diameter)
    return answer(design, Wires(wire=0.58), given).at_basic.exact


def test_limits_of_the_measurement(design: TapDesign):
    found = answer(design, Wires(wire=0.58))
    # E + 3w - 0.866025 P, and some 0.0007 for the lead angle of 2.5 degrees.
    assert found.measurement_min == pytest.approx(7.41 + 1.74 - 0.866025 + 0.0008, abs=0.0002)
    assert found.measurement_max == pytest.approx(7.43 + 1.74 - 0.866025 + 0.0008, abs=0.0002)
    assert found.at_basic.simple == pytest.approx(BASIC + 1.74 - 0.866025, abs=1e-6)
    assert found.reading is None


# Scrap below 7.350 and 5 % of 0.150 mm.
VERDICTS = [
    (7.3574, Verdict.TOO_SMALL),
    (7.3576, Verdict.BELOW_ZONE),
    (7.4099, Verdict.BELOW_ZONE),
    (7.4101, Verdict.IN_LIMITS),
    (7.4299, Verdict.IN_LIMITS),
    (7.4301, Verdict.TOO_LARGE),
    (7.60, Verdict.TOO_LARGE),
]


@pytest.mark.parametrize(("pitch_diameter", "verdict"), VERDICTS)
def test_verdict_and_infeed(design: TapDesign, pitch_diameter: float, verdict: Verdict):
    measured = over(design, pitch_diameter)
    reading = answer(design, Wires(wire=0.58, measured=measured, compound=29.5)).reading
    assert reading is not None
    assert reading.pitch_diameter == pytest.approx(pitch_diameter, abs=1e-9)
    assert reading.verdict is verdict
    assert reading.scrap_below == pytest.approx(7.3575, abs=1e-12)
    assert reading.wear_left == pytest.approx(pitch_diameter - 7.350, abs=1e-9)
    secant = 1.1489555

    def expected(wanted: float) -> float:
        return max(pitch_diameter - wanted, 0) / 2 * secant

    assert reading.infeed == pytest.approx(expected(7.42), abs=1e-7)
    assert reading.infeed_least == pytest.approx(expected(7.43), abs=1e-7)
    assert reading.infeed_most == pytest.approx(expected(7.41), abs=1e-7)
    assert dict(reading.infeed_at_compound)[29.5] == reading.infeed


def test_a_tap_at_its_target_has_all_of_its_reserve_of_wear_left(design: TapDesign):
    target = design.tap.thread.pitch_diameter
    reading = answer(design, Wires(wire=0.58, measured=over(design, target))).reading
    assert reading is not None
    assert design.wear_reserve == pytest.approx(target - 7.350, abs=1e-12)
    assert reading.wear_left == pytest.approx(design.wear_reserve, abs=1e-9)


def test_a_tap_below_the_hole_has_no_wear_left(design: TapDesign):
    reading = answer(design, Wires(wire=0.58, measured=over(design, 7.34))).reading
    assert reading is not None
    assert (reading.verdict, reading.wear_left) == (Verdict.TOO_SMALL, 0.0)


def test_zone_that_reaches_below_the_reserve_keeps_its_taps(design: TapDesign):
    """Where the tap's own zone begins at the hole's least, a tap in it is no scrap."""
    hole = replace(design.hole, pitch_min=7.410)
    low = replace(design, hole=hole)
    reading = answer(low, Wires(wire=0.58, measured=over(low, 7.4101))).reading
    assert reading is not None
    assert reading.verdict is Verdict.IN_LIMITS
    below = answer(low, Wires(wire=0.58, measured=over(low, 7.4099))).reading
    assert below is not None
    assert below.verdict is Verdict.TOO_SMALL


def test_wire_is_the_best_or_the_nearest_on_hand(design: TapDesign):
    best = answer(design, Wires())
    assert best.allowed is not None
    assert best.wire == best.allowed.best == best.best_wire
    assert best.is_best
    assert best.conventional_wire == pytest.approx(0.57735027, abs=1e-8)
    assert answer(design, Wires(on_hand=(0.5, 0.6, 0.7))).wire == 0.6
    with pytest.raises(InputError, match=r"wire: 0\.4 "):
        answer(design, Wires(wire=0.4))


def test_limits_are_those_of_the_wire_on_hand(design: TapDesign):
    """Over 0.6 in place of 0.58 mm everything reads 3 times 0.02 mm more."""
    thin, thick = (answer(design, Wires(on_hand=(wire, 0.2))) for wire in (0.58, 0.6))
    assert thin.measurement_min is not None
    assert thick.measurement_min is not None
    assert thick.measurement_min - thin.measurement_min == pytest.approx(0.06, abs=1e-4)
    assert thick.measurement_target - thin.measurement_target == pytest.approx(0.06, abs=1e-4)
    assert thick.wire_counts == pytest.approx(3.0, abs=0.002)
    assert not thick.is_best


def test_wires_of_the_job_are_used_unless_others_are_named():
    listed = settled_of("M8x1", ["shop.wires=[0.455, 0.62]"])
    assert answer(listed, Wires()).wire == 0.62
    assert answer(listed, Wires(on_hand=(0.6, 0.7))).wire == 0.6
    assert answer(listed, Wires(wire=0.59)).wire == 0.59


def test_none_on_hand_is_said_with_a_wire_that_suits(design: TapDesign):
    found = answer(design, Wires(on_hand=(0.4, 1.2)))
    assert found.wire == found.best_wire
    told = next(note for note in found.notes if note.code is Heed.NONE_ON_HAND)
    assert "such as 0.5767 mm" in sentence(told)
    with pytest.raises(InputError, match=r"--on-hand: .*at least one of a wire of 0\.5"):
        answer(design, Wires(on_hand=(0.4, 1.2), measured=8.3))


SLIPS = [
    ({"wire": 0.0229}, "--wire", "looks like inches: write 0.0229in"),
    ({"wire": 0.58 * 25.4}, "--wire", "looks like mm: write 0.58mm"),
    ({"measured": 0.3264, "wire": 0.58}, "--measured", "looks like inches: write 0.3264in"),
    ({"on_hand": (0.018, 0.024)}, "--on-hand", "looks like inches: write 0.024in"),
]


@pytest.mark.parametrize(("given", "option", "question"), SLIPS)
def test_lengths_that_only_make_sense_in_the_other_unit_are_questioned(
    design: TapDesign, given: dict[str, Any], option: str, question: str
):
    with pytest.raises(InputError) as caught:
        answer(design, Wires(**given))
    assert caught.value.field == option
    assert question in str(caught.value)


def test_pitch_diameter_of_the_other_unit_is_questioned(design: TapDesign):
    with pytest.raises(InputError, match=r"--pitch-diameter: .*write 0\.29in"):
        answer(design, Wires(), Overrides(pitch_diameter=0.29))
    assert answer(design, Wires(), Overrides(pitch_diameter=7.3)).asked.groove.pitch_diameter == 7.3


@pytest.mark.parametrize("measured", [8.05, 8.0, 7.0])
def test_reading_at_the_major_diameter_or_below_it_is_refused(design: TapDesign, measured: float):
    """The tap is 8.05 mm over its crests."""
    with pytest.raises(InputError, match="anvils rest on the crests") as caught:
        answer(design, Wires(wire=0.58, measured=measured))
    assert caught.value.field == "--measured"
    assert "major diameter, 8.0500 mm" in str(caught.value)
    assert answer(design, Wires(wire=0.58, measured=8.0501)).reading is not None


def test_groove_too_shallow_for_the_wire(design: TapDesign):
    with pytest.raises(InputError, match=r"--measured: .*corners of the crests"):
        answer(design, Wires(wire=0.58, measured=over(design, 8.2)))


def steep(design: TapDesign, angle: float, half_depth: float) -> TapDesign:
    """12 starts at a lead angle: the wire that stands level with the crests fouls them."""
    pitch_diameter = 12 / (math.pi * math.tan(math.radians(angle)))
    thread = replace(
        design.tap.thread,
        flank_angle=14.5,
        starts=12,
        pitch_diameter=pitch_diameter,
        major=pitch_diameter + 2 * half_depth,
        minor=pitch_diameter - 2 * half_depth,
    )
    limits = replace(
        design.limits, pitch_min=pitch_diameter - 0.01, pitch_max=pitch_diameter + 0.01
    )
    return replace(design, tap=replace(design.tap, thread=thread), limits=limits)


def test_steep_trapezoid_whose_crests_a_thin_straight_wire_fouls(design: TapDesign):
    lying = steep(design, 55, 0.27)
    thread = lying.tap.thread
    found = answer_wires(thread_of_design(lying, thread.pitch_diameter, Overrides()), Wires())
    assert found.allowed is not None
    lowest = Groove(14.5, 1.0, 12.0, thread.pitch_diameter - 0.01)
    highest = Groove(14.5, 1.0, 12.0, thread.pitch_diameter + 0.01)
    for groove in (lowest, highest):
        assert not fouls_crest(groove, found.wire, thread.major / 2)
        assert not fouls_crest(groove, found.allowed.least, thread.major / 2)
    # That is more than the air asks for.
    assert fouls_crest(lowest, found.allowed.least * 0.999, thread.major / 2)
    assert measurement(lowest, found.allowed.least * 0.999) > thread.major + 0.1
    with pytest.raises(InputError, match=r"--wire: 0\.35 "):
        answer_wires(found.asked, Wires(wire=0.35))


def test_zone_too_wide_for_any_wire_is_said_with_another_way(design: TapDesign):
    wide = replace(design, limits=replace(design.limits, pitch_min=6.7, pitch_max=7.9))
    with pytest.raises(NoWireError, match=r"M8x1: no wire suits .*0\.1 mm clear"):
        answer(wide, Wires())


def test_left_hand_measures_the_same(design: TapDesign):
    tap = design.tap
    left = replace(design, tap=replace(tap, thread=replace(tap.thread, hand=Hand.LEFT)))
    wires = Wires(wire=0.58, measured=8.3)
    assert wires_record(answer(left, wires), ()) == wires_record(answer(design, wires), ())


def test_record_is_flat_json(design: TapDesign):
    record = wires_record(answer(design, Wires(wire=0.58, measured=8.3)), ("heed",))
    assert json.loads(json.dumps(record, allow_nan=False)) == record
    assert record["wire"] == 0.58
    assert record["wire_is_best"] is False
    assert record["conventional_wire"] == pytest.approx(0.5773503, abs=1e-7)
    assert record["reading_per_wire"] == pytest.approx(3.0, abs=0.002)
    assert record["notes"] == ["heed"]
    assert record["lead_angle"] == pytest.approx(2.4797, abs=1e-4)
    at_basic = record["measurement_at_basic_pitch_diameter"]
    assert set(at_basic) == {"exact", "simple", "lead_corrected"}
    assert record["formula_error"]["simple"] == at_basic["simple"] - at_basic["exact"]
    assert record["measurement_min"] < record["measurement_max"]
    assert record["wire_min"] < record["best_wire"] < record["wire_max"]
    assert record["verdict"] == "in limits"
    assert record["wear_left"] == record["pitch_diameter"] - 7.350
    assert record["scrap_below"] == pytest.approx(7.3575)
    assert set(record["infeed_at_compound"]) == {"0", "29", "29.5", "30"}


def test_record_without_a_measured_value(design: TapDesign):
    record = wires_record(answer(design, Wires(wire=0.58)), ())
    assert not {"pitch_diameter", "verdict", "infeed"} & set(record)


def test_free_form_has_no_limits():
    asked = free_thread(30.0, 1.0, Overrides(pitch_diameter=10.0))
    record = wires_record(answer_wires(asked, Wires(measured=10.9)), ())
    assert record["wire"] == record["best_wire"]
    assert record["wire_min"] is record["measurement_max"] is record["infeed_least"] is None
    assert record["wear_left"] is record["scrap_below"] is None
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


def test_design_overrides(design: TapDesign):
    asked = thread_of_design(design, BASIC, Overrides(pitch_diameter=7.4, starts=2))
    assert (asked.groove.pitch_diameter, asked.groove.lead) == (7.4, 2.0)
    steep = thread_of_design(design, BASIC, Overrides(lead_angle=10.0))
    assert steep.groove.lead_angle == pytest.approx(10.0)


def test_notes_say_when_to_measure(design: TapDesign):
    odd = answer(design, Wires(compound=40.0)).notes
    assert [note.code for note in odd] == [Heed.ODD_FLUTES, Heed.TWO_WIRES, Heed.PAST_THE_FLANK]
    assert odd[0].values.number("count") == 3
    assert odd[1].values.number("offset") == 0.5
    assert odd[1].values.number("error") == pytest.approx(0.5 * math.pi / 180)
    assert odd[2].values.number("limit") == 30
    tap = design.tap
    even = replace(design, tap=replace(tap, flutes=replace(tap.flutes, count=4)))
    notes = answer(even, Wires(), Overrides(starts=2)).notes
    assert [note.code for note in notes] == [Heed.EVEN_FLUTES, Heed.EVEN_STARTS]


@pytest.mark.parametrize(("designation", "thin"), [("M10x0.17", True), ("M10x0.18", False)])
def test_wires_too_thin_to_be_had_are_named(designation: str, thin: bool):
    # The best wire is 0.57735 P: 0.098 and 0.104 mm.
    design = settled_of(designation)
    asked = thread_of_design(design, design.basic_pitch_diameter, Overrides())
    notes = answer_wires(asked, Wires()).notes
    assert any(note.code is Heed.THIN_WIRE for note in notes) is thin


REFUSED = [
    # the tap is 8.05 mm over its crests
    (Wires(wire=0.58, measured=7.9), "0.31693 to 0.", " (8.0500 to "),
    (Wires(wire=0.58, measured=7.9), "the major diameter, 0.31693 in (8.0500 mm)", ""),
    (Wires(wire=2.5), "a wire of 0.0", " in (0."),
    (Wires(on_hand=(2.5,), measured=8.4), "at least one of a wire of 0.0", " in (0."),
]


@pytest.mark.parametrize(("given", "first", "behind"), REFUSED)
def test_refusals_tell_an_inch_reader_inches_first(
    design: TapDesign, given: Wires, first: str, behind: str
):
    with pytest.raises(InputError) as caught:
        answer(design, replace(given, units=Units.INCH))
    assert first in str(caught.value)
    assert behind in str(caught.value).partition(first)[2]
