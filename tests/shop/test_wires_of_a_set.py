"""Wires of a tap that another of its set follows: its own zone, and crests cut down."""

import pytest
from asked import settled_of

from tapmodel.designing.record import TapDesign
from tapmodel.errors import InputError
from tapmodel.report.screen.wires import wires_page
from tapmodel.report.words.wires import sentence
from tapmodel.shop.wires.answer import Wires, WiresAnswer, answer_for, answer_wires
from tapmodel.shop.wires.asked import Overrides, thread_of_design
from tapmodel.shop.wires.notes import Heed
from tapmodel.shop.wires.over_wires import at_pitch_diameter, measurement, seated
from tapmodel.shop.wires.reading import Verdict
from tapmodel.shop.wires.record import wires_record

# What `tapmodel set` writes for the first two of Tr16x8(P4); the hole's pitch diameter is 14.000 to
# 14.398 mm, so that a finished tap is scrap below 14.000 + 5 % of 0.398 = 14.0199.
FIRST = ["thread.pitch_diameter=14.059", "thread.major=14.03", "thread.root_flat=1.38"]
SECOND = ["thread.pitch_diameter=14.059", "thread.major=15.3", "thread.root_flat=1.38"]
BEFORE = ["set.before_major=14.03", "set.before_pitch_diameter=14.059"]


def _of_set(number: int, settings: list[str]) -> TapDesign:
    return settled_of("Tr16x8(P4)", [f"set.number={number}", "set.taps=3", *settings])


@pytest.fixture(scope="module")
def first() -> TapDesign:
    return _of_set(1, FIRST)


@pytest.fixture(scope="module")
def second() -> TapDesign:
    return _of_set(2, [*SECOND, *BEFORE])


def _answer(design: TapDesign, wires: Wires) -> WiresAnswer:
    return answer_wires(thread_of_design(design, design.basic_pitch_diameter, Overrides()), wires)


@pytest.mark.parametrize(
    ("measured", "pitch_diameter", "verdict"),
    [
        # 16.8650 to 16.9440 over 2.1 mm are its own zone, 13.9993 to 14.0796
        (16.87, 14.0044, Verdict.IN_LIMITS),
        # 14.000 is no border of a tap that leaves the size to another, nor is 14.0199
        (16.86, 13.9942, Verdict.BELOW_ZONE),
        (16.95, 14.0857, Verdict.TOO_LARGE),
    ],
)
def test_a_tap_that_roughs_is_judged_by_its_own_zone(
    second: TapDesign, measured: float, pitch_diameter: float, verdict: Verdict
) -> None:
    found = _answer(second, Wires(wire=2.1, measured=measured))
    reading = found.reading
    assert reading is not None
    assert reading.pitch_diameter == pytest.approx(pitch_diameter, abs=1e-4)
    assert (reading.verdict, reading.scrap_below, reading.wear_left) == (verdict, None, None)
    page = " ".join(wires_page(found).split())
    assert "scrap below" not in page
    assert "wear left" not in page
    assert (
        "Tap 2 of 3 does not finish the thread: it has no wear reserve, and no scrap limit by the "
        "hole. Its own zone of the pitch diameter is 13.9993 mm to 14.0796 mm; tap 3 cuts to size."
    ) in page
    record = wires_record(found, [sentence(note) for note in found.notes])
    assert record["scrap_below"] is record["wear_left"] is None


def test_the_last_tap_of_a_set_is_judged_by_the_hole() -> None:
    last = _of_set(3, ["set.before_major=15.3", "set.before_pitch_diameter=14.059"])
    found = _answer(last, Wires(wire=2.1, measured=16.87))
    assert found.reading is not None
    assert found.reading.scrap_below == pytest.approx(14.0199, abs=5e-5)
    assert Heed.GOES_BEFORE not in {note.code for note in found.notes}


def test_crests_below_the_pitch_line_get_a_wire_from_the_middle_of_the_range(
    first: TapDesign,
) -> None:
    """The range is 1.7786 to 2.0238 mm; the middle, 1.9012, is 1.90 in hundredths."""
    found = answer_for(first)
    assert found.allowed is not None
    assert found.allowed.least == pytest.approx(1.7786, abs=1e-4)
    assert found.allowed.greatest == pytest.approx(2.0238, abs=1e-4)
    assert found.wire == pytest.approx(1.90, abs=1e-9)
    thread = first.tap.thread
    assert thread.pitch_diameter > thread.major
    groove = at_pitch_diameter(found.asked.groove, first.limits.pitch_max)
    # thinner by 0.1238 than the wire that touches at the corner, 14.030: it touches lower by
    # 0.1238 cos(15 deg)/tan(15 deg) = 0.446 in diameter
    assert 2 * seated(groove, found.wire).contact_radius == pytest.approx(13.584, abs=0.002)
    deep = at_pitch_diameter(found.asked.groove, first.limits.pitch_min)
    assert measurement(deep, found.wire) > thread.major + 0.1
    (why,) = [note for note in found.notes if note.code is Heed.CRESTS_TOO_LOW]
    assert sentence(why) == (
        "The best wire, 2.0376 mm, does not suit: it would touch at the pitch diameter, 14.0590 "
        "mm, and the flanks of this thread end at 14.030 mm. A wire from the middle of the range "
        "touches well inside the corners of the crests."
    )


def test_of_wires_on_hand_the_one_nearest_to_the_middle_is_taken(first: TapDesign) -> None:
    # 2.02 is nearest to the best, 2.0376, and all but touches the corner
    assert _answer(first, Wires(on_hand=(1.80, 1.95, 2.02))).wire == 1.95


def test_a_wire_beyond_the_corner_is_still_refused(first: TapDesign) -> None:
    with pytest.raises(InputError, match="which is too thick"):
        _answer(first, Wires(wire=2.03))
