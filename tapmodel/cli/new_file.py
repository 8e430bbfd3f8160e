"""The name of a file that a command is to write."""

import os
from pathlib import Path

from tapmodel.errors import InputError

ENDING = ".toml"


def refuse_unread(file: Path) -> None:
    """Refuse a name that no command would take for a job file's.

    Raises:
        InputError: naming it.
    """
    if not file.name.lower().endswith(ENDING):
        raise InputError("FILE", str(file), f"a name that ends in {ENDING}")


def refuse_taken(file: Path, *, overwrite: bool) -> None:
    """Refuse a name that is taken, unless an ordinary file is to be overwritten.

    Raises:
        InputError: naming it.
    """
    taken = os.path.lexists(file)
    if taken and not overwrite:
        raise InputError("FILE", str(file), "a name that is not taken, or --overwrite")
    if (taken and not file.is_file()) or not file.name:
        raise InputError("FILE", str(file), "the name of an ordinary file")
