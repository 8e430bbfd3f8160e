"""A user who stops a delivery is told what stands in the folder."""

import json
import signal
import subprocess
import sys
import textwrap
from pathlib import Path

import pytest
from taps import NAME, content, give

from tapmodel.run.delivery.moments import MOMENTS

SCRIPT = """
    import os, signal, sys
    sys.path.insert(0, {here!r})
    import tapmodel.cli.app, tapmodel.cli.start
    from pathlib import Path
    from taps import give
    from tapmodel.run.delivery import moments

    def passed(moment):
        if moment == {moment!r}:
            os.kill(os.getpid(), signal.{ending})

    moments.passed = passed
    tapmodel.cli.app.main = lambda: give(Path({out!r}), {{"tap.step": "new"}}, rake=12)
    tapmodel.cli.start.main()
"""


def _stopped(out: Path, moment: str, ending: str) -> tuple[int, str]:
    here = str(Path(__file__).parent)
    script = textwrap.dedent(SCRIPT).format(here=here, moment=moment, ending=ending, out=str(out))
    command = [sys.executable, "-c", script]
    ended = subprocess.run(command, capture_output=True, text=True, check=False)
    return ended.returncode, ended.stderr


@pytest.mark.parametrize(
    ("moment", "ending"),
    [
        ("staged", "SIGINT"),
        ("carried", "SIGTERM"),
        ("whole", "SIGINT"),
        ("exchanged", "SIGTERM"),
        ("cleared", "SIGHUP"),
    ],
)
def test_the_message_says_which_tap_stands(moment: str, ending: str, tmp_path: Path) -> None:
    give(tmp_path, {"tap.step": "old"}, rake=8)
    made = json.loads((tmp_path / NAME / "record.json").read_text())["made"]
    code, told = _stopped(tmp_path, moment, ending)
    assert code == 130
    if moment in {"staged", "carried"}:
        assert f"stopped; nothing was delivered; {tmp_path / NAME} still holds the tap" in told
        assert made in told
        assert content(tmp_path / NAME) == {"tap.step": "old"}
    else:
        assert f"stopped; {tmp_path / NAME} was delivered\n" in told
        assert content(tmp_path / NAME) == {"tap.step": "new"}
    assert [p.name for p in tmp_path.iterdir()] == [NAME]
    assert moment in MOMENTS


def test_a_first_delivery_that_is_stopped_leaves_no_folder(tmp_path: Path) -> None:
    code, told = _stopped(tmp_path / "out", "carried", "SIGINT")
    assert code == 130
    assert told == "\ntapmodel: stopped; nothing was delivered\n"
    assert not (tmp_path / "out").exists()


def test_handlers_are_as_before_after_a_delivery(tmp_path: Path) -> None:
    before = [signal.getsignal(number) for number in (signal.SIGINT, signal.SIGTERM)]
    give(tmp_path, {"tap.step": "solid"}, rake=8)
    assert [signal.getsignal(number) for number in (signal.SIGINT, signal.SIGTERM)] == before
