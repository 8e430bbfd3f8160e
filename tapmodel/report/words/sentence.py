"""What the sentences of findings share."""

from collections.abc import Callable, Mapping
from functools import partial

from tapmodel.findings import Finding
from tapmodel.report.units import in_words
from tapmodel.words import Units

Length = Callable[[float, str], str]
"""A length [mm] with its unit as the reader wants it, formatted as `in_words` does."""

Sentence = Callable[[Finding, Length], str]
"""What is wrong, for the machinist; with the cure only where nothing could be tried."""

Sentences = Mapping[str, Sentence]
"""By the code of the rule."""


def always(text: str) -> Sentence:
    """A sentence that needs no numbers."""
    return lambda _finding, _length: text


def length_in(units: Units) -> Length:
    """What writes the lengths of sentences in `units`."""
    return partial(in_words, units=units)


def judged(finding: Finding) -> float:
    """The number that is judged.

    Raises:
        TypeError: a word is.
    """
    if isinstance(finding.actual, str):
        raise TypeError(finding.code)
    return finding.actual


def low(finding: Finding) -> float:
    """The lower limit.

    Raises:
        TypeError: there is none.
    """
    return _end(finding, finding.limit.low)


def high(finding: Finding) -> float:
    """The upper limit; errors as `low`."""
    return _end(finding, finding.limit.high)


def _end(finding: Finding, end: float | None) -> float:
    if end is None:
        raise TypeError(finding.code)
    return end
