"""Why a text is no TOML, in the words of who writes a job: its line, and how that is written."""

import re

from tapmodel.errors import InputError, WriteError, shortened

ALLOWED = 'a TOML file: key = value, text in "quotes"'

_PLACE = re.compile(r"\(at line ([0-9]+)")

_UNQUOTED = re.compile(
    r"(?<=[=\[,\s])(?:(?:[0-9]{1,4}[ -])?[0-9]{1,4}/[0-9]{1,4} ?(?:in(?:ch)?|mm)?"
    r"|[0-9]{0,9}\.?[0-9]{1,9} ?(?:in(?:ch)?|mm)\b)(?=\s*(?:[,\]#]|$))"
)
"""A fraction, or a number with a unit, outside quotes."""

_LINE = r"(?P<key>[A-Za-z_.]{1,60}\s*=\s*)(?P<value>%s)\s*(?:#.*)?"
_NUMBER = re.compile(_LINE % r"[-+]?[0-9]{0,9}[.,][0-9]{1,9}")
_WORD = re.compile(_LINE % r"[A-Za-z#][A-Za-z0-9 ./-]{0,60}?")

_LONGEST = 300
"""Letters of a line that are looked at."""


def toml_fault(where: str, text: str, failure: Exception) -> InputError:
    """What is wrong with the `text` of the file `where`, as TOML's reader says and as it looks."""
    place = _PLACE.search(str(failure))
    lines = text.splitlines()[int(place[1]) - 1 :][:1] if place else []
    line = lines[0].strip()[:_LONGEST] if lines else ""
    if place is None or not line:
        return InputError(where, _first_words(failure), ALLOWED)
    # the line's number stays whole beside a long name
    there = f"{shortened(where, 120)}, line {place[1]}"
    number, word = _NUMBER.fullmatch(line), _WORD.fullmatch(line)
    if number:
        return WriteError(there, line, f"{number['key']}{_with_point(number['value'])}")
    if word:
        written = f'a number in digits, or a word in quotes: {word["key"]}"{word["value"]}"'
        return InputError(there, line, written)
    found = _UNQUOTED.search(line)
    if found:
        unit = "" if found[0].rstrip()[-1].isalpha() else "in"
        quoted = f'"{found[0].strip()}{unit}"'
        return InputError(there, line, f"put quotes round a length with its unit: {quoted}")
    return InputError(there, line, f"{ALLOWED} ({_first_words(failure)})")


def _with_point(number: str) -> str:
    """A number as TOML reads it: a point, a digit before it, no idle zero in front."""
    sign, digits = (number[0], number[1:]) if number[0] in "+-" else ("", number)
    whole, _, part = digits.replace(",", ".").partition(".")
    return f"{sign}{whole.lstrip('0') or '0'}.{part}"


def _first_words(failure: Exception) -> str:
    return str(failure).splitlines()[0]
