"""Words of the command line: options, numbers over wires, and what stands where."""

from pathlib import Path

import pytest
from entry import faults, refusal_faults, run

LINES: dict[str, tuple[list[str], str]] = {
    "unknown command": (["desing", "M10"], "desing"),
    "unknown command of controls": (["\x1b[2J"], "\\x1b[2J"),
    "empty command": ([""], "''"),
    "a long command": (["x" * 5000], "xxx"),
    "no designation": (["design"], "JOB"),
    "no file to write": (["new", "M10"], "FILE"),
    "a file that is no job's": (["new", "M10", "job.txt"], "FILE: 'job.txt' cannot be used"),
    "a paper of none": (
        ["sheet", "M10", "--paper", "A3"],
        "--paper: 'A3' cannot be used; allowed: a4, letter",
    ),
    "three taps at most": (["set", "M10", "--taps=9"], "--taps: '9' cannot be used; allowed: 2, 3"),
    "a port of letters": (
        ["serve", "--port=web"],
        "--port: 'web' cannot be used; allowed: a whole number",
    ),
    "a port beyond all": (
        ["serve", "--port=65536"],
        "--port: '65536' cannot be used; allowed: at most 65535",
    ),
    "a price of letters": (
        ["route", "M10", "--price=dear"],
        "--price: 'dear' cannot be used; allowed: a number",
    ),
    "no design": (["verify", "a.step"], "JOB"),
    "too many words": (["design", "M10", "M12"], "M12"),
    "too many long words": (["design", "M10", "y" * 9000], "yyy"),
    "a file and a thread": (["design", "M10", "job.toml"], "one JOB"),
    "a thread and no word of it": (["design", "M10", "banana"], "'M10 banana'"),
    "three threads": (["sheet", "Tr12x3", "LH", "M10"], "one JOB"),
    "two threads to verify": (["verify", "a.step", "M10", "M12"], "one JOB"),
    "two threads for a file": (["new", "M10", "M12", "job.toml"], "one JOB"),
    "pitch or lead": (["design", "Tr12x3", "LH", "2-start"], "Tr12x6(P3) LH"),
    "too many words for schema": (["schema", "job", "M10"], "M10"),
    "unknown option": (["design", "M10", "--pitch=1"], "--pitch"),
    "option of controls": (["design", "M10", "--\x1b[31m"], "--\\x1b[31m"),
    "option without value": (["design", "M10", "--set"], "--set"),
    "value for a flag": (["design", "M10", "--json=1"], "--json"),
    "negative designation": (["design", "-1/2 BSW"], "-1"),
    "unknown format": (["build", "M10", "--formats", "obj"], "--formats"),
    "empty format": (["build", "M10", "--formats", ""], "--formats"),
    "formats of controls": (["build", "M10", "--formats", "step,\x1b[m"], "--formats"),
    "a long list of formats": (["build", "M10", "--formats", "x," * 5000], "--formats"),
    "unknown paper": (["sheet", "M10", "--paper", "A5"], "--paper"),
    "unknown units": (["sheet", "M10", "--units", "furlong"], "--units"),
    "units of controls": (["page", "M10", "--units", "\x1b"], "--units"),
    "unknown projection": (["page", "M10", "--projection", "second"], "--projection"),
    "free form without pitch": (["wires", "--flank-angle", "30"], "JOB"),
    "free form beside a job": (["wires", "M10", "--pitch", "2"], "JOB"),
    "free form without diameter": (["wires", "--flank-angle=30", "--pitch=1"], "--pitch-diameter"),
    "nothing over wires": (["wires"], "JOB"),
    "set beside a free form": (
        ["wires", "--flank-angle=30", "--pitch=1", "--pitch-diameter=9", "--set=flutes.count=3"],
        "--set",
    ),
    "bad set over wires": (["wires", "M10", "--set", "flutes.count=x"], "flutes.count"),
    "bad file over wires": (["wires", "none.toml"], "none.toml"),
    "words on hand": (["wires", "M10", "--on-hand", "a,b"], "--on-hand"),
    "controls on hand": (["wires", "M10", "--on-hand", "0.9\x1b"], "--on-hand"),
    "no steel": (["heat"], "STEEL"),
    "no such steel": (["heat", "O3"], "STEEL"),
    "steel of controls": (["heat", "\x1b[2J"], "STEEL"),
    "a long steel": (["heat", "z" * 5000], "STEEL"),
    "a thread for a steel": (["heat", "M10"], "STEEL"),
    "harder than its table": (["heat", "O1", "--hardness=64"], "--hardness"),
    "hardness and temper": (["heat", "O1", "--hardness=60", "--temper=200"], "--temper"),
    "hours without a box": (["heat", "O1", "--hours=1"], "--hours"),
    "a set without a box": (["heat", "O1", "--set=flutes.count=3"], "--set"),
    "a box without time": (["heat", "--carburise", "M10"], "--hours"),
    "a box with both times": (["heat", "--carburise", "--hours=1", "--depth=1"], "--hours"),
    "a section in a box": (["heat", "--carburise", "--hours=1", "--section=3"], "--section"),
    "a steel in a box": (["heat", "--carburise", "--hours=1", "O1"], "O1"),
    "a set on a flat": (["heat", "--carburise", "--hours=1", "--set=flutes.count=3"], "--set"),
    "no such file for a box": (["heat", "--carburise", "--hours=1", "none.toml"], "none.toml"),
    "deeper than the tap": (["heat", "--carburise", "--depth=5", "M3"], "--depth"),
    "schema of something": (["schema", "M10"], "M10"),
}


@pytest.mark.parametrize("name", LINES)
def test_a_wrong_line_is_refused(name: str) -> None:
    words, named = LINES[name]
    assert refusal_faults(run(words), named) == []


@pytest.mark.parametrize("words", [[], ["--help"], ["design", "--help"], ["wires", "--help"]])
def test_help_is_no_error(words: list[str]) -> None:
    ended = run(words)
    assert (ended.code, ended.err) == (0, "")
    assert "Usage: tapmodel" in ended.out


def test_a_thread_of_several_words_needs_no_quotes(tmp_path: Path) -> None:
    sheet = ["sheet", "--out", str(tmp_path)]
    for words, third in (
        (["Tr12x3", "LH"], ["route"]),
        (["1", "3/8-24", "LH", "Whit"], sheet),
        (["M27", "x", ".75", "left"], ["route"]),
    ):
        for command in (["design"], ["wires"], third):
            given = [command[0], words[0], "--set", "flutes.count=4", *command[1:], *words[1:]]
            apart, quoted = run(given), run([*command, " ".join(words), "--set", "flutes.count=4"])
            assert (apart.code, apart.out, apart.err) == (quoted.code, quoted.out, quoted.err)
            assert apart.code in (0, 1)
        file = tmp_path / f"{words[0]}.toml"
        assert run(["new", *words, str(file)]).code == 0
        assert f'designation = "{" ".join(words)}"' in file.read_text()


FREE = ["wires", "--flank-angle=30", "--pitch=1", "--pitch-diameter=10"]
NEEDLE = ["wires", "--flank-angle=1", "--pitch=0.001", "--pitch-diameter=2000"]
DISC = ["wires", "--flank-angle=80", "--pitch=2000", "--lead-angle=80"]
BASES = (["wires", "M10"], ["wires", "Tr20x4"], FREE, NEEDLE, DISC)
OPTIONS = ("wire", "on-hand", "measured", "compound", "pitch-diameter", "starts", "lead-angle")
SMALL = ("compound", "lead-angle")  # of which next to nothing is a value like others
ABSURD = (
    "-1",
    "1e-300",
    "1e300",
    "1e400",
    "nan",
    "inf",
    "-inf",
    "x",
    "1,,x",
    "1.5 m",
    "1/2",
    "9" * 400,
)
POSSIBLE = ("0", "0.001", "0.5", "0.9", "1", "8", "30", "79.9", "80", "2000", "１", "1_0")


@pytest.mark.parametrize("option", OPTIONS)
def test_absurd_numbers_over_wires_are_refused_with_the_option(option: str) -> None:
    found = {
        (value[:20], base[1]): refusal_faults(run([*base, f"--{option}={value}"]), f"--{option}")
        for value in ABSURD
        for base in BASES
        if not (value == "1e-300" and option in SMALL)
    }
    assert {case: faults for case, faults in found.items() if faults} == {}


@pytest.mark.parametrize("option", OPTIONS)
def test_any_other_number_over_wires_is_answered_or_refused(option: str) -> None:
    found = {
        (value, base[1]): faults(run([*base, f"--{option}={value}", "--json"]))
        for value in POSSIBLE
        for base in BASES
    }
    assert {case: faults for case, faults in found.items() if faults} == {}


@pytest.mark.parametrize("option", ["flank-angle", "pitch"])
@pytest.mark.parametrize("value", [*ABSURD, "0", "2001", "89"])
def test_an_absurd_free_form_is_refused_with_the_option(option: str, value: str) -> None:
    base = [word for word in FREE if not word.startswith(f"--{option}=")]
    if option == "pitch" and value == "89":
        value = "0.0001"
    assert refusal_faults(run([*base, f"--{option}={value}"]), f"--{option}") == []


HOT = {
    "section": ["O1"],
    "hardness": ["O1"],
    "temper": ["O1"],
    "steel-carbon": ["--carburise", "--hours=1"],
    "temperature": ["--carburise", "--hours=1"],
    "hours": ["--carburise"],
    "depth": ["--carburise"],
    "surface-carbon": ["--carburise", "--hours=1"],
}


@pytest.mark.parametrize("option", HOT)
def test_absurd_numbers_on_heat_are_refused_with_the_option(option: str) -> None:
    found = {
        value[:20]: refusal_faults(
            run(["heat", *HOT[option], f"--{option}={value}"]), f"--{option}"
        )
        for value in (*ABSURD, "", "\x1b[2J")
        if not (value == "1e-300" and option == "steel-carbon")
    }
    assert {case: faults for case, faults in found.items() if faults} == {}


@pytest.mark.parametrize("option", HOT)
def test_any_other_number_on_heat_is_answered_or_refused(option: str) -> None:
    values = (*POSSIBLE, "0.01", "0.35", "60", "200", "850", "1050", "100")
    found = {
        value: faults(run(["heat", *HOT[option], f"--{option}={value}", "--json"]))
        for value in values
    }
    assert {case: faults for case, faults in found.items() if faults} == {}


@pytest.mark.parametrize("words", [["M0.3", "--hours=100"], ["M300x6", "--hours=0.01"]])
def test_the_ends_of_carburising_are_answered(words: list[str]) -> None:
    for heat in ("850", "1050"):
        ended = run(["heat", "--carburise", *words, f"--temperature={heat}"])
        assert (ended.code, faults(ended)) == (0, [])


BROKEN = ["--set", "blank.square_across_flats=7"]


def test_a_broken_rule_is_told_by_every_command_that_hands_over(tmp_path: Path) -> None:
    file, out = tmp_path / "job.toml", tmp_path / "out"
    for words in (
        ["design", "M6", *BROKEN],
        ["wires", "M6", *BROKEN],
        ["wires", "M6", *BROKEN, "--json"],
        ["heat", "--carburise", "--hours=1", "M6", *BROKEN],
        ["new", "M6", str(file), *BROKEN],
        ["sheet", "M6", *BROKEN, "--out", str(out)],
        ["design", str(file)],
    ):
        ended = run(words)
        assert (ended.code, faults(ended)) == (1, [])
        assert "[square-flats]" in ended.out + ended.err
    assert (out / "M6x1" / "M6x1-sheet.pdf").is_file()


def test_nothing_is_said_on_stderr_where_every_rule_is_kept(tmp_path: Path) -> None:
    assert run(["wires", "M6"]).err == ""
    assert run(["sheet", "M6", "--out", str(tmp_path)]).err == ""


def test_an_out_folder_that_cannot_be_is_refused_by_name(tmp_path: Path) -> None:
    file = tmp_path / "file"
    file.write_text("mine")
    for out in ("/dev/null", str(file), f"{file}/x", "/proc/none", "y" * 300, "/".join("z" * 3000)):
        assert refusal_faults(run(["sheet", "M6", "--out", out]), "--out") == []
    assert file.read_text() == "mine"


@pytest.mark.parametrize("name", ["folder", "none/job.toml", "", ".", "/", "x" * 300, "file/job"])
def test_a_job_file_that_cannot_be_written_is_refused_by_name(name: str, tmp_path: Path) -> None:
    (tmp_path / "folder").mkdir()
    (tmp_path / "file").write_text("mine")
    path = str(tmp_path / name) if name.strip("./") else name
    for more in ([], ["--overwrite"]):
        ended = run(["new", "M6", path, *more])
        assert faults(ended) == []
        assert ended.code == 2
    assert sorted(p.name for p in tmp_path.iterdir()) == ["file", "folder"]


@pytest.mark.parametrize("name", ["CON", "aux.d", "a:b", "a|b", "tap.", "tap ", "a\tb"])
def test_a_name_that_only_some_systems_take_is_refused_on_all(name: str, tmp_path: Path) -> None:
    out = str(tmp_path / name)
    for words in (["sheet"], ["page"], ["build"], ["build", "--preview"]):
        assert refusal_faults(run([*words, "M6", "--out", out]), "--out") == []
        assert refusal_faults(run([*words, "M6", "--out", f"{out}/x"]), "--out") == []
    assert refusal_faults(run(["new", "M6", f"{out}/job.toml"]), "FILE") == []
    assert refusal_faults(run(["new", "M6", out]), "FILE") == []
    assert list(tmp_path.iterdir()) == []
