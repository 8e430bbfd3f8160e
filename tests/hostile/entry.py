"""The command line's own entry, run within the tests' process: fast enough for thousands."""

import io
import sys
from collections.abc import Sequence
from contextlib import redirect_stderr, redirect_stdout
from dataclasses import dataclass
from functools import cache
from unittest.mock import patch

from typer import main as commands

from tapmodel.cli.app import main

LONGEST_LINE = 1200

SHORT = ("M3", "--set", "blank.thread_length=3")
"""A tap that is soon built."""

_made = cache(commands.get_command)
"""The commands with their options, made once as in every process: that takes four times as long as
a word is refused in."""


@dataclass(frozen=True)
class Ended:
    """How a run ended: exit code and what it printed."""

    code: object
    out: str
    err: str


def run(words: Sequence[str]) -> Ended:
    """Run the command line with these words behind `tapmodel`."""
    out, err = io.StringIO(), io.StringIO()
    with (
        redirect_stdout(out),
        redirect_stderr(err),
        patch.object(sys, "argv", ["tapmodel", *words]),
        patch.object(commands, "get_command", _made),
    ):
        try:
            main()
            code: object = 0
        except SystemExit as ending:
            code = ending.code
    return Ended(code, out.getvalue(), err.getvalue())


def faults(ended: Ended) -> list[str]:
    """Everything that no run may end with, whatever it was given."""
    found: list[str] = []
    if ended.code not in (0, 1, 2):
        found.append(f"exit code {ended.code}")
    printed = ended.out + ended.err
    if "Traceback" in printed or "fault of this program" in printed:
        found.append("a fault of the program's own")
    strange = {c for c in printed if not (c.isprintable() or c == "\n")}
    if strange:
        found.append(f"letters that command a terminal: {strange}")
    if ended.code == 2:
        if ended.err.count("\n") != 1 or ended.out:
            found.append("not one message on stderr alone")
        if not ended.err.startswith("tapmodel: "):
            found.append("a message that does not say whose it is")
    longest = max(map(len, ended.err.split("\n")))
    if longest > LONGEST_LINE:
        found.append(f"a line of {longest} letters")
    return found


def refusal_faults(ended: Ended, named: str) -> list[str]:
    """As `faults`, for what must be refused as bad input with a message that names `named`."""
    found = faults(ended)
    if ended.code != 2:
        found.append(f"exit code {ended.code} in place of 2")
    if named not in ended.err:
        found.append(f"{named} is not named")
    return found
