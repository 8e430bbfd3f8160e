"""STEP files from elsewhere, broken in every way: refused by name before or by the kernel."""

import os
import random
import re
from pathlib import Path

import pytest
from entry import SHORT, faults, refusal_faults, run

from tapmodel.errors import InputError
from tapmodel.export.step.foreign import refuse_unreadable

HEAD = b"ISO-10303-21;\nHEADER;\nENDSEC;\nDATA;\n"
TAIL = b"ENDSEC;\nEND-ISO-10303-21;\n"
POINT = b"#1 = CARTESIAN_POINT('',(%s,0.,0.));\n"

UNREADABLE = {
    "empty": b"",
    "text": b"hello",
    "null bytes": b"\0" * 1000,
    "chance": random.Random(1).randbytes(5000),  # noqa: S311
    "zip": b"PK\x03\x04" + b"\0" * 100,
    "STL": b"solid x\nendsolid x\n",
    "UTF-16": (HEAD + TAIL).decode().encode("utf-16"),
    "not a number": HEAD + POINT % b"nan" + TAIL,
    "Not A Number": HEAD + POINT % b"-NaN" + TAIL,
    "infinite": HEAD + POINT % b"INF" + TAIL,
    "huge": HEAD + POINT % b"1.E300" + TAIL,
    "more than huge": HEAD + POINT % b"1e999" + TAIL,
    "digits": HEAD + POINT % (b"9" * 400 + b".") + TAIL,
}


@pytest.mark.parametrize("name", UNREADABLE)
def test_what_the_kernel_must_not_see_is_refused_before(name: str, tmp_path: Path) -> None:
    file = tmp_path / "back.step"
    file.write_bytes(UNREADABLE[name])
    with pytest.raises(InputError, match=r"FILE: .*back\.step"):
        refuse_unreadable(file)


def test_small_numbers_names_and_words_are_no_reason_to_refuse(tmp_path: Path) -> None:
    file = tmp_path / "back.step"
    rest = b"#2 = PRODUCT('inf nan 1.E300','Nan',$,(#1));\n#3 = NANO(1.E-300,.UNSPECIFIED.,1.E9);\n"
    file.write_bytes(HEAD + POINT % b"-1.23E-07" + rest + TAIL)
    refuse_unreadable(file)


@pytest.mark.parametrize("name", ["folder", "missing.step", "pipe", "tap\udcff.step", "x" * 300])
def test_what_is_no_file_is_refused_by_name(name: str, tmp_path: Path) -> None:
    (tmp_path / "folder").mkdir()
    os.mkfifo(tmp_path / "pipe")
    (tmp_path / "tap\udcff.step").write_bytes(HEAD + TAIL)
    with pytest.raises(InputError, match="FILE: "):
        refuse_unreadable(tmp_path / name)


def _reals(content: bytes, entity: bytes, number: bytes) -> bytes:
    return re.sub(rb"(=\s*%s\('',#\d+),[^)]*" % entity, rb"\g<1>," + number, content)


def test_a_file_that_breaks_the_kernel_is_refused_by_name(tmp_path: Path) -> None:
    built = run(["build", *SHORT, "--formats", "step", "--out", str(tmp_path)])
    assert built.code == 0
    content = (tmp_path / "M3x0.5" / "M3x0.5.step").read_bytes()
    broken = tmp_path / "broken.step"
    for spoilt in (
        content[: len(content) // 2],
        content[: content.index(b"DATA;")] + b"DATA;\n" + TAIL,
        re.sub(rb"#(\d+)\)", rb"#999999)", content, count=50),
    ):
        assert spoilt != content
        broken.write_bytes(spoilt)
        assert refusal_faults(run(["verify", str(broken), *SHORT]), "broken.step") == []
    # Cylinders of no radius: the kernel may read them, and then they are not the tap.
    broken.write_bytes(_reals(content, b"CYLINDRICAL_SURFACE", b"0."))
    ended = run(["verify", str(broken), *SHORT])
    assert faults(ended) == []
    assert ended.code in {1, 2}
