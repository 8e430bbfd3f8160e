"""Names of files and folders that every system takes, so that a job of one machine runs on another.

Windows takes the fewest, so its rules hold everywhere.

Source: Microsoft, Naming Files, Paths, and Namespaces (from memory); held to Python's
`pathlib.PureWindowsPath.is_reserved` by the tests.
"""

import os
import re
from dataclasses import dataclass
from pathlib import Path

from tapmodel.errors import InputError


@dataclass(frozen=True, slots=True)
class Rule:
    """What no name may be.

    Attributes:
        why: in words, as a sentence's part.
        broken: is found in names that break the rule.
    """

    why: str
    broken: re.Pattern[str]


RULES = (
    Rule('Windows takes none of < > : " / \\ | ? * in a name', re.compile(r'[<>:"/\\|?*]')),
    Rule("Windows takes no control characters in a name", re.compile(r"[\x00-\x1f]")),
    Rule("Windows drops dots and blanks at the end of a name", re.compile(r"[. ]\Z")),
    Rule(
        "Windows keeps CON, PRN, AUX, NUL, CONIN$, CONOUT$, COM1 to COM9 and LPT1 to LPT9 for "
        "devices, with any ending",
        re.compile(
            r"\A(?:con|prn|aux|nul|conin\$|conout\$|(?:com|lpt)[1-9¹²³]) *(?:\.|\Z)", re.IGNORECASE
        ),
    ),
)


def fault(name: str) -> str | None:
    """Why some system does not take a name of a file or folder; None where all do."""
    return next((rule.why for rule in RULES if rule.broken.search(name)), None)


def refuse_strange(field: str, path: Path) -> None:
    """Refuse a path of which a part is still to be made and has a name that not all systems take.

    What is there already, this system took.

    Args:
        field: what the user gave, such as `--out`.
        path: of a file or folder.

    Raises:
        InputError: naming the part and the rule.
    """
    place = Path(path.anchor)
    for part in path.parts[bool(path.anchor) :]:
        place /= part
        # Path.is_dir() would raise for a name that is too long. Devices are neither.
        if part == ".." or os.path.isdir(place) or os.path.isfile(place):  # noqa: PTH112, PTH113
            continue
        why = fault(part)
        if why:
            raise InputError(field, str(path), f"names that every system takes; of {part!r}: {why}")
