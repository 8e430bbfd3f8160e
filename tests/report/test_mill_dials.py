"""The mill's settings read on its own dials."""

from asked import settled_of

from tapmodel.report.blocks import Chapter, Paragraphs, Table
from tapmodel.report.chapters.machines import milling
from tapmodel.report.route.order import route_of
from tapmodel.report.units import shown, told
from tapmodel.report.words.dials import ONE_WAY
from tapmodel.shop.flute_setting import flute_setting
from tapmodel.shop.order_of_work import Step


def dials(found: Chapter) -> dict[str, str]:
    tables = [block for block in found.blocks if isinstance(block, Table)]
    return {shown(way)[0]: shown(read)[0] for t in tables for way, read, _ in t.lines}


def test_every_axis_is_read_on_its_dial() -> None:
    design = settled_of("M18x0.75", ["shop.mill=0.02mm, 4mm; down 0.001in, 0.1in"])
    setting, found = flute_setting(design), dials(milling.chapter(design))
    # 10.281 mm sideways, 5.457 mm = 0.21485 in down, 41.75 mm along
    assert round(setting.from_left, 3) == 10.281
    assert found == {
        "sideways from the left side": "2 turns + 114",
        "sideways from the right side": "3 turns + 188",
        "down, over the axis": "2 turns + 15",
        "down, at the offset": "2 turns + 3",
        "along from the front": "10 turns + 88",
    }


def test_an_axis_without_a_dial_is_left_out_and_a_mill_without_any_too() -> None:
    one = dials(milling.chapter(settled_of("M18x0.75", ["shop.mill=down 0.02mm, 2"])))
    assert set(one) == {"down, over the axis", "down, at the offset"}
    assert dials(milling.chapter(settled_of("M18x0.75"))) == {}


def test_the_play_of_the_screw_is_told_once_at_the_flutes() -> None:
    for sets in ([], ["shop.mill=0.02mm, 4mm"]):
        operations = route_of(settled_of("M10", sets))
        (flutes,) = [one for one in operations if one.step is Step.FLUTES]
        sentences = [
            told(text)
            for block in flutes.settings
            if isinstance(block, Paragraphs)
            for text in block.texts
        ]
        assert sentences.count(ONE_WAY) == 1
