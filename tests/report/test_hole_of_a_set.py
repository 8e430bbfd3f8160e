"""The hole that each tap of a set leaves: its own, beside the finished one that is not its own."""

import pytest
from asked import settled_of

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Chapter, Length, Paragraphs, Row, Rows, Words
from tapmodel.report.chapters.in_the_hole import left_behind
from tapmodel.report.chapters.tap import hole
from tapmodel.report.route import finish
from tapmodel.report.route.operation import chapter_of
from tapmodel.report.units import told

# What `tapmodel set` writes for Tr16x8(P4).
OWN = ("thread.pitch_diameter=14.059", "thread.root_flat=1.38")
SETTINGS = {
    1: ("set.number=1", "thread.major=14.03", *OWN),
    2: (
        *("set.number=2", "thread.major=15.3", *OWN),
        *("set.before_major=14.03", "set.before_pitch_diameter=14.059"),
    ),
    3: ("set.number=3", "set.before_major=15.3", "set.before_pitch_diameter=14.059"),
}


def _design(number: int) -> TapDesign:
    return settled_of("Tr16x8(P4)", ("set.taps=3", *SETTINGS[number]))


def _rows(chapter: Chapter) -> dict[str, Row]:
    return {
        told(row.label): row
        for block in chapter.blocks
        if isinstance(block, Rows)
        for row in block.rows
    }


def _text(chapter: Chapter) -> str:
    paragraphs = [block for block in chapter.blocks if isinstance(block, Paragraphs)]
    return " ".join(told(text) for block in paragraphs for text in block.texts)


@pytest.mark.parametrize(("number", "major", "left"), [(1, 14.03, "45.8 %"), (2, 15.3, "77.5 %")])
def test_a_tap_that_roughs_tells_what_it_leaves_and_names_the_finished_hole(
    number: int, major: float, left: str
) -> None:
    """Of the basic depth, 4 mm on diameter, over a drill of 12.2: (14.03 - 12.2) / 4 = 45.8 %."""
    rows = _rows(hole.chapter(_design(number)))
    assert rows["major diameter left by this tap"].value == Length(major)
    own = rows["pitch diameter left by this tap"]
    assert own.value == Length(14.059, 4)
    assert own.low is not None
    assert own.low.mm == pytest.approx(13.9993, abs=5e-5)
    assert rows["percentage of thread left by this tap, basic depth"].value == Words(left)
    assert rows["percentage of thread finished, basic depth"].value == Words("95.0 %")
    assert rows["major diameter, finished"].low == Length(16.5)
    assert not {"major diameter", "pitch diameter", "percentage of thread, basic depth"} & set(rows)


@pytest.mark.parametrize(
    ("number", "next_one"),
    [
        (1, "Next comes tap 2 of 3; tap 3 cuts the hole to size."),
        (2, "Next comes tap 3 of 3, which cuts the hole to size."),
    ],
)
def test_sheet_and_route_say_which_tap_comes_next(number: int, next_one: str) -> None:
    design = _design(number)
    trial = chapter_of(16, finish.prove(design))
    for chapter in (hole.chapter(design), left_behind.chapter(design), trial):
        assert next_one in _text(chapter)
    assert "gauges" not in _text(trial)
    assert "prove the taps of a set together" in _text(trial)
    assert not {"GO gauge", "NO-GO gauge"} & set(_rows(trial))


@pytest.mark.parametrize(
    ("number", "tools"),
    [
        (1, "the drill, then this tap"),
        (2, "the drill, tap 1 of the set, then this tap"),
        (3, "the drill, taps 1 and 2 of the set, then this tap"),
    ],
)
def test_the_taps_before_enter_the_test_hole_first(number: int, tools: str) -> None:
    assert f"Tool: {tools}." in _text(chapter_of(16, finish.prove(_design(number))))


def test_the_last_tap_has_the_hole_for_its_own() -> None:
    design = _design(3)
    rows = _rows(hole.chapter(design))
    assert rows["pitch diameter"].high == Length(14.398)
    assert "Next comes" not in _text(hole.chapter(design))
    assert "GO gauge" in _rows(chapter_of(16, finish.prove(design)))
