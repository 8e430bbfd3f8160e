"""What follows the size in every designation: class of the hole and hand, in any order."""

import re
from collections.abc import Callable
from typing import NoReturn

from tapmodel.errors import InputError
from tapmodel.words import Hand

_HANDS = {"LH": Hand.LEFT, "RH": Hand.RIGHT}


def read_suffixes(
    rest: str, read_class: Callable[[str], str], refuse: Callable[[str], NoReturn]
) -> tuple[Hand, str | None]:
    """Hand and class in the text behind a size, parted by dashes or blanks, each at most once.

    Args:
        rest: the text.
        read_class: reads a class, or raises InputError.
        refuse: raises for the whole designation; told what is allowed, "" for the general form.
    """
    words = re.split(r"\s*-\s*|\s+", rest.strip().removeprefix("-").strip()) if rest else []
    hands = [_HANDS[word.upper()] for word in words if word.upper() in _HANDS]
    classes = [word for word in words if word.upper() not in _HANDS]
    if len(hands) > 1 or len(classes) > 1 or "" in words:
        refuse("")
    if not classes:
        return (hands or [Hand.RIGHT])[0], None
    try:
        return (hands or [Hand.RIGHT])[0], read_class(classes[0])
    except InputError as error:
        refuse(error.allowed)


def plain(number: float) -> str:
    """Shortest decimal text of a number, without exponent or idle zeros."""
    return f"{number:.8f}".rstrip("0").rstrip(".")
