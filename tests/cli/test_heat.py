"""`tapmodel heat`: hardening a tool steel, and carburising a mild one."""

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "hostile"))

from entry import Ended, run


def heat(*words: str) -> Ended:
    return run(["heat", *words])


def record(*words: str) -> dict[str, Any]:
    ended = heat(*words, "--json")
    assert (ended.code, ended.err) == (0, "")
    return json.loads(ended.out)


def test_a_tool_steel_for_a_hardness() -> None:
    found = record("O1", "--section", "12", "--hardness", "58.5")
    # read: 1450 to 1500 F, oil, 10 to 30 min; 500 F 60 HRC and 600 F 57
    assert found["quench_from"] == pytest.approx([787.8, 815.6], abs=0.1)
    assert (found["quench"], found["soak"]["low"], found["soak"]["high"]) == ("oil", 10, 30)
    assert found["temper"] == pytest.approx((550 - 32) / 1.8)
    assert [row["hardness"] for row in found["rows"]] == [60.0, 57.0]
    assert (found["section"], found["section_hardens_through"]) == (12.0, True)
    page = heat("O1", "--section", "12", "--hardness", "58.5", "--units", "both").out
    for words in ("288 °C = 550 °F", "58.5 HRC", "10 to 30 min", "between two printed rows"):
        assert words in page
    assert "harden through:" not in page


def test_a_section_too_thick_is_told_with_what_helps() -> None:
    thick = record("O1", "--section", "64")
    assert thick["section_hardens_through"] is False
    page = heat("O1", "--section", "64").out
    for words in ("64.0 mm round does not harden through", "core stays softer", "A2", "hollow it"):
        assert words in " ".join(page.split())
    assert record("O1", "--section", "2.6in")["section"] == pytest.approx(66.04)
    assert record("O2", "--section", "64")["section_hardens_through"] is None


def test_what_is_not_known_says_so() -> None:
    page = heat("A2").out
    assert page.count("not known here: the supplier's data say it") == 1
    page = heat("silver", "steel").out  # two words without quotes
    assert page.count("not known here") == 2
    assert "hardens through in oil  to some 6 mm round" in page
    assert record("silver steel")["soak"] is None


def test_a_temper_gives_its_hardness_in_either_unit() -> None:
    for temper in ("500F", "260", "260 C"):
        assert record("O1", "--temper", temper)["hardness"] == pytest.approx(60.0)


def test_teeth_that_are_carbon_right_through() -> None:
    words = ("--carburise", "--hours", "0.5", "M6")  # pitch 1
    tooth = record(*words)["tooth"]
    assert tooth["middle"]["carbon"] == pytest.approx(0.88, abs=0.01)
    assert tooth["hard_right_through"] is True
    page = " ".join(heat(*words).out.split())
    for told in ("glass hard right through", "shorter time", "760 to 800 °C", "hardens through"):
        assert told in page
    coarse = record("--carburise", "--hours=0.5", "Tr16x4")
    assert coarse["tooth"]["hard_right_through"] is False
    assert "glass-hard-tooth" not in coarse["heed"]


def test_the_hours_for_a_depth() -> None:
    found = record("--carburise", "--depth", "0.3", "M10")
    assert found["tooth"]["under_root"]["case"] == pytest.approx(0.3, rel=1e-3)
    flat = record("--carburise", "--depth", "0.012in")
    assert flat["flat"]["case"] == pytest.approx(0.3048, rel=1e-3)
    assert flat["tooth"] is None
    # half a plane only: the root takes longer
    assert found["hours"] > flat["hours"]


def test_the_box_may_be_told_in_fahrenheit() -> None:
    found = record("--carburise", "--hours=1", "--temperature=1700F")
    assert found["temperature"] == pytest.approx(926.667, abs=1e-3)


def test_a_thread_of_several_words_and_its_settings() -> None:
    one = record("--carburise", "--hours=1", "Tr12x3", "LH", "--set", "flutes.count=4")
    assert one["tooth"]["thread"] == "Tr12x3 LH"


def test_cautions_stand_below_both() -> None:
    for words in (("O1",), ("--carburise", "--hours=1")):
        page = " ".join(heat(*words).out.split())
        for told in ("supplier's data", "hot oil", "Local rules", "licensed trades"):
            assert told in page
    page = heat("--carburise", "--hours=1").out
    for told in ("carbon monoxide", "austic", "dust"):
        assert told in page


def test_a_design_loads_nothing_of_the_carburising() -> None:
    code = (
        "import sys; sys.argv = ['tapmodel', 'design', 'M10'];"
        "from tapmodel.cli.app import main\n"
        "try: main()\n"
        "except SystemExit: pass\n"
        "assert 'scipy' not in sys.modules, 'scipy'"
    )
    subprocess.run([sys.executable, "-c", code], check=True, capture_output=True)
