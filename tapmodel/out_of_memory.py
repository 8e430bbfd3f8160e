"""Want of memory, in whichever way the system tells of it."""

import errno

_UNMAPPED = ("failed to map", "cannot map", "cannot allocate")
"""The loader's words for a library that finds no memory to be mapped to."""


def ran_out(error: Exception) -> bool:
    """Whether an error tells that there was no memory left."""
    if isinstance(error, ImportError):
        return any(words in str(error).lower() for words in _UNMAPPED)
    if isinstance(error, OSError):
        return error.errno == errno.ENOMEM
    return isinstance(error, MemoryError)
