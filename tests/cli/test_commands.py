"""The commands as a user types them."""

import json
import math
import os
import subprocess
import sys
from pathlib import Path

import pytest
import trimesh

sys.path.insert(0, str(Path(__file__).parents[1] / "hostile"))

from entry import Ended, run

RECORD_KEYS = {
    "hole": "major_min pitch_min pitch_max minor_min minor_max",
    "thread": "pitch lead starts hand flank_angle major major_min major_max pitch_diameter "
    "pitch_min pitch_max minor crest_flat root_flat first_z",
    "chamfer": "angle length pitches point_diameter teeth chip_thickness",
    "flutes": "count cutter_diameter offset centre_radius depth_from_top core_diameter "
    "rake_crest rake_pitch rake_root chordal_hook land_angle land_width area angles "
    "full_depth_length runout_end",
    "blank": "overall_length thread_length neck_diameter neck_length shank_diameter "
    "square_across_flats square_length square_start",
}
RELIEF_KEYS = (
    "kind applies_to margin_angle edge_angle heel_drop arc_radius arc_offset arc_direction"
)


def tapmodel(*arguments: str, cwd: Path | None = None) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "tapmodel", *arguments],
        capture_output=True,
        text=True,
        cwd=cwd,
        check=False,
    )


def within(*arguments: str) -> Ended:
    """The same in the tests' own process, for commands that start none: no seconds of loading."""
    return run(arguments)


def test_design_prints_the_numbers() -> None:
    result = tapmodel("design", "M18x0.75")
    assert result.returncode == 0
    assert "17.188 to 17.378 mm" in result.stdout
    assert result.stderr == ""


def test_design_as_json_is_the_record_without_the_model() -> None:
    result = within("design", "M18x0.75-LH", "--json")
    record = json.loads(result.out)
    assert record["schema"] == "tapmodel.record/5"
    assert record["thread"]["hand"] == "left"
    # By a tenth of the pitch over the least.
    most = record["thread"]["major_min"] + 0.075
    assert record["thread"]["major_max"] == pytest.approx(most, abs=1e-9)
    assert not {"model", "mesh", "files"} & set(record)
    for part, keys in RECORD_KEYS.items():
        assert set(keys.split()) <= set(record[part]), part
    for relief in ("thread", "chamfer"):
        assert set(RELIEF_KEYS.split()) == set(record["relief"][relief])
    keys = {"code", "severity", "what", "expected", "actual", "allowed", "source"}
    keys |= {"no_solid", "cures", "field", "value", "low", "high", "unit"}
    assert all(set(found) == keys for found in record["findings"])


def test_the_record_holds_choices_as_values_and_in_words() -> None:
    sets = ["--set", "shop.cutters=[3, 8.5]", "--set", "flutes.rake=6"]
    record = json.loads(within("design", "M18x0.75", "--json", *sets).out)
    choices = {choice["field"]: choice for choice in record["choices"]}
    other = choices["flutes.core_diameter"].pop("runner_up")
    assert other["value"] in (7.29, 8.91)
    assert other["what"].startswith(f"next came {other['value']:g} mm: ")
    assert choices["flutes.core_diameter"] == {
        "field": "flutes.core_diameter",
        "value": "8.1 mm",
        "number": 8.1,
        "unit": "mm",
        "given": False,
        "why": "0.45 of the diameter with 4 flutes: strength against chip room",
        "source": "workshop practice, low certainty (from memory)",
    }
    assert choices["flutes.rake"] == {
        "field": "flutes.rake",
        "value": "6.0 deg",
        "number": 6.0,
        "unit": "deg",
        "given": True,
        "why": "as given",
        "source": "job",
    }
    assert choices["shop.cutters"]["number"] == [3.0, 8.5]
    assert (choices["flutes.count"]["number"], choices["flutes.count"]["unit"]) == (4, "")
    assert choices["chamfer.form"]["number"] == "plug"


def test_design_loads_no_kernel() -> None:
    code = (
        "import sys; sys.argv = ['tapmodel', 'design', 'M6']\n"
        "from tapmodel.cli.app import app\n"
        "app(standalone_mode=False)\n"
        "bad = {'cadquery', 'OCP', 'vtk', 'vtkmodules', 'trimesh', 'scipy', 'tomlkit'}\n"
        "bad |= {'jinja2', 'rich'}\n"
        "bad &= set(sys.modules)\n"
        "assert not bad, bad\n"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr


def test_set_overrides_a_value() -> None:
    record = json.loads(within("design", "M18x0.75", "--json", "--set", "flutes.count=3").out)
    assert record["flutes"]["count"] == 3
    assert record["flutes"]["angles"] == [0.0, 120.0, 240.0]


def test_a_new_job_file_designs_the_same_tap(tmp_path: Path) -> None:
    file = tmp_path / "my-tap.toml"
    assert within("new", "M18x0.75", str(file)).code == 0
    again = json.loads(within("design", str(file), "--json").out)
    first = json.loads(within("design", "M18x0.75", "--json").out)
    for part in (*RECORD_KEYS, "relief"):
        assert again[part] == first[part], part


def test_new_does_not_replace_a_file_unasked(tmp_path: Path) -> None:
    file = tmp_path / "mine.toml"
    file.write_text("precious")
    result = within("new", "M6", str(file))
    assert result.code == 2
    assert "--overwrite" in result.err
    assert file.read_text() == "precious"
    assert within("new", "M6", str(file), "--overwrite").code == 0
    assert "M6" in file.read_text()


def test_schema_names_every_section() -> None:
    schema = json.loads(within("schema").out)
    sections = {"hole", "thread", "chamfer", "flutes", "relief", "blank", "shop", "designation"}
    assert sections <= set(schema["properties"])


BAD_DESIGNATIONS = ["", "banana", "M", "M-6", "M0x1", "Mnanx1", "M6x-1", "M6x1x1", "M6-6g", "M1e9"]


@pytest.mark.parametrize("text", BAD_DESIGNATIONS)
def test_a_bad_designation_gets_one_message(text: str) -> None:
    result = within("design", "--json", "--", text)
    assert result.code == 2
    assert result.out == ""
    assert result.err.count("\n") == 1
    assert "allowed" in result.err


BAD_FILES = {
    "not TOML": (b"designation = ", "TOML"),
    "not text": (b"\xff\xfe\x00", "UTF-8"),
    "unknown key": (b'designation = "M6"\nflute = 3\n', "flute"),
    "unknown value key": (b'designation = "M6"\n[flutes]\ncout = 3\n', "flutes.cout"),
    "text for a number": (b'designation = "M6"\n[flutes]\ncount = "three"\n', "flutes.count"),
    "not a number": (b'designation = "M6"\n[flutes]\noffset = nan\n', "flutes.offset"),
    "out of range": (b'designation = "M6"\n[flutes]\ncount = 99\n', "flutes.count"),
    "no designation": (b"[flutes]\ncount = 3\n", "designation"),
    "wrong unit": (b'designation = "M6"\n[flutes]\noffset = "1 yard"\n', "flutes.offset"),
}


@pytest.mark.parametrize("name", BAD_FILES)
def test_a_bad_job_file_gets_one_message_that_names_the_field(name: str, tmp_path: Path) -> None:
    content, named = BAD_FILES[name]
    file = tmp_path / "bad.toml"
    file.write_bytes(content)
    result = within("sheet", str(file), "--out", str(tmp_path / "out"))
    assert result.code == 2
    assert named in result.err
    assert "bad.toml" in result.err
    assert result.out == ""
    assert not (tmp_path / "out").exists()


def test_a_bad_job_file_gets_the_same_message_where_processes_have_started(tmp_path: Path) -> None:
    file = tmp_path / "bad.toml"
    file.write_bytes(BAD_FILES["out of range"][0])
    result = tapmodel("build", str(file), "--out", str(tmp_path / "out"))
    assert (result.returncode, result.stdout) == (2, "")
    assert result.stderr == within("sheet", str(file)).err
    assert not (tmp_path / "out").exists()


def test_a_missing_file_and_a_huge_one_are_refused_at_once(tmp_path: Path) -> None:
    missing = within("design", str(tmp_path / "no.toml"))
    assert missing.code == 2
    assert "no.toml" in missing.err
    huge = tmp_path / "huge.toml"
    with huge.open("wb") as stream:
        stream.truncate(3_000_000_000)
    result = within("design", str(huge))
    assert result.code == 2
    assert "huge.toml" in result.err


def test_an_unusable_output_folder_is_named(tmp_path: Path) -> None:
    blocked = tmp_path / "file"
    blocked.write_text("a file stands here")
    result = tapmodel("build", "M3x0.5", "--out", str(blocked))
    assert result.returncode == 2
    assert "--out" in result.stderr
    assert blocked.read_text() == "a file stands here"


def test_a_design_that_breaks_a_rule_is_refused_before_the_kernel(tmp_path: Path) -> None:
    out = tmp_path / "out"
    result = tapmodel("build", "M6", "--set", "blank.square_across_flats=7", "--out", str(out))
    assert result.returncode == 1
    assert "ERROR" in result.stderr
    assert "--force" in result.stderr
    assert not out.exists()


def test_what_has_no_solid_cannot_be_forced(tmp_path: Path) -> None:
    out = tmp_path / "out"
    flats = ("--set", "blank.square_across_flats=7", "--out", str(out))
    result = tapmodel("build", "M6", "--force", *flats)
    assert result.returncode == 1
    assert "even --force cannot build it: the flats of the square lie outside" in result.stderr
    assert not out.exists()


@pytest.mark.skipif(os.geteuid() == 0, reason="the superuser may write anywhere")
def test_a_folder_without_permission_is_named(tmp_path: Path) -> None:
    closed = tmp_path / "closed"
    closed.mkdir(mode=0o500)
    result = tapmodel("build", "M3x0.5", "--out", str(closed))
    assert result.returncode == 2
    assert "--out" in result.stderr


def test_formats_are_chosen_and_bad_ones_named(tmp_path: Path) -> None:
    bad = tapmodel("build", "M4x0.7", "--formats", "stl,obj", "--out", str(tmp_path / "out"))
    assert bad.returncode == 2
    assert "--formats" in bad.stderr
    assert not (tmp_path / "out").exists()
    good = tapmodel("build", "M4x0.7", "--formats", "stl", "--out", str(tmp_path / "out"), "--json")
    assert good.returncode == 0
    record = json.loads(good.stdout)
    assert [file["path"] for file in record["files"]] == ["M4x0.7.stl"]
    assert _files(tmp_path / "out" / "M4x0.7") == {"M4x0.7.stl", "record.json"}
    kernel, desk = (record["run"]["processes"][name] for name in ("kernel", "desk"))
    assert {"edges", "proof"} < set(kernel["seconds"])
    assert "STEP file" not in kernel["seconds"]
    assert set(desk["seconds"]) == {"loading", "waiting", "mesh proof", "mesh files"}
    # the desk loads while the tap is designed, before the run's own clock starts
    assert sum(desk["seconds"].values()) > 0.5 * record["run"]["seconds"]
    folder, out = tmp_path / "out" / "M4x0.7", str(tmp_path / "out")
    # A sheet of the very same tap joins it; one of another tap does not stand beside its model.
    assert within("sheet", "M4x0.7", "--out", out).code == 0
    assert {"M4x0.7.stl", "M4x0.7-sheet.html", "M4x0.7-sheet.pdf"} < _listed(folder)
    other = within("sheet", "M4x0.7", "--set", "flutes.rake=9", "--out", out)
    assert other.code == 0
    assert "another tap of this name" in other.err
    assert {path for path in _listed(folder) if "/" not in path} == {
        "M4x0.7-sheet.html",
        "M4x0.7-sheet.pdf",
    }


def test_the_step_file_alone_is_made_at_the_desk(tmp_path: Path) -> None:
    built = tapmodel("build", "M4x0.7", "--formats", "step", "--out", str(tmp_path), "--json")
    assert built.returncode == 0
    assert _files(tmp_path / "M4x0.7") == {"M4x0.7.step", "record.json"}
    record = json.loads(built.stdout)
    assert record["model"]["valid"] is True
    made, processes = {"STEP file", "read back"}, record["run"]["processes"]
    assert not made & set(processes["kernel"]["seconds"])
    assert made < set(processes["desk"]["seconds"])


def test_a_page_has_its_pictures_and_drawings_where_these_are_not_wanted(tmp_path: Path) -> None:
    built = tapmodel("build", "M4x0.7", "--formats", "page,sheet", "--out", str(tmp_path))
    assert built.returncode == 0
    folder = tmp_path / "M4x0.7"
    assert _files(folder) == {"M4x0.7.html", "M4x0.7-sheet.pdf", "record.json"}
    text = (folder / "M4x0.7.html").read_text()
    assert text.count("data:image/png;base64,") == 4
    assert text.count("<svg ") >= 6
    assert "Proved model, chord" in text


def _files(folder: Path) -> set[str]:
    return {p.relative_to(folder).as_posix() for p in folder.rglob("*") if p.is_file()}


def _listed(folder: Path) -> set[str]:
    """All files of a folder, each of which its record must list."""
    listed = {file["path"] for file in json.loads((folder / "record.json").read_text())["files"]}
    assert _files(folder) == listed | {"record.json"}
    return listed


def test_a_preview_bears_its_own_name_and_is_closed(tmp_path: Path) -> None:
    result = tapmodel("build", "M4x0.7", "--preview", "--out", str(tmp_path))
    assert result.returncode == 0
    folder = tmp_path / "M4x0.7-preview"
    assert _files(folder) == {"M4x0.7-preview.png", "M4x0.7-preview.stl", "record.json"}
    assert json.loads((folder / "record.json").read_text())["preview"] == "not verified"
    assert trimesh.load_mesh(folder / "M4x0.7-preview.stl").is_watertight


def test_a_preview_has_the_runners_up_of_its_design(tmp_path: Path) -> None:
    for words in ((), ("--no-strength",)):
        assert within("build", "M4x0.7", "--preview", "--out", str(tmp_path), *words).code == 0
        kept = json.loads((tmp_path / "M4x0.7-preview" / "record.json").read_text())["choices"]
        assert kept == json.loads(within("design", "M4x0.7", "--json", *words).out)["choices"]
        assert any("runner_up" in choice for choice in kept) is not bool(words)


def test_processes_that_build_load_nothing_that_reads_jobs() -> None:
    code = (
        "import sys\n"
        "import tapmodel.run.preview, tapmodel.run.model, tapmodel.run.desk.work\n"
        "import tapmodel.report.sheet.write\n"
        "print({'pydantic', 'typer'} & set(sys.modules))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout == "set()\n"


def test_a_run_beyond_its_limits_is_refused_before_it_begins(tmp_path: Path) -> None:
    for option, value in (("--limit-seconds", "3"), ("--limit-mb", "100")):
        for command in ("build", "page"):
            if command == "page" and option == "--limit-seconds":
                continue  # a page takes less
            result = within(command, "M4x0.7", option, value, "--out", str(tmp_path / "out"))
            assert result.code == 2
            assert option in result.err
            assert "at least" in result.err
    assert tapmodel("build", "M4x0.7", "--limit-seconds", "nan").returncode == 2
    assert not (tmp_path / "out").exists()


def test_verify_tells_the_tap_from_another(tmp_path: Path) -> None:
    short = ("--set", "blank.thread_length=4")
    built = tapmodel("build", "M4x0.7", *short, "--formats", "step", "--out", str(tmp_path))
    assert built.returncode == 0
    file = str(tmp_path / "M4x0.7" / "M4x0.7.step")
    same = tapmodel("verify", file, "M4x0.7", *short, "--json")
    assert same.returncode == 0
    measured = json.loads(same.stdout)
    assert measured["differences"] == []
    assert measured["volume"] == pytest.approx(measured["volume_expected"], rel=1e-6)
    other = within("verify", file, "M4x0.7", *short, "--set", "flutes.rake=8.2")
    assert other.code == 1
    assert "DIFFERS" in other.out
    assert other.out.splitlines()[-1].startswith("verdict  NOT the designed tap")
    left = within("verify", file, "M4x0.7-LH", *short, "--json")
    assert left.code == 1
    assert json.loads(left.out)["causes"]["misplaced"]["mirrored"] is True
    junk = tmp_path / "junk.step"
    junk.write_text("not a STEP file")
    refused = within("verify", str(junk), "M4x0.7")
    assert refused.code == 2
    assert "junk.step" in refused.err
    assert within("verify", str(tmp_path / "none.step"), "M4x0.7").code == 2


def test_papers_are_written_without_a_model(tmp_path: Path) -> None:
    result = within("sheet", "M18x0.75", "--out", str(tmp_path), "--projection", "third")
    assert result.code == 0
    folder = tmp_path / "M18x0.75"
    kinds = {"side", "thread-form", "milling", "cross-section", "chamfer", "square"}
    kinds |= {"chips", "torque", "strength", "clearance"}
    drawn = {path.name for path in (folder / "drawings").iterdir()}
    assert drawn == {f"M18x0.75-{kind}.{end}" for kind in kinds for end in ("svg", "dxf")}
    papers = {"M18x0.75-sheet.pdf", "M18x0.75-sheet.html"}
    assert {path.name for path in folder.iterdir()} == {*papers, "drawings", "record.json"}
    assert len(result.out.splitlines()) == len(drawn) + 2


def test_a_page_is_written_without_the_kernel(tmp_path: Path) -> None:
    result = within("page", "1/4-20 UNC", "--out", str(tmp_path), "--units", "inch")
    assert result.code == 0
    folder = tmp_path / "1-4-20-UNC-2B-preview"
    assert _files(folder) == {"1-4-20-UNC-2B-preview.html", "record.json"}
    text = (folder / "1-4-20-UNC-2B-preview.html").read_text()
    assert "Preview, not verified" in text
    # The least pitch diameter of ASME B1.1 for 1/4-20 UNC-2B.
    assert "0.2175\u00a0in" in text


def test_wires_answer_with_limits_verdict_and_infeed() -> None:
    asked = ("wires", "M18x0.75", "--wire", "0.433", "--measured", "18.25", "--compound", "29.5")
    result = within(*asked, "--json")
    assert result.code == 0
    found = json.loads(result.out)
    keys = {"wire", "best_wire", "lead_angle", "measurement_min", "measurement_max"}
    assert found.keys() >= keys | {"pitch_diameter", "verdict", "infeed"}
    # M = d2 + 3 w - 0.866025 P for 60 degrees (Machinery's Handbook), to the lead's 0.1 um.
    simple = 17.513 + 3 * 0.433 - 0.866025 * 0.75
    at_basic = found["measurement_at_basic_pitch_diameter"]
    assert at_basic["simple"] == pytest.approx(simple, abs=1e-6)
    assert at_basic["exact"] == pytest.approx(simple, abs=2e-4)
    # The middle of 0.2 to 0.5 of the hole's tolerance of 0.140 mm over its least of 17.513 mm.
    excess = found["pitch_diameter"] - (17.513 + 0.35 * 0.140)
    assert found["infeed"] == pytest.approx(excess / 2 / math.cos(math.radians(29.5)), abs=1e-6)
    page = within(*asked)
    assert "too large" in page.out
    assert "0.0221 mm" in page.out


def test_wires_of_a_free_form_and_what_is_refused() -> None:
    free = within(
        "wires", "--flank-angle", "14.5", "--pitch", "25.4", "--lead-angle", "20", "--json"
    )
    assert free.code == 0
    assert json.loads(free.out)["lead_angle"] == pytest.approx(20)
    for wrong, named in (
        (("wires",), "JOB"),
        (("wires", "M10", "--pitch", "2"), "--pitch"),
        (("wires", "M10", "--wire", "9"), "wire"),
        (("wires", "M10", "--on-hand", "a,b"), "--on-hand"),
        (("wires", "M10", "--wire", "1/32"), "--wire"),
        (("wires", "M10", "--wire", "0,85"), "--wire: '0,85' cannot be used; write 0.85"),
        (("wires", "M10", "--measured", "10,1"), "write 10.1"),
        (("wires", "M10", "--on-hand", "0,035in"), "write 0.035in; a comma parts the wires"),
        (("wires", "M10", "--wire", "0.035", "in"), "write 0.035in, without the blank before in"),
        (("wires", "--wire=0.035", "in", "M10"), "--wire: '0.035 in' cannot be used"),
        (("design", "M10", "--set", "hole.drill=8.5", "mm"), "write hole.drill=8.5mm, without"),
        (("wires", "M10", "--wire", "0.034"), "looks like inches: write 0.034in"),
    ):
        result = within(*wrong)
        assert result.code == 2
        assert named in result.err


def test_wires_in_inches_are_read_and_told_in_inches() -> None:
    words = ("--wire", "1/32in", "--measured", "0.416in", "--units", "inch")
    page = within("wires", "3/8-24 UNF", *words)
    assert page.code == 0
    assert "0.03125 in" in page.out
    assert "Measured 0.41600 in" in page.out
    assert " mm" not in page.out
    found = json.loads(
        within(
            "wires",
            "--flank-angle",
            "30",
            "--pitch",
            "1/24in",
            "--pitch-diameter",
            "0.3479in",
            "--wire",
            "1/32 in",
            "--json",
        ).out
    )
    assert found["pitch"] == pytest.approx(25.4 / 24, abs=1e-12)
    # M = E + 3 w - 0.866025 P, and 6 in the fifth place for the lead.
    inch = found["measurement_at_basic_pitch_diameter"]["exact"] / 25.4
    assert inch == pytest.approx(0.3479 + 3 / 32 - 0.866025 / 24 + 0.00003, abs=0.00003)


def test_wires_of_the_job_are_used() -> None:
    words = ("wires", "M10", "--set", "shop.wires=[0.62, 0.895, 1.1]", "--json")
    assert json.loads(within(*words).out)["wire"] == 0.895
    assert json.loads(within(*words, "--on-hand", "0.9mm,1/32in").out)["wire"] == 0.9


def test_fix_applies_the_cures_and_says_which(tmp_path: Path) -> None:
    words = ["M10", "--set", "blank.thread_length=3.3", "--set", "chamfer.length=2.2"]
    assert within("design", *words).code == 1
    file = tmp_path / "fixed.toml"
    made = within("new", words[0], str(file), *words[1:], "--fix")
    assert made.code == 0
    assert made.err.startswith("fixed: chamfer.length = 1.800 mm\n")
    assert within("design", str(file)).code == 0


def test_schema_of_the_record() -> None:
    schema = json.loads(within("schema", "record").out)
    record = json.loads(within("design", "M6", "--json").out)
    assert set(record) <= set(schema["properties"])
    assert "designation" in json.loads(within("schema").out)["properties"]


def test_fix_says_when_nothing_is_to_be_fixed() -> None:
    result = within("design", "M18x0.75", "--fix")
    assert result.code == 0
    assert "fixed: nothing, for no rule is broken" in result.err


def test_inches_have_a_short_name_and_other_units_a_plain_answer() -> None:
    short, long = (within("design", "M10", "--units", word) for word in ("in", "inch"))
    assert short.out == long.out
    assert " in" in short.out
    refused = within("design", "M10", "--units", "feet")
    assert refused.code == 2
    assert "--units: 'feet' cannot be used; allowed: mm, inch" in refused.err


def test_a_wire_that_does_not_suit_is_told_as_it_was_typed() -> None:
    result = within("wires", "M10", "--wire", "0.060in")
    assert result.code == 2
    assert "--wire: '0.060in' cannot be used" in result.err
    assert "stands clear of its crests" in result.err


@pytest.mark.parametrize("words", [("page",), ("new", "tap.toml"), ("wires",)])
def test_commands_end_in_the_units_that_were_asked_for(
    words: tuple[str, ...], tmp_path: Path
) -> None:
    command, *file = words
    out = ("--out", str(tmp_path)) if command == "page" else ()
    paths = [str(tmp_path / name) for name in file]
    broken = ("--set", "thread.major=9.9", "--units", "inch")
    result = within(command, "M10", *paths, *broken, *out)
    assert result.code == 1
    # 9.9 / 25.4
    assert "thread.major is 0.38976 in; allowed at least 0.395" in result.err
    assert "9.9 mm" not in result.err
