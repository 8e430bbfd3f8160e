"""`tapmodel compare` as a user types it: table, files, messages."""

import csv
import json
import re
import subprocess
import sys
import textwrap
from pathlib import Path

import pytest

import tapmodel

sys.path.insert(0, str(Path(__file__).parents[1] / "hostile"))

from entry import Ended, refusal_faults, run

OFFSETS = "flutes.offset=-1:3:9"
KINDS = "relief.chamfer.kind=concentric,eccentric"


def compared(out: Path, *words: str) -> Ended:
    return run(["compare", *words, "--out", str(out)])


def _lines(printed: str) -> list[str]:
    """Those of the table: behind the two lines of the head, until the empty line."""
    return printed.partition("\n\n")[0].splitlines()[2:]


def test_few_combinations_stand_in_full_with_the_best_marked(tmp_path: Path) -> None:
    ended = compared(tmp_path, "M18x0.75", "--vary", OFFSETS, "--vary", KINDS)
    assert ended.code == 0
    head, units, *lines = ended.out.partition("\n\n")[0].splitlines()
    assert head.split()[:4] == ["no.", "flutes.offset", "relief.chamfer.kind", "rake"]
    assert units.split()[:5] == ["mm", "deg", "mm", "mm", "N·m"]
    assert len(lines) == 18
    rows = tapmodel.compare(
        "M18x0.75",
        {
            "flutes.offset": [-1 + n / 2 for n in range(9)],
            "relief.chamfer.kind": ["concentric", "eccentric"],
        },
    )
    marked = [place for place, line in enumerate(lines) if line.lstrip().startswith("*")]
    assert marked == [rows.index(rows.best)]
    for line, row in zip(lines, rows, strict=True):
        numbers = line.split()
        assert numbers[2] == row["relief.chamfer.kind"]
        told = [float(numbers[place]) for place in (1, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15)]
        names = (
            *("flutes.offset", "rake_at_wall", "land_width", "core_diameter", "torque_likely"),
            *("torque_low", "torque_high", "bears", "margin", "chamfer_clearance_um"),
            *("flank_rubbing", "chip_room", "chip_min", "chip_max"),
        )
        digits = (6, 2, 2, 2, 2, 2, 2, 1, 2, 1, 2, 1, 4, 4)
        for value, name, places in zip(told, names, digits, strict=True):
            assert value == pytest.approx(row[name], abs=0.5001 * 10**-places), name
        assert numbers[16] == "-"
        assert " ".join(numbers[17:]) == (row["warnings"] or "-")


def test_a_long_table_shows_the_best_twenty(tmp_path: Path) -> None:
    words = ("--vary", "flutes.core_diameter=7:9:7", "--vary", "flutes.offset=0:1:3")
    ended = compared(tmp_path, "M18x0.75", *words)
    shown = _lines(ended.out)
    assert "The best 20 of 21" in ended.out
    assert "all stand in the CSV" in ended.out
    assert shown[0].lstrip().startswith("*")
    (file,) = tmp_path.rglob("*.csv")
    with file.open(newline="") as stream:
        lines = list(csv.DictReader(stream))
    by_rank = sorted(lines, key=lambda line: int(line["rank"]))
    assert [line.split()[0].lstrip("*") for line in shown] == [
        line["number"] for line in by_rank[:20]
    ]
    assert len(lines) == 21


def test_a_tool_that_rules_choose_anew_has_a_column(tmp_path: Path) -> None:
    out = compared(tmp_path, "M18x0.75", "--vary", "flutes.rake=8,10").out
    head, units, *lines = out.partition("\n\n")[0].splitlines()
    assert head.split()[:3] == ["no.", "flutes.rake", "cutter"]
    assert units.split()[:2] == ["deg", "mm"]
    assert [line.split()[2] for line in lines] == ["8.00", "10.00"]
    assert "cutter: chosen anew by the rules." in " ".join(out.split())
    (file,) = tmp_path.rglob("*.csv")
    with file.open(newline="") as stream:
        told = [line["flutes.cutter_diameter [mm]"] for line in csv.DictReader(stream)]
    assert [float(size) for size in told] == [8.0, 10.0]
    given = ("--vary", "flutes.rake=8,10", "--set", "flutes.cutter_diameter=8")
    assert "cutter" not in compared(tmp_path, "M18x0.75", *given).out.splitlines()[0]


def test_inches_are_the_same_lengths(tmp_path: Path) -> None:
    words = ("--vary", "flutes.core_diameter=4,5", "--set", "flutes.cutter_diameter=4")
    metric = compared(tmp_path, "M10", *words).out
    inches = compared(tmp_path, "M10", *words, "--units", "inch").out
    assert "mm" not in inches.partition("\n\n")[0]
    for one, other in zip(_lines(metric), _lines(inches), strict=True):
        ours, theirs = one.split(), other.split()
        for place, step in ((1, 1e-5), (3, 1e-3), (4, 1e-3), (11, 1e-3), (12, 1e-2), (13, 1e-5)):
            value = float(theirs[place]) * 25.4
            rounding = 25.4 * step / 2 + {12: 0.05, 13: 5e-5}.get(place, 0.005) + 1e-9
            assert value == pytest.approx(float(ours[place]), abs=rounding), place
        # Clearance of the chamfer: µm in the one.
        assert float(theirs[10]) * 25400 == pytest.approx(float(ours[10]), abs=0.2)
        # Torques in pounds of 4.4482216 N at an inch.
        for place, step in ((5, 0.1), (6, 0.1), (7, 0.1), (8, 1.0)):
            told = float(theirs[place]) * 4.4482216 * 0.0254
            assert told == pytest.approx(float(ours[place]), abs=0.113 * step / 2 + step / 20)
        assert ours[9] == theirs[9]
    for text in ("lbf·in", " in)"):
        assert text in inches.partition("\n\n")[2]


@pytest.mark.parametrize(
    ("values", "unit", "first"),
    [("1/4in,3/16in", "in", "0.25"), ("6.35,4.7625mm", "mm", "6.35")],
)
def test_a_reader_of_both_reads_the_varied_lengths_as_they_were_typed(
    values: str, unit: str, first: str, tmp_path: Path
) -> None:
    words = ("3/8-16", "--vary", f"flutes.cutter_diameter={values}")
    _, units, line, *_ = compared(tmp_path / unit, *words).out.splitlines()
    assert units.split()[0] == unit
    assert line.split()[1] == first
    # lengths that nobody typed stay in mm
    assert units.split()[2:4] == ["mm", "mm"]


def _folder(out: Path, name: str, *varied: str) -> Path:
    return out / "-".join((name, "compare", *varied))


def test_the_csv_reads_back_as_every_number(tmp_path: Path) -> None:
    compared(tmp_path, "M18x0.75", "--vary", OFFSETS, "--vary", "flutes.count=3,4,13", "--json")
    file = _folder(tmp_path, "M18x0.75", "flutes.offset", "flutes.count")
    file = file / f"{file.name}.csv"
    with file.open(newline="", encoding="ascii") as stream:
        lines = list(csv.DictReader(stream))
    varied = {"flutes.offset": [-1 + n / 2 for n in range(9)], "flutes.count": [3, 4, 13]}
    rows = tapmodel.compare("M18x0.75", varied)
    assert len(lines) == len(rows) == 27
    assert {"flutes.offset [mm]", "flutes.count", "bears [N m]", "rake_at_wall [deg]"} <= set(
        lines[0]
    )
    assert {"chamfer_clearance_um [um]", "flute_area [mm2]", "margin"} <= set(lines[0])
    for line, row in zip(lines, rows, strict=True):
        told = {head.partition(" [")[0]: cell for head, cell in line.items()}
        for name, value in row.items():
            cell = told[name]
            assert (
                cell == value if isinstance(value, str) else value is None or float(cell) == value
            )
            assert (cell == "") == (value in (None, "")), name
    assert [bool(line["refusal"]) for line in lines] == [row["flutes.count"] == 13 for row in rows]
    assert sorted(int(line["rank"]) for line in lines) == list(range(1, 28))


def test_the_folder_holds_just_what_its_record_vouches_for(tmp_path: Path) -> None:
    ended = compared(tmp_path, "M10", "--vary", "flutes.count=3,4", "--json")
    told = json.loads(ended.out)
    folder = _folder(tmp_path, "M10x1.5", "flutes.count")
    record = json.loads((folder / "record.json").read_text())
    names = {f"{folder.name}.csv", f"{folder.name}.svg"}
    assert {path.name for path in folder.iterdir()} == {*names, "record.json"}
    assert {file["path"] for file in record["files"]} == names
    assert record["schema"] == "tapmodel.comparison/1"
    assert told["rows"] == record["rows"]
    assert len(record["rows"]) == 2
    rows = tapmodel.compare("M10", {"flutes.count": [3, 4]})
    assert record["best"] == rows.index(rows.best) + 1
    assert record["why"] == rows.why
    assert record["rows"][1]["torque_high"] == rows[1]["torque_high"]
    # A model of the tap in its own folder is none of this.
    assert list(tmp_path.iterdir()) == [folder]
    again = compared(tmp_path, "M10", "--vary", "flutes.count=4,5")
    assert "another comparison of this name" in again.err


def test_another_question_about_the_same_tap_leaves_the_first_answer(tmp_path: Path) -> None:
    compared(tmp_path, "M10", "--vary", "flutes.count=3,4")
    compared(tmp_path, "M10", "--vary", "chamfer.form=plug,taper")
    names = {"M10x1.5-compare-flutes.count", "M10x1.5-compare-chamfer.form"}
    assert {path.name for path in tmp_path.iterdir()} == names


def test_a_question_about_many_fields_has_no_endless_name(tmp_path: Path) -> None:
    many = ("flutes.land_share=0.35", "flutes.core_diameter=5", "relief.chamfer.heel_drop=0.1")
    told = (*many, "relief.thread.margin_angle=5", "blank.square_across_flats=5.5")
    words = [word for each in told for word in ("--vary", each)]
    assert compared(tmp_path, "M10", *words).code == 0
    (folder,) = tmp_path.iterdir()
    begun = "M10x1.5-compare-flutes.land_share-flutes.core_diameter-relief.chamfer.heel_drop"
    assert folder.name == begun


def test_where_each_breaks_a_rule_the_table_says_so_and_the_code_is_one(tmp_path: Path) -> None:
    ended = compared(tmp_path, "M8", "--vary", "thread.root_flat=0.7,0.71")
    assert ended.code == 1
    assert [line.split()[-2] for line in _lines(ended.out)] == ["thread-depth"] * 2
    assert "Each of the 2 breaks a rule" in ended.out
    assert "left out, picture" in ended.err
    assert [path.suffix for path in _folder(tmp_path, "M8", "thread.root_flat").iterdir()].count(
        ".svg"
    ) == 0


def test_values_that_make_no_job_are_told_once(tmp_path: Path) -> None:
    ended = compared(tmp_path, "M8", "--vary", "flutes.count=3,13,14")
    assert ended.code == 0
    assert [line.split()[-2] for line in _lines(ended.out)] == ["-", "unusable", "unusable"]
    assert ended.out.count("unusable (2), first no. 2: flutes.count: 13 cannot be used") == 1


def test_a_job_of_several_words_and_a_file_are_jobs_too(tmp_path: Path) -> None:
    assert compared(tmp_path, "Tr12x3", "LH", "--vary", "flutes.count=3,4").code == 0
    file = tmp_path / "mine.toml"
    file.write_text('designation = "M6"\nname = "mine"\n[flutes]\nrake = 6.0\n')
    ended = compared(tmp_path, str(file), "--vary", "flutes.offset=0,0.2", "--json")
    record = json.loads(ended.out)
    assert record["name"] == "mine-compare-flutes.offset"
    assert [row["flutes.offset"] for row in record["rows"]] == [0, 0.2]


MESSAGES = {
    "nothing varied": ([], "--vary: 'none' cannot be used; allowed: field=values"),
    "no values": (["--vary", "flutes.count="], "field=values"),
    "no field": (["--vary", "flutes.number=3"], "a field of the job"),
    "twice": (["--vary", "flutes.count=3", "--vary", "flutes.count=4"], "each field once"),
    "set as well": (["--vary", "flutes.count=3", "--set", "flutes.count=4"], "--set does not hold"),
    "too many": (
        ["--vary", "flutes.offset=0:1:1000", "--vary", "flutes.count=2:7:6"],
        "6000 cannot be used; allowed: at most 5000",
    ),
    "none usable": (["--vary", "flutes.count=13,14"], "flutes.count: 13 cannot be used"),
    "contradicting": (
        ["--vary", "flutes.offset=1", "--set", "flutes.rake=8"],
        "flutes.rake together",
    ),
    "bad set": (["--vary", "flutes.count=3", "--set", "flutes.rake"], "--set"),
}


@pytest.mark.parametrize(("words", "named"), MESSAGES.values(), ids=MESSAGES)
def test_what_cannot_be_compared_is_refused(words: list[str], named: str, tmp_path: Path) -> None:
    assert refusal_faults(compared(tmp_path / "out", "M10", *words), named) == []
    assert not (tmp_path / "out").exists()


def test_bad_jobs_are_refused(tmp_path: Path) -> None:
    vary = ("--vary", "flutes.count=3,4")
    assert refusal_faults(compared(tmp_path, "banana", *vary), "designation") == []
    assert refusal_faults(compared(tmp_path, "none.toml", *vary), "none.toml") == []
    assert refusal_faults(compared(tmp_path, "M10", "M12", *vary), "one JOB") == []


STRANGE = (
    *("flutes.offset=nan,1", f"flutes.count=3,{'9' * 400}", "flutes.offset=1e308,1"),
    *(r'designation=M10,"\u001b[31m"', f"designation=M10,{'y' * 5000}", r'designation=M10,"a\nb"'),
    *('designation=M10,"\udcff"', "flutes.count=3,{a=1}", "flutes.count=3,1979-05-27"),
    *("blank.shank_must_pass=true,false", "name=a,CON", "hole.material=brass,unobtainium"),
)


@pytest.mark.parametrize("extra", [[], ["--json"], ["--units", "inch"]], ids=["", "json", "inch"])
@pytest.mark.parametrize("values", STRANGE, ids=range(len(STRANGE)))
def test_strange_values_beside_a_good_one_are_rows(
    values: str, extra: list[str], tmp_path: Path
) -> None:
    ended = compared(tmp_path, "M10", "--vary", values, *extra)
    assert ended.code == 0
    printed = ended.out + ended.err
    assert not {c for c in printed if not (c.isprintable() or c == "\n")}
    (file,) = tmp_path.rglob("*.csv")
    with file.open(newline="") as stream:
        assert len(list(csv.DictReader(stream))) == 2


def test_a_stop_leaves_nothing(tmp_path: Path) -> None:
    script = textwrap.dedent("""
        import os, signal
        from tapmodel.comparing import variants
        def settle(job, settle=variants.settle, seen=[]):
            seen.append(job)
            if len(seen) == 7:
                os.kill(os.getpid(), signal.SIGINT)
            return settle(job)
        variants.settle = settle
        from tapmodel.cli import start
        start.main()
    """)
    words = ["compare", "M10", "--vary", OFFSETS, "--out", str(tmp_path / "out")]
    ended = subprocess.run(
        [sys.executable, "-c", script, *words], capture_output=True, text=True, check=False
    )
    assert ended.returncode == 130
    assert ended.stderr == "\ntapmodel: stopped; nothing was delivered\n"
    assert ended.stdout == ""
    assert not (tmp_path / "out").exists()


def test_a_hundred_variants_are_compared_and_no_cure_is_sought(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def sought(*_of: object, **_how: object) -> None:
        pytest.fail("a cure was sought, which takes as long as a hundred variants")

    monkeypatch.setattr("tapmodel.designing.cures.advice._offered", sought)
    compared(tmp_path, "M18x0.75", "--vary", "flutes.offset=-1:3:100", "--json")
    (told,) = tmp_path.rglob("*.csv")
    assert len(told.read_text(encoding="utf-8").splitlines()) == 1 + 100


def test_a_comparison_loads_no_kernel(tmp_path: Path) -> None:
    code = (
        "import sys; from tapmodel.cli.app import app\n"
        f"app(['compare', 'M6', '--vary', 'flutes.count=3,4', '--out', {str(tmp_path)!r}],"
        " standalone_mode=False)\n"
        "bad = {'cadquery', 'OCP', 'vtk', 'vtkmodules', 'trimesh', 'scipy', 'rich', 'jinja2'}\n"
        "assert not bad & set(sys.modules), bad & set(sys.modules)\n"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    assert re.search(r"M6x1-compare-flutes.count[/\\]M6x1-compare-flutes.count\.svg", done.stdout)
