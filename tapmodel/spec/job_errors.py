"""One clear message out of a failed validation: field, value, what is allowed."""

import re
from collections.abc import Mapping, Sequence
from difflib import get_close_matches
from functools import cache
from typing import Any, TypeGuard, cast

from pydantic import BaseModel, ValidationError
from pydantic.fields import FieldInfo
from pydantic_core import ErrorDetails

from tapmodel.errors import (
    InputError,
    LackingError,
    NoCountError,
    UnknownError,
    WriteError,
    shortened,
    shown,
)
from tapmodel.spec.job import Job, field_names
from tapmodel.spec.lengths import FORMAT, bare_number, rewritten
from tapmodel.spec.shop import dials, pitches, rotary_tables
from tapmodel.spec.shop.hole_circles import CIRCLES
from tapmodel.spec.shop.tooth_counts import WHEELS
from tapmodel.spec.units import description

KINDS = {
    "number": "a number",
    "integer": "a whole number",
    "string": "text in quotes",
    "boolean": "true or false",
    "array": "a list in brackets",
    "object": "a table with keys",
}
BOUNDS = {
    "exclusiveMinimum": "more than",
    "minimum": "at least",
    "exclusiveMaximum": "less than",
    "maximum": "at most",
    "minLength": "length at least",
    "maxLength": "length at most",
    "minItems": "entries at least",
    "maxItems": "entries at most",
}

LONGEST_KEY = 60
"""Letters of a key that are looked at to guess which was meant."""


_MOST_OFFERED = 4
"""Fields of other tables that a key may have meant."""

WITH_UNIT = "or with its unit such as 6.35mm, 0.25in or 1/4in"
"""How a length may be written beside a plain number."""

_HOW = {
    pitches.FORMAT: pitches.HOW,
    CIRCLES.form: CIRCLES.how,
    WHEELS.form: WHEELS.how,
    rotary_tables.FORM: rotary_tables.HOW,
    **dials.HOW,
}
"""What is allowed where a text of that form may stand."""


def input_error(failure: ValidationError, where: str, table: Mapping[str, object]) -> InputError:
    """The first trouble of `failure` as an `InputError`.

    Args:
        failure: of the validation.
        where: the file, or "".
        table: what was validated, to show a length as it was typed.
    """
    trouble = failure.errors(include_url=False)[0]
    field = shortened(".".join(_place(trouble)), 60)
    place = f"{shortened(where, 90)}: {field}" if where else field
    if not field:
        return InputError(where or "job", shown(trouble["input"]), "keys of letters in UTF-8")
    if trouble["type"] == "missing":
        return LackingError(place, None, _allowed(trouble))
    if trouble["type"] == "extra_forbidden":
        return UnknownError(place, shown(trouble["input"]), _fields_here(trouble))
    reason = trouble.get("ctx", {}).get("error")
    if isinstance(reason, NoCountError):
        return InputError(place, shown(reason.entry), reason.how)
    return _value_error(place, trouble, _typed(table, trouble["loc"], trouble["input"]))


def _value_error(place: str, trouble: ErrorDetails, typed: object) -> InputError:
    """A value of the wrong kind, or out of range."""
    if trouble["type"] == "literal_error":
        return InputError(place, shown(typed), _word_of_list(trouble, typed))
    meant = _number_meant(trouble, typed) if isinstance(typed, str) else ""
    if meant:
        return WriteError(place, typed, meant)
    return InputError(place, shown(typed), _allowed(trouble))


def _word_of_list(trouble: ErrorDetails, typed: object) -> str:
    """The words of a closed list, and first the one that was most likely meant."""
    words = re.findall(r"'([^']+)'", trouble.get("ctx", {})["expected"])
    close: list[str] = []
    if isinstance(typed, str):
        close = get_close_matches(typed[:LONGEST_KEY].lower(), words, n=1, cutoff=0.6)
    every = "one of " + ", ".join(f'"{word}"' for word in words)
    return f'did you mean "{close[0]}"? Else {every}' if close else every


def _number_meant(trouble: ErrorDetails, typed: str) -> str:
    """How a length is written, or another number with a decimal comma; "" where none was meant."""
    *_, key = keys = _place(trouble)
    told = str(_schemas(_table_of(keys))[key])
    meant = rewritten(typed)
    if f"'{FORMAT}'" in told or f"'{pitches.FORMAT}'" in told:
        return meant
    return meant if "'number'" in told and bare_number(meant) is not None else ""


def _typed(value: object, keys: Sequence[int | str], found: object) -> object:
    """What stands at the end of these keys; `found` where they lead elsewhere."""
    for key in keys:
        match value, key:
            case dict(), str():
                value = cast("dict[str, object]", value).get(key, found)
            case list(), int():
                value = cast("list[object]", value)[key]
            case _:
                return found
    return value


def _place(trouble: ErrorDetails) -> list[str]:
    """Keys down to the field in trouble, without what the validator adds within it."""
    model: object = Job
    keys: list[str] = []
    for part in trouble["loc"]:
        if not _is_model(model):
            break
        keys.append(str(part))
        field = _field(model, str(part))
        model = field.annotation if field else None
    return keys


def _table_of(keys: list[str]) -> type[BaseModel]:
    """The table that holds the last of these keys."""
    model: type[BaseModel] = Job
    for key in keys[:-1]:
        field = _field(model, key)
        model = cast("type[BaseModel]", field.annotation if field else None)
    return model


def _is_model(kind: object) -> TypeGuard[type[BaseModel]]:
    return isinstance(kind, type) and issubclass(kind, BaseModel)


def _fields_here(trouble: ErrorDetails) -> str:
    """The field that was most likely meant, as `--set` would name it, and those of its table."""
    *above, key = places = _place(trouble)
    keys = [field.alias or name for name, field in _table_of(places).model_fields.items()]
    # A key that stands in another table was most likely typed without it.
    meant = [name for name in field_names() if name.endswith(f".{key}")][:_MOST_OFFERED]
    if not meant:
        close = get_close_matches(key[:LONGEST_KEY], keys, n=1, cutoff=0.5)
        meant = [".".join([*above, name]) for name in close]
    hint = f"did you mean {' or '.join(meant)}? " if meant else ""
    table = f"[{'.'.join(above)}]" if above else "a job"
    return f"{hint}{table} has {', '.join(keys)}"


def _allowed(trouble: ErrorDetails) -> str:
    *_, key = keys = _place(trouble)
    table = _table_of(keys)
    field = _field(table, key)
    if field and _is_model(field.annotation):
        prefix = ".".join(keys)
        names = [n for n in field_names() if n.startswith(f"{prefix}.")]
        return f"no value but keys of the table [{prefix}]: {', '.join(names)}"
    what = description(field) if field else ""
    return f"{what}: {_kind_and_bounds(_schemas(table)[key])}"


def _field(model: type[BaseModel], key: str) -> FieldInfo | None:
    return next((f for name, f in model.model_fields.items() if (f.alias or name) == key), None)


# The validator's library writes it anew each time, which takes longer than a whole design.
@cache
def _schemas(model: type[BaseModel]) -> dict[str, Any]:
    return cast("dict[str, Any]", model.model_json_schema(by_alias=True)["properties"])


def _kind_and_bounds(schema: dict[str, Any]) -> str:
    kinds = [kind for kind in schema.get("anyOf", ()) if kind.get("type") != "null"]
    if any(kind.get("format") == FORMAT for kind in kinds):
        return f"{_kind_and_bounds(kinds[0])}, {WITH_UNIT}"
    for kind in kinds:
        if kind.get("format") in _HOW:
            return _HOW[kind["format"]]
    if kinds:
        return ", or ".join(map(_kind_and_bounds, kinds))
    if "enum" in schema:
        return "one of " + ", ".join(f'"{value}"' for value in schema["enum"])
    if "const" in schema:
        return f'"{schema["const"]}"'
    words = [KINDS[schema.get("type", "object")]]
    words += [f"{text} {schema[key]:g}" for key, text in BOUNDS.items() if key in schema]
    if "items" in schema:
        words.append(f"each {_kind_and_bounds(schema['items'])}")
    return ", ".join(words)
