"""The two commands that need no tap: change gears, and a dividing head."""

import json
import subprocess
import sys
from fractions import Fraction
from typing import Any

import pytest
from typer.testing import CliRunner

from tapmodel.cli.app import app
from tapmodel.errors import InputError

WHEELS = "20,24,25,30,35,40,40,50,60,63,80,95,127"
LEAD = ("gears", "--pitch", "19tpi", "--leadscrew", "4mm", "--gears", WHEELS)


def said(*words: str) -> str:
    done = CliRunner().invoke(app, list(words))
    assert done.exit_code == 0, done.output
    assert done.stderr == ""
    return done.stdout


def record(*words: str) -> dict[str, Any]:
    return json.loads(said(*words, "--json"))


def test_gears_print_the_record_and_nothing_else() -> None:
    found = record(*LEAD)
    assert list(found) == ["pitch_mm", "leadscrew_mm", "trains"]
    assert found["pitch_mm"] == pytest.approx(25.4 / 19, rel=1e-15)
    assert found["leadscrew_mm"] == 4.0
    assert len(found["trains"]) == 10
    for train in found["trains"]:
        keys = ["drivers", "driven", "pitch_mm", "error_ppm", "meshing", "fits"]
        assert list(train) == keys
        assert sorted(pair[0] for pair in train["meshing"]) == train["drivers"]
        assert sorted(pair[1] for pair in train["meshing"]) == train["driven"]
        assert train["fits"]
        ratio = Fraction(1)
        for driver, driven in zip(train["drivers"], train["driven"], strict=True):
            assert {type(driver), type(driven)} == {int}
            ratio *= Fraction(driver, driven)
        assert train["pitch_mm"] == pytest.approx(4 * float(ratio), rel=1e-15)
        error = train["pitch_mm"] / found["pitch_mm"] - 1
        assert train["error_ppm"] == pytest.approx(1e6 * error, abs=1e-6)
    # 4 mm x 20/80 x 127/95 = 127/95 mm = 1/19 in
    assert found["trains"][0] == {
        "drivers": [20, 127],
        "driven": [80, 95],
        "pitch_mm": 25.4 / 19,
        "error_ppm": 0.0,
        "meshing": [[127, 80], [20, 95]],
        "fits": True,
    }


def test_as_many_trains_as_asked_for() -> None:
    assert [len(record(*LEAD, "--most", str(n))["trains"]) for n in (1, 3, 25)] == [1, 3, 25]
    assert len(record(*LEAD[:-1], "20,30", "--most", "1000")["trains"]) == 2


def test_a_wheel_that_is_there_once_stands_in_one_place() -> None:
    one_to_one = ("gears", "--pitch", "4", "--leadscrew", "4", "--gears")
    assert record(*one_to_one, "30,30")["trains"][0]["drivers"] == [30]
    assert record(*one_to_one, "30,40")["trains"][0]["error_ppm"] == pytest.approx(-250000)


def test_the_page_tells_the_trains_in_the_units_of_the_pitch() -> None:
    page = said(*LEAD, "--most", "2").splitlines()
    assert page[:3] == [
        "Change gears",
        "  pitch to cut  1.336842 mm = 19 per inch",
        "  leadscrew     4 mm",
    ]
    assert page[3].split() == ["drivers", "driven", "cuts", "off", "by"]
    assert page[4].split() == ["127,", "20", "80,", "95", "19.00000", "per", "inch", "exact"]
    metric = said(*LEAD[:2], "1.5", *LEAD[3:-2], "--gears", "25,50,42,64", "--units", "mm")
    # 4 x 25/64 = 1.5625, 4 x 25 x 42/(50 x 64) = 1.3125; 4 x 25/64 is 4.2 % too much
    assert "1.562500 mm  +4.2%" in metric


def test_a_job_tells_its_lead_its_hand_and_what_the_error_takes() -> None:
    words = ("gears", "M20xPh3P1.5-LH", "--leadscrew", "8tpi", "--gears", "30,50,60,63,80,100")
    page = " ".join(said(*words, "--most", "1").split())
    # 125 millionths of the thread's 37 mm are 4.6 um, 1.732 times that 8.0 um, of 57 um.
    assert "lead to cut 3 mm leadscrew 3.175 mm = 8 per inch" in page
    assert "63, 60 50, 80 3.000375 mm +125.0 ppm +4.6 µm 14.1%" in page
    assert "the gears cut the lead of 3 mm; the pitch of 1.5 mm is set by the slide" in page
    assert "work is turned by 180°" in page
    assert "Left hand: one idler more or less" in page
    assert "begin at the headstock end" in page
    assert "cannot make the shift to the next start" in page
    assert "Only a wheel of 127 teeth" in page
    assert record(*words)["pitch_mm"] == 3.0
    right = " ".join(said("gears", "M20", *words[2:]).split())
    assert "Right hand: spindle forward" in right
    assert "starts" not in right


def test_the_wheel_to_buy_is_told_where_none_at_hand_is_close_enough() -> None:
    def notes(*words: str) -> str:
        return " ".join(said("gears", *words).split())

    wheels = ("--leadscrew", "8tpi", "--gears", "20,30,40,50,60,70,80,100")
    # 3.175 x 27 x 70 / 80 / 100 = 0.75009375, 3.175 x 30 / 127 = 0.75
    told = (
        "buy a wheel of 27 teeth, for 27, 70 driving 100, 80, +125.0 ppm; or a wheel of 127 teeth, "
        "for 30 driving 127, exact."
    )
    assert f"None is within 25% of the tap's zone: {told}" in notes("M18x0.75", *wheels)
    assert f"None is within 200 ppm: {told}" in notes("--pitch", "0.75", *wheels)
    none = notes("--pitch", "19tpi", "--leadscrew", "4", *wheels[2:])
    assert "None is within 200 ppm, nor with one wheel more; nearest comes a wheel of 39" in none
    # 6 mm by 20 and 30 is 4 or 9 mm, and no one wheel more comes near a tenth of 6 mm
    few = notes("M27x0.6", "--leadscrew", "6", "--gears", "20,30")
    assert "it needs other wheels, or a shorter thread. None is within 25%" in few
    assert "no single wheel of 20 to 127 teeth bought would help: one more is not enough." in few
    second = notes("--pitch", "1", "--leadscrew", "4", "--gears", "20,20,40")
    assert "buy a second wheel of 40 teeth, for 20, 20 driving 40, 40, exact." in second
    assert "close" not in notes("--pitch", "1.5", "--leadscrew", "4", "--gears", "30,80")


def test_leadscrew_and_wheels_may_stand_in_the_job() -> None:
    sets = ("--set", "shop.leadscrew=8tpi", "--set", "shop.gears=63,80,50,60")
    found = record("gears", "M20x3", *sets)
    assert found == record("gears", "M20x3", "--leadscrew", "3.175", "--gears", "63,80,50,60")
    # What the command says goes before what the job says.
    assert record("gears", "M20x3", *sets, "--leadscrew", "3")["leadscrew_mm"] == 3.0


def test_a_tap_that_breaks_a_rule_is_told_so_behind_the_answer() -> None:
    words = ["gears", "M6", "--leadscrew=4", "--gears=20,80", "--set=blank.square_across_flats=7"]
    done = CliRunner().invoke(app, words)
    assert done.exit_code == 1
    assert "exact" in done.stdout
    assert "[square-flats]" in done.stderr


def test_dividing_prints_the_record_and_nothing_else() -> None:
    assert record("dividing", "7", "--plates", "15-20,21,49") == {
        "divisions": 7,
        "angle_deg": pytest.approx(360 / 7),
        "possible": True,
        "turns": 5,
        "holes": 15,
        "circle": 21,
        "choices": [
            {"turns": 5, "holes": 15, "circle": 21},
            {"turns": 5, "holes": 35, "circle": 49},
        ],
    }
    angle = record("dividing", "35deg")
    assert (angle["divisions"], angle["angle_deg"]) == (None, 35.0)
    assert angle["choices"] == [
        {"turns": 3, "holes": 16, "circle": 18},
        {"turns": 3, "holes": 24, "circle": 27},
    ]


def test_whole_turns_end_in_the_same_hole_of_every_circle() -> None:
    found = record("dividing", "60", "--ratio", "60", "--plates", "20,15")
    assert (found["turns"], found["holes"], found["circle"]) == (1, 0, 15)
    assert [choice["circle"] for choice in found["choices"]] == [15, 20]
    assert "1 turn; any circle will do." in said("dividing", "40")


def test_what_no_circle_does_is_told_with_the_nearest() -> None:
    found = record("dividing", "127")
    assert list(found) == ["divisions", "angle_deg", "possible", "nearest"]
    assert found["possible"] is False
    nearest = found["nearest"]
    assert (nearest["turns"], nearest["holes"], nearest["circle"]) == (0, 6, 19)
    # (6/19 - 40/127) x 9 degrees
    assert nearest["error_deg"] == pytest.approx(0.00745959, abs=1e-8)
    page = said("dividing", "127")
    # On a circle of 49 the places are 63/127 of a hole of 9/49 degrees off at the most.
    assert "Nearest is the circle of 49" in page
    assert "0.0911° (5.5′)" in page
    assert len([line for line in page.splitlines() if "′" in line and "on 49" in line]) > 120
    # OD1644: 24 minutes are 1 hole on 23, with a small error; 540/23 = 23.48 minutes.
    assert "Nearest: 1 hole on 23, 0.0087° (0.5′) too little." in said("dividing", "24min")


def test_a_rotary_table_is_divided_on() -> None:
    found = record("dividing", "13", "--table", "90,2min")["table"]
    assert (found["ratio"], found["exact"]) == (90, False)
    assert len(found["each"]) == 13
    for number, place in enumerate(found["each"]):
        reached = 4 * place["turns"] + place["degrees"]
        assert reached - number * 360 / 13 == pytest.approx(place["error_deg"], abs=1e-9)
        assert abs(place["error_deg"]) <= 1 / 60
    page = said("dividing", "13", "--table", "90")
    assert "6 turns + 3° 41.54′" in page
    assert "Dividing head" not in page
    assert "Dividing head 40:1" in said("dividing", "13", "--table", "90", "--plates", "39")
    assert "7 turns." in said("dividing", "35deg", "--table", "72")
    assert "24′; 0.0067° (0.4′) too little" in said("dividing", "24.4min", "--table=90,1min")


def test_a_job_is_divided_into_its_flutes_and_square_by_what_its_shop_has() -> None:
    sets = ("--set", "flutes.count=3", "--set", "shop.plates=24")
    found = record("dividing", "M18x0.75", *sets)
    assert list(found) == ["flutes", "square"]
    assert found["flutes"] == record("dividing", "3", "--plates", "24")
    assert found["square"] == record("dividing", "4", "--plates", "24")
    assert found["flutes"]["circle"] == 24
    # what the command names goes before what the job says, be it the usual
    head = (*sets, "--set", "shop.dividing_ratio=90")
    assert record("dividing", "M18x0.75", *head)["square"]["turns"] == 22
    assert record("dividing", "M18x0.75", *head, "--ratio", "40")["square"]["turns"] == 10
    page = said("dividing", "M18x0.75", "--set", "shop.rotary_table=90, 1min")
    assert page.startswith("Flutes\nRotary table 90:1, divisions of 1′, 4 divisions")
    assert "\nSquare\n" in page
    assert "Dividing head" not in page


@pytest.mark.parametrize("words", [LEAD, (*LEAD, "--json"), ("dividing", "13")])
def test_an_answer_without_a_tap_loads_nothing_of_one(words: tuple[str, ...]) -> None:
    code = (
        f"import sys; sys.argv = {['tapmodel', *words]!r}\n"
        "from tapmodel.cli.app import app\n"
        "app(standalone_mode=False)\n"
        "bad = {'numpy', 'scipy', 'cadquery', 'OCP', 'vtkmodules', 'trimesh', 'tomlkit', 'rich'}\n"
        "bad |= {'tapmodel.spec.job', 'tapmodel.designing.record'}\n"
        "bad &= set(sys.modules)\n"
        "assert not bad, bad\n"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr


def test_what_a_job_lacks_is_named_as_option_and_as_field() -> None:
    for more, named in (
        ((), "--leadscrew or shop.leadscrew is needed: a pitch of 0.01"),
        (("--leadscrew", "4"), "--gears or shop.gears is needed: whole numbers of teeth"),
    ):
        failure = CliRunner().invoke(app, ["gears", "M6", *more]).exception
        assert isinstance(failure, InputError)
        assert str(failure).startswith(named)
