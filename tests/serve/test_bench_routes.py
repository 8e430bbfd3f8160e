"""What is asked at the machine, against the commands that answer the same."""

from typing import TYPE_CHECKING

import pytest
from typer.testing import CliRunner

from tapmodel.cli.app import app
from tapmodel.report.view.controls.on_page import on_page

if TYPE_CHECKING:
    from served_page import Served

M10 = {"designation": "M10"}


def answered(served: "Served", question: str, **asked: object) -> dict:
    answer = served.post(f"bench/{question}", {"job": M10} | asked)
    assert answer.status_code == 200, answer.text
    return answer.json()


def told(*words: str) -> str:
    """What a command prints, on one line."""
    return " ".join(CliRunner().invoke(app, list(words)).output.split())


def test_wires_say_what_the_command_says(served: "Served") -> None:
    wires = answered(served, "wires", measured="10.45", compound=29.5)["wires"]
    page = told("wires", "M10", "--measured", "10.45", "--compound", "29.5")
    assert wires["judged"]["text"] in page
    assert wires["judged"]["weight"] == "note"
    for pair in (*wires["read"], *wires["aims"]):
        assert f"{pair['label']} {pair['text']}" in page
    assert len(wires["read"]) == 3
    for line in wires["compound"]["lines"]:
        assert " ".join(line) in page
    assert all(note in page for note in wires["notes"])


@pytest.mark.parametrize(
    ("measured", "weight", "words"),
    [
        ("10.40", "good", "in limits"),
        ("10.38", "good", "in limits"),
        ("10.345", "warning", "wear left: stop"),
        ("10.12", "error", "scrap"),
    ],
)
def test_a_reading_is_weighed(served: "Served", measured: str, weight: str, words: str) -> None:
    judged = answered(served, "wires", measured=measured)["wires"]["judged"]
    assert judged["weight"] == weight
    assert words in judged["text"]


def test_before_measuring_only_wire_and_limits_are_told(served: "Served") -> None:
    wires = answered(served, "wires")["wires"]
    assert (wires["judged"], wires["read"], wires["compound"]) == (None, [], None)
    assert wires["aims"][0] == {"label": "wire to use, the best", "text": "0.8646 mm"}


def test_gears_are_those_of_the_command(served: "Served") -> None:
    lathe = {"shop.leadscrew": "8tpi", "shop.gears": "20-65,127"}
    gears = answered(served, "gears", job=M10 | lathe)["gears"]
    page = told("gears", "M10", "--leadscrew", "8tpi", "--gears", "20-65,127")
    rows, trains, notes = gears["blocks"]
    assert rows["lines"][0][1] == ["1.5 mm"]
    assert trains["lines"][0][:2] == [["60"], ["127"]]
    for line in trains["lines"]:
        assert " ".join(cell[0] for cell in line[:3]) in page
    assert all(note in page for note in notes)
    assert answered(served, "gears") == {"gears": None, "notes": []}


def test_dividing_goes_from_place_to_place(served: "Served") -> None:
    dividing = answered(served, "dividing")["dividing"]
    page = told("dividing", "M10")
    assert dividing["text"][0].removeprefix("From each to the next: ") in page
    assert [one["number"] for one in dividing["stations"]] == [1, 2, 3]
    assert [one["move"] for one in dividing["stations"]] == ["", *["13 turns + 5 holes on 15"] * 2]
    assert dividing["stations"][2]["reached"] == "26 turns + 10 holes on 15"


def test_moves_add_up_to_a_turn_where_no_circle_is_exact(served: "Served") -> None:
    dividing = answered(served, "dividing", divisions=13, job=M10 | {"shop.plates": [17, 20]})
    stations = dividing["dividing"]["stations"]
    page = told("dividing", "13", "--plates", "17,20")
    circle = int(stations[1]["reached"].split()[-1])

    def holes(text: str) -> int:
        words = text.replace("+ ", "").split()
        turns = int(words[0]) if "turn" in words[1] else 0
        return turns * circle + (int(words[-4]) if "hole" in text else 0)

    reached = 0
    for station in stations[1:]:
        reached += holes(station["move"])
        assert reached == holes(station["reached"])
        assert f"{station['number']} {station['reached']} {station['off']}".strip() in page
        # From the true place, in minutes of arc.
        true = (station["number"] - 1) * 40 / 13
        off = (reached / circle - true) * 360 / 40 * 60
        assert float(station["off"].removesuffix("′")) == pytest.approx(off, abs=0.006)


def test_a_rotary_table_of_the_shop_is_taken(served: "Served") -> None:
    job = M10 | {"shop.rotary_table": "90, 2min"}
    dividing = answered(served, "dividing", divisions=7, job=job)["dividing"]
    page = told("dividing", "7", "--table", "90,2min")
    assert dividing["on"] == "rotary table 90:1"
    for one in dividing["stations"][1:]:
        assert f"{one['number']} {one['reached']} {one['off']}" in page


def test_measured_sizes_mean_what_the_command_says(served: "Served") -> None:
    sizes = {"major": "10.05", "over_wires": "10.45", "core": "3"}
    measured = answered(served, "measured", sizes=sizes)["measured"]
    page = on_page(
        told("measured", "M10", "--major", "10.05", "--over-wires", "10.45", "--core", "3")
    )
    judged = {one["key"]: one["judged"] for one in measured["sizes"]}
    assert (judged["major"]["weight"], judged["core"]["weight"]) == ("good", "warning")
    assert judged["over_wires"]["text"].partition(": ")[2].partition(".")[0] in page
    for block in measured["chapter"]["blocks"]:
        if isinstance(block, list):
            assert all(text in page for text in block)
    limits = next(one["aim"] for one in measured["sizes"] if one["key"] == "over_wires")
    assert limits.partition(", over")[0] in page
    assert measured["notes"][0] in page


def test_limits_over_wires_are_those_of_the_wires_that_were_told(served: "Served") -> None:
    job = {"designation": "Tr16x4"}
    asked = {"sizes": {"over_wires": "17.05"}, "wire": "2.1", "job": job}
    measured = answered(served, "measured", **asked)["measured"]
    aim = next(one["aim"] for one in measured["sizes"] if one["key"] == "over_wires")
    wires = answered(served, "wires", wire="2.1", job=job)["wires"]
    limits = next(one["text"] for one in wires["aims"] if one["label"] == "limits over wires")
    assert aim == f"{limits}, over 2.1000 mm"
    unmeasured = answered(served, "measured", job=job)["measured"]
    assert "over 2.0900 mm" in next(
        o["aim"] for o in unmeasured["sizes"] if o["key"] == "over_wires"
    )


def test_before_measuring_every_size_of_the_tap_is_named(served: "Served") -> None:
    measured = answered(served, "measured")["measured"]
    keys = [one["key"] for one in measured["sizes"]]
    assert keys[:3] == ["overall_length", "shank", "major"]
    assert "over_wires" in keys
    assert measured["chapter"] is None
    assert all(one["judged"] is None for one in measured["sizes"])


def test_a_size_that_this_tap_has_not_is_passed_over(served: "Served") -> None:
    necked = M10 | {"blank.neck_diameter": 6, "blank.neck_length": 10}
    sizes = {"neck": "5.9", "core": "3"}
    both = answered(served, "measured", job=necked, sizes=sizes)["measured"]
    judged = {one["key"] for one in both["sizes"] if one["judged"]}
    assert judged == {"neck", "core"}
    plain = answered(served, "measured", job=M10 | {"blank.neck_diameter": 0}, sizes=sizes)
    judged = {one["key"] for one in plain["measured"]["sizes"] if one["judged"]}
    assert judged == {"core"}
    assert "neck" not in {one["key"] for one in plain["measured"]["sizes"]}


GOOD = {"major": "10.05", "core": "3"}


@pytest.mark.parametrize(
    ("typed", "size", "words"),
    [
        ({"over_wires": "-3"}, "over_wires", "over wires: '-3' cannot be used; allowed: a length"),
        ({"over_wires": "0.4114"}, "over_wires", "over wires: 0.4114 cannot"),
        ({"land": "x"}, "land", "land, width along the arc: 'x' cannot be used"),
        ({"square": "30"}, "square", "square, across flats: 30.0 cannot be used; allowed: at most"),
        (
            {"over_wires": "10.45", "pitch_diameter": "9.1"},
            "pitch_diameter",
            "over wires together with pitch diameter: '10.45 and 9.1' cannot be used",
        ),
    ],
)
def test_a_bad_size_stands_at_its_box_and_leaves_the_others_their_verdicts(
    served: "Served", typed: dict[str, str], size: str, words: str
) -> None:
    measured = answered(served, "measured", sizes=GOOD | typed)["measured"]
    alone = answered(served, "measured", sizes=GOOD | dict([*typed.items()][:-1]))["measured"]
    wrong = {one["key"]: one["wrong"] for one in measured["sizes"] if one["wrong"]}
    assert list(wrong) == [size]
    assert wrong[size].startswith(words)
    assert not any(one["wrong"] for one in alone["sizes"])
    for one, other in zip(measured["sizes"], alone["sizes"], strict=True):
        assert one["judged"] == other["judged"]
    assert measured["chapter"] == alone["chapter"]


def test_a_bad_wire_stands_at_its_own_box(served: "Served") -> None:
    for wire, shown, words in (("5", "5.0", "0.8019"), ("x", "'x'", "a length such as")):
        sizes = GOOD | {"over_wires": "10.45"}
        measured = answered(served, "measured", sizes=sizes, wire=wire)["measured"]
        assert measured["wire_wrong"].startswith(f"the wires, diameter: {shown} cannot be used")
        assert words in measured["wire_wrong"]
        judged = {one["key"] for one in measured["sizes"] if one["judged"]}
        assert judged == {"major", "core"}
        assert not any(one["wrong"] for one in measured["sizes"])
    assert answered(served, "measured", sizes=GOOD)["measured"]["wire_wrong"] == ""


@pytest.mark.parametrize("question", ["wires", "gears", "dividing", "measured"])
def test_nobody_waits_for_cures_at_the_machine(
    served: "Served", monkeypatch: pytest.MonkeyPatch, question: str
) -> None:
    monkeypatch.setattr("tapmodel.serve.asked.design_at_once", None)
    answered(served, question, job={"designation": "Tr16x4", "name": f"asked for {question}"})


BAD = [
    ("wires", {"measured": "9"}, "measured", "10.0700 to"),
    ("wires", {"measured": "0,4"}, "measured", "write 0.4"),
    ("wires", {"measured": "1" * 41}, "measured", "40"),
    ("wires", {"wire": "5"}, "wire", "0.8019 to 1.5001 mm"),
    ("wires", {"compound": 99}, "compound", "0 to 80°"),
    ("dividing", {"divisions": 0}, "divisions", "1"),
    ("dividing", {"divisions": 401}, "divisions", "1 to 400"),
    ("measured", {"sizes": {"girth": "1"}}, "sizes", "overall_length"),
    ("measured", {"sizes": {"core": "3"}, "compound": -1}, "compound", "0 to 80"),
    ("gears", {"job": M10 | {"shop.gears": "1-2"}}, "shop.gears", ""),
]


@pytest.mark.parametrize(("question", "asked", "field", "words"), BAD)
def test_bad_values_are_refused_by_name(
    served: "Served", question: str, asked: dict[str, object], field: str, words: str
) -> None:
    answer = served.post(f"bench/{question}", {"job": M10} | asked)
    error = answer.json()["error"]
    assert answer.status_code == 422
    assert error["field"].startswith(field)
    assert words in error["message"]
