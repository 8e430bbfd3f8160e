"""Where the program starts: interruption at any moment ends it with one line and code 130."""

import contextlib
import gc
import io
import os
import signal
import sys
from collections.abc import Sequence
from types import FrameType
from typing import NoReturn

from tapmodel.run.begun import begin, dismiss


def main() -> None:
    """Entry point of the `tapmodel` command."""
    for ending in ("SIGTERM", "SIGHUP", "SIGBREAK"):
        if hasattr(signal, ending):
            signal.signal(getattr(signal, ending), _interrupted)
    # Little that is loaded here forms circles, and to look for them takes a tenth of the time.
    gc.set_threshold(250_000, 50, 100)
    # Every matrix here is small: threads to work on them would only have to be started.
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    # To look whether somebody's packages extend the reading of jobs takes time, and none may.
    os.environ.setdefault("PYDANTIC_DISABLE_PLUGINS", "__all__")
    # Processes of ours must not take a user's own numpy.py or json.py for the library's.
    os.environ["PYTHONSAFEPATH"] = "1"
    _open_streams()
    try:
        # Where no process can be started now, the command will try again and say so.
        with contextlib.suppress(OSError):
            begin(*_wanted(sys.argv[1:]))
        # Loading the commands takes a third of a second, in which a user may change his mind.
        from tapmodel.cli.app import main as run

        run()
    except SystemExit as ending:
        _leave(ending.code if isinstance(ending.code, int) else 0)
    except KeyboardInterrupt:
        signal.signal(signal.SIGINT, signal.SIG_IGN)
        from tapmodel.errors import INTERRUPTED
        from tapmodel.run.delivery.fate import FATE

        with contextlib.suppress(OSError):
            sys.stderr.write(f"\ntapmodel: stopped; {FATE.words}\n")
            sys.stderr.flush()
        # An interruption that passed through an exec (dataclasses are made by one) makes Python end
        # as if it had not been caught, whatever sys.exit says.
        _leave(INTERRUPTED)


def _wanted(words: Sequence[str]) -> tuple[str, ...]:
    """Modules of the processes that a command will want, at the first glance."""
    command = words[0] if words else ""
    if command == "page" or (command == "build" and "--preview" in words):
        return ("tapmodel.run.preview",)
    return ("tapmodel.run.model", "tapmodel.run.desk.work") if command == "build" else ()


def _leave(code: int) -> NoReturn:
    """End at once: to take all modules apart would cost a tenth of a second, and give nothing."""
    dismiss()
    for stream in (sys.stdout, sys.stderr):
        with contextlib.suppress(OSError):
            stream.flush()
    os._exit(code)


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
