"""The chapter on indexing: turns and holes for the head and plates of the shop."""

from asked import settled_of

from tapmodel.report.blocks import Chapter, Paragraphs, Table
from tapmodel.report.chapters.machines import dividing
from tapmodel.report.units import shown


def chapter(*sets: str) -> Chapter:
    return dividing.chapter(settled_of("M10", list(sets)))


def told(found: Chapter) -> str:
    return " ".join(t for b in found.blocks if isinstance(b, Paragraphs) for t in b.texts)


def lines(found: Chapter) -> list[list[str]]:
    table = next(block for block in found.blocks if isinstance(block, Table))
    assert all(len(line) == len(table.head) for line in table.lines)
    return [list(table.head)] + [[shown(cell)[0] for cell in line] for line in table.lines]


def test_three_flutes_on_the_usual_plates() -> None:
    found = chapter("flutes.count=3")
    assert told(found) == (
        "From each flute to the next: 13 turns + 5 holes on 15; the sector arms enclose 6 holes, "
        "with the one that the pin stands in. The same: 6 on 18, 7 on 21, 9 on 27, 11 on 33, "
        "13 on 39."
    )
    assert lines(found) == [
        ["flute", "angle", "minutes", "crank from the first, 40:1"],
        ["1", "0.0000°", "0° 0.0′", "0 turns"],
        ["2", "120.0000°", "120° 0.0′", "13 turns + 5 holes on 15"],
        ["3", "240.0000°", "240° 0.0′", "26 turns + 10 holes on 15"],
    ]


def test_four_flutes_need_no_circle() -> None:
    found = chapter("flutes.count=4")
    assert told(found) == "From each flute to the next: 10 turns; any circle will do."
    assert [line[3] for line in lines(found)[1:]] == ["0 turns", "10 turns", "20 turns", "30 turns"]


def test_the_plates_and_the_head_of_the_shop_decide() -> None:
    found = chapter("flutes.count=3", "shop.plates=[24, 39]", "shop.dividing_ratio=40")
    assert "13 turns + 8 holes on 24;" in told(found)
    assert "The same: 13 on 39." in told(found)
    found = chapter("flutes.count=8", "shop.dividing_ratio=90", "shop.plates=[20]")
    assert "11 turns + 5 holes on 20;" in told(found)
    assert lines(found)[0][3] == "crank from the first, 90:1"
    found = chapter("flutes.count=7", "shop.plates=19-22")
    assert "5 turns + 15 holes on 21;" in told(found)
    direct = chapter("flutes.count=3", "shop.dividing_ratio=1", "shop.plates=[24]")
    assert "to the next: 8 holes on 24;" in told(direct)


def test_what_cannot_be_done_is_said_with_the_nearest() -> None:
    found = chapter("flutes.count=7", "shop.plates=[16, 20]")
    assert told(found).startswith(
        "7 flutes cannot be done exactly with the circles on hand (shop.plates). Nearest is the "
        "circle of 20: no flute lies further than 0.1929° (11.6′) from its place."
    )
    assert lines(found)[0][-1] == "off by"
    # 5 14/20 turns are 51.3 degrees, 360/7 = 51.4286.
    assert lines(found)[2] == ["2", "51.4286°", "51° 25.7′", "5 turns + 14 holes on 20", "-7.7′"]


def test_a_rotary_table_alone_is_told_in_turns_and_degrees() -> None:
    found = chapter("flutes.count=4", "shop.rotary_table=90")
    assert "22 turns + 2° of the rotary table's handle." in told(found)
    assert lines(found) == [
        ["flute", "angle", "minutes", "handle from the first, 90:1"],
        ["1", "0.0000°", "0° 0.0′", "0 turns"],
        ["2", "90.0000°", "90° 0.0′", "22 turns + 2°"],
        ["3", "180.0000°", "180° 0.0′", "45 turns"],
        ["4", "270.0000°", "270° 0.0′", "67 turns + 2°"],
    ]


def test_the_dial_of_a_rotary_table_has_an_error() -> None:
    found = chapter("flutes.count=7", "shop.rotary_table=90, 2min")
    # 360/7 = 51 deg 25.71 min: 12 turns of 4 deg, and 3 deg 26 min; twice that 102 deg 51.43 min
    assert lines(found)[2] == ["2", "51.4286°", "51° 25.7′", "12 turns + 3° 26′", "+0.29′"]
    assert lines(found)[3][3:] == ["25 turns + 2° 52′", "+0.57′"]
    assert "none lies further than 0.0143° (0.9′) from its place" in told(found)
    plain = chapter("flutes.count=7", "shop.rotary_table=90")
    assert lines(plain)[2] == ["2", "51.4286°", "51° 25.7′", "12 turns + 3° 25.71′"]
    assert "do not fall on whole degrees" in told(plain)


def test_of_plates_and_rotary_table_what_is_exact_is_told() -> None:
    both = ("shop.plates=[16, 20]", "shop.rotary_table=90, 2min")
    assert lines(chapter("flutes.count=3", *both))[0][3] == "handle from the first, 90:1"
    four = chapter("flutes.count=4", *both)
    assert lines(four)[0][3] == "crank from the first, 40:1"
    assert "Or on the rotary table: 22 turns + 2° each." in told(four)
    # neither: the dial comes within a minute, the circles within eleven
    assert lines(chapter("flutes.count=7", *both))[0][3] == "handle from the first, 90:1"
    seven = chapter("flutes.count=7", "shop.plates=[21]", "shop.rotary_table=90, 2min")
    assert lines(seven)[0][3] == "crank from the first, 40:1"
    assert "rotary" not in told(seven)
    # a table without a dial is set by eye, and no better than a circle of 49
    eye = chapter("flutes.count=7", "shop.plates=[16, 47]", "shop.rotary_table=90")
    assert lines(eye)[0][3] == "crank from the first, 40:1"
