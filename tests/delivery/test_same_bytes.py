"""The same job gives the same bytes, in another process, folder, time zone and at another time."""

import datetime as dt
import os
import re
import subprocess
import sys
import zipfile
from pathlib import Path

import ezdxf
import pytest

from tapmodel.errors import InputError
from tapmodel.export.clock import stamp
from tapmodel.run.delivery.folder import entries

SMALL = ("M4x0.7", "--set", "blank.thread_length=4", "--set", "name=small")
# The papers are written as `sheet` writes them.
COMMANDS = (("poster", *SMALL), ("build", *SMALL))
FIXED = 1_000_000_000
MADE = "2001-09-09T01:46:40+00:00"  # that many seconds after 1970: the billennium


def _run(folder: Path, seed: str, zone: str, epoch: int | None) -> Path:
    folder.mkdir()
    around = {k: v for k, v in os.environ.items() if k != "SOURCE_DATE_EPOCH"}
    around |= {"PYTHONHASHSEED": seed, "TZ": zone}
    around |= {} if epoch is None else {"SOURCE_DATE_EPOCH": str(epoch)}
    for command in COMMANDS:
        run = [sys.executable, "-m", "tapmodel", *command, "--out", f"out-{seed}"]
        ended = subprocess.run(run, cwd=folder, env=around, capture_output=True, check=False)
        assert ended.returncode == 0, ended.stderr
    return folder / f"out-{seed}"


def _bytes(out: Path) -> dict[str, bytes]:
    return {entry.as_posix(): (out / entry).read_bytes() for entry in entries(out)}


@pytest.fixture(scope="module")
def fixed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return _run(tmp_path_factory.mktemp("fixed") / "one", "1", "Asia/Tokyo", FIXED)


def test_two_runs_give_the_same_bytes(fixed: Path, tmp_path: Path) -> None:
    one, other = _bytes(fixed), _bytes(_run(tmp_path / "elsewhere", "2", "America/Lima", FIXED))
    assert [name for name in one if one[name] != other.get(name)] == []
    assert one.keys() == other.keys()
    kinds = {name.rpartition(".")[2] for name in one}
    assert kinds == {"step", "stl", "3mf", "glb", "dxf", "svg", "pdf", "html", "png", "json"}


def test_every_file_that_bears_a_time_bears_the_fixed_one(fixed: Path) -> None:
    found = _bytes(fixed)
    now = str(dt.datetime.now(dt.UTC).year).encode()
    assert f'"made": "{MADE}"'.encode() in found["small/record.json"]
    assert b"2001-09-09T01:46:40" in found["small/small.step"]
    pdf = found["small/small-sheet.pdf"]
    assert set(re.findall(rb"D:(\d+)", pdf)) == {b"20010909014640"}
    # A reader would put its own time there. The DXF reference, on date variables, gives
    # 2451544.91568287 for 31 December 1999, 9:58:35 p.m. (from memory).
    plan = found["small/drawings/small-side.dxf"].decode()
    dates = [float(value) for value in re.findall(r"\$TD(?:CREATE|UPDATE)\n *40\n(.*)", plan)]
    given = dt.datetime(1999, 12, 31, 21, 58, 35, tzinfo=dt.UTC).timestamp()
    julian = 2451544.91568287 + (FIXED - given) / 86400
    assert dates == pytest.approx([julian, julian], abs=2e-7)  # 0.02 s
    for name, data in found.items():
        dated = re.search(rb"\b%s-[01]\d-[0-3]\d[ T]" % now, data)
        assert dated is None, (name, dated)


def test_dates_in_the_package_for_slicers_do_not_tell_the_time(fixed: Path) -> None:
    with zipfile.ZipFile(fixed / "small" / "small.3mf") as package:
        assert {item.date_time[0] for item in package.infolist()} == {1980}


def test_drawings_differ_in_their_identity(fixed: Path) -> None:
    plans = list((fixed / "small" / "drawings").glob("*.dxf"))
    identities = {ezdxf.readfile(plan).header["$FINGERPRINTGUID"] for plan in plans}
    assert len(identities) == len(plans) > 5


@pytest.mark.parametrize("text", ["", "-1", "1e9", "1.5", "yesterday", "²", "9" * 13])
def test_a_stamp_that_is_no_time_is_bad_input(text: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", text)
    with pytest.raises(InputError, match="SOURCE_DATE_EPOCH"):
        stamp()


def test_the_stamp_is_now_unless_it_is_fixed(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "0")
    assert stamp() == dt.datetime(1970, 1, 1, tzinfo=dt.UTC)
    monkeypatch.delenv("SOURCE_DATE_EPOCH")
    before = dt.datetime.now(dt.UTC)
    assert abs((stamp() - before).total_seconds()) <= 1


def test_a_clock_that_stands_at_1970_stops_nothing(tmp_path: Path) -> None:
    out = tmp_path / "out"
    around = os.environ | {"SOURCE_DATE_EPOCH": "0"}
    run = [sys.executable, "-m", "tapmodel", "sheet", *SMALL, "--out", str(out)]
    ended = subprocess.run(run, env=around, capture_output=True, check=False)
    assert ended.returncode == 0, ended.stderr
    assert b'"made": "1970-01-01T00:00:00+00:00"' in (out / "small" / "record.json").read_bytes()
