"""What sheet, page and drawings say of a back taper, and nothing where there is none."""

import pytest
from alone import drawing_of
from asked import settled_of

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Length, Row, Rows, Words
from tapmodel.report.chapters.in_the_hole import left_behind
from tapmodel.report.chapters.machines import over_wires, threading_tool, turning
from tapmodel.report.chapters.tap import thread

CHAPTERS = (thread, turning, threading_tool, over_wires, left_behind)
# M10: chamfer of 6 mm, thread of 24 mm, 0.1 on 100; the tap is 80 mm long, its flanks lean by 30.
TOLD = {
    "all diameters are those at, from the front": 6.0,
    "lost of each where the thread ends": 0.018,
    "where it is so thick, from the front": 6.0,
    "its diameter where the thread ends": 10.07 - 0.018,
    "tailstock set over for the back taper, thinner towards the shank": 0.04,
    "middle of the wires, from the front": 7.5,
    "each turn behind that reads less by": 0.0015,
    "flanks clearer with each turn by": 0.000375,
    "at the end of the thread": 0.0045,
}


def rows(design: TapDesign) -> dict[str, Row]:
    blocks = [block for part in CHAPTERS for block in part.chapter(design).blocks]
    return {
        str(row.label): row for block in blocks if isinstance(block, Rows) for row in block.rows
    }


@pytest.fixture(scope="module")
def tapered() -> TapDesign:
    return settled_of("M10", ["thread.back_taper=0.1"])


def test_every_chapter_that_it_touches_tells_it(tapered: TapDesign) -> None:
    found = rows(tapered)
    assert found["back taper: diameter lost on 100 of length"].value == Words("0.1")
    for label, size in TOLD.items():
        value = found[label].value
        assert isinstance(value, Length)
        assert value.mm == pytest.approx(size), label


def test_none_is_not_spoken_of() -> None:
    found = rows(settled_of("M10"))
    assert not set(TOLD) & set(found)
    assert not any("taper" in label for label in found)


def test_the_side_view_says_how_much_and_from_where(tapered: TapDesign) -> None:
    def lettering(design: TapDesign) -> str:
        texts = drawing_of("side", design).document.modelspace().query("TEXT MTEXT")
        return " ".join(text.dxf.text if text.dxftype() == "TEXT" else text.text for text in texts)

    words = "back taper 0.1 in 100, from the end of the chamfer"
    assert words in lettering(tapered)
    assert "taper" not in lettering(settled_of("M10"))
