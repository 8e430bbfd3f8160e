"""Thread designations of every family: reading and writing.

A new family: its grammar in `tapmodel.spec.designations`, and a line here.
"""

import re
import unicodedata
from dataclasses import replace

from tapmodel.errors import InputError, MeantError
from tapmodel.spec.designations import (
    acme,
    ba,
    metric,
    miniature,
    pipe,
    trapezoidal,
    unified,
    whitworth,
)
from tapmodel.spec.designations.meant import COARSEST_METRIC, meant
from tapmodel.spec.designations.reading.respelled import respelled
from tapmodel.spec.designations.reading.spellings import (
    refuse_starts,
    with_hand_last,
    with_starts,
    without_starts,
)
from tapmodel.spec.designations.record import Designation, Grammar
from tapmodel.words import Family

__all__ = ["Designation", "canonical", "parse", "read_class"]

GRAMMARS: dict[Family, Grammar] = {
    Family.METRIC: metric.GRAMMAR,
    Family.MINIATURE: miniature.GRAMMAR,
    Family.WHITWORTH: whitworth.GRAMMAR,
    Family.BA: ba.GRAMMAR,
    Family.PIPE: pipe.GRAMMAR,
    Family.TRAPEZOIDAL: trapezoidal.GRAMMAR,
    Family.UNIFIED: unified.GRAMMAR,
    Family.ACME: acme.GRAMMAR,
}

# Dashes, crosses, blanks and fractions of the typesetter, and the decimal comma.
_PLAIN = str.maketrans(
    {"\u2013": "-", "\u2212": "-", "\u00d7": "x", "*": "x", "\u00a0": " ", "\t": " ", ",": "."}
    | {
        sign: " " + unicodedata.normalize("NFKC", sign).replace("\u2044", "/")
        for sign in "\u00bc\u00bd\u00be\u215b\u215c\u215d\u215e"
    }
)


def parse(text: str) -> Designation:
    """Read a designation of any family as it is usually typed.

    Case, blanks, ×, *, –, ½ and a decimal comma do not matter.

    Raises:
        InputError: the text is no designation, or a wrong one of its family; the message shows
            the allowed forms, or what was likely meant.
    """
    typed = re.sub(" +", " ", text.translate(_PLAIN).strip())
    _refuse_strange_letters(text, typed)
    try:
        found = _read(typed)
    except InputError as error:
        if not isinstance(error, MeantError):
            _offer_respelled(text, typed)
        # of the same kind: what was a guess at what was meant stays one
        raise type(error)(error.field, text, error.allowed) from None
    if found is not None:
        return replace(found, text=text)
    _offer_respelled(text, typed)
    guess = meant(typed)
    if guess:
        raise MeantError("designation", text, guess)
    raise InputError("designation", text, f"a thread as its standard writes it, {_examples()}")


def _read(typed: str) -> Designation | None:
    """What the grammar of its family makes of a text; None where no family knows it."""
    words, starts = without_starts(with_hand_last(typed))
    for family, grammar in GRAMMARS.items():
        try:
            found = grammar.read(words)
        except InputError:
            # what it offers in place of the words would not have the starts
            refuse_starts(typed, starts or 1, family)
            raise
        if found is not None:
            return found if starts is None else with_starts(found, starts, grammar)
    return None


def _offer_respelled(text: str, typed: str) -> None:
    """Offer the text with its slips mended, where that is read.

    Raises:
        MeantError: with the designation that is then read.
    """
    mended = respelled(typed)
    if mended == typed:
        return
    try:
        found = _read(mended)
    except MeantError as error:
        raise MeantError(error.field, text, error.allowed) from None
    except InputError:
        return
    if found is not None and _is_likely(found):
        raise MeantError("designation", text, canonical(found))


def _is_likely(found: Designation) -> bool:
    """Whether a thread is no coarser than any that is cut."""
    coarsest = min(GRAMMARS[found.family].coarsest, COARSEST_METRIC)
    return found.pitch is None or found.pitch <= coarsest * found.diameter


def _refuse_strange_letters(text: str, typed: str) -> None:
    """No letter of a designation is from another script, though many look alike."""
    for letter in typed:
        if not (letter.isascii() and letter.isprintable()):
            name = unicodedata.name(letter, "no letter")
            found = f"plain letters, digits and signs, not U+{ord(letter):04X} ({name})"
            raise InputError("designation", text, f"{found}; {_examples()}")


def _examples() -> str:
    """One of each family."""
    forms = [grammar.examples.partition(",")[0] for grammar in GRAMMARS.values()]
    return f"for instance {', '.join(forms[:-1])} or {forms[-1]}"


def canonical(designation: Designation) -> str:
    """Shortest standard text of the same thread, e.g. "M18x0.75-6G-LH"."""
    return GRAMMARS[designation.family].write(designation)


def read_class(family: Family, word: str) -> str:
    """A tolerance class of the hole as the family's standard writes it.

    Raises:
        InputError: it has no such class.
    """
    return GRAMMARS[family].read_class(word)
