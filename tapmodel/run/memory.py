"""How much memory a process may take, and took.

Linux holds a process to a limit itself, and a library that gets no more raises. Elsewhere a limit
is not kept (macOS) or there is none to be set (Windows): there the parent looks on, a few times a
second, and ends what takes too much. Processes are told by the library psutil, which knows a
process by its number and the time it began; a machine on which it does not load is not watched.
"""

import contextlib
import sys
from importlib import import_module
from typing import Any


def _loaded(module: str) -> Any:  # noqa: ANN401  (a module, or none)
    """A module that not every system has; None where it is missing."""
    try:
        return import_module(module)
    except ImportError:
        return None


_LIMITS = _loaded("resource")
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
    """The most memory that this process has held; 0 where no one can tell."""
    if _LIMITS is not None:
        peak = _LIMITS.getrusage(_LIMITS.RUSAGE_SELF).ru_maxrss
        # Linux counts in kB, macOS in bytes.
        return peak / (1e6 if sys.platform == "darwin" else 1e3)
    library = _loaded("psutil")
    if library is None:
        return 0.0
    info = library.Process().memory_info()
    return float(getattr(info, "peak_wset", info.rss)) / 1e6


class Watch:
    """A look at the memory of another process."""

    def __init__(self, process: int) -> None:
        """Look at the one with this number that runs now."""
        self._library = _loaded("psutil")
        self._process: Any = None
        if self._library is not None:
            with contextlib.suppress(self._library.Error):
                self._process = self._library.Process(process)

    def held_mb(self) -> float:
        """What the process holds now; 0 when it has ended, even if another has its number."""
        if self._process is None or not self._process.is_running():
            return 0.0
        with contextlib.suppress(self._library.Error):
            info = self._process.memory_info()
            # On Windows all that it was promised counts, as in the system's list of processes.
            return float(getattr(info, "private", info.rss)) / 1e6
        return 0.0
