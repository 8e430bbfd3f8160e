"""How the words of a reason are kept: a text with its values in braces, or what makes one."""

from collections.abc import Callable

Sentence = str | Callable[..., str]
"""A text as `str.format` fills it, or a function that takes the values by name."""
