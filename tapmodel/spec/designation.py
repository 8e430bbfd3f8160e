"""Thread designations of every family: reading and writing.

A new family: its grammar in `tapmodel.spec.designations`, and a line here.
"""

from dataclasses import replace

from tapmodel.errors import InputError
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

# Dashes, crosses and blanks of the typesetter, and the decimal comma.
_PLAIN = str.maketrans({"\u2013": "-", "\u2212": "-", "\u00d7": "x", "\u00a0": " ", ",": "."})


def parse(text: str) -> Designation:
    """Read a designation of any family; case, blanks, ×, – and a decimal comma do not matter.

    Raises:
        InputError: the text is no designation, or a wrong one of its family; the message shows
            the allowed forms.
    """
    typed = text.strip().translate(_PLAIN)
    try:
        for grammar in GRAMMARS.values():
            found = grammar.read(typed)
            if found is not None:
                return replace(found, text=text)
    except InputError as error:
        raise InputError(error.field, text, error.allowed) from None
    examples = "; ".join(f"{family}: {grammar.examples}" for family, grammar in GRAMMARS.items())
    raise InputError(
        "designation", text, f"a thread as its standard writes it, for instance {examples}"
    )


def canonical(designation: Designation) -> str:
    """Shortest standard text of the same thread, e.g. "M18x0.75-6G-LH"."""
    return GRAMMARS[designation.family].write(designation)


def read_class(family: Family, word: str) -> str:
    """A tolerance class of the hole as the family's standard writes it.

    Raises:
        InputError: it has no such class.
    """
    return GRAMMARS[family].read_class(word)
