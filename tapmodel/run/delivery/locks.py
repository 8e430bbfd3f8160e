"""Locks that the operating system takes back when a process ends, however it ends."""

import contextlib
import os
import sys
from collections.abc import Generator
from functools import partial
from pathlib import Path

from tapmodel.export.renaming import patiently

_FAR = 1 << 30
"""Bytes into the file where Windows locks it: what is locked there, nobody else can read."""

_LONGEST = 10.0
"""Seconds to wait for a lock on Windows; a delivery takes a fraction of one."""

_BESIDE = ".tapmodel-delivering"
"""A file that is locked in place of its folder, where folders cannot be."""


def lock(handle: int, *, wait: bool) -> bool:
    """Have an open file to oneself, until the handle is closed.

    Args:
        handle: of the file or, where the system allows that, folder.
        wait: until another process lets go, on Windows `_LONGEST`; else give up at once.

    Returns:
        False when another process has it, or the file system knows no locks.
    """
    try:
        if sys.platform == "win32":
            import msvcrt  # noqa: PLC0415  (not on every system)

            place = os.lseek(handle, 0, os.SEEK_CUR)
            os.lseek(handle, _FAR, os.SEEK_SET)
            try:
                # The system's own waiting looks once a second.
                asked = partial(msvcrt.locking, handle, msvcrt.LK_NBLCK, 1)
                patiently(asked, _LONGEST if wait else 0.0)
            finally:
                os.lseek(handle, place, os.SEEK_SET)
        else:
            import fcntl  # noqa: PLC0415  (not on every system)

            fcntl.flock(handle, fcntl.LOCK_EX | (0 if wait else fcntl.LOCK_NB))
    except (OSError, ImportError):
        return False
    return True


@contextlib.contextmanager
def alone(folder: Path) -> Generator[bool]:
    """No other run delivers into `folder` meanwhile.

    Yields:
        Whether that is sure: there are file systems that know no locks.
    """
    # Windows opens no folders, so a file in it is locked.
    beside = folder / _BESIDE if sys.platform == "win32" else None
    if beside is None:
        handle = os.open(folder, os.O_RDONLY)
    else:
        handle = patiently(lambda: os.open(beside, os.O_RDWR | os.O_CREAT))
    try:
        yield lock(handle, wait=True)
    finally:
        os.close(handle)
        if beside is not None:
            # Windows removes no file that another has open, so whoever waits for it keeps it.
            with contextlib.suppress(OSError):
                beside.unlink()
