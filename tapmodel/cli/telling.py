"""What a command says about what it made."""

import json
import shlex
import subprocess
import sys
from pathlib import Path
from typing import Any

from tapmodel.cli.ending import say
from tapmodel.errors import escaped


def tell_preview(record: dict[str, Any], out: Path, *, err: bool = False) -> None:
    """Name what was written without a proof, to stderr with `err`."""
    for path in record["delivery"]["written"]:
        shown = escaped(str(out / record["name"] / path))
        say(f"preview, not verified: {shown}", aside=err)
    tell_delivery(record)


def tell_delivery(record: dict[str, Any], what: str = "tap") -> None:
    """What could not be made, and what became of files that stood in the folder before.

    Args:
        record: of what was delivered.
        what: the folder holds one of.
    """
    for words in record.get("left_out", ()):
        say(f"note: left out, {words}", aside=True)
    delivery = record["delivery"]
    if delivery["replaced"]:
        words = f"another {what} of this name, made {delivery['replaced']}, gave way to this one"
        say(f"note: {words}", aside=True)
    for old, new in delivery["kept"].items():
        say(escaped(f"note: your own {old} is kept as {new}"), aside=True)


def print_json(value: object) -> None:
    """Print a value as JSON."""
    say(json.dumps(value, indent=1, allow_nan=False))


def shell_word(text: str) -> str:
    """A word as the system's own shell takes it for one."""
    return subprocess.list2cmdline([text]) if sys.platform == "win32" else shlex.quote(text)
