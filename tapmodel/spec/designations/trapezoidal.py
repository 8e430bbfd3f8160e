"""ISO trapezoidal designations, as ISO 2902 and ISO 2903 write them.

Tr16x4, Tr14x3 LH, Tr20x4-7H, and with several starts the lead, then the pitch: Tr16x6(P3).
"""

import re

from tapmodel.errors import InputError
from tapmodel.spec.designations.reading.suffixes import MILLIMETRES as UNIT
from tapmodel.spec.designations.reading.suffixes import plain, read_suffixes
from tapmodel.spec.designations.record import Designation, Grammar
from tapmodel.spec.designations.refusal import Refusal, no_starts, starts_of
from tapmodel.words import Family, Hand

ALLOWED = (
    "an ISO trapezoidal thread as Tr diameter x lead in mm, for several starts the pitch behind a "
    "P, then if wanted LH and the class of the hole"
)
ALLOWED_CLASSES = "a class of the hole: 7H, 8H or 9H"
EXAMPLES = "Tr16x4, Tr14x3 LH, Tr20x4-7H, Tr16x6(P3) or Tr40x14(P7) LH-8H (lead 14, pitch 7)"

_refuse = Refusal(ALLOWED, EXAMPLES)

_NUMBER = r"[0-9]{1,4}(?:\.[0-9]{1,5})?"
_SIZE = re.compile(
    rf"tr\s*(?P<size>{_NUMBER}){UNIT}\s*x\s*(?:ph\s*)?(?P<lead>{_NUMBER}){UNIT}"
    rf"(?:\s*\(\s*p\s*(?P<inner>{_NUMBER})\s*\)|[\s-]*p\s*(?P<pitch>{_NUMBER}){UNIT})?"
    r"(?P<rest>(?:(?:[\s-]|lh|rh).*)?)",
    re.IGNORECASE,
)
_FAMILY = re.compile(r"tr(?![a-z])", re.IGNORECASE)


def read(text: str) -> Designation | None:
    """Read a text; capital or small letters and blanks are accepted.

    Raises:
        InputError: the text begins with Tr and is no such designation.
    """
    match = _SIZE.fullmatch(text.strip())
    if match is None:
        if _FAMILY.match(text.strip()):
            _refuse(text)
        return None

    hand, hole_class = read_suffixes(text, match["rest"], read_class, _refuse)
    size, lead = float(match["size"]), float(match["lead"])
    pitch = float(match["inner"] or match["pitch"] or lead)
    if min(size, lead, pitch) == 0:
        _refuse(text, "sizes over 0 mm")
    starts = starts_of(lead, pitch)
    return Designation(
        family=Family.TRAPEZOIDAL,
        diameter=size,
        pitch=pitch,
        hand=hand,
        hole_class=hole_class,
        default_class="7H",
        text=text,
        starts=starts or _refuse(text, no_starts(lead, pitch)),
    )


def write(designation: Designation) -> str:
    """Shortest standard text, e.g. "Tr40x14(P7) LH-8H"."""
    pitch, starts = designation.pitch or 0.0, designation.starts
    text = f"Tr{plain(designation.diameter)}x{plain(starts * pitch)}"
    if starts > 1:
        text += f"(P{plain(pitch)})"
    if designation.hand is Hand.LEFT:
        text += " LH"
    if designation.effective_class != designation.default_class:
        text += f"-{designation.effective_class}"
    return text


def read_class(word: str) -> str:
    """7H, 8H or 9H.

    Raises:
        InputError: anything else; a class of the screw (small letters) is told from the hole's.
    """
    name = word.strip()
    if re.fullmatch("[6-9][a-h]", name):
        allowed = f"{ALLOWED_CLASSES}; small letters are classes of the screw"
        raise InputError("hole.class", word, allowed)
    if name not in ("7H", "8H", "9H"):
        raise InputError("hole.class", word, ALLOWED_CLASSES)
    return name


COARSEST = 0.4
"""Largest pitch by diameter that this program takes."""

GRAMMAR = Grammar(read, write, read_class, "Tr16x4, Tr14x3 LH, Tr16x6(P3)", COARSEST)
