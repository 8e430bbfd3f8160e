"""Unified designations, as ASME B1.1 writes them.

1/4-20 UNC-2B, 10-32 UNF, #10-32, 0.4375-26 UNS-2B-LH, 1 1/2-6 UNC, 2-12 UN.
"""

import re
from fractions import Fraction

from tapmodel.errors import InputError
from tapmodel.spec.designations.reading.inches import (
    SIZE,
    UNIT,
    decimal_text,
    inches_of,
    millimetres,
    size_text,
    threads_text,
)
from tapmodel.spec.designations.reading.number_sizes import (
    NUMBERS,
    means_number,
    number_diameter,
    number_of,
)
from tapmodel.spec.designations.reading.suffixes import read_suffixes
from tapmodel.spec.designations.record import Designation, Grammar
from tapmodel.spec.designations.refusal import Refusal
from tapmodel.words import Family, Hand

ALLOWED = (
    "a Unified thread as size-threads per inch, then if wanted the series UNC, UNF, UNEF, UN or "
    "UNS, the class of the hole 1B, 2B or 3B, and the hand"
)
ALLOWED_CLASSES = "a class of the hole: 1B, 2B or 3B"
EXAMPLES = "1/4-20 UNC-2B, 7/16-26 UNS-2B, 10-32 UNF, #2-56, 1 1/2-6 UNC-3B-LH or 2-12 UN"

_refuse = Refusal(ALLOWED, EXAMPLES)

_THREADS = r"[0-9]{1,3}(?:\.[0-9]{1,4})?"
_SIZE = re.compile(
    rf"(?P<mark>#\s*|no\.?\s*)?(?P<size>{SIZE})(?P<unit>{UNIT})"
    rf"(?:\s*-\s*|(?P<gap>\s*x\s*|\s+))(?P<tpi>{_THREADS})"
    r"(?P<named>\s*t\.?p\.?i\b\.?)?(?:[\s-]*(?P<series>unef|unc|unf|uns|un)(?![a-z]))?(?P<rest>(?:[\s-].*)?)",
    re.IGNORECASE,
)
_FAMILY = re.compile(r"(?:#|no\b|[0-9./\s\"-]+un).*", re.IGNORECASE)
_OTHER_FAMILY = re.compile(r"[\s-]*(?!lh|rh|un)[a-z]{2}", re.IGNORECASE)
_UNKNOWN_SERIES = re.compile(r"[\s-]*un", re.IGNORECASE)


def read(text: str) -> Designation | None:
    """Read a text; capital or small letters and blanks are accepted.

    Raises:
        InputError: the text is a Unified designation and a wrong one.
    """
    match = _SIZE.fullmatch(text.strip())
    if match is None:
        if _FAMILY.fullmatch(text.strip()):
            _refuse(text)
        return None
    if _OTHER_FAMILY.match(match["rest"]) or _may_be_metric(match):
        return None
    if _UNKNOWN_SERIES.match(match["rest"]):
        _refuse(text)

    hand, hole_class = read_suffixes(text, match["rest"], read_class, _refuse)
    tpi = Fraction(match["tpi"])
    if tpi == 0:
        _refuse(text, "more than 0 threads per inch")
    diameter = _diameter(text, match, tpi)
    return Designation(
        family=Family.UNIFIED,
        diameter=millimetres(diameter),
        pitch=millimetres(1 / tpi),
        hand=hand,
        hole_class=hole_class,
        default_class="2B",
        text=text,
        series=(match["series"] or "").upper(),
        size=_size(diameter, float(tpi)),
    )


def write(designation: Designation) -> str:
    """Standard text, always with the class, e.g. "7/16-26 UNS-2B-LH"."""
    tpi = threads_text(designation.pitch or 1.0)
    pairing = f"{designation.size}-{tpi} {designation.series}".rstrip()
    hands = ["LH"] if designation.hand is Hand.LEFT else []
    return "-".join([pairing, designation.effective_class, *hands])


def read_class(word: str) -> str:
    """1B, 2B or 3B in capital letters.

    Raises:
        InputError: anything else; a class of the screw is told from the hole's.
    """
    name = word.strip().upper()
    if name in ("1A", "2A", "3A"):
        allowed = f"{ALLOWED_CLASSES}; A marks a class of the screw, a tap needs that of the hole"
        raise InputError("hole.class", word, allowed)
    if name not in ("1B", "2B", "3B"):
        raise InputError("hole.class", word, ALLOWED_CLASSES)
    return name


def _may_be_metric(match: re.Match[str]) -> bool:
    """Whether two numbers without a dash or a word between are no size and threads per inch.

    27x0.75 and 12 1.5 lack an M; 1/4x20, 10 32, 1.375"x24 and 1.375x24 tpi do not.
    """
    if not match["gap"] or "/" in match["size"]:
        return False
    if any(match[told] for told in ("series", "mark", "unit", "named")):
        return False
    return "x" in match["gap"].lower() or "." in match["tpi"]


def _diameter(text: str, match: re.Match[str], tpi: Fraction) -> Fraction:
    mark, words = match["mark"], match["size"]
    number = int(words) if words.isdigit() else None
    if mark and (number not in NUMBERS or match["unit"]):
        _refuse(text, "a number size 0 to 6, 8, 10 or 12")
    if number is None or (not mark and match["unit"]):
        return inches_of(words) or _refuse(text, "a size over 0 inches")
    meant = True if mark else means_number(number, float(tpi))
    if meant is None:
        rest = text.strip()[match.start("tpi") :]
        inch, named = f"{number}.000-{rest}", f"#{number}-{rest}"
        _refuse(text, f"{inch} for {number} inches or {named} for number {number}")
    return number_diameter(number) if meant else Fraction(number)


def _size(diameter: Fraction, tpi: float) -> str:
    """The size so that it reads back as the same: with a mark where a bare number would not."""
    number = number_of(diameter)
    if number is not None:
        return f"{number}" if means_number(number, tpi) else f"#{number}"
    if diameter.denominator == 1 and means_number(int(diameter), tpi) is not False:
        return decimal_text(diameter)
    return size_text(diameter)


GRAMMAR = Grammar(read, write, read_class, "1/4-20 UNC, 7/16-26 UNS-2B")
