"""Messages between two processes, by the plain pipes that every system has.

A message is its length and a pickle. Each end has a thread that takes messages off the pipe as
they come: no sender ever waits for a listener that is busy, however little a pipe holds (on Windows
4 kB), and several are heard alike where the system can wait for many at once and where it cannot.
"""

import pickle
import struct
import threading
from collections.abc import Callable
from typing import IO, Any

_LENGTH = struct.Struct("<Q")


class GoneError(Exception):
    """Nobody is at the other end any more."""


def speak(stream: IO[bytes], what: object) -> None:
    """Send one message.

    Raises:
        GoneError: when nobody can hear it.
    """
    message = pickle.dumps(what, pickle.HIGHEST_PROTOCOL)
    try:
        stream.write(_LENGTH.pack(len(message)))
        stream.write(message)
        stream.flush()
    except (OSError, ValueError) as error:
        # A pipe that is broken says so in several ways, and in others on Windows; one that was
        # closed on this side raises ValueError.
        raise GoneError from error


def listen(stream: IO[bytes], heard: Callable[[bytes | None], None]) -> threading.Thread:
    """Have every message that comes handed to `heard`, and None at the end of the line.

    It is handed over as bytes: to understand it may load modules, which a thread must not do while
    another does.

    Returns:
        The thread that listens; it ends with the line.
    """

    def attend() -> None:
        while (message := _next(stream)) is not None:
            heard(message)
        heard(None)

    thread = threading.Thread(target=attend, daemon=True)
    thread.start()
    return thread


def understood(message: bytes) -> Any:  # noqa: ANN401  (whatever was sent)
    """What a message says."""
    return pickle.loads(message)  # noqa: S301  (from a process of our own)


def _next(stream: IO[bytes]) -> bytes | None:
    """The next message; None when the line ends before it is whole."""
    try:
        head = stream.read(_LENGTH.size)
        if len(head) < _LENGTH.size:
            return None
        (length,) = _LENGTH.unpack(head)
        message = stream.read(length)
    except (OSError, ValueError):
        return None
    return message if len(message) == length else None
