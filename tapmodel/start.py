"""Where the program starts: interruption at any moment ends it with one line and code 130."""

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
    try:
        # Loading the commands takes a third of a second, in which a user may change his mind.
        from tapmodel.cli import main as run  # noqa: PLC0415

        run()
    except KeyboardInterrupt:
        signal.signal(signal.SIGINT, signal.SIG_IGN)
        sys.stderr.write(f"\ntapmodel: stopped; {FATE.words}\n")
        sys.stderr.flush()
        # An interruption that passed through an exec (dataclasses are made by one) makes Python end
        # as if it had not been caught, whatever sys.exit says.
        os._exit(INTERRUPTED)


def _interrupted(_signal: int, _frame: FrameType | None) -> None:
    raise KeyboardInterrupt


if __name__ == "__main__":
    main()
