"""What is asked at the machine, against the commands that answer the same."""

from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from served_page import serving
from typer.testing import CliRunner

from tapmodel.cli.app import app
from tapmodel.cli.measured_file import text_beside
from tapmodel.report.view.controls.on_page import on_page
from tapmodel.serve.asked import Opening

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


@pytest.fixture
def _clock(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1700000000")


TYPED = {"over_wires": "10.45", "core": "0.16in", "hardness": "61"}


def by_command(job: Path, *values: str) -> str:
    job.write_text('designation = "M10"\n', encoding="utf-8")
    assert CliRunner().invoke(app, ["measured", str(job), *values]).exit_code == 0
    return job.with_name("M10.measured.toml").read_text(encoding="utf-8")


def file_of(served: "Served", file: str = "", **sizes: str) -> str:
    kept = answered(served, "measured/file", sizes=sizes, file=file)
    assert kept["name"] == "M10x1.5.measured.toml"
    return kept["text"]


@pytest.mark.usefixtures("_clock")
def test_measured_sizes_are_saved_as_the_command_keeps_them(
    served: "Served", tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    job = tmp_path / "M10.toml"
    first = by_command(job, "--over-wires", "10.45", "--core", "0.16in", "--hardness", "61")
    assert file_of(served, **TYPED) == first
    # Laid over that file, what is the same keeps its day, and what is not goes among the earlier.
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1700086400")
    second = by_command(job, "--core", "4", "--forget", "hardness")
    assert file_of(served, first, over_wires="10.45", core="4") == second
    assert second.count("\n[[earlier]]\n") == 2
    assert "2023-11-14" in second.partition("core")[0]


def test_a_file_of_measured_sizes_fills_the_boxes(served: "Served") -> None:
    text = 'core = 4.1\nhardness = 61\nmajor = "0.395in"\nover_wires = {value = 10.4, wire = 0.9}\n'
    told = served.post("bench/measured/read", {"text": text}).json()
    assert told["sizes"] == {
        "core": "4.1", "hardness": "61", "major": "0.395in", "over_wires": "10.4"
    }  # fmt: skip
    assert told["wire"] == "0.9"
    assert set(told["others"]) == {"chamfer_angle", "hardness"}
    inch = served.post("bench/measured/read", {"text": text, "units": "inch"}).json()
    assert (inch["sizes"]["core"], inch["sizes"]["hardness"]) == ("4.1mm", "61")
    assert (inch["sizes"]["major"], inch["wire"]) == ("0.395in", "0.9mm")


def test_a_wire_comes_back_from_the_boxes_to_the_last_digit(served: "Served") -> None:
    first = file_of(served, over_wires="10.45")
    read = served.post("bench/measured/read", {"text": first, "units": "inch"}).json()
    asked = {"sizes": read["sizes"], "wire": read["wire"], "file": first}
    assert answered(served, "measured/file", **asked)["text"] == first


def test_the_page_opens_with_what_is_kept_beside_its_job(served: "Served", tmp_path: Path) -> None:
    job = tmp_path / "M10.toml"
    text = by_command(job, "--core", "4.125")
    assert text_beside(str(job)) == text
    assert text_beside("M10") == ""
    first = Opening(job={"designation": "M10"}, measured=text)
    page = serving(served.builds, first).get("").text
    assert "4.125" in page
    assert "4.125" not in served.get("").text


@pytest.mark.parametrize(
    ("asked", "words"),
    [
        ({}, "at least one value"),
        ({"sizes": {"core": "-3"}}, "core (web): "),
        ({"sizes": {"core": "3"}, "file": "core = "}, "file of measured sizes"),
    ],
)
def test_what_cannot_be_kept_is_refused(
    served: "Served", asked: dict[str, object], words: str
) -> None:
    answer = served.post("bench/measured/file", {"job": M10} | asked)
    assert answer.status_code == 422
    assert words in answer.json()["error"]["message"]


@pytest.mark.parametrize("question", ["wires", "gears", "dividing", "measured"])
def test_nobody_waits_for_cures_at_the_machine(
    served: "Served", monkeypatch: pytest.MonkeyPatch, question: str
) -> None:
    monkeypatch.setattr("tapmodel.serve.asked.design_at_once", None)
    answered(served, question, job={"designation": "Tr16x4", "name": f"asked for {question}"})


BAD = [
    ("wires", {"measured": "9"}, "measured", "10.0700 to"),
    ("wires", {"measured": "0,4"}, "measured", "write 0.4"),
    ("wires", {"measured": "1" * 41}, "measured", "allowed: at most 40 letters"),
    ("wires", {"wire": "5"}, "wire", "0.8019 to 1.5001 mm"),
    ("wires", {"compound": 99}, "compound", "0 to 80°"),
    ("dividing", {"divisions": 0}, "divisions", "0 cannot be used; allowed: at least 1"),
    ("dividing", {"divisions": 2.5}, "divisions", "2.5 cannot be used; allowed: a whole number"),
    ("dividing", {"divisions": "x"}, "divisions", "'x' cannot be used; allowed: a whole number"),
    ("dividing", {"divisions": 10001}, "divisions", "allowed: at most 10000"),
    ("dividing", {"compound": 3}, "compound", "allowed: nothing, as there is no such entry"),
    ("wires", {"compound": "x"}, "compound", "allowed: a number"),
    ("wires", {"wire": 5}, "wire", "allowed: a text"),
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
