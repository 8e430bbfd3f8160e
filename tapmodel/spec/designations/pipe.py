"""Designations of parallel pipe threads, as ISO 228-1 writes them: G 1/2, G 1 1/4, G 3/8 LH.

Taper pipe threads and the parallel ones of other standards are refused with the reason.
"""

import re

from tapmodel.errors import InputError
from tapmodel.spec.designations.reading.inches import SIZE, UNIT, inches_of, millimetres, size_text
from tapmodel.spec.designations.reading.suffixes import read_suffixes
from tapmodel.spec.designations.record import Designation, Grammar
from tapmodel.spec.designations.refusal import Refusal
from tapmodel.words import Family, Hand

ALLOWED = "a parallel pipe thread as G and its size from 1/16 to 6, then if wanted the hand"
ONE_CLASS = "no class: ISO 228-1 has one tolerance for internal threads"
EXAMPLES = "G 1/2, G 1 1/4, G1/8 or G 3/8 LH"

_refuse = Refusal(ALLOWED, EXAMPLES)
TAPER = (
    "the parallel pipe thread G: a taper pipe thread (R, Rc, NPT, NPTF, BSPT) needs a taper tap, "
    "another tool, which this program does not model"
)
OTHER_PARALLEL = {
    "RP": "the parallel pipe thread G: Rp seals on the thread and has limits of its own (ISO 7-1)",
    "NPS": "the parallel pipe thread G: NPS is of 60 degrees and other sizes (ASME B1.20.1)",
    "BSP": "the parallel pipe thread G, or BSPP: BSP alone may be parallel or taper",
}

_REST = r"(?P<rest>(?:[\s-].*)?)"
_FORMS = tuple(
    re.compile(form + _REST, re.IGNORECASE)
    for form in (
        # A dash that stands off from G would be a minus.
        rf"(?:g|bspp)(?:\s*|-)(?P<size>{SIZE}){UNIT}",
        rf"(?P<size>{SIZE}){UNIT}[\s-]*bspp(?![a-z])",
    )
)
_FAMILY = re.compile(r"(?:g|bspp)[\s-]*[0-9.]|g$|.*bspp", re.IGNORECASE)
_OTHER_NAME = r"(?P<name>rc|rp|r|nptf?|nps[a-z]?|bspt?)"
_OTHERS = tuple(
    re.compile(form, re.IGNORECASE)
    for form in (rf"{_OTHER_NAME}[\s-]*[0-9.].*", rf"[0-9][0-9./\s\"-]*{_OTHER_NAME}(?![a-z]).*")
)


def read(text: str) -> Designation | None:
    """Read a text; capital or small letters and blanks are accepted, "1/2 BSPP" means G 1/2.

    The nominal size in inches stands for the diameter until the standard gives the true one.

    Raises:
        InputError: the text names a pipe thread and is no parallel one of ISO 228-1.
    """
    typed = text.strip()
    _refuse_others(text, typed)
    match = next(filter(None, (form.fullmatch(typed) for form in _FORMS)), None)
    if match is None:
        if _FAMILY.match(typed):
            _refuse(text)
        return None

    hand, _ = read_suffixes(text, match["rest"], read_class, _refuse)
    size = inches_of(match["size"]) or _refuse(text)
    return Designation(
        family=Family.PIPE,
        diameter=millimetres(size),
        pitch=None,
        hand=hand,
        hole_class=None,
        default_class="",
        text=text,
        size=size_text(size),
    )


def write(designation: Designation) -> str:
    """Shortest standard text, e.g. "G 3/8 LH"."""
    return f"G {designation.size}" + (" LH" if designation.hand is Hand.LEFT else "")


def read_class(word: str) -> str:
    """Refuse any class.

    Raises:
        InputError: always; A and B are told to be classes of the external thread.
    """
    allowed = ONE_CLASS
    if word.strip().upper() in ("A", "B"):
        allowed += "; A and B are classes of the external thread"
    raise InputError("hole.class", word, allowed)


def _refuse_others(text: str, typed: str) -> None:
    match = next(filter(None, (form.fullmatch(typed) for form in _OTHERS)), None)
    if match is None:
        return
    name = match["name"].upper()
    _refuse(text, OTHER_PARALLEL.get("NPS" if name.startswith("NPS") else name, TAPER))


GRAMMAR = Grammar(read, write, read_class, "G 1/2, G 3/8 LH")
