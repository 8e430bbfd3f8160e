"""A STEP file from elsewhere, looked at before the kernel sees it.

The kernel crashes on a coordinate that is no number and turns endlessly on one without bounds.
"""

import re
from pathlib import Path

from tapmodel.errors import InputError
from tapmodel.export.refusal import refused

LARGEST_FILE = 1_000_000_000
"""Bytes; a tap has some 15 kB for each tooth of a land."""

_HEAD = b"ISO-10303-21"
_STRINGS = re.compile(rb"'[^']*'")
_NO_LENGTH = re.compile(rb"\b(?:nan|inf|infinity)\b|\d{11,}\.|\d\.?\d*e\+?[1-9]\d+", re.IGNORECASE)


def refuse_unreadable(path: Path) -> None:
    """Refuse a file that is no STEP file, or holds numbers that no part has: 1e10 mm and more.

    Raises:
        InputError: naming the file and what was found.
    """
    try:
        name, size = str(path), path.stat().st_size
        if not path.is_file():
            raise InputError("FILE", name, "a STEP file, not a folder, device or pipe")
        if size > LARGEST_FILE:
            raise InputError("FILE", f"{name} of {size} bytes", f"at most {LARGEST_FILE} bytes")
        content = path.read_bytes()
        name.encode()
    except OSError as error:
        raise refused("FILE", path, "a STEP file to read", error) from None
    except UnicodeEncodeError:
        raise InputError("FILE", str(path), "a name in UTF-8; rename the file") from None
    if not content.lstrip().startswith(_HEAD):
        raise InputError("FILE", str(path), f"a STEP file, which begins with {_HEAD.decode()}")
    found = _NO_LENGTH.search(_STRINGS.sub(b"''", content))
    if found:
        number = found[0].decode()
        raise InputError("FILE", str(path), f"a STEP file of lengths below 1e10 mm, not {number}")
