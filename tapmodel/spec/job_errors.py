"""One clear message out of a failed validation: field, value, what is allowed."""

from difflib import get_close_matches
from typing import Any, cast

from pydantic import BaseModel, ValidationError
from pydantic.fields import FieldInfo
from pydantic_core import ErrorDetails

from tapmodel.errors import InputError
from tapmodel.spec.job import Job

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


def input_error(failure: ValidationError, where: str) -> InputError:
    """The first trouble of `failure` as an `InputError`; `where` is the file, or ""."""
    trouble = failure.errors(include_url=False)[0]
    field = ".".join(str(part) for part in trouble["loc"])
    place = f"{where}: {field}" if where else field
    if trouble["type"] == "missing":
        return InputError(place, None, f"a value is needed here: {_allowed(trouble)}")
    if trouble["type"] == "extra_forbidden":
        return InputError(place, shown(trouble["input"]), _allowed_keys(trouble))
    return InputError(place, shown(trouble["input"]), _allowed(trouble))


def shown(value: object) -> object:
    """`value`, or words for it where writing it out would itself fail or flood the screen."""
    if isinstance(value, int) and value.bit_length() > 200:
        return f"a whole number of {value.bit_length()} bits"
    if isinstance(value, dict | list):
        kind = "table" if isinstance(value, dict) else "list"
        return f"a {kind} of {len(cast('list[object]', value))}"
    return value


def _allowed_keys(trouble: ErrorDetails) -> str:
    *path, key = trouble["loc"]
    model = Job
    for part in path:
        model = cast("type[Job]", _field(model, str(part)).annotation)
    keys = [field.alias or name for name, field in model.model_fields.items()]
    close = get_close_matches(str(key), keys, n=1, cutoff=0.5)
    hint = f'no such key; did you mean "{close[0]}"? ' if close else "no such key; "
    return f"{hint}keys here: {', '.join(keys)}"


def _allowed(trouble: ErrorDetails) -> str:
    names = [str(part) for part in trouble["loc"] if isinstance(part, str)]
    model: type[BaseModel] = Job
    for part in names[:-1]:
        model = cast("type[BaseModel]", _field(model, part).annotation)
    what = _field(model, names[-1]).description or f"keys of [{'.'.join(names)}]"
    return f"{what}: {_kind_and_bounds(_schema(model, names[-1]))}"


def _field(model: type[BaseModel], key: str) -> FieldInfo:
    return next(f for name, f in model.model_fields.items() if (f.alias or name) == key)


def _schema(model: type[BaseModel], key: str) -> dict[str, Any]:
    schema: dict[str, Any] = model.model_json_schema(by_alias=True)["properties"][key]
    return cast("dict[str, Any]", schema.get("anyOf", [schema])[0])


def _kind_and_bounds(schema: dict[str, Any]) -> str:
    if "enum" in schema:
        return "one of " + ", ".join(f'"{value}"' for value in schema["enum"])
    if "const" in schema:
        return f'"{schema["const"]}"'
    words = [KINDS[schema.get("type", "object")]]
    words += [f"{text} {schema[key]:g}" for key, text in BOUNDS.items() if key in schema]
    if "items" in schema:
        words.append(f"each {_kind_and_bounds(schema['items'])}")
    return ", ".join(words)
