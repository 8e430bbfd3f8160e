"""Readings of dials: never further from the way than half a division."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapmodel.report.words.dials import dial_text, read_text
from tapmodel.shop.dials import reading
from tapmodel.spec.shop.dials import dial_of, mill_dials

DIALS = {
    "0.02mm, 4mm a turn, on diameter": 200,
    "0.02, 200 divisions": 200,
    "0.001in, 0.0625in a turn": 62.5,
    '0.001", 100 divisions': 100,
    "0.05mm a division, 5mm per turn, on radius": 100,
}


@given(st.sampled_from(list(DIALS)), st.floats(0, 60))
def test_a_reading_gives_the_way_within_half_a_division(text: str, way: float) -> None:
    dial = dial_of(text, cross=True)
    assert dial is not None
    assert float(dial.turn / dial.division) == DIALS[text]
    found, counts = reading(dial, way), 2 if "diameter" in text else 1
    told = (found.turns * float(dial.turn) + found.divisions * float(dial.division)) / counts
    assert abs(told - way) <= float(dial.division) / counts / 2 + 1e-9
    assert told - way == pytest.approx(found.error, abs=1e-9)
    assert 0 <= found.divisions < DIALS[text]


def test_the_same_way_on_a_dial_of_the_diameter_and_of_the_slide() -> None:
    counted, slide, inch = (
        dial_of(text, cross=True)
        for text in ("0.02mm, 4mm a turn, on diameter", "0.02mm, 4mm a turn", "0.001in, 0.1in")
    )
    assert counted is not None
    assert slide is not None
    assert inch is not None
    # 2.5 mm take 5 mm off the diameter: a turn of 4 mm and 50 divisions of 0.02
    assert read_text(counted, 2.5) == "1 turn + 50"
    assert read_text(slide, 2.5) == "125"
    # 98.43 thousandths; 101.6 mm are 40 turns
    assert read_text(inch, 2.5) == "98"
    assert read_text(inch, 101.6) == "40 turns"
    assert read_text(inch, 0.0) == "0"
    assert dial_text(counted) == "divisions of 0.02 mm on diameter, 200 a turn"
    assert dial_text(inch) == "divisions of 0.001 in, 100 a turn"


def test_a_mill_has_one_dial_or_one_an_axis() -> None:
    found = mill_dials("0.02mm, 4mm a turn; down 0.001in, 0.1in a turn")
    assert found is not None
    assert found.sideways == found.along == dial_of("0.02mm, 4mm a turn")
    assert found.down == dial_of("0.001in, 100 divisions")
    alone = mill_dials("down 0.02mm, 2")
    assert alone is not None
    assert alone.sideways is None
    assert alone.down is not None
    assert mill_dials("0.02mm, 4; 0.02mm, 4") is None
    assert dial_of("0.02, 4") is None
    assert mill_dials("up 0.02mm, 4") is None
