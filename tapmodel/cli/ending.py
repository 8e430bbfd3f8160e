"""How a run of the command line ends: its exit code, and one line for whatever went wrong."""

import contextlib
import errno
import os
import sys
from collections.abc import Callable
from typing import TextIO, cast

import typer

from tapmodel.errors import INTERRUPTED, NoWireError, RefusedError, TapmodelError, shortened
from tapmodel.out_of_memory import ran_out

_UsageError = cast("type[typer.BadParameter]", typer.BadParameter.__mro__[1])
"""What the parser of commands raises; its library keeps the name to itself."""

_LONGEST = 1000


def say(text: str, *, aside: bool = False) -> None:
    """Print a line to stdout, or `aside` to stderr; that its reader has left is no fault."""
    stream = sys.stderr if aside else sys.stdout
    try:
        stream.write(f"{text}\n")
        stream.flush()
    except OSError as error:
        if not _has_left(error):
            raise
        _silence(stream)


def _has_left(error: OSError) -> bool:
    """Whether the reader of a stream is gone, which Windows tells as an argument of no sense."""
    windows = sys.platform == "win32"
    return isinstance(error, BrokenPipeError) or (windows and error.errno == errno.EINVAL)


def code_of(run: Callable[[], object]) -> int:
    """Run a command and return its exit code, having said what went wrong.

    Args:
        run: returns the exit code, or anything else for 0.

    Raises:
        KeyboardInterrupt: the user ended the run.
    """
    try:
        code = run()
    except TapmodelError as error:
        return _complain(_words(error), error.exit_code)
    except _UsageError as error:
        words = _words_of_usage(error)
        return _complain(f"{words} (tapmodel --help, or tapmodel COMMAND --help)", 2)
    except Exception as error:  # noqa: BLE001  (the user gets one line, and the code for a fault of ours)
        return _complain(*_told(error))
    if code == INTERRUPTED:
        raise KeyboardInterrupt
    return code if isinstance(code, int) else 0


def _told(error: Exception) -> tuple[str, int]:
    """What is said of an error that nothing here raised, and the exit code."""
    if ran_out(error):
        return "the machine has not enough memory for this", 3
    if isinstance(error, OSError):
        place = shortened(os.fsdecode(error.filename or "output"), 120)
        return f"{place}: {error.strerror or error}", 2
    return f"a fault of this program, please report it: {type(error).__name__}: {error}", 3


def _words(error: TapmodelError) -> str:
    if isinstance(error, NoWireError):
        from tapmodel.report.words.no_wire import no_wire

        return no_wire(error, error.units)
    if not isinstance(error, RefusedError):
        return str(error)
    from tapmodel.report.words.refusal import refusal

    return refusal(error)


def _words_of_usage(error: typer.BadParameter) -> str:
    from tapmodel.cli.misused import input_error

    return str(input_error(error) or error.format_message())


def _complain(text: str, code: int) -> int:
    for stream in (sys.stdout, sys.stderr):
        try:
            stream.flush()
        except OSError:
            # What cannot be written now would be tried once more, and fail aloud, when Python ends.
            _silence(stream)
    with contextlib.suppress(OSError):
        say(f"tapmodel: {shortened(text, _LONGEST)}", aside=True)
    return code


def _silence(stream: TextIO) -> None:
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, stream.fileno())
    os.close(nowhere)
