"""Names changed as every system allows it.

Windows refuses to rename what a program has open, and programs that look for viruses or make an
index open every new file for a moment. So there a refusal counts only when it lasts.
"""

import sys
import time
from pathlib import Path

PATIENCE = 2.0 if sys.platform == "win32" else 0.0
"""Seconds that a refusal must last."""

_PAUSE = 0.05


def rename(one: Path, other: Path) -> None:
    """Give a folder another name, which must be free.

    Raises:
        OSError: when the system refuses.
    """
    _patiently(one, other, replaces=False)


def replace(one: Path, other: Path) -> None:
    """Give a file the name of another, which is gone then.

    Raises:
        OSError: when the system refuses.
    """
    _patiently(one, other, replaces=True)


def _patiently(one: Path, other: Path, *, replaces: bool) -> None:
    end = time.monotonic() + PATIENCE
    while True:
        try:
            if replaces:
                one.replace(other)
            else:
                one.rename(other)
        except PermissionError:
            if time.monotonic() >= end:
                raise
            time.sleep(_PAUSE)
        else:
            return
