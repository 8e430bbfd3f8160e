"""Locks that the operating system takes back when a process ends, however it ends."""

import contextlib
import os
import sys
from collections.abc import Generator
from pathlib import Path


def lock(handle: int, *, wait: bool) -> bool:
    """Have an open file to oneself, until the handle is closed.

    Args:
        handle: of the file or, where the system allows that, folder.
        wait: until another process lets go; else give up at once.

    Returns:
        False when another process has it, or the file system knows no locks.
    """
    try:
        if sys.platform == "win32":
            import msvcrt  # noqa: PLC0415  (not on every system)

            msvcrt.locking(handle, msvcrt.LK_LOCK if wait else msvcrt.LK_NBLCK, 1)
        else:
            import fcntl  # noqa: PLC0415  (not on every system)

            fcntl.flock(handle, fcntl.LOCK_EX | (0 if wait else fcntl.LOCK_NB))
    except OSError:
        return False
    return True


@contextlib.contextmanager
def alone(folder: Path) -> Generator[bool]:
    """No other run delivers into `folder` meanwhile.

    Yields:
        Whether that is sure: there are systems and file systems that cannot lock a folder.
    """
    if sys.platform == "win32":
        yield False
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        yield lock(handle, wait=True)
    finally:
        os.close(handle)
