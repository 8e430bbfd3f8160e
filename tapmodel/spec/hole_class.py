"""Tolerance class of the hole, as ISO 965-1 writes it: 6H, 6G, 5H6H."""

import re
from dataclasses import dataclass
from typing import Literal

from tapmodel.errors import InputError

Position = Literal["G", "H"]

GRADES = (4, 5, 6, 7, 8)
ALLOWED_CLASSES = "a hole class of grades 4 to 8 with position G or H, e.g. 6H, 6G or 5H6H"

_CLASS = re.compile(r"([0-9]+)([A-Za-z])(?:([0-9]+)([A-Za-z]))?")


@dataclass(frozen=True, slots=True)
class HoleClass:
    """Grades of the two tolerances of an internal thread and their common position.

    Attributes:
        pitch_grade: grade of the pitch diameter, 4 to 8.
        minor_grade: grade of the minor diameter, 4 to 8.
        position: H (no allowance) or G.
    """

    pitch_grade: int
    minor_grade: int
    position: Position

    def __post_init__(self) -> None:
        """Refuse grades and positions that the standard does not have."""
        grades = {self.pitch_grade, self.minor_grade}
        if not grades <= set(GRADES) or self.position not in ("G", "H"):
            raise InputError("hole_class", str(self), ALLOWED_CLASSES)

    def __str__(self) -> str:
        """The class as written on a drawing: one grade when both are the same."""
        pitch = f"{self.pitch_grade}{self.position}"
        if self.pitch_grade == self.minor_grade:
            return pitch
        return f"{pitch}{self.minor_grade}{self.position}"


def parse_hole_class(text: str) -> HoleClass:
    """Read a class such as "6H", "6G" or "5H6H" (pitch grade first, then minor grade).

    Raises:
        InputError: anything else; a class of the screw (small letters) is told from the hole's.
    """
    match = _CLASS.fullmatch(text.strip())
    if match is None:
        raise InputError("hole_class", text, ALLOWED_CLASSES)
    pitch_grade, position, minor_grade, second = match.groups()
    if position.islower() or (second or "H").islower():
        raise InputError(
            "hole_class",
            text,
            f"{ALLOWED_CLASSES}; small letters are classes of the screw, a tap needs the class of "
            "the hole, in capital letters",
        )
    if position not in ("G", "H") or second not in (None, position):
        raise InputError("hole_class", text, ALLOWED_CLASSES)
    return HoleClass(
        int(pitch_grade), int(minor_grade or pitch_grade), "G" if position == "G" else "H"
    )


def default_hole_class(diameter: float, pitch: float | None) -> HoleClass:
    """Class meant when none is written: 5H up to M1.4, 6H above, finer for the finest pitches.

    The tables of ISO 965-1 hold no grade over 4 at pitch 0.2 and none over 5 at 0.25, so below
    pitch 0.25 it is 4H, below 0.3 5H.

    Args:
        diameter: nominal [mm].
        pitch: [mm]; None for the coarse one, or below 1 mm that of the miniature threads.

    Source: ISO 965-1 (from memory); the finest pitches as read in a note to a thread chart on the
    web that names 4H for M1.8x0.2 and finer, 5H for M2x0.25 and finer.
    """
    if diameter < 1 or (pitch is not None and pitch < 0.25):
        grade = 4
    elif diameter <= 1.4 or (pitch is not None and pitch < 0.3):
        grade = 5
    else:
        grade = 6
    return HoleClass(grade, grade, "H")
