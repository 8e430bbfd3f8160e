"""Every field of the job against values that it cannot take, and against the extremes it can."""

from functools import cache
from typing import Any

import pytest
from entry import faults, refusal_faults, run
from sweeps import in_part

from tapmodel.spec.job import Job, field_names, unit_of
from tapmodel.spec.units import Unit

FIELDS = field_names()

# What no field takes, whatever its kind.
NO_VALUE = (
    "{}",
    "{a = 1}",
    "[[1]]",
    "[{}]",
    "1979-05-27",
    "12:00:00",
    "[" * 300,
    "[" * 900 + "]" * 900,
    "\x1b[31m",
    '"' + "x" * 300 + '"',
    "x" * 300,
    "1,5",
    '"a" b',
    "=",
    "\udcff",
)
NO_NUMBER = (
    "nan",
    "inf",
    "-inf",
    "1e400",
    "-1e308",
    "true",
    '""',
    '"1.5 m"',
    "1.5m",
    "1/4",
    "1/0in",
    "9e99in",
    "9" * 400 + "mm",
    "1.5mmmm",
    "'x'",
    "-1001",
    "9" * 400,
    "9" * 5000,
)
LENGTHS = ("1.5mm", '"1.5 mm"', "1/16in", "'1/16\"'")
EXTREMES = ("0", "1e-300", "0.05", "0.999999", "3", "45", "2000")
TEXTS = (
    '""',
    '" "',
    "'\x1b[31m'",
    '"\\u001b[31m"',
    '"\\u0000"',
    "６H",
    '"６H"',
    "M10",
    "../x",
    '"a/b"',
    '"."',
    '".."',
    "CON",
    "'%s'",
    "6h",
    "H6",
    "9",
)


@cache
def _schema() -> dict[str, Any]:
    return Job.model_json_schema(by_alias=True)


def _kind(field: str) -> str:
    schema = part = _schema()
    for key in field.split("."):
        part = part["properties"][key]
        part = part.get("anyOf", [part])[0]
        if "$ref" in part or "allOf" in part:
            name = (part.get("$ref") or part["allOf"][0]["$ref"]).rsplit("/", 1)[-1]
            part = schema["$defs"][name]
    return part.get("type", "")


NUMBERS = [field for field in FIELDS if _kind(field) == "number"]


def _set(field: str, value: str) -> list[str]:
    job = "1/4-20 UNC" if field == "designation" else "M10"
    return ["design", job, "--set", f"{field}={value}"]


def test_the_kinds_are_told_apart() -> None:
    assert len(FIELDS) > 40
    assert len(NUMBERS) > 25
    assert _kind("flutes.count") == "integer"
    assert _kind("shop.drills") == "array"


LISTS_OF_LENGTHS = {"shop.cutters", "shop.wires", "shop.wheels"}


@pytest.mark.parametrize("field", FIELDS)
def test_what_is_no_value_is_refused_with_the_field(field: str) -> None:
    values = [v for v in NO_VALUE if not (v == "x" * 300 and field == "designation")]
    # Two lengths, where a list of them belongs.
    values = [v for v in values if not (v == "1,5" and field in LISTS_OF_LENGTHS)]
    found = {value: refusal_faults(run(_set(field, value)), field) for value in values}
    assert {value: faults for value, faults in found.items() if faults} == {}


@pytest.mark.parametrize("field", NUMBERS)
def test_what_is_no_number_is_refused_with_the_field(field: str) -> None:
    # A letter is the name of a drill, and so is a fraction.
    names = {"'x'", "1/4"} if field == "hole.drill" else set[str]()
    values = [value for value in NO_NUMBER if value not in names]
    found = {value: refusal_faults(run(_set(field, value)), field) for value in values}
    assert {value: faults for value, faults in found.items() if faults} == {}


@pytest.mark.parametrize("field", NUMBERS)
def test_a_length_with_its_unit_is_judged_and_refused_where_no_length_belongs(field: str) -> None:
    length = unit_of(field) is Unit.MM
    # Two of each field's four ways to write one, in turn; what is refused is refused soon.
    values = LENGTHS[NUMBERS.index(field) % 2 :: 2] if length else LENGTHS
    found = {
        value: _judged(field, value) if length else refusal_faults(run(_set(field, value)), field)
        for value in values
    }
    assert {value: faults for value, faults in found.items() if faults} == {}


@pytest.mark.parametrize("field", FIELDS)
def test_extremes_are_judged_or_refused_and_never_a_fault(field: str) -> None:
    number = FIELDS.index(field)
    if field in NUMBERS:
        values = in_part(EXTREMES, number)
    else:
        values = (*in_part(EXTREMES[::2], number), *TEXTS)
    found = {value: _judged(field, value) for value in values}
    assert {value: faults for value, faults in found.items() if faults} == {}


def _judged(field: str, value: str) -> list[str]:
    ended = run(_set(field, value))
    found = faults(ended)
    if ended.code == 1 and "ERROR" not in ended.out and not ended.err:
        found.append("nothing says which rule is broken")
    return found


KEYS = (
    "",
    ".",
    "..",
    "a..b",
    "flutes.",
    ".flutes",
    "flutes",
    "flute",
    "flutes.cout",
    "flutes.count.x",
    "FLUTES.COUNT",
    "flutes. count",
    "__class__",
    "hole.hole_class",
    "x" * 5000,
    "flutes." + "y" * 5000,
    ".".join("a" * 900),
    ".".join(["thread"] * 900),
    "flutes.\x1b[31m",
    "flutes.\u202ecount",
    "\udcff",
    "ﬂutes.count",
)


def test_what_is_no_key_is_refused() -> None:
    found = {
        key[:40]: refusal_faults(run(["design", "M10", "--set", f"{key}=3"]), "") for key in KEYS
    }
    assert {key: faults for key, faults in found.items() if faults} == {}


def test_a_missing_value_or_sign_is_refused_with_the_option() -> None:
    for text in ("flutes.count", "flutes.count=", "=3", "=", "", " = "):
        assert refusal_faults(run(["design", "M10", "--set", text]), "--set") == []


def test_a_class_of_tap_outside_its_numbers_names_both_ways_to_write_it() -> None:
    told = run(["design", "M10", "--set", "thread.tap_class=0"]).err
    assert "thread.tap_class: 0" in told
    assert "a whole number, at least 1, at most 9, or text" in told
