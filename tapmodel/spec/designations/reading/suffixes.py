"""What follows the size in every designation: class of the hole and hand, in any order."""

import re
from collections.abc import Callable

from tapmodel.errors import InputError
from tapmodel.spec.designations.refusal import Refusal
from tapmodel.words import Hand

MILLIMETRES = r"(?:\s*mm\b)?"
"""Pattern of the unit behind a size in mm, which may be left out."""

_HANDS = {"LH": Hand.LEFT, "RH": Hand.RIGHT}


def read_suffixes(
    text: str, rest: str, read_class: Callable[[str], str], refuse: Refusal
) -> tuple[Hand, str | None]:
    """Hand and class in the text behind a size, parted by dashes or blanks, each at most once.

    Args:
        text: the whole designation.
        rest: what stands behind its size.
        read_class: reads a class, or raises InputError.
        refuse: of the family.

    Raises:
        InputError: anything else.
    """
    words = re.split(r"\s*-\s*|\s+", rest.strip().removeprefix("-").strip()) if rest else []
    hands = [_HANDS[word.upper()] for word in words if word.upper() in _HANDS]
    classes = [word for word in words if word.upper() not in _HANDS]
    if len(hands) > 1 or len(classes) > 1 or "" in words:
        refuse(text)
    if not classes:
        return (hands or [Hand.RIGHT])[0], None
    try:
        return (hands or [Hand.RIGHT])[0], read_class(classes[0])
    except InputError as error:
        refuse(text, error.allowed)


def plain(number: float) -> str:
    """Shortest decimal text of a number, without exponent or idle zeros."""
    return f"{number:.8f}".rstrip("0").rstrip(".")
