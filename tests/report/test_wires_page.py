import math
import re
from dataclasses import replace

import pytest
from asked import settled_of

from tapmodel.designing.record import TapDesign
from tapmodel.errors import InputError
from tapmodel.report.blocks import Angle, Length, Paragraphs, Row, Rows, Table
from tapmodel.report.chapters.machines import over_wires, threading_tool
from tapmodel.report.screen import wires as pages
from tapmodel.report.units import Units, shown, told
from tapmodel.report.words.compound import SWING, setting
from tapmodel.report.words.wires import sentence
from tapmodel.shop.wires.answer import Wires, WiresAnswer, answer_wires
from tapmodel.shop.wires.asked import Overrides, free_thread, thread_of_design
from tapmodel.shop.wires.notes import Heed, note
from tapmodel.standards.limits import HoleLimits
from tapmodel.words import Hand


@pytest.fixture
def design(small_design: TapDesign) -> TapDesign:
    """The small tap for a hole M8x1-6H by ISO 965-1; its own zone is 7.41 to 7.43 mm."""
    return replace(small_design, hole=HoleLimits(8.0, 7.350, 7.500, 6.917, 7.153))


def wires_page(answer: WiresAnswer, units: Units = Units.MM) -> str:
    """The page with a single blank wherever there are some, or a new line."""
    return " ".join(pages.wires_page(answer, units).split())


def answer(design: TapDesign, wires: Wires) -> WiresAnswer:
    return answer_wires(thread_of_design(design, 7.35, Overrides()), wires)


def test_page_tells_limits_verdict_and_infeed(design: TapDesign):
    found = answer(design, Wires(wire=0.58, measured=8.4, compound=29.5))
    page = wires_page(found)
    assert found.reading is not None
    assert "Measured 8.4000 mm: too large: take more" in page
    assert "Compound at 29.5° from square to the lathe's axis (60.5° read with" in page
    assert re.search(rf"infeed to the target +{found.reading.infeed:.4f} mm", page)
    # 29.5 degrees once more among the usual settings, as both kinds of slide read it
    assert re.search(rf"29\.5° +60\.5° +{found.reading.infeed:.4f} mm", page)
    assert "limits over wires 8.28" in page
    assert "measure over wires before the flutes" in page
    assert "1 µm more of wire adds 3.00 µm to the reading" in page
    assert SWING[Hand.RIGHT] in page


def test_each_helix_angle_is_labelled_with_its_diameter(design: TapDesign):
    """Over the least pitch diameter of the hole it is steeper than over the larger one aimed at."""
    basic = math.degrees(math.atan(1 / (math.pi * 7.35)))
    aimed = math.degrees(math.atan(1 / (math.pi * design.tap.thread.pitch_diameter)))
    page = wires_page(answer(design, Wires()))
    assert f"helix (lead) angle at 7.3500 mm {basic:.3f}°" in page
    rows, *_ = threading_tool.chapter(design).blocks
    assert isinstance(rows, Rows)
    values = {row.label: row.value for row in rows.rows}
    assert values["helix (lead) angle at the target pitch diameter"] == Angle(pytest.approx(aimed))
    assert round(basic, 3) != round(aimed, 3)


def test_a_correction_of_nothing_has_no_minus(design: TapDesign):
    """For so small a helix angle the simple formula falls short by less than is printed."""
    fine = thread_of_design(settled_of("M27x0.6"), 26.610, Overrides())
    found = answer_wires(fine, Wires())
    assert -5e-5 < found.at_basic.simple - found.at_basic.exact < 0
    assert re.search(r"without regard to the lead +27\.1296 mm, \+0\.0 µm", wires_page(found))
    coarse = wires_page(answer(design, Wires()))
    assert re.search(r"without regard to the lead +\d+\.\d+ mm, -\d+\.[1-9] µm", coarse)


def test_best_wire_is_called_so_only_where_it_is(design: TapDesign):
    assert re.search(r"wire to use, the best +0\.5767 mm", wires_page(answer(design, Wires())))
    page = wires_page(answer(design, Wires(wire=0.6)))
    assert re.search(r"wire to use +0\.6000 mm", page)
    assert re.search(r"best wire, lead allowed for +0\.5767 mm", page)
    assert re.search(r"conventional, P/2 / cos\(half angle\) +0\.5774 mm", page)


def test_below_the_zone_it_says_stop_and_no_infeed(design: TapDesign):
    # 7.4 mm measures 7.4 + 1.74 - 0.866025 + 0.000773 mm over wires of 0.58 mm.
    page = wires_page(answer(design, Wires(wire=0.58, measured=8.27475)))
    assert "below the tap's zone, 0.0500 mm of wear left: stop" in page
    assert "infeed" not in page
    inch = wires_page(answer(design, Wires(wire=0.58, measured=8.27475)), Units.INCH)
    assert "below the tap's zone, 0.00197 in of wear left: stop" in inch
    scrap = wires_page(answer(design, Wires(wire=0.58, measured=8.2)))
    assert "too small: scrap" in scrap
    assert re.search(r"scrap below, the hole's least and 5% of its tolerance +7\.3575 mm", scrap)
    assert "infeed" not in scrap
    assert "wear left" not in scrap


def test_a_reached_aim_leaves_no_infeed(design: TapDesign):
    page = wires_page(answer(design, Wires(wire=0.58, measured=8.2905)))
    assert "in limits" in page
    assert "The target is reached: no infeed is left to take." in page
    # nor which way the slide is swung for it
    assert "compound" not in page
    more = wires_page(answer(design, Wires(wire=0.58, measured=8.4)))
    assert "swing the compound" in more


def test_left_hand_is_told_the_other_way(design: TapDesign):
    tap = design.tap
    left = replace(design, tap=replace(tap, thread=replace(tap.thread, hand=Hand.LEFT)))
    page = wires_page(answer(left, Wires(measured=8.4)))
    assert SWING[Hand.LEFT] in page
    assert "tailstock; cut from the headstock" in SWING[Hand.LEFT]
    assert "headstock; cut from the tailstock" in SWING[Hand.RIGHT]


@pytest.mark.parametrize(("units", "other"), [(Units.MM, " in"), (Units.INCH, "mm")])
def test_a_page_in_one_unit_holds_no_other(design: TapDesign, units: Units, other: str):
    wires = Wires(on_hand=(0.3,), compound=40)
    thin = answer(settled_of("Tr20x4", []), Wires(on_hand=(1.0,), compound=40))
    pages = [
        wires_page(answer(design, replace(wires, on_hand=(0.58,), measured=8.4)), units),
        wires_page(answer(design, wires), units),
        wires_page(thin, units),
    ]
    for page in pages:
        assert not re.search(
            rf"[0-9]{other}\b|[0-9] µm" if units is Units.INCH else rf"[0-9]{other}\b", page
        )


def test_page_in_inches(design: TapDesign):
    page = wires_page(answer(design, Wires(wire=0.58, measured=8.4)), Units.INCH)
    # 0.58 and 8.4 mm are 0.022835 and 0.330709 in; 8.2835 and 8.3035 mm are the limits.
    assert re.search(r"wire to use +0\.02283 in", page)
    assert "Measured 0.33071 in: too large" in page
    assert "0.0001 in more of wire adds 0.000300 in to the reading" in page
    both = wires_page(answer(design, Wires(wire=0.58, measured=8.4)), Units.BOTH)
    assert "Measured 8.4000 mm = 0.33071 in: too large" in both
    assert "0.0001 in more of wire adds" in both
    assert "1 µm more of wire adds" in both


def test_page_of_a_free_form_has_no_limits():
    page = wires_page(answer_wires(free_thread(14.5, 25.4, Overrides(lead_angle=5.0)), Wires()))
    assert "limits" not in page
    assert re.search(r"best wire, lead allowed for +13\.0682 mm", page)


def test_setting_of_the_compound_has_its_reference():
    assert setting(29.5) == (
        "29.5° from square to the lathe's axis (60.5° read with the slide's zero along the bed)"
    )


SENTENCES = [
    (note(Heed.ODD_FLUTES, count=3), "With 3 flutes every land faces a flute"),
    (note(Heed.EVEN_FLUTES, count=4), "4 flutes the lands stand opposite each other"),
    (note(Heed.EVEN_STARTS, starts=2), "With 2 starts"),
    (note(Heed.TWO_WIRES, offset=0.5, error=0.0087), "0.500 mm: each degree"),
    (note(Heed.TWO_WIRES, offset=0.5, error=0.0087), "0.009 mm in the reading"),
    (note(Heed.PAST_THE_FLANK, compound=40, limit=30), "set it to 30° or less."),
    (
        note(Heed.PAST_THE_FLANK, compound=62.5, limit=30),
        "62.5° is read with the slide's zero along the bed? Then write 27.5.",
    ),
    (
        note(Heed.PAST_THE_FLANK, compound=45.1, limit=30),
        "45.1° is read with the slide's zero along the bed? Then write 44.9.",
    ),
    (note(Heed.PAST_THE_FLANK, compound=45, limit=30), "past the flank angle of 30°"),
    (note(Heed.THIN_WIRE, wire=0.098), "thin as 0.098 mm are hardly to be had"),
    (note(Heed.NONE_ON_HAND, wire=0.58), "such as 0.5800 mm"),
    (note(Heed.OFF_THE_PITCH_LINE, error=0.0123), "is wrong changes the reading by 0.012 mm."),
    (note(Heed.NOT_THE_BEST, wire=1.37, best=1.3086, air=0.1), "stand 0.100 mm clear"),
    (
        note(Heed.CRESTS_TOO_LOW, wire=1.9, best=2.0376, pitch_diameter=14.059, corner=14.03),
        "touch at the pitch diameter, 14.0590 mm, and the flanks of this thread end at 14.030 mm.",
    ),
    (
        note(Heed.GOES_BEFORE, number=1, taps=3, low=13.9993, high=14.0796),
        "is 13.9993 mm to 14.0796 mm; tap 3 cuts to size.",
    ),
]


@pytest.mark.parametrize(("heeded", "words"), SENTENCES)
def test_sentences(heeded: object, words: str):
    assert words in sentence(heeded)  # pyright: ignore[reportArgumentType]


def test_wires_of_a_job_that_may_be_in_the_other_unit_are_questioned():
    listed = settled_of("1/2-10 Acme-2G", ["shop.wires=[0.04mm, 0.06mm]"])
    notes = over_wires.chapter(listed).blocks[1]
    assert isinstance(notes, Paragraphs)
    assert any("in the other unit: then write 0.06in." in told(text) for text in notes.texts)


def test_the_sheet_says_why_the_best_wire_is_not_used_and_what_that_costs():
    stub = settled_of("Tr16x8(P4)")
    notes = over_wires.chapter(stub).blocks[1]
    assert isinstance(notes, Paragraphs)
    said = " ".join(told(text, Units.INCH) for text in notes.texts)
    assert "does not suit: it has to stand 0.0039 in clear of the crests" in said
    assert "not the best one: each degree" in said
    assert " mm" not in said


def test_the_caution_stands_above_the_infeed_that_it_is_about():
    bolt = settled_of("M8")
    page = wires_page(answer(bolt, Wires(measured=8.4, compound=62.5)))
    assert page.index("62.5° is read with") < page.index("Compound at 62.5")
    assert page.count("62.5° is read with") == 1


def test_every_note_has_a_sentence():
    assert {heeded.code for heeded, _ in SENTENCES} == set(Heed)


def rows_of(chapter_rows: object, units: Units = Units.MM) -> dict[str, Row]:
    assert isinstance(chapter_rows, Rows)
    return {told(row.label, units): row for row in chapter_rows.rows}


def test_chapter_has_the_limits_of_the_wire_that_is_used():
    listed = settled_of("1/2-10 Acme-2G", ["shop.wires=[1.1, 1.5]"])
    rows = rows_of(over_wires.chapter(listed).blocks[0])
    used = rows["wire to use, and those that suit"]
    assert used.value == Length(1.5, 4)
    over = rows["over the wire to use"]
    expected = answer_wires(
        thread_of_design(listed, listed.basic_pitch_diameter, Overrides()), Wires(wire=1.5)
    )
    assert over.low == Length(expected.measurement_min or 0, 4)
    assert over.high == Length(expected.measurement_max or 0, 4)
    # 2.54/2/cos(14.5 deg)
    conventional = rows["conventional best wire"].value
    assert shown(conventional) == ("1.3118 mm",)
    # 1 + 1/sin(14.5 deg) = 4.994, and a little less for the lead of 4 degrees
    counts = rows["1 µm more of wire adds"].value
    assert shown(counts) == ("4.99 µm",)
    assert shown(counts, Units.INCH) == ("0.000499 in",)


def test_chapter_counts_wire_in_the_readers_units():
    block = over_wires.chapter(settled_of("1/2-13")).blocks[0]
    steps = {
        units: [label for label in rows_of(block, units) if "more of wire" in label]
        for units in Units
    }
    assert steps == {
        Units.MM: ["1 µm more of wire adds"],
        Units.INCH: ["0.0001 in more of wire adds"],
        Units.BOTH: ["1 µm (0.0001 in) more of wire adds"],
    }


def test_chapter_says_that_none_on_hand_suits():
    listed = settled_of("1/2-10 Acme-2G", ["shop.wires=[0.5]"])
    chapter = over_wires.chapter(listed)
    assert isinstance(chapter.blocks[1], Paragraphs)
    assert any("None of the wires on hand" in told(text) for text in chapter.blocks[1].texts)


def test_chapter_says_that_no_wire_suits_and_what_then(design: TapDesign):
    wide = replace(design, limits=replace(design.limits, pitch_min=6.7, pitch_max=7.9))
    chapter = over_wires.chapter(replace(wide, basic_pitch_diameter=7.35))
    (said,) = chapter.blocks
    assert isinstance(said, Paragraphs)
    assert "no wire suits" in told(said.texts[0])
    assert "thread micrometer" in told(said.texts[0])


def test_chapter_of_the_tool_gives_both_readings_of_the_compound(design: TapDesign):
    _, feeds, notes = threading_tool.chapter(design).blocks
    assert isinstance(feeds, Table)
    cells = [tuple(shown(cell)[0] for cell in line) for line in feeds.lines]
    # Depth 0.63976 mm; by the cosine of 29.5 degrees 0.73506 mm. A root of 0.125 mm lacks
    # 0.10825 mm of the sharp corner, along the slide 0.12438 mm.
    assert cells[0] == ("0.0°", "90.0°", "0.640 mm", "0.108 mm")
    assert cells[2] == ("29.5°", "60.5°", "0.735 mm", "0.124 mm")
    assert feeds.head[0] == "top slide (compound), from square to the lathe's axis"
    assert isinstance(notes, Paragraphs)
    assert notes.texts == (threading_tool.INFEED, SWING[Hand.RIGHT])


def test_a_refused_best_wire_is_told_why_it_does_not_suit():
    stub = settled_of("Tr16x8(P4)")
    asked = thread_of_design(stub, stub.basic_pitch_diameter, Overrides())
    with pytest.raises(
        InputError, match=r"best being 2\.0379 mm \(0\.08023 in\), which is too thin"
    ):
        answer_wires(asked, Wires(wire=2.0379))
