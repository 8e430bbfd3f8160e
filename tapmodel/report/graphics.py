"""Whether this machine can draw pictures, found out before the renderer loads.

Without the system's OpenGL the renderer does not raise: it ends the process, and with it whatever
was proved there.
"""

import subprocess
import sys
from functools import cache
from pathlib import Path

from tapmodel.system_libraries import lacking

_PROBE = Path(__file__).with_name("egl_probe.py")
_SECONDS = 20.0


@cache
def hindrance() -> str | None:
    """Why no picture can be drawn, and the package to install; None where one can."""
    if sys.platform != "linux":
        return None  # there OpenGL is part of the system
    try:
        tried = subprocess.run(  # noqa: S603  (our own script)
            [sys.executable, "-I", "-S", str(_PROBE)],
            capture_output=True,
            timeout=_SECONDS,
            check=False,
            text=True,
        )
    except (OSError, subprocess.TimeoutExpired):
        return "the system's OpenGL does not answer"
    if tried.returncode == 0:
        return None
    if tried.stdout:
        return lacking(tried.stdout)
    return (
        "no driver of OpenGL 3.2 works here; install the package libgl1-mesa-dri (Debian, Ubuntu)"
    )
