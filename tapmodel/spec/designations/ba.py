"""British Association designations, as BS 93 writes them: 2 BA, No. 2 BA, 10 BA LH."""

import re

from tapmodel.errors import InputError
from tapmodel.spec.designations.reading.suffixes import read_suffixes
from tapmodel.spec.designations.record import Designation, Grammar
from tapmodel.spec.designations.refusal import Refusal
from tapmodel.words import Family, Hand

LARGEST_NUMBER = 16
ALLOWED = f"a British Association thread, 0 BA to {LARGEST_NUMBER} BA, then if wanted the hand"
ONE_CLASS = "no class: BS 93 has one tolerance for all nuts"
EXAMPLES = "0 BA, 2 BA, No. 10 BA or 4 BA LH"

_refuse = Refusal(ALLOWED, EXAMPLES)

_SIZE = re.compile(
    r"(?:(?:#|no\b\.?)\s*)?(?P<number>[0-9]{1,2})[\s-]*b\.?a(?![a-z])\.?(?P<rest>(?:[\s-].*)?)",
    re.IGNORECASE,
)
_FAMILY = re.compile(r"(?:#|no\b\.?)?[-0-9./\s]*b\.?a(?![a-z])", re.IGNORECASE)


def read(text: str) -> Designation | None:
    """Read a text; capital or small letters, blanks and full stops are accepted.

    Raises:
        InputError: the text names a BA thread and is no such designation.
    """
    match = _SIZE.fullmatch(text.strip())
    if match is None:
        if _FAMILY.match(text.strip()):
            _refuse(text)
        return None

    hand, _ = read_suffixes(text, match["rest"], read_class, _refuse)
    number = int(match["number"])
    if number > LARGEST_NUMBER:
        _refuse(text)
    return Designation(
        family=Family.BA,
        diameter=_diameter(number),
        pitch=None,
        hand=hand,
        hole_class=None,
        default_class="",
        text=text,
        size=str(number),
    )


def write(designation: Designation) -> str:
    """Shortest standard text, e.g. "10 BA LH"."""
    return f"{designation.size} BA" + (" LH" if designation.hand is Hand.LEFT else "")


def read_class(word: str) -> str:
    """Refuse any class.

    Raises:
        InputError: always; close and normal are told to be classes of the bolt.
    """
    allowed = ONE_CLASS
    if word.strip().lower() in ("close", "normal"):
        allowed += "; close and normal are classes of the bolt"
    raise InputError("hole.class", word, allowed)


def _diameter(number: int) -> float:
    """What the number means [mm]: 6 p^1.2 with p = 0.9^number, to two significant digits."""
    return float(f"{6 * 0.9 ** (1.2 * number):.2g}")


GRAMMAR = Grammar(read, write, read_class, "2 BA, 10 BA LH")
