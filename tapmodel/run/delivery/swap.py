"""A whole folder put in the place of another, so that a kill leaves the one or the other.

A staging folder tells by the names inside how far its delivery came, so that the next run can end
it: `files` are being made; `whole` is ready to take its place, or holds what stood there before;
`old` stood there before; `done` is to be deleted.
"""

import contextlib
import ctypes
import os
import signal
import sys
import threading
from collections.abc import Callable, Generator
from pathlib import Path
from types import FrameType

from tapmodel.export.atomic import sync
from tapmodel.export.renaming import rename
from tapmodel.run.delivery import moments

FILES, WHOLE, OLD, DONE = "files", "whole", "old", "done"

# Values of <fcntl.h> and <linux/fs.h>, and of <sys/stdio.h> on macOS (from memory).
_HERE, _EXCHANGE, _SWAP = -100, 2, 2


def swap(work: Path, final: Path) -> None:
    """Put `work/whole` in the place of `final`; what stood there is in `work/whole` or `work/old`.

    Raises:
        OSError: when that cannot be done; then all is as before.
    """
    whole, old = work / WHOLE, work / OLD
    if not final.exists():
        rename(whole, final)
        moments.passed("placed")
    elif exchange(whole, final):
        moments.passed("exchanged")
    else:
        rename(final, old)
        moments.passed("away")
        try:
            rename(whole, final)
        except OSError:
            rename(old, final)
            raise
        moments.passed("placed")
    sync(final.parent)
    sync(work)


def exchange(one: Path, other: Path) -> bool:
    """Swap two names in one step, where system and file system can."""
    if sys.platform == "win32":
        return False
    names = os.fsencode(one), os.fsencode(other)
    try:
        system = ctypes.CDLL(None, use_errno=True)
        if sys.platform == "darwin":
            return system.renamex_np(*names, _SWAP) == 0
        return system.renameat2(_HERE, names[0], _HERE, names[1], _EXCHANGE) == 0
    except (AttributeError, OSError, TypeError):
        return False


@contextlib.contextmanager
def undisturbed(then: Callable[[], None]) -> Generator[None]:
    """Signals that end the program wait until the block has ended.

    Args:
        then: called when the block ended well, before any signal that waits is heard.
    """
    if threading.current_thread() is not threading.main_thread():
        yield
        then()
        return
    waiting: list[int] = []

    def note(number: int, _frame: FrameType | None) -> None:
        waiting.append(number)

    numbers = [getattr(signal, name) for name in _ENDINGS if hasattr(signal, name)]
    before = {number: signal.signal(number, note) for number in numbers}
    try:
        yield
        then()
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)
        for number in waiting:
            signal.raise_signal(number)


_ENDINGS = ("SIGINT", "SIGTERM", "SIGHUP", "SIGBREAK")
