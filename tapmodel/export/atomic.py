"""Files that appear whole or not at all."""

import contextlib
import errno
import os
import secrets
import sys
from collections.abc import Generator
from pathlib import Path

from tapmodel.export.refusal import refused
from tapmodel.export.renaming import replace


def write_whole(path: Path, content: bytes) -> None:
    """Write a file and read it back before it takes the place of `path`.

    Args:
        path: where the file is to be.
        content: of the file.

    Raises:
        InputError: when the operating system refuses, or gives back other bytes.
    """
    with whole_file(path) as draft:
        with draft.open("wb") as stream:
            stream.write(content)
        if draft.read_bytes() != content:
            raise OSError(errno.EIO, "what was written reads back otherwise")


@contextlib.contextmanager
def whole_file(path: Path) -> Generator[Path]:
    """A temporary name beside `path`, which takes its place when the block ends well.

    After any failure in the block, interruption from the keyboard included, the temporary file is
    removed and what stood at `path` before is untouched.

    Args:
        path: where the file is to be.

    Yields:
        The name to write to: an empty file that nobody else has.

    Raises:
        InputError: when the operating system refuses.
    """
    draft = path.with_name(f".tapmodel-{secrets.token_hex(8)}.part")
    try:
        draft.touch(exist_ok=False)
        yield draft
        sync(draft)
        replace(draft, path)
    except OSError as error:
        raise refused("output file", path, "a place where a file can be written", error) from error
    finally:
        with contextlib.suppress(OSError):
            draft.unlink(missing_ok=True)


def make_folder(path: Path) -> None:
    """Make a folder unless it is there.

    Raises:
        InputError: when the operating system refuses.
    """
    try:
        path.mkdir(exist_ok=True)
    except OSError as error:
        raise refused("output file", path, "a place where a folder can be made", error) from error


def sync(path: Path) -> None:
    """Have the operating system put a file on the disk, or a folder where it can do that.

    Raises:
        OSError: when a file did not get there.
    """
    # Windows opens no folders, and syncs only what may be written.
    windows = sys.platform == "win32"
    if not path.is_dir():
        _sync(path, os.O_RDWR if windows else os.O_RDONLY)
    elif not windows:
        with contextlib.suppress(OSError):
            _sync(path, os.O_RDONLY)


def _sync(path: Path, mode: int) -> None:
    handle = os.open(path, mode)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
