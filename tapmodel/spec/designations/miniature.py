"""Unified miniature designations, as ASME B1.10M writes them: 0.50 UNM, 0.90 UNM LH."""

import re

from tapmodel.errors import InputError
from tapmodel.spec.designations.reading.suffixes import plain, read_suffixes
from tapmodel.spec.designations.record import Designation, Grammar
from tapmodel.spec.designations.refusal import Refusal
from tapmodel.words import Family, Hand

ALLOWED = "a Unified miniature thread, 0.30 UNM to 1.40 UNM, then if wanted the hand"
ONE_CLASS = "no class: ASME B1.10M has one tolerance for all nuts"
EXAMPLES = "0.50 UNM, 0.90 UNM or 1.20 UNM LH"

_refuse = Refusal(ALLOWED, EXAMPLES)

_NUMBER = r"[0-9]{0,3}\.?[0-9]{1,5}"
_SIZE = re.compile(rf"(?P<size>{_NUMBER})[\s-]*unm(?![a-z])(?P<rest>(?:[\s-].*)?)", re.IGNORECASE)
_FAMILY = re.compile(r"[-0-9.\s]*unm(?![a-z])", re.IGNORECASE)
_ISO = re.compile(rf"s\s*(?P<size>{_NUMBER})(?:\s*x\s*(?P<pitch>{_NUMBER}))?.*", re.IGNORECASE)
_LEFT = re.compile(r".*[\s-]lh\b.*", re.IGNORECASE)


def read(text: str) -> Designation | None:
    """Read a text; capital or small letters and blanks are accepted.

    Raises:
        InputError: the text names a Unified miniature thread and is no such designation, or an
            ISO miniature thread, whose tolerances this program does not hold.
    """
    typed = text.strip()
    _refuse_iso(text, typed)
    match = _SIZE.fullmatch(typed)
    if match is None:
        if _FAMILY.match(typed):
            _refuse(text)
        return None

    hand, _ = read_suffixes(text, match["rest"], read_class, _refuse)
    diameter = float(match["size"]) or _refuse(text, "a size over 0 mm")
    return Designation(
        family=Family.MINIATURE,
        diameter=diameter,
        pitch=None,
        hand=hand,
        hole_class=None,
        default_class="",
        text=text,
        size=size_text(diameter),
    )


def write(designation: Designation) -> str:
    """Standard text, e.g. "0.50 UNM LH"."""
    return f"{designation.size} UNM" + (" LH" if designation.hand is Hand.LEFT else "")


def read_class(word: str) -> str:
    """Refuse any class.

    Raises:
        InputError: always.
    """
    raise InputError("hole.class", word, ONE_CLASS)


def size_text(diameter: float) -> str:
    """The size as the standard writes it, in hundredths of a mm at least."""
    text = plain(diameter)
    return text if len(text.partition(".")[2]) > 1 else f"{diameter:.2f}"


def _refuse_iso(text: str, typed: str) -> None:
    match = _ISO.fullmatch(typed)
    if match is None:
        return
    size, hand = float(match["size"]), " LH" if _LEFT.fullmatch(typed) else ""
    pitch = f"x{plain(float(match['pitch']))}" if match["pitch"] else ""
    _refuse(
        text,
        f"{size_text(size)} UNM{hand}, which has the same pitch and least pitch diameter, or "
        f"M{plain(size)}{pitch}{hand}; the tolerances of S, ISO 1501, are not known to this "
        "program",
    )


GRAMMAR = Grammar(read, write, read_class, "0.50 UNM, 0.90 UNM LH")
