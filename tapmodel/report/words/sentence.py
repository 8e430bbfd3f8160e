"""What the sentences of findings share."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from tapmodel.findings import Finding
from tapmodel.report.blocks import Temperature
from tapmodel.report.units import as_text, in_words, range_in_words, torque_in_words
from tapmodel.words import Units

Length = Callable[[float, str], str]
"""A length [mm] with its unit as the reader wants it, formatted as `in_words` does."""


@dataclass(frozen=True, slots=True)
class Writer:
    """Writes lengths, torques and temperatures in the reader's units."""

    units: Units

    def __call__(self, mm: float, form: str) -> str:
        """A length, as `Length` says."""
        return in_words(mm, form, self.units)

    def torque(self, newton_metres: float) -> str:
        """A torque [N·m], as `torque_in_words` does."""
        return torque_in_words(newton_metres, self.units)

    def span(self, low: float, high: float, form: str) -> str:
        """Two lengths from the one to the other, as `range_in_words` does."""
        return range_in_words(low, high, form, self.units)

    def temperature(self, celsius: float) -> str:
        """A temperature [°C] to a degree: "204 °C = 399 °F"."""
        return as_text(Temperature((celsius,)), self.units)


Sentence = Callable[[Finding, Writer], str]
"""What is wrong, for the machinist; with the cure only where nothing could be tried."""

Sentences = Mapping[str, Sentence]
"""By the code of the rule."""


def always(text: str) -> Sentence:
    """A sentence that needs no numbers."""
    return lambda _finding, _length: text


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


def tapped(finding: Finding) -> str:
    """The material that is tapped, and that it was assumed."""
    name = finding.values.word("material")
    return f"{name} (assumed, set hole.material)" if finding.values.number("assumed") else name
