"""What two processes say to each other, and how the end of one is told."""

import os
import pickle
import struct
import subprocess
import sys
from pathlib import Path
from queue import SimpleQueue

import pytest

from tapmodel.run import memory
from tapmodel.run.pipes import GoneError, listen, speak, understood
from tapmodel.run.process import death

LONG = bytes(5_000_000)  # far more than any pipe holds


def test_a_long_message_waits_for_no_listener() -> None:
    hears, speaks = os.pipe()
    heard = SimpleQueue[bytes | None]()
    with os.fdopen(hears, "rb") as one, os.fdopen(speaks, "wb") as other:
        thread = listen(one, heard.put)
        speak(other, {"long": LONG})
        speak(other, Path("short"))
        other.close()
        thread.join(10)
    assert understood(heard.get(timeout=10) or b"") == {"long": LONG}
    assert understood(heard.get(timeout=10) or b"") == Path("short")
    assert heard.get(timeout=10) is None
    assert heard.empty()


@pytest.mark.parametrize("cut", [1, 7, 8, 9, 20])
def test_a_message_that_is_cut_off_is_the_end(cut: int) -> None:
    message = pickle.dumps("a word of some length")
    whole = struct.pack("<Q", len(message)) + message
    hears, speaks = os.pipe()
    heard = SimpleQueue[bytes | None]()
    with os.fdopen(hears, "rb") as one, os.fdopen(speaks, "wb") as other:
        other.write(whole + whole[:-cut])
        other.close()
        listen(one, heard.put).join(10)
    assert understood(heard.get(timeout=10) or b"") == "a word of some length"
    assert heard.get(timeout=10) is None


def test_who_speaks_to_nobody_is_told() -> None:
    hears, speaks = os.pipe()
    os.close(hears)
    other = os.fdopen(speaks, "wb", buffering=0)
    with pytest.raises(GoneError):
        speak(other, "word")
    other.close()
    with pytest.raises(GoneError):
        speak(other, "word")


@pytest.mark.parametrize(
    ("code", "words"),
    [
        (-11, "ended by SIGSEGV"),
        (-9, "SIGKILL; a system out of memory does that"),
        (1, "without a result (exit code 1)"),
        (0xC0000005, "ended by Windows (0xC0000005, access to memory that it does not have)"),
        (0xC0000099, "ended by Windows (0xC0000099, no reason known here)"),
    ],
)
def test_an_end_is_told_in_words(code: int, words: str) -> None:
    assert words in death(code)


def test_the_memory_of_another_process_is_seen_until_it_ends() -> None:
    script = "held = bytearray(200_000_000); print(1, flush=True); input()"
    pipe = subprocess.PIPE
    with subprocess.Popen([sys.executable, "-c", script], stdin=pipe, stdout=pipe) as other:
        assert other.stdout is not None
        other.stdout.readline()
        watch = memory.Watch(other.pid)
        assert 200 < watch.held_mb() < 260
        other.kill()
        other.wait()
        assert watch.held_mb() == 0
    assert memory.Watch(other.pid).held_mb() == 0


def test_nothing_is_watched_where_the_system_keeps_the_limit() -> None:
    assert sys.platform != "linux" or not memory.WATCHED
    assert memory.own_peak_mb() > 20
    script = "import sys, tapmodel.run.crew; print('psutil' in sys.modules)"
    ended = subprocess.run([sys.executable, "-c", script], capture_output=True, check=True)
    assert ended.stdout == b"False\n"
