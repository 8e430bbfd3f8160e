"""Whitworth designations, as BS 84 writes them.

1/2-12 BSW, 5/16 BSF, 1/4 in. - 20 B.S.W., and with a pitch outside both series 1/4-40 Whit; as the
trade calls BSW 3/8 Whitworth.
"""

import re
from fractions import Fraction

from tapmodel.errors import InputError, MeantError
from tapmodel.spec.designations.reading.inches import (
    SIZE,
    UNIT,
    inches_of,
    millimetres,
    size_text,
    threads_text,
)
from tapmodel.spec.designations.reading.suffixes import read_suffixes
from tapmodel.spec.designations.record import Designation, Grammar
from tapmodel.spec.designations.refusal import Refusal
from tapmodel.words import Family, Hand

CLASSES = ("close", "medium", "normal")
ALLOWED = (
    "a Whitworth thread as size in inches, threads per inch (they may be left out), then BSW, BSF "
    "or Whit (any pitch, without one that of BSW), then if wanted the class of the nut and the hand"
)
ALLOWED_CLASSES = "a class of the nut: close, medium or normal"
EXAMPLES = "1/2-12 BSW, 5/16 BSF, 1/4-40 Whit, 1/2 BSW normal or 1 1/4-7 BSW LH"

_refuse = Refusal(ALLOWED, EXAMPLES)

_SERIES = {"bsw": "BSW", "bsf": "BSF", "whit": "Whit", "whitworth": "Whit"}
_THREADS = r"[0-9]{1,2} [0-9]/[0-9]|[0-9]{1,3}(?:\.[0-9]{1,4})?"
_SIZE = re.compile(
    rf"(?P<size>{SIZE}){UNIT}(?:(?:\s*[-x]\s*|\s+)(?P<tpi>{_THREADS})(?:\s*t\.?p\.?i\b\.?)?)?"
    r"[\s-]*(?P<series>b\.?s\.?[wf]|whitworth|whit)(?![a-z])\.?(?P<rest>(?:[\s-].*)?)",
    re.IGNORECASE,
)
_SERIES_WORD = r"b\.?s\.?[wf]|whitworth|whit"
_MISPLACED = re.compile(
    rf"(?:(?P<first>{_SERIES_WORD})\.?[\s-]+(?P<size>{SIZE}){UNIT}"
    rf"|(?P<before>{SIZE}){UNIT}[\s-]+(?P<then>{_SERIES_WORD})\.?)"
    r"(?:(?:\s*[-x]\s*|\s+)(?P<tpi>[0-9]{1,3})(?:\s*t\.?p\.?i\b\.?)?)?(?P<rest>(?:[\s-].*)?)",
    re.IGNORECASE,
)
"""The series before the size, or the threads per inch behind it."""

_FAMILY = re.compile(r"b\.?s\.?[wf](?![a-z])|whit", re.IGNORECASE)


def read(text: str) -> Designation | None:
    """Read a text; capital or small letters, blanks and full stops are accepted.

    Raises:
        InputError: the text names a Whitworth series and is no such designation.
    """
    match = _SIZE.fullmatch(text.strip())
    if match is None:
        if _FAMILY.search(text):
            _refuse_misplaced(text)
            _refuse(text)
        return None

    if match["tpi"] is None:
        _refuse_misplaced(text)
    hand, hole_class = read_suffixes(text, match["rest"], read_class, _refuse)
    size = inches_of(match["size"]) or _refuse(text, "a size over 0 inches")
    return Designation(
        family=Family.WHITWORTH,
        diameter=millimetres(size),
        pitch=_pitch(text, match),
        hand=hand,
        hole_class=hole_class,
        default_class="medium",
        text=text,
        series=_SERIES[match["series"].lower().replace(".", "")],
        size=size_text(size),
    )


def write(designation: Designation) -> str:
    """Shortest standard text, e.g. "1/4-40 Whit normal LH"."""
    pitch = designation.pitch
    threads = "" if pitch is None else f"-{threads_text(pitch)}"
    words = [f"{designation.size}{threads}", designation.series]
    if designation.effective_class != designation.default_class:
        words.append(designation.effective_class)
    if designation.hand is Hand.LEFT:
        words.append("LH")
    return " ".join(words)


def read_class(word: str) -> str:
    """Class of the nut in small letters; round brackets around it are accepted.

    Raises:
        InputError: anything else; "free" is told to be a class of the bolt only.
    """
    name = word.strip().removeprefix("(").removesuffix(")").lower()
    if name == "free":
        allowed = f"{ALLOWED_CLASSES}; free is a class of the bolt, its nut is of class normal"
        raise InputError("hole.class", word, allowed)
    if name not in CLASSES:
        raise InputError("hole.class", word, ALLOWED_CLASSES)
    return name


def _refuse_misplaced(text: str) -> None:
    """Offer the words of a text in the order in which they are read, where that is all it lacks.

    Raises:
        MeantError: with that text.
    """
    match = _MISPLACED.fullmatch(text.strip())
    if match is None or (match["first"] is None and match["tpi"] is None):
        return
    size, series = match["size"] or match["before"], match["first"] or match["then"]
    threads = f"-{match['tpi']}" if match["tpi"] else ""
    try:
        found = read(f"{size}{threads} {series}{match['rest']}")
    except InputError:
        return
    if found is not None:
        raise MeantError("designation", text, write(found))


def _pitch(text: str, match: re.Match[str]) -> float | None:
    if match["tpi"] is None:
        # Which series have the size is known where sizes are listed; Whit alone is BSW there.
        return None
    whole, _, part = match["tpi"].rpartition(" ")
    if part.endswith("/0"):
        _refuse(text, "a fraction with more than 0 below the line")
    threads = Fraction(part) + Fraction(whole or 0)
    if threads == 0:
        _refuse(text, "more than 0 threads per inch")
    return millimetres(1 / threads)


GRAMMAR = Grammar(read, write, read_class, "1/2-12 BSW, 5/16 BSF, 1/4-40 Whit")
