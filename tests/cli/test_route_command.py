"""`tapmodel route` as a user types it: the screen, the paper, the record, and how it ends."""

import json
import sys
from pathlib import Path

import pytest
from printed import pages_of, text_of

sys.path.insert(0, str(Path(__file__).parents[1] / "hostile"))

from entry import Ended, run

from tapmodel.designing.design import design_tap
from tapmodel.report.route.order import route_of
from tapmodel.shop.gcode.flutes import flutes_program
from tapmodel.shop.gcode.square import square_program
from tapmodel.spec.job_file import job_for
from tapmodel.words import Units


def routed(*words: str) -> Ended:
    return run(("route", *words))


def test_the_screen_numbers_every_operation_in_turn() -> None:
    done = routed("M18x0.75")
    assert (done.code, done.err) == (0, "")
    titles = [one.title for one in route_of(design_tap(job_for("M18x0.75")))]
    places = [done.out.index(f"\n{n} {title}\n") for n, title in enumerate(titles, start=1)]
    assert places == sorted(places)
    assert "Tap for M18x0.75, from bar to finished tap" in done.out


def test_nothing_is_written_unless_a_folder_is_named(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    assert routed("M10").code == 0
    assert not list(tmp_path.iterdir())


def test_the_paper_joins_the_folder_of_the_tap(tmp_path: Path) -> None:
    assert run(("sheet", "M10x1.5", "--out", str(tmp_path))).code == 0
    done = routed("M10", "--out", str(tmp_path), "--paper", "Letter")
    assert (done.code, done.err) == (0, "")
    paper = tmp_path / "M10x1.5" / "M10x1.5-route.pdf"
    assert f"{paper}\n" in done.out
    assert (tmp_path / "M10x1.5" / "M10x1.5-sheet.pdf").exists()
    page = pages_of(paper)[0]
    assert (page.width, page.height) == pytest.approx((215.9, 279.4), abs=0.1)
    record = json.loads((tmp_path / "M10x1.5" / "record.json").read_text())
    assert "M10x1.5-route.pdf" in {entry["path"] for entry in record["files"]}


def test_programs_of_a_mill_are_written_when_asked_for(tmp_path: Path) -> None:
    done = routed("M10", "--out", str(tmp_path), "--gcode", "--units", "inch")
    assert done.code == 0
    folder = tmp_path / "M10x1.5"
    design = design_tap(job_for("M10"))
    for part, written in (("flutes", flutes_program), ("square", square_program)):
        text = (folder / f"M10x1.5-{part}.ngc").read_text()
        assert text == written(design, Units.INCH)
    refused = routed("M10", "--gcode")
    assert refused.code == 2
    assert "--gcode: 'without --out' cannot be used" in refused.err


@pytest.mark.parametrize(
    ("words", "stops"),
    [
        ((), 0),
        (("--set", "shop.mill_control=cnc"), 0),
        (("--set", "shop.mill_control=cnc", "--set", "shop.index=by hand"), 3),
        (("--set", "shop.mill_control=cnc", "--set", "shop.index=by hand", "--index", "axis"), 0),
        (("--index", "by-hand"), 3),
        (("--set", "shop.mill_control=manual", "--gcode"), 0),
        (("--set", "shop.mill_control=manual"), None),
        (("--set", "shop.furnace=900"), None),
        (("--set", "shop.mill_control=cnc", "--no-gcode"), None),
        (("--no-gcode",), None),
    ],
)
def test_programs_come_by_what_is_said_of_the_mill(
    words: tuple[str, ...], stops: int | None, tmp_path: Path
) -> None:
    done = routed("M10", "--out", str(tmp_path), *words)
    assert done.code == 0
    program = tmp_path / "M10x1.5" / "M10x1.5-flutes.ngc"
    found = program.read_text().splitlines() if program.exists() else None
    assert (None if found is None else found.count("M0")) == stops
    # the cutter stands still while somebody turns the work
    for place in [number for number, line in enumerate(found or ()) if line == "M0"]:
        assert found is not None
        assert (found[place - 1], found[place + 1][:4]) == ("M5", "M3 S")
    if stops:
        assert not any(" A" in line for line in found or () if line.startswith("G"))


def test_what_turns_no_work_is_refused() -> None:
    done = routed("M10", "--index", "belt")
    assert (done.code, done.out) == (2, "")
    assert """--index: 'belt' cannot be used; allowed: "axis" or "by hand\"""" in done.err


def test_a_mill_that_reads_programs_is_the_machine_of_its_operations() -> None:
    done = routed("M10", "--set", "shop.mill_control=cnc", "--set", "shop.index=by hand", "--json")
    machines = {one["step"]: one["machine"] for one in json.loads(done.out)["operations"]}
    wanted = "mill under its program, the work turned by a dividing head at each stop"
    assert machines["flutes"] == machines["square"] == wanted


def test_make_or_buy_is_arithmetic_of_what_was_typed() -> None:
    words = ("--price", "140", "--weeks", "3", "--rate", "45", "--bar-price", "30")
    done = routed("M18x0.75", *words)
    record = json.loads(routed("M18x0.75", *words, "--json").out)["cost"]
    assert record["made"] == pytest.approx(record["hours"] * 45 + 0.116 * 30)
    assert f"Making costs {record['made'] - 140:.2f} more than buying." in done.out
    assert f"Both cost the same at a rate of {record['even_at_rate']:.2f} an hour." in done.out
    assert "Without a price stand here: the cutter (--cutter-price)." in done.out
    assert "of 3 weeks of 40 hours" in done.out


def test_without_a_price_stand_the_hours_alone() -> None:
    done = routed("M18x0.75")
    hours = json.loads(routed("M18x0.75", "--json").out)["cost"]["hours"]
    assert f"{hours:.2f}\n" in done.out.split("\nHours\n")[1]
    assert "Make or buy" not in done.out
    assert "buying" not in done.out
    refused = routed("M18x0.75", "--rate", "nan")
    assert (refused.code, refused.out) == (2, "")
    assert "--rate: nan cannot be used" in refused.err


def test_the_record_has_lengths_in_mm_and_texts_in_the_readers_units() -> None:
    done = routed("1/2-13", "--json", "--units", "inch")
    record = json.loads(done.out)
    assert record["schema"] == "tapmodel.route/1"
    operations = {one["step"]: one for one in record["operations"]}
    assert [one["number"] for one in record["operations"]] == [*range(1, len(operations) + 1)]
    design = design_tap(job_for("1/2-13"))
    major = operations["thread"]["measure"][0]
    assert major["mm"] == pytest.approx(design.tap.thread.major)
    assert major["low"] == pytest.approx(design.limits.major_min)
    assert major["text"] == f"{design.tap.thread.major / 25.4:.4f} in"
    assert " mm" not in done.out


def test_a_broken_rule_is_told_and_the_route_too(tmp_path: Path) -> None:
    done = routed("M10", "--set", "thread.pitch_diameter=9.3", "--out", str(tmp_path))
    assert done.code == 1
    assert done.err.startswith("ERROR [pitch-size]")
    assert "\n1 Saw the bar\n" in done.out
    assert "ERROR" in text_of(tmp_path / "M10x1.5" / "M10x1.5-route.pdf")


def test_a_tap_of_a_set_is_marked_and_gauged_as_one(tmp_path: Path) -> None:
    words = ("Tr20x4", "--set", "hole.material=C45", "--out", str(tmp_path))
    assert run(("set", *words)).code == 0
    first, last = (routed(str(tmp_path / f"Tr20x4-{number}.toml")) for number in (1, 2))
    assert first.code == last.code == 0
    assert first.out.startswith("Tap 1 of a set of 2 for Tr20x4, from bar")
    assert "one ring round the shank" in first.out
    assert "No gauge enters behind this tap" in first.out
    assert "GO gauge" not in first.out
    assert "NO-GO gauge" in last.out


def test_what_cannot_be_a_folder_is_refused() -> None:
    done = routed("M10", "--out", "CON")
    assert done.code == 2
    assert "--out" in done.err
