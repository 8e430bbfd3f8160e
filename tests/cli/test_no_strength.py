"""Who wants nothing said of what the tap will do in the hole is told nothing of it, anywhere."""

import json
import re
import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "hostile"))

from entry import Ended, run

FORETOLD = re.compile(r"N·m|next came|wrench|GO gauge")
STEEL = ("--set", "hole.material=C45")


def within(*words: str) -> Ended:
    return run(words)


def test_the_screen_tells_the_tap_alone() -> None:
    whole = within("design", "M10", "--all", "--sources")
    bare = within("design", "M10", "--all", "--sources", "--no-strength")
    assert FORETOLD.search(whole.out)
    assert not FORETOLD.search(bare.out)
    # every other line is as before
    assert set(bare.out.splitlines()) < set(whole.out.splitlines())


def test_a_tap_that_would_be_too_weak_is_no_error_then() -> None:
    assert within("design", "Tr20x4", *STEEL).code == 1
    assert within("design", "Tr20x4", *STEEL, "--no-strength").code == 0


def test_the_record_has_no_prediction() -> None:
    record = json.loads(within("design", "M10", "--json", "--no-strength").out)
    assert record["prediction"] is None
    assert not any("runner_up" in choice for choice in record["choices"])


def test_papers_are_written_without(tmp_path: Path) -> None:
    folder = tmp_path / "M10x1.5"
    assert within("sheet", "M10", "--no-strength", "--out", str(tmp_path)).code == 0
    drawn = {path.stem for path in (folder / "drawings").iterdir()}
    assert "M10x1.5-side" in drawn
    assert not drawn & {f"M10x1.5-{name}" for name in ("chips", "torque", "strength")}
    page = (folder / "M10x1.5-sheet.html").read_text()
    assert not re.search(r"Tap the hole|next came", page)


def test_a_broken_rule_still_says_why_nothing_is_told() -> None:
    told = within("design", "M10", "--all", "--set", "flutes.cutter_diameter=9")
    assert "Nothing is told of a tap that breaks a rule." in told.out
    assert "Clearance, and the thread that is left" not in told.out


@pytest.mark.parametrize("command", ["design", "build", "sheet", "poster", "route", "page"])
def test_commands_that_tell_it_can_leave_it_out(command: str) -> None:
    assert "--no-strength" in within(command, "--help").out
