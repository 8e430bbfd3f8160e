"""One child process as every system starts and ends it."""

import contextlib
import signal
import subprocess
import sys
from collections.abc import Callable
from typing import IO, TYPE_CHECKING, Any

from tapmodel.run.pipes import listen

if TYPE_CHECKING:
    from threading import Thread


class Process:
    """A running process that hears by its standard input and speaks by its standard output."""

    def __init__(self, code: str, module: str) -> None:
        """Start one that runs `code` with the name of a module to load.

        Raises:
            OSError: when the system starts none.
        """
        self.popen = subprocess.Popen(  # noqa: S603  (our own code)
            [sys.executable, "-P", "-c", code, module],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            **_apart(),
        )
        self._listener: Thread | None = None

    @property
    def hears(self) -> IO[bytes]:
        """The pipe to it."""
        return _pipe(self.popen.stdin)

    def listen(self, heard: Callable[[bytes | None], None]) -> None:
        """Have what it says handed to `heard`; see `pipes.listen`."""
        self._listener = listen(_pipe(self.popen.stdout), heard)

    def end(self) -> None:
        """End it, whatever it does."""
        self.popen.kill()
        self.popen.wait()
        if self._listener:
            # On Windows the process may be the child of a launcher, which ends it a moment later;
            # only then it has let go of its files.
            self._listener.join(_LETS_GO)
        # What it did not hear any more cannot be sent now either.
        with contextlib.suppress(OSError):
            _pipe(self.popen.stdin).close()
        if not (self._listener and self._listener.is_alive()):
            _pipe(self.popen.stdout).close()


_LETS_GO = 2.0
"""Seconds."""


def _apart() -> dict[str, Any]:
    """Ctrl-C is the parent's to answer, which ends its children."""
    if sys.platform == "win32":
        # Without a window: a program that has none itself would otherwise open one for each.
        flags = subprocess.CREATE_NEW_PROCESS_GROUP | subprocess.CREATE_NO_WINDOW
        return {"creationflags": flags}
    return {"start_new_session": True}


def _pipe(pipe: IO[bytes] | None) -> IO[bytes]:
    if pipe is None:
        raise TypeError("the process was started without pipes")
    return pipe


_BY_THE_SYSTEM = 0xC000_0000
"""From here on exit codes of Windows are the system's reasons to end a process."""
# Source: ntstatus.h (from memory).
_REASONS = {
    0xC000_0005: "access to memory that it does not have",
    0xC000_0017: "no memory left",
    0xC000_00FD: "a stack that ran over",
    0xC000_0135: "a library that is missing",
    0xC000_013A: "Ctrl-C",
    0xC000_0374: "a damaged heap",
    0xC000_0409: "a damaged stack",
}


def death(code: int) -> str:
    """Words for the end of a process that did not say why, from its exit code."""
    if code < 0:
        with contextlib.suppress(ValueError):
            ended = signal.Signals(-code)
            cause = "; a system out of memory does that" if ended.name == "SIGKILL" else ""
            return f"the process at it was ended by {ended.name}{cause}"
    if code >= _BY_THE_SYSTEM:
        reason = _REASONS.get(code, "no reason known here")
        return f"the process at it was ended by Windows (0x{code:08X}, {reason})"
    return f"the process at it ended without a result (exit code {code})"
