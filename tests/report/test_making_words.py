"""What the sheet tells of the making, in words and numbers that leave nothing to be guessed."""

import math
import re
from dataclasses import replace

import pytest
from alone import drawing_of
from asked import settled_of

from tapmodel.designing.codes import Code
from tapmodel.report.blocks import Angle, Chapter, Length, Paragraphs, Row, Rows, Table, Words
from tapmodel.report.chapters import key_numbers
from tapmodel.report.chapters.in_the_hole import left_behind, turning_it
from tapmodel.report.chapters.machines import (
    hardening,
    milling,
    sequence,
    threading_tool,
    turning,
)
from tapmodel.report.chapters.order import OPERATIONS
from tapmodel.report.chapters.tap import chamfer, hole, relief
from tapmodel.report.sheet.typeset import typeset
from tapmodel.report.units import Units, shown, told
from tapmodel.report.view.chapter import ShownTable, shown_chapter
from tapmodel.report.words.findings import what
from tapmodel.shop.wires.answer import answer_for


def _rows(chapter: Chapter) -> list[Row]:
    return [row for block in chapter.blocks if isinstance(block, Rows) for row in block.rows]


def test_how_much_deeper_a_sharp_nose_goes() -> None:
    design = settled_of("1/2 BSW")
    (table,) = (b for b in threading_tool.chapter(design).blocks if isinstance(b, Table))
    told = {
        line[0].degrees: line[-1].mm
        for line in table.lines
        if isinstance(line[0], Angle) and isinstance(line[-1], Length)
    }
    assert table.head[-1] == "sharp nose adds"
    deeper = design.tap.thread.root_radius * (1 / math.sin(math.radians(27.5)) - 1)
    assert told[0.0] == pytest.approx(deeper)
    assert told[27.5] == pytest.approx(deeper / math.cos(math.radians(27.5)))


@pytest.mark.parametrize("text", ["1/2 BSW LH", "M10"])
def test_the_squares_length_and_the_taps_alone_say_where_the_square_begins(text: str) -> None:
    """A third length with limits of its own would contradict the limits of both."""
    design = settled_of(text)
    rows = [row for section in OPERATIONS for row in _rows(section(design))]
    blank = design.tap.blank
    lengths = {
        row.label: row.value.mm
        for row in rows
        if isinstance(row.value, Length) and "from the rear end" in told(row.label)
    }
    assert lengths == {"length, from the rear end": blank.square_length}
    assert not any(
        isinstance(row.value, Length) and math.isclose(row.value.mm, blank.square_start)
        for row in rows
    )
    words = {
        entity.dxf.text for entity in drawing_of("side", design).document.modelspace().query("TEXT")
    }
    assert not any(f"{blank.square_start:g} " in text for text in words)
    assert any("lengths from the cutting end but the square's" in text for text in words)


def _texts(chapter: Chapter) -> list[str]:
    blocks = [block for block in chapter.blocks if isinstance(block, Paragraphs)]
    return [told(text) for block in blocks for text in block.texts]


def _prose(chapter: Chapter) -> str:
    return " ".join(_texts(chapter))


def test_the_order_of_the_work_is_told_once_and_the_chapters_follow_it() -> None:
    design = settled_of("M18x0.75")
    words = _prose(sequence.chapter(design))
    steps = re.findall(r"\d+ ([a-z][^;.]*)", words)
    assert steps == [
        "saw",
        "centre",
        "turn the shank",
        "the thread part",
        "cut the thread and measure it",
        "the chamfer",
        "mill the square",
        "the flutes",
        "deburr",
        "stamp the size",
        "relieve the crest and the chamfer",
        "harden",
        "temper",
        "clean",
        "hone the faces",
        "try it in scrap",
    ]
    made = [section(design).title for section in OPERATIONS]
    titles = ["Turn the blank", "Cut the thread", "Chamfer", "Mill the square", "Mill the flutes"]
    places = [made.index(title) for title in titles]
    assert made.index("Order of the work") < places[0]
    assert places == sorted(places)
    assert places[-1] < made.index("Relieve")


def test_only_what_is_relieved_is_told_and_a_male_point_comes_off_last() -> None:
    words = _texts(sequence.chapter(settled_of("M3")))[0]
    assert words.count("relieve the") == 1
    assert "relieve the chamfer;" in _prose(sequence.chapter(settled_of("1/2 BSW")))
    assert re.search(r"; \d+ take off the male point; \d+ try it in scrap\.$", words)


@pytest.mark.parametrize(("text", "more"), [("1/2 BSW LH", "less"), ("M3", "more")])
def test_the_mill_is_set_from_a_crest_or_from_the_shank(text: str, more: str) -> None:
    """The blank is threaded by then, so its turned surface is gone."""
    design = settled_of(text)
    (readings,) = (
        block
        for block in milling.chapter(design).blocks
        if isinstance(block, Rows) and block.caption.startswith("Dial readings")
    )
    assert "touching a crest of the thread" in readings.caption
    told_as = {told(row.label): row.value for row in readings.rows}
    off = told_as[f"touched on the shank: sideways, and over the axis, {more} by"]
    tap = design.tap
    down = told_as["down from the top, touched over the axis"]
    assert isinstance(off, Length)
    assert isinstance(down, Length)
    # over the shank the cutter's tip stands on its top, and goes down to the flute's floor
    floor = tap.flutes.centre_radius - tap.flutes.cutter_diameter / 2
    sign = 1 if more == "more" else -1
    assert down.mm + sign * off.mm == pytest.approx(tap.blank.shank_diameter / 2 - floor)


def _hardening(units: Units, *sets: str) -> tuple[dict[str, str], str]:
    found = hardening.chapter(settled_of("M10", list(sets)))
    values = {told(row.label): " = ".join(shown(row.value, units)) for row in _rows(found)}
    return values, _prose(found)


def test_the_steel_is_hardened_and_tempered_by_its_tables() -> None:
    values, words = _hardening(Units.BOTH)
    assert values == {
        "O1, quench from": "788 to 816 °C = 1450 to 1500 °F",
        "quench in": "oil, after 10 to 30 min at heat",
        "shank, core between flutes": "10.0 mm = 0.39 in, 4.0 mm = 0.16 in: harden through",
        "temper at": "204 °C = 400 °F",
        "hardness after that": "62 HRC",
    }
    # both as they were read, and neither before what the supplier says
    assert words.count("(read)") == 2
    assert "Section: from memory." in words
    assert "not harden through" not in words
    assert "come before these numbers" in words
    values, words = _hardening(Units.MM, "tap.material=silver steel")
    assert (values["silver steel, quench from"], values["quench in"]) == ("770 to 800 °C", "water")
    assert words.count("(from memory)") == 2
    assert "Section: read." in words


def test_a_case_is_carburised_and_a_range_of_one_heat_is_one_number() -> None:
    values, _ = _hardening(Units.MM, "tap.material=case-hardened mild steel")
    assert values["carburise first, depth of the case"] == "0.5 mm"
    assert _hardening(Units.INCH, "tap.material=W2")[0]["W2, quench from"] == "1450 °F"


def test_a_section_that_stays_soft_inside_is_told_with_what_helps() -> None:
    # water-hardening steels keep a tough core beyond 13 mm, as read
    values, words = _hardening(Units.MM, "tap.material=W1", "blank.shank_diameter=13.2")
    assert values["shank, core between flutes"].startswith("13.2 mm, ")
    assert values["shank, core between flutes"].endswith(" mm: not hard through")
    assert "The shank of 13.2 mm round does not harden through" in words
    assert "how deep the hard case goes is not known" in words
    assert "take A2" in words
    assert "hollow it" in words
    _, words = _hardening(Units.MM, "tap.material=W1", "blank.shank_diameter=12.8")
    assert "not harden through" not in words


def test_a_steel_of_which_no_section_is_known_says_so() -> None:
    values, words = _hardening(Units.MM, "tap.material=O2")
    assert "shank, core between flutes" not in values
    assert "Up to what section O2 hardens through is not known here" in words


def test_the_large_tap_of_o1_is_thicker_than_oil_hardens() -> None:
    found = hardening.chapter(settled_of("M90x4", ["blank.shank_diameter=64"]))
    assert "The shank of 64.0 mm round" in _prose(found)


def test_the_carbon_of_a_case_is_computed_elsewhere() -> None:
    _, words = _hardening(Units.MM, "tap.material=case-hardened mild steel")
    assert words.count("tapmodel heat --carburise --hours 0.5 M10x1.5") == 1


def test_a_hardness_without_its_temper_leaves_that_to_the_supplier() -> None:
    values, words = _hardening(Units.MM, "tap.hardness=60")
    assert values["temper at"] == "as the supplier says"
    assert values["hardness after that"] == "60 HRC"
    assert "Hardness: as the job has it." in words
    _, words = _hardening(Units.MM, "tap.hardness=60", "tap.temper=220")
    assert "Hardness: as the job has it." in words


@pytest.mark.parametrize("text", ["1/2 BSW LH", "1 3/8-24 UNS LH", "M10"])
def test_the_arc_of_a_relief_lies_where_the_sheet_says(text: str) -> None:
    """A centre found as told, and the arc about it, give the drop of the table at the heel."""
    design = settled_of(text)
    found = relief.chapter(design)
    assert {relief.SETTING, relief.MAKING} <= set(_texts(found))
    blocks = [b for b in found.blocks if isinstance(b, Rows)]
    assert blocks
    for block in blocks:
        values = {told(row.label): row.value for row in block.rows}
        (label,) = (label for label in values if label.startswith("turned from the edge"))
        turned, off = values[label], values["arc's centre off the axis"]
        radius, drop = values["radius of the arc"], values["radial drop at the heel"]
        assert isinstance(turned, Angle)
        assert isinstance(off, Length)
        assert isinstance(radius, Length)
        assert isinstance(drop, Length)
        ahead = {"turned from the edge, ahead, over its flute, by": -1}.get(label, 1)
        # the edge lies along x, the land behind it counter-clockwise
        way = math.radians(ahead * turned.degrees)
        x, y = off.mm * math.cos(way), off.mm * math.sin(way)
        heel = math.radians(design.figures.land_angle)
        along = x * math.cos(heel) + y * math.sin(heel)
        reach = along + math.sqrt(along**2 - off.mm**2 + radius.mm**2)
        assert design.tap.thread.major / 2 - reach == pytest.approx(drop.mm, rel=1e-9)


def test_a_round_crest_is_told_by_its_arc_and_how_it_is_checked() -> None:
    design = settled_of("1/2 BSW")
    drawing = drawing_of("thread-form", design, units=Units.INCH)
    words = {entity.dxf.text for entity in drawing.document.modelspace().query("TEXT")}
    thread, half = design.tap.thread, math.radians(27.5)
    # an arc that touches both flanks turns by what they leave of half a turn
    for name, radius in (("crest", thread.crest_radius), ("root", thread.root_radius)):
        wide = 2 * radius * math.cos(half) / 25.4
        assert {f"{name} arc {wide:.4f} wide", f"R{radius / 25.4:.4f}"} <= words
    crest = next(text for text in _inches(threading_tool.chapter(design)) if "crest" in text)
    assert f"a gauge of radius {thread.crest_radius / 25.4:.4f} in" in crest
    assert "which stays that of the blank" in crest


def _inches(chapter: Chapter) -> list[str]:
    blocks = [block for block in chapter.blocks if isinstance(block, Paragraphs)]
    return [told(text, Units.INCH) for block in blocks for text in block.texts]


@pytest.mark.parametrize("text", ["1/2 BSW LH", "M18x0.75"])
def test_the_short_page_tells_which_wires_serve_beside_the_best(text: str) -> None:
    """The best wire is in no set that is sold."""
    design = settled_of(text)
    allowed = answer_for(design).allowed
    assert allowed is not None
    (row,) = (r for r in _rows(key_numbers.chapter(design)) if "those that suit" in told(r.label))
    assert row.low is not None
    assert row.high is not None
    assert (row.low.mm, row.high.mm) == pytest.approx((allowed.least, allowed.greatest))


def test_a_bored_hole_is_told_with_one_number_of_digits() -> None:
    design = settled_of("1 3/8-24 UNS LH")
    assert design.bored
    values = {told(row.label): row.value for row in _rows(hole.chapter(design))}
    assert values["bore or ream to"] == values["minor diameter, as bored"]
    (short,) = (r for r in _rows(key_numbers.chapter(design)) if "bore or ream" in told(r.label))
    assert shown(short.value, Units.INCH) == ("1.3335 in",)


def test_a_table_without_limits_or_fields_has_values_and_no_targets() -> None:
    design = settled_of("M10")
    for words, head in (
        ("Torque", '[#strong("value")]'),
        ("Turn the blank", '[#strong("target")]'),
    ):
        (block,) = (
            replace(section, blocks=(b,))
            for section in (made(design) for made in OPERATIONS)
            for b in section.blocks
            if isinstance(b, Rows) and words in (b.caption, section.title)
        )
        assert head in typeset(block, Units.MM)
        table = shown_chapter(block, Units.MM).blocks[0]
        assert isinstance(table, ShownTable)
        assert f'[#strong("{table.head[1]}")]' == head


def test_each_count_and_thickness_of_chips_says_what_it_is() -> None:
    design = settled_of("1/2 BSW LH")
    assert design.prediction is not None
    cone = {told(row.label): row.value for row in _rows(chamfer.chapter(design))}
    cut = {told(row.label): row.value for row in _rows(turning_it.chapter(design))}
    assert cone["chip of each, square to the cone"] == Length(design.figures.chip_thickness, 4)
    thickest = Length(design.prediction.chips.thickness_max, 4)
    assert cut["thickest chip, as the raked face cuts it"] == thickest
    assert not {"teeth", "chip"} & {*cone, *cut}


@pytest.mark.parametrize(("job", "which"), [("M10", "last"), ("M20", "first")])
def test_the_thinnest_chip_says_whose_it_is(job: str, which: str) -> None:
    design = settled_of(job)
    assert design.prediction is not None
    teeth = design.prediction.chips.teeth
    rows = {told(row.label): row.value for row in _rows(turning_it.chapter(design))}
    own = teeth[{"first": 0, "last": -1}[which]].thickness
    assert rows[f"thinnest chip, that of the {which} tooth"] == Length(own, 4)
    assert own < 0.25 * teeth[len(teeth) // 2].thickness


def test_the_reserve_of_wear_is_one_and_says_from_what_it_counts() -> None:
    """It does not count on a hole that is larger than the tap, as one measured would not."""
    design = settled_of("1/2 BSW LH")
    rows = {told(row.label): row.value for row in _rows(left_behind.chapter(design))}
    label = "wear in reserve, from target to the least of the hole"
    reserve = rows[label]
    assert isinstance(reserve, Length)
    (finding,) = (f for f in design.findings if f.code == Code.WEAR_RESERVE)
    own = finding.values.number("by")
    assert own == pytest.approx(design.tap.thread.pitch_diameter - design.hole.pitch_min)
    assert (reserve.mm, reserve.digits) == (pytest.approx(own), 4)
    assert f"by {own:.4f} mm in pitch diameter, from its target to the least" in what(finding)


def test_areas_of_chips_are_lettered_in_millionths_of_a_square_inch() -> None:
    design = settled_of("1/2 BSW LH")
    assert design.prediction is not None
    drawing = drawing_of("chips", design, units=Units.INCH)
    words = [entity.dxf.text for entity in drawing.document.modelspace().query("TEXT")]
    (title,) = (text for text in words if text.startswith("area in 10"))
    areas = sorted(tooth.area / 25.4**2 * 1e6 for tooth in design.prediction.chips.teeth)
    found = re.fullmatch(r"area in 10⁻⁶ in²: ([\d.]+) \(tooth \d+\) to ([\d.]+) \(\d+\)", title)
    assert found is not None
    ends = [float(number) for number in found.groups()]
    assert ends == pytest.approx([areas[0], areas[-1]], rel=5e-3)


def _drills(*sets: str, source: str = "ISO 866", units: Units = Units.MM) -> dict[str, str]:
    rows = _rows(turning.chapter(settled_of("M18x0.75", list(sets))))
    label = f" centre drill, {source} (from memory)"
    told_as = {told(row.label): shown(row.value, units)[0] for row in rows}
    return {name.removesuffix(label): t for name, t in told_as.items() if name.endswith(label)}


def test_each_centre_names_its_drill_and_how_deep_that_goes() -> None:
    # rims of 4.0 and 4.2 mm: a cone of the rest over 2 tan 30°, and a pilot of 2.5 to 3.3 mm
    assert _drills() == {
        "front": "A 2 x 5, tip 4.2 to 5.0 mm deep",
        "rear": "A 2 x 5, tip 4.4 to 5.2 mm deep",
    }
    assert _drills(units=Units.INCH)["rear"] == "A 2 x 5, tip 0.173 to 0.205 in deep"
    # no. 2 has a pilot of 5/64 in, whose rim may be 2.12 times that, 0.1656 in, as 4.2 mm are
    inch = _drills("shop.tools=inch", source="ASME B94.11M", units=Units.INCH)["rear"]
    assert inch.startswith("no. 2, tip ")


def test_a_male_point_needs_no_centre_drill_and_a_strange_rim_has_none() -> None:
    labels = [told(row.label) for row in _rows(turning.chapter(settled_of("M3")))]
    assert not any(label.startswith("front centre") for label in labels)
    assert _drills("blank.rear_centre=0.5")["rear"] == "none has this size: turn the cone"


def test_a_point_within_the_core_has_no_edge_to_tell_of() -> None:
    design = settled_of("M10", ("chamfer.point_diameter=3", "flutes.core_diameter=4"))
    assert design.tap.flutes.core_diameter == pytest.approx(4)
    assert design.finds(Code.POINT_CORE)
    told_of = _prose(relief.chapter(design))
    assert "The table counts from" not in told_of
    assert relief.SETTING in told_of


def test_each_width_that_rubs_says_where() -> None:
    """At the pitch line, which lies further in, the same land is narrower than at the crests."""
    design = settled_of("Tr16x4")
    assert design.prediction is not None
    (finding,) = (f for f in design.findings if f.code == Code.LAND_RUBS)
    crests = design.figures.land_width
    assert f"along {crests:.2f} mm of arc at the crests" in what(finding)
    (table,) = (b for b in left_behind.chapter(design).blocks if isinstance(b, Table))
    named = {line[0]: line[1] for line in table.lines}
    flank = named[Words("flanks, pitch line")]
    assert isinstance(flank, Length)
    assert flank.mm == design.prediction.rubbing.flank.rubbing_length
    assert flank.mm < 0.8 * crests
    assert design.prediction.rubbing.flank.radius == design.tap.thread.pitch_diameter / 2
    assert Words("chamfer, pitch line") in named
