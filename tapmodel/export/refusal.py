"""What is said when the operating system refuses to read or write."""

import errno
from pathlib import Path

from tapmodel.errors import InputError
from tapmodel.out_of_memory import ran_out

_FULL = {errno.ENOSPC, errno.EFBIG, getattr(errno, "EDQUOT", errno.ENOSPC)}


def is_full(error: OSError) -> bool:
    """Whether the disk, or the user's share of it, is full."""
    return error.errno in _FULL


def refused(field: str, path: Path, place: str, error: OSError) -> InputError:
    """The error that names `field`, `path` and the reason.

    Args:
        field: what the user gave, such as `--out`.
        path: that could not be read or written.
        place: what is asked of it, such as `a folder that can be written`.
        error: what the operating system said.

    Raises:
        MemoryError: there was no memory left, for which no path is to blame.
    """
    if ran_out(error):
        raise MemoryError(str(error)) from error
    reason = error.strerror or type(error).__name__
    if is_full(error):
        reason = f"the disk is full: {reason}"
    return InputError(field, str(path), f"{place} ({reason})")
