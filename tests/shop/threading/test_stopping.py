"""The speed at which a hand still stops behind the thread."""

import pytest

from tapmodel.designing.settle import settle
from tapmodel.shop.threading.stopping import REACTION, stopping
from tapmodel.spec.job_file import job_for


def of(designation: str, *sets: str):
    return stopping(settle(job_for(designation, list(sets))).tap)


def test_the_way_in_the_time_of_a_hand_stays_in_the_neck() -> None:
    found = of("M10", "blank.neck_length=5.5")
    assert found is not None
    assert found.neck
    # 5.5 mm less the tool's own 1.5; 4 mm / (1.5 mm x 0.7 s) are 3.81 turns a second
    assert found.room == pytest.approx(4.0)
    assert found.turns == pytest.approx(228.57, abs=0.01)
    assert found.turns / 60 * 1.5 * REACTION == pytest.approx(found.room)


def test_several_starts_go_by_their_lead() -> None:
    one, two = (of(text, "blank.neck_length=8") for text in ("M10x1", "M10xPh2P1"))
    assert one is not None
    assert two is not None
    assert one.turns == pytest.approx(2 * two.turns)


def test_without_a_neck_it_is_withdrawn_within_a_turn() -> None:
    found = of("M10", "blank.neck_length=0")
    assert found is not None
    assert not found.neck
    assert found.turns == pytest.approx(60 / 0.7)


def test_nothing_to_stop_for_over_a_thinner_shank_or_away_from_it() -> None:
    assert of("M18x0.75") is None
    assert of("M10-LH") is None


def test_a_neck_no_longer_than_the_tool_leaves_no_room() -> None:
    found = of("M10", "blank.neck_length=1.5")
    assert found is not None
    assert found.turns == 0
