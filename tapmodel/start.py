"""Where the program starts: interruption at any moment ends it with one line and code 130."""

import contextlib
import io
import os
import signal
import sys
from types import FrameType

from tapmodel.delivery.fate import FATE
from tapmodel.errors import INTERRUPTED


def main() -> None:
    """Entry point of the `tapmodel` command."""
    for ending in ("SIGTERM", "SIGHUP"):
        if hasattr(signal, ending):
            signal.signal(getattr(signal, ending), _interrupted)
    # Processes of ours must not take a user's own numpy.py or json.py for the library's.
    os.environ["PYTHONSAFEPATH"] = "1"
    _open_streams()
    try:
        # Loading the commands takes a third of a second, in which a user may change his mind.
        from tapmodel.cli import main as run  # noqa: PLC0415

        run()
    except KeyboardInterrupt:
        signal.signal(signal.SIGINT, signal.SIG_IGN)
        with contextlib.suppress(OSError):
            sys.stderr.write(f"\ntapmodel: stopped; {FATE.words}\n")
            sys.stderr.flush()
        # An interruption that passed through an exec (dataclasses are made by one) makes Python end
        # as if it had not been caught, whatever sys.exit says.
        os._exit(INTERRUPTED)


def _interrupted(_signal: int, _frame: FrameType | None) -> None:
    raise KeyboardInterrupt


def _open_streams() -> None:
    """Lead a stream that the caller closed nowhere, and let every letter be written.

    The first file opened would otherwise take the closed stream's number, and what a library prints
    would end up in it.
    """
    for number, name in enumerate(("stdin", "stdout", "stderr")):
        try:
            os.fstat(number)
        except OSError:
            os.set_inheritable(os.open(os.devnull, os.O_RDWR), True)
            setattr(sys, name, open(number, "w" if number else "r", closefd=False))  # noqa: SIM115
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")


if __name__ == "__main__":
    main()
