"""ISO metric designations, as ISO 965-1 writes them.

M10, M18x0.75, M20x1.5-6H-LH, M8x1-4H5H, and with several starts M20xPh3P1.5 (lead, pitch).
"""

import re

from tapmodel.spec.designations.reading.suffixes import MILLIMETRES as UNIT
from tapmodel.spec.designations.reading.suffixes import plain, read_suffixes
from tapmodel.spec.designations.record import Designation, Grammar
from tapmodel.spec.designations.refusal import Refusal, no_starts, starts_of
from tapmodel.spec.hole_class import default_hole_class, parse_hole_class
from tapmodel.words import Family, Hand

ALLOWED = "an ISO metric thread in mm, then if wanted the class of the hole and the hand"
EXAMPLES = "M10, M18x0.75, M10-6G, M8x1-4H5H, M20x1.5-6H-LH or M20xPh3P1.5 (lead and pitch)"

_refuse = Refusal(ALLOWED, EXAMPLES)

_NUMBER = r"([0-9]{1,4}(?:\.[0-9]{1,5})?)"
_PITCH = r"([0-9]{1,4}(?:\.[0-9]{1,5})?|\.[0-9]{1,5})"
_SIZE = re.compile(
    rf"m\s*{_NUMBER}{UNIT}(?:\s*x\s*(?:{_PITCH}|ph\s*{_PITCH}\s*p\s*{_PITCH}){UNIT})?"
    r"((?:[\s-].*)?)",
    re.IGNORECASE,
)
_FAMILY = re.compile(r"\s*m\s*[-0-9.x]", re.IGNORECASE)


def read(text: str) -> Designation | None:
    """Read a text; capital or small letters and blanks are accepted.

    Raises:
        InputError: the text begins like an ISO metric designation and is none.
    """
    match = _SIZE.fullmatch(text.strip())
    if match is None:
        if _FAMILY.match(text):
            _refuse(text)
        return None
    diameter, plain_pitch, lead, start_pitch, rest = match.groups()
    pitch = _positive(text, plain_pitch or start_pitch)

    hand, hole_class = read_suffixes(text, rest, read_class, _refuse)
    size = _positive(text, diameter)
    if size is None:
        _refuse(text)
    return Designation(
        family=Family.METRIC,
        diameter=size,
        pitch=pitch,
        hand=hand,
        hole_class=hole_class,
        default_class=str(default_hole_class(size, pitch)),
        text=text,
        starts=_starts(text, _positive(text, lead), pitch),
    )


def write(designation: Designation) -> str:
    """Shortest standard text, e.g. "M18x0.75-6G-LH"."""
    parts = [f"M{plain(designation.diameter)}{_pitch_text(designation)}"]
    if designation.effective_class != designation.default_class:
        parts.append(designation.effective_class)
    if designation.hand is Hand.LEFT:
        parts.append("LH")
    return "-".join(parts)


def read_class(word: str) -> str:
    """A class such as "6H" or "5H6H" in the shortest writing.

    Raises:
        InputError: anything else.
    """
    return str(parse_hole_class(word))


def _pitch_text(designation: Designation) -> str:
    pitch, starts = designation.pitch, designation.starts
    if pitch is None:
        return ""
    return f"x{plain(pitch)}" if starts == 1 else f"xPh{plain(starts * pitch)}P{plain(pitch)}"


def _positive(text: str, number: str | None) -> float | None:
    if number is None:
        return None
    value = float(number)
    if value == 0:
        _refuse(text, "sizes over 0 mm")
    return value


def _starts(text: str, lead: float | None, pitch: float | None) -> int:
    if lead is None or pitch is None:
        return 1
    starts = starts_of(lead, pitch)
    return starts or _refuse(text, no_starts(lead, pitch, "lead Ph"))


GRAMMAR = Grammar(read, write, read_class, "M18x0.75, M10-6H-LH")
