"""Job files of any content and kind: one message that names the file, or a tap."""

import os
import random
from pathlib import Path

import pytest
from entry import faults, refusal_faults, run

GOOD = 'designation = "M10"\n[flutes]\ncount = 4\n'

CONTENTS: dict[str, bytes] = {
    "empty": b"",
    "blank": b" \n\t\n",
    "only a comment": b"# M10\n",
    "no TOML": b"M10\n",
    "JSON": b'{"designation": "M10"}',
    "INI": b"[job]\ndesignation: M10\n",
    "YAML": b"designation: M10\n",
    "XML": b"<job designation='M10'/>",
    "UTF-16 LE": GOOD.encode("utf-16"),
    "UTF-16 BE": b"\xfe\xff" + GOOD.encode("utf-16-be"),
    "UTF-16 unmarked": GOOD.encode("utf-16-le"),
    "UTF-32": GOOD.encode("utf-32"),
    "Latin-1": 'designation = "M10" # Gewindebohrer für'.encode("latin-1"),
    "half a letter": b'designation = "M10\xe2\x82"',
    "surrogate": b'designation = "M10\xed\xb3\xbf"',
    "null bytes": b"\0" * 100,
    "null within": b'designation = "M\x0010"',
    "escape raw": b'designation = "\x1b[31mM10"',
    "escape written": b'designation = "\\u001b[31mM10"',
    "old line ends": b'designation = "M10"\r[flutes]\rcount = 3\r',
    "ended early": b'designation = "M10',
    "typed twice": b'designation = "M10"\ndesignation = "M12"\n',
    "table twice": b'designation = "M10"\n[flutes]\n[flutes]\n',
    "no designation": b"[flutes]\ncount = 3\n",
    "number for a text": b"designation = 10\n",
    "list for a text": b'designation = ["M10"]\n',
    "table for a text": b'designation = {a = "M10"}\n',
    "text for a table": b'designation = "M10"\nflutes = "four"\n',
    "list for a table": b'designation = "M10"\nflutes = [4]\n',
    "list of tables": b'designation = "M10"\n[[flutes]]\ncount = 4\n',
    "date": b'designation = "M10"\n[flutes]\ncount = 1979-05-27\n',
    "not a number": b'designation = "M10"\n[flutes]\noffset = nan\n',
    "infinite": b'designation = "M10"\n[blank]\noverall_length = inf\n',
    "huge": b'designation = "M10"\n[blank]\noverall_length = 1e308\n',
    "more than huge": b'designation = "M10"\n[blank]\noverall_length = 1e999\n',
    "5000 digits": b'designation = "M10"\n[flutes]\ncount = ' + b"9" * 5000,
    "900 keys deep": b'designation = "M10"\n' + b".".join([b"a"] * 900) + b" = 1\n",
    "5000 keys deep": b'designation = "M10"\n[thread]\n' + b".".join([b"a"] * 5000) + b" = 1\n",
    "900 tables deep": b'designation = "M10"\na = ' + b"{a = " * 900 + b"1" + b"}" * 900,
    "50000 lists deep": b'designation = "M10"\na = ' + b"[" * 50000,
    "a long key": b'designation = "M10"\n' + b"k" * 100_000 + b" = 1\n",
    "a long text": b'designation = "' + b"M" * 100_000 + b'"\n',
    "many keys": b'designation = "M10"\n' + b"".join(b"k%d = 1\n" % i for i in range(20_000)),
    "key of controls": b'designation = "M10"\n"\\u001b[2J" = 1\n',
    "empty key": b'designation = "M10"\n"" = 1\n',
    "name of a path": b'designation = "M10"\nname = "../../etc"\n',
    "name of a control": b'designation = "M10"\nname = "a\\u0007b"\n',
    "name in other letters": 'designation = "M10"\nname = "Bohrer ü"\n'.encode(),
    "gzip": b"\x1f\x8b\x08\x00" + bytes(range(256)),
    "PDF": b"%PDF-1.7\n%\xe2\xe3\xcf\xd3\n",
    "too large": b"#" * 1_000_001,
}


@pytest.mark.parametrize("name", CONTENTS)
def test_a_bad_file_is_refused_by_name(name: str, tmp_path: Path) -> None:
    file = tmp_path / "job.toml"
    file.write_bytes(CONTENTS[name])
    named = "designation" if name == "escape written" else "job.toml"
    assert refusal_faults(run(["design", str(file)]), named) == []
    assert faults(run(["design", str(file), "--set", "flutes.count=3"])) == []


@pytest.mark.parametrize(
    "content",
    [GOOD.encode(), b"\xef\xbb\xbf" + GOOD.encode(), GOOD.replace("\n", "\r\n").encode()],
    ids=["plain", "byte order mark", "line ends of Windows"],
)
def test_a_good_file_is_read_however_it_was_saved(content: bytes, tmp_path: Path) -> None:
    file = tmp_path / "job.toml"
    file.write_bytes(content)
    ended = run(["design", str(file)])
    assert (ended.code, faults(ended)) == (0, [])
    assert "M10x1.5" in ended.out


def _write_mutant(file: Path, seed: int) -> None:
    chance = random.Random(seed)  # noqa: S311  (repeatable on purpose)
    content = bytearray(
        GOOD.encode() + b'[blank]\nneck_length = 2.5\n[shop]\ndrills = ["metric"]\n'
    )
    for _ in range(chance.randint(1, 6)):
        place = chance.randrange(len(content))
        content[place : place + chance.randint(0, 3)] = chance.randbytes(chance.randint(0, 3))
    file.write_bytes(content)


def test_files_with_bytes_changed_by_chance_are_never_a_fault(tmp_path: Path) -> None:
    found: dict[int, list[str]] = {}
    for seed in range(300):
        file = tmp_path / f"{seed}.toml"
        _write_mutant(file, seed)
        found[seed] = faults(run(["design", str(file)]))
    assert {seed: faults for seed, faults in found.items() if faults} == {}


def test_what_is_no_file_is_refused_by_name(tmp_path: Path) -> None:
    folder = tmp_path / "folder.toml"
    folder.mkdir()
    pipe = tmp_path / "pipe.toml"
    os.mkfifo(pipe)
    broken = tmp_path / "broken.toml"
    broken.symlink_to("nowhere.toml")
    round_ = tmp_path / "round.toml"
    round_.symlink_to(round_)
    within = tmp_path / "job"
    within.write_text(GOOD)
    device = tmp_path / "device.toml"
    device.symlink_to("/dev/zero")
    strange = tmp_path / "a\x1b[31mb.toml"
    for file in (folder, pipe, broken, round_, within / "job.toml", device):
        assert refusal_faults(run(["design", str(file)]), file.name) == []
    assert refusal_faults(run(["design", str(strange)]), "a\\x1b[31mb.toml") == []
    assert refusal_faults(run(["design", str(tmp_path / ("x" * 300 + ".toml"))]), "xxx.toml") == []
    assert refusal_faults(run(["design", "/".join(["deep"] * 2000) + "/a.toml"]), "a.toml") == []
    assert refusal_faults(run(["design", "/".join(["deep"] * 2000)]), "designation") == []


def test_a_file_with_a_name_of_bytes_is_read(tmp_path: Path) -> None:
    file = tmp_path / os.fsdecode(b"tap\xff\n.toml")
    file.write_text(GOOD)
    assert run(["design", str(file)]).code == 0
    file.write_text("x")
    assert refusal_faults(run(["design", str(file)]), r"tap\udcff\n.toml") == []


@pytest.mark.skipif(os.geteuid() == 0, reason="the superuser may read everything")
def test_a_file_that_may_not_be_read_is_named(tmp_path: Path) -> None:
    file = tmp_path / "job.toml"
    file.write_text(GOOD)
    file.chmod(0)
    assert refusal_faults(run(["design", str(file)]), "job.toml") == []
