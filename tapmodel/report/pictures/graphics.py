"""Whether this machine can draw pictures, found out before the renderer loads.

Without the system's OpenGL the renderer does not raise: it ends the process, and with it whatever
was proved there.
"""

import contextlib
import subprocess
import sys
from functools import cache
from pathlib import Path

from tapmodel.system_libraries import lacking

_PROBE = Path(__file__).with_name("egl_probe.py")
_SECONDS = 20.0
_SILENT = "the system's OpenGL does not answer"


@cache
def ask() -> "subprocess.Popen[str] | None":
    """Begin to find out, so that something else can be done meanwhile; None where it is known."""
    if sys.platform != "linux":
        return None
    command = [sys.executable, "-I", "-S", str(_PROBE)]
    quiet = subprocess.DEVNULL
    with contextlib.suppress(OSError):
        return subprocess.Popen(  # noqa: S603  (our own script)
            command, stdin=quiet, stdout=subprocess.PIPE, stderr=quiet, text=True
        )
    return None


@cache
def hindrance() -> str | None:
    """Why no picture can be drawn, and the package to install; None where one can."""
    if sys.platform != "linux":
        return None  # there OpenGL is part of the system
    probe = ask()
    if probe is None:
        return _SILENT
    try:
        library, _ = probe.communicate(timeout=_SECONDS)
    except subprocess.TimeoutExpired:
        probe.kill()
        probe.communicate()
        return _SILENT
    if probe.returncode == 0:
        return None
    if library:
        return lacking(library)
    return (
        "no driver of OpenGL 3.2 works here; install the package libgl1-mesa-dri (Debian, Ubuntu)"
    )
