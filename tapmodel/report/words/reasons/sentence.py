"""How the words of a reason are kept: a text with its values in braces, or what makes one."""

import string
from collections.abc import Callable

from tapmodel.report.words.sentence import Writer
from tapmodel.values import Values

Sentence = str | Callable[..., str]
"""A text that `told` fills, or a function of a `Writer` that takes the values by name.

A length in a text has its unit behind its form, "{drill:g mm}", a temperature likewise,
"{temper:g °C}": both are written in the reader's units.
"""


class _Filler(string.Formatter):
    """Fills a text, its lengths and temperatures as a writer writes them."""

    def __init__(self, writer: Writer) -> None:
        self._write = writer

    def format_field(self, value: object, format_spec: str) -> str:
        form, _, unit = format_spec.partition(" ")
        if isinstance(value, float | int):
            if unit == "mm":
                return self._write(value, form)
            if unit == "°C":
                return self._write.temperature(value)
        return super().format_field(value, format_spec)


def told(words: Sentence, values: Values, writer: Writer) -> str:
    """The words with their values, lengths and temperatures in the writer's units.

    Raises:
        KeyError: a value of the words is not among `values`.
        TypeError: likewise, of words that a function makes.
    """
    if isinstance(words, str):
        return _Filler(writer).format(words, **values)
    return words(writer, **values)
