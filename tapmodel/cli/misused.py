"""What is wrong with a word of the command line, told as of a field: its name, value, allowed."""

import re
from typing import cast

import typer
from pydantic import ValidationError

from tapmodel.errors import InputError

_NAMED = re.compile(r"Invalid value for '(.+?)': ")
_KINDS = {"int_parsing": "a whole number", "float_parsing": "a number"}
_BOUNDS = {"ge": "at least", "gt": "more than", "le": "at most", "lt": "less than"}


def input_error(error: typer.BadParameter) -> InputError | None:
    """The same as an `InputError`, or None where the parser of commands tells no value.

    Args:
        error: of that parser, whose own words are those of the library that checked the value.
    """
    named, failure = _NAMED.match(error.format_message()), error.__cause__
    if named is None or not isinstance(failure, ValidationError):
        return None
    trouble = failure.errors(include_url=False)[0]
    told = trouble.get("ctx", {})
    words = re.findall(r"'([^']+)'", str(told.get("error", "")).partition("is not one of")[2])
    bounds = [f"{sign} {told[key]:.12g}" for key, sign in _BOUNDS.items() if key in told]
    allowed = _KINDS.get(trouble["type"]) or ", ".join([*words, *bounds])
    return InputError(named[1], cast("object", trouble["input"]), allowed) if allowed else None
