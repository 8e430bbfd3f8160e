"""Files that appear whole or not at all."""

import os
from collections.abc import Generator
from contextlib import contextmanager
from pathlib import Path

from tapmodel.errors import InputError


@contextmanager
def whole_file(path: Path) -> Generator[Path]:
    """A temporary name beside `path`, which takes its place when the block ends well.

    After any failure in the block, interruption from the keyboard included, the temporary file is
    removed and what stood at `path` before is untouched.

    Args:
        path: where the file is to be.

    Yields:
        The name to write to.

    Raises:
        InputError: when the operating system refuses.
    """
    draft = path.with_name(f".{path.name}.{os.getpid()}.part")
    try:
        yield draft
        _sync(draft)
        draft.replace(path)
        _sync(path.parent)
    except OSError as error:
        reason = error.strerror or type(error).__name__
        allowed = f"a place where a file can be written ({reason})"
        raise InputError("output file", str(path), allowed) from error
    finally:
        draft.unlink(missing_ok=True)


def _sync(path: Path) -> None:
    """Have the operating system put a file or folder on the disk."""
    if path.is_dir() and os.name == "nt":
        return  # folders cannot be opened there
    handle = os.open(path, os.O_RDONLY if path.is_dir() else os.O_RDWR)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
