"""`tapmodel measured`: verdicts on the screen, and the file beside the job."""

import json
import sys
import tomllib
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "hostile"))

from entry import Ended, faults, run

HEAD = "2023-11-14T22:13:20Z"


@pytest.fixture(autouse=True)
def _clock(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1700000000")


@pytest.fixture
def job(tmp_path: Path) -> Path:
    file = tmp_path / "lens-cell.toml"
    file.write_text('designation = "M18x0.75"\n', encoding="utf-8")
    return file


def measured(*words: object) -> Ended:
    return run(["measured", *map(str, words)])


def kept(job: Path) -> dict[str, object]:
    return tomllib.loads((job.parent / "lens-cell.measured.toml").read_text(encoding="utf-8"))


def flat(text: str) -> str:
    return " ".join(text.split())


def test_verdicts_are_told_with_what_is_left_to_take(job: Path) -> None:
    ended = measured(job, "--major", 18.1, "--over-wires", 18.25, "--wire", 0.433, "--core", 9)
    assert ended.code == 0
    page = flat(ended.out)
    for words in (
        "major diameter 18.1000 mm 18.0280 to",
        "over wires 18.2500 mm 18.1906 to 18.2325 mm",
        "pitch diameter: too large: take more. To the target feed the tool 0.0192 mm square to",
        "29.5° 0.0221 mm",
        "the cutter goes 0.4770 mm deeper along its own axis",
        "as it is as designed",
        "stop turning at",
        "swing the compound",
    ):
        assert words in page, words
    assert ended.err == f"kept: {job.parent / 'lens-cell.measured.toml'}\n"


def test_values_are_kept_and_shown_again(job: Path) -> None:
    measured(job, "--major", "0.7095in", "--core", 8.1)
    first = kept(job)
    assert first["major"] == {"value": "0.7095in", "on": _moment()}
    assert first["core"] == {"value": 8.1, "on": _moment()}
    before = (job.parent / "lens-cell.measured.toml").read_bytes()
    page = measured(job)
    assert page.code == 0
    assert "18.0213 mm" in page.out
    assert page.err == ""
    assert (job.parent / "lens-cell.measured.toml").read_bytes() == before


def _moment() -> object:
    return tomllib.loads(f"on = {HEAD}")["on"]


def test_the_wire_that_was_not_told_is_kept_too(job: Path) -> None:
    job.write_text('designation = "M18x0.75"\nshop.wires = [0.5]\n', encoding="utf-8")
    assert measured(job, "--over-wires", 18.42).code == 0
    assert kept(job)["over_wires"] == {"value": 18.42, "wire": 0.5, "on": _moment()}
    # whatever the shop has later, it was measured over that one
    job.write_text('designation = "M18x0.75"\nshop.wires = [0.45]\n', encoding="utf-8")
    assert "0.5000 mm" in measured(job).out


def test_nothing_that_was_typed_is_lost(job: Path) -> None:
    file = job.parent / "lens-cell.measured.toml"
    file.write_text(
        "# mine\nmajor = 18.06 # mike 3\ncolour = 'blue'\n"
        "[core]\nvalue = '8.15mm'\nwho = 'me'\n[notes]\nx = 1\n",
        encoding="utf-8",
    )
    assert measured(job, "--major", 18.04, "--core", 8.1, "--shank", 13.98).code == 0
    text = file.read_text(encoding="utf-8")
    assert text.startswith("# mine\n")
    assert "# mike 3" in text
    now = kept(job)
    assert now["colour"] == "blue"
    assert now["notes"] == {"x": 1}
    assert now["core"] == {"value": 8.1, "who": "me", "on": _moment()}
    assert now["shank"] == {"value": 13.98, "on": _moment()}
    assert now["earlier"] == [
        {"size": "major", "value": 18.06, "until": _moment()},
        {"size": "core", "value": "8.15mm", "who": "me", "until": _moment()},
    ]
    page = measured(job)
    assert "major 18.06" in page.out
    # the pitch diameter stands for over wires from now on, and the other way round
    measured(job, "--over-wires", 18.21, "--wire", 0.433)
    measured(job, "--pitch-diameter", 17.56)
    now = kept(job)
    assert "over_wires" not in now
    assert now["pitch_diameter"] == {"value": 17.56, "on": _moment()}
    listed = now["earlier"]
    assert isinstance(listed, list)
    assert listed[-1] == {
        "size": "over_wires",
        "value": 18.21,
        "wire": 0.433,
        "on": _moment(),
        "until": _moment(),
    }


def test_a_value_is_taken_back_into_the_history(job: Path) -> None:
    measured(job, "--major", 18.04, "--core", 8.1)
    assert measured(job, "--forget", "core").code == 0
    now = kept(job)
    assert "core" not in now
    assert now["earlier"] == [{"size": "core", "value": 8.1, "on": _moment(), "until": _moment()}]
    again = measured(job, "--forget", "core")
    assert (again.code, faults(again)) == (2, [])
    assert "major" in again.err
    assert measured(job, "--forget", "major").code == 0
    assert "major" not in kept(job)


def test_a_refused_value_changes_no_file(job: Path) -> None:
    measured(job, "--major", 18.04)
    file = job.parent / "lens-cell.measured.toml"
    before = file.read_bytes()
    for words in (("--core", "0.32"), ("--over-wires", "17"), ("--shank", "nan")):
        ended = measured(job, *words, "--square", 11.1)
        assert (ended.code, faults(ended)) == (2, [])
    assert file.read_bytes() == before
    file.write_text("major = 'thick'\n", encoding="utf-8")
    for command in ("measured", "sheet", "route", "design"):
        ended = run([command, str(job)])
        assert (ended.code, faults(ended)) == (2, [])
        assert "lens-cell.measured.toml: major: 'thick'" in ended.err


def test_a_bare_designation_is_kept_only_where_asked(tmp_path: Path) -> None:
    ended = measured("M18x0.75", "--major", 18.04)
    assert ended.code == 0
    assert "not kept" in ended.err
    file = tmp_path / "mine.toml"
    assert measured("M18x0.75", "--major", 18.04, "--keep", file).code == 0
    shown = measured("M18x0.75", "--keep", file)
    assert "18.0400 mm" in shown.out
    assert [entry.name for entry in tmp_path.iterdir()] == ["mine.toml"]


def test_the_record_has_what_the_page_tells(job: Path) -> None:
    ended = measured(job, "--pitch-diameter", 17.53, "--heel-drop", "0.005mm", "--json")
    record = json.loads(ended.out)
    assert record["measured"]["pitch_diameter"] == {
        "value": 17.53,
        "typed": 17.53,
        "on": "2023-11-14T22:13:20+00:00",
    }
    first, second = record["verdicts"]
    assert (first["size"], first["verdict"]) == ("pitch_diameter", "past its limits, of use")
    assert first["wear_left"] == pytest.approx(0.017)
    assert second["take_least"] == pytest.approx(0.006176, abs=2e-6)
    assert record["as_it_is"]["rubbing"]["chamfer"]["binds"] is True
    assert record["as_designed"]["rubbing"]["chamfer"]["binds"] is False
    assert record["as_it_is"]["gauge"]["wear_left"] == pytest.approx(0.037)
    assert record["no_tap"] is None


def test_scrap_ends_with_one(job: Path) -> None:
    ended = measured(job, "--pitch-diameter", 17.515)
    assert ended.code == 1
    assert "too small: scrap" in flat(ended.out)
    none = measured("M18x0.75", "--major", 17.5)
    assert none.code == 1
    assert "leaves no tap to foretell anything of" in flat(none.out)
    assert "as designed" not in none.out


def test_sizes_in_inches(job: Path) -> None:
    page = measured(job, "--shank", "0.5562in", "--units", "inch").out
    # 0.5562 in = 14.1275 mm; (14.1275 - 14) / 2 = 0.0637 mm = 0.00251 in
    assert "take 0.00251 in off the radius" in flat(page)
    assert "mm" not in page.replace("measured", "")


@pytest.mark.parametrize(
    "words",
    [
        ("--major", "nan"),
        ("--major", "1e300"),
        ("--major", "9" * 400),
        ("--major", "\x1b[31m"),
        ("--core", "thick"),
        ("--core", "-3"),
        ("--hardness", "61mm"),
        ("--hardness", "inf"),
        ("--chamfer-angle", "95"),
        ("--wire", "0.433"),
        ("--over-wires", "18.2", "--wire", "3"),
        ("--over-wires", "18.2", "--pitch-diameter", "17.5"),
        ("--major", "0.71"),
        ("--major", "18in"),
        ("--neck", "12"),
        ("--compound", "95", "--major", "18"),
        ("--compound", "nan", "--major", "18"),
        ("--forget", "colour"),
        ("--keep", "CON", "--major", "18"),
        ("--keep", "/", "--major", "18"),
        ("--keep", "a\x00b", "--major", "18"),
        (),
    ],
)
def test_whatever_is_typed_ends_in_one_line(words: tuple[str, ...]) -> None:
    ended = measured("M18x0.75", *words)
    assert (ended.code, faults(ended)) == (2, [])
