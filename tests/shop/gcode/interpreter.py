"""What an independent interpreter (`rs274` of LinuxCNC) makes of a program: its moves in mm."""

import fcntl
import re
import shutil
import subprocess
import tempfile
from dataclasses import dataclass
from pathlib import Path

import pytest

RS274 = shutil.which("rs274")
needs_interpreter = pytest.mark.skipif(
    RS274 is None, reason="rs274 of the package linuxcnc-uspace is not installed"
)

_MOVE = re.compile(r"STRAIGHT_(TRAVERSE|FEED)\(([^)]*)\)")


@dataclass(frozen=True, slots=True)
class Move:
    """Where a straight move ends [mm, deg], and whether it cuts."""

    x: float
    y: float
    z: float
    a: float
    cuts: bool


def moves_of(text: str, folder: Path) -> list[Move]:
    """The moves of a program, which must be read without a complaint."""
    assert RS274 is not None
    path = folder / "program.ngc"
    path.write_text(text)
    # Two of them at a time disturb each other, and one ends without a word.
    with (Path(tempfile.gettempdir()) / "one-rs274-at-a-time").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        read = subprocess.run([RS274, "-g", path], capture_output=True, text=True, check=False)
    assert read.returncode == 0, read.stderr
    per_unit = 25.4 if "USE_LENGTH_UNITS(CANON_UNITS_INCHES)" in read.stdout else 1.0
    found = list[Move]()
    for kind, words in _MOVE.findall(read.stdout):
        x, y, z, a, *_ = map(float, words.split(","))
        found.append(Move(x * per_unit, y * per_unit, z * per_unit, a, kind == "FEED"))
    return found
