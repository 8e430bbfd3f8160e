"""A TOML file of a user: its size looked at before its content, one message for what is wrong."""

import stat
import tomllib
from pathlib import Path

from tapmodel.errors import InputError
from tapmodel.spec.toml_faults import ALLOWED, toml_fault

LARGEST_FILE = 1_000_000
"""Bytes; a full job file has about 6 000, so anything above this is some other file."""


def read_table(path: Path, called: str = "job file") -> dict[str, object]:
    """Read a TOML file into a nested table, looking at its size before its content.

    Args:
        path: of the file.
        called: what messages call a file that cannot be read at all.

    Raises:
        InputError: not a readable regular file, too large, not UTF-8, or not TOML.
    """
    content = _read(path, called)
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as failure:
        raise InputError(
            str(path), f"byte {failure.start}", "text in UTF-8; save the file as UTF-8"
        ) from None
    return table_of_text(text, str(path))


def table_of_text(text: str, where: str) -> dict[str, object]:
    """The nested table of a TOML text.

    Args:
        text: of a file.
        where: it comes from, for messages.

    Raises:
        InputError: not TOML.
    """
    try:
        return tomllib.loads(text)
    except RecursionError:
        raise InputError(where, "too deeply nested", ALLOWED) from None
    except ValueError as failure:
        raise toml_fault(where, text, failure) from None


def _read(path: Path, called: str) -> bytes:
    try:
        facts = path.stat()
        if stat.S_ISDIR(facts.st_mode):
            raise InputError(called, str(path), "a file, not a folder")
        if not stat.S_ISREG(facts.st_mode):
            raise InputError(called, str(path), "a regular file, not a device or pipe")
        if facts.st_size > LARGEST_FILE:
            raise InputError(
                called, f"{path} of {facts.st_size} bytes", f"at most {LARGEST_FILE} bytes"
            )
        return path.read_bytes()
    except FileNotFoundError:
        raise InputError(called, str(path), "an existing file; check the path") from None
    except PermissionError:
        raise InputError(called, str(path), "a file that you may read") from None
    except (OSError, ValueError) as failure:
        raise InputError(called, str(path), f"a readable file ({failure})") from None
