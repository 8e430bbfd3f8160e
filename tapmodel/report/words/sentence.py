"""What the sentences of findings share."""

from collections.abc import Callable, Mapping

from tapmodel.findings import Finding

Sentence = Callable[[Finding], str]
"""What is wrong, for the machinist; with the cure only where nothing could be tried."""

Sentences = Mapping[str, Sentence]
"""By the code of the rule."""


def always(text: str) -> Sentence:
    """A sentence that needs no numbers."""
    return lambda _finding: text


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
