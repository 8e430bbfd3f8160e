"""How much memory a process may take, and took.

Linux holds a process to a limit itself, and a library that gets no more raises. Elsewhere a limit
is not kept (macOS) or there is none to be set (Windows): there the parent looks on, a few times a
second, and ends what takes too much. Processes are told by the library psutil, which knows a
process by its number and the time it began.
"""

import sys
from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    import psutil


def _limits() -> Any:  # noqa: ANN401  (a module, or none)
    """The module of the system's limits; None on a system that has none."""
    try:
        return import_module("resource")
    except ImportError:
        return None


_LIMITS = _limits()
WATCHED = _LIMITS is None or sys.platform != "linux"
"""Whether the parent must look on."""


def limit_own(megabytes: int) -> None:
    """Have the system give this process no more address space, where it keeps such a limit."""
    if WATCHED:
        return
    _, hard = _LIMITS.getrlimit(_LIMITS.RLIMIT_AS)
    wanted = megabytes * 1_000_000
    soft = wanted if hard == _LIMITS.RLIM_INFINITY else min(wanted, hard)
    _LIMITS.setrlimit(_LIMITS.RLIMIT_AS, (soft, hard))


def own_peak_mb() -> float:
    """The most memory that this process has held."""
    if _LIMITS is None:
        import psutil  # noqa: PLC0415  (loaded where it is wanted)

        info = psutil.Process().memory_info()
        return float(getattr(info, "peak_wset", info.rss)) / 1e6
    peak = _LIMITS.getrusage(_LIMITS.RUSAGE_SELF).ru_maxrss
    # Linux counts in kB, macOS in bytes.
    return peak / (1e6 if sys.platform == "darwin" else 1e3)


class Watch:
    """A look at the memory of another process."""

    def __init__(self, process: int) -> None:
        """Look at the one with this number that runs now."""
        self._number = process
        self._process: psutil.Process | None = None

    def held_mb(self) -> float:
        """What the process holds now; 0 when it has ended."""
        import psutil  # noqa: PLC0415  (loaded where it is wanted)

        try:
            self._process = self._process or psutil.Process(self._number)
            if not self._process.is_running():
                return 0.0
            info = self._process.memory_info()
        except psutil.Error:
            return 0.0
        # On Windows what was promised to it counts, as in the system's own list of processes.
        return float(getattr(info, "private", info.rss)) / 1e6
