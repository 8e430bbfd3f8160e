"""Names changed as every system allows it.

Windows refuses to rename what a program has open, and programs that look for viruses or make an
index open every new file for a moment. So there a refusal counts only when it lasts.
"""

import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

T = TypeVar("T")

PATIENCE = 2.0 if sys.platform == "win32" else 0.0
"""Seconds that a refusal must last."""

_PAUSE = 0.05


def patiently(act: Callable[[], T], patience: float | None = None) -> T:
    """Do something that is refused while another program has a file open.

    Args:
        act: what is to be done.
        patience: seconds that the refusal must last; of the system by default.

    Raises:
        OSError: when the system refuses for good.
    """
    end = time.monotonic() + (PATIENCE if patience is None else patience)
    while True:
        try:
            return act()
        except PermissionError:
            if time.monotonic() >= end:
                raise
            time.sleep(_PAUSE)


def rename(one: Path, other: Path) -> None:
    """Give a folder another name, which must be free.

    Raises:
        OSError: when the system refuses.
    """
    patiently(lambda: one.rename(other))


def replace(one: Path, other: Path) -> None:
    """Give a file the name of another, which is gone then.

    Raises:
        OSError: when the system refuses.
    """
    patiently(lambda: one.replace(other))
