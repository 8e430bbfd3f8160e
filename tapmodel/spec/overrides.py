"""The `--set key=value` texts of the command line, laid over a job's table."""

import re
import tomllib
from collections.abc import Mapping, Sequence
from functools import cache
from typing import TypeGuard

from tapmodel.errors import InputError, WriteError
from tapmodel.spec.conflicts import CHAMFER_LENGTH, EXCLUSIVE
from tapmodel.spec.job import DESCRIBED, is_list, job_fields, unit_of
from tapmodel.spec.lengths import in_millimetres, millimetres_of, parted_at_comma, rewritten
from tapmodel.spec.units import Unit

MEANT = {"margin_angle": "con-eccentric", "edge_angle": "eccentric"}
"""Kind of relief that an angle belongs to."""

NECK = ("blank.neck_diameter", "blank.neck_length")

_BARE_PART = re.compile(r"[-+]?\.[0-9]{1,20}")
"""A number without a digit before its point, which TOML does not read."""
TEXTS = ("shop.file",)
"""Fields whose bare value is a text whatever letters it has."""

BARE_WORD = re.compile(r"#?[A-Za-z0-9][A-Za-z0-9 ./x()+-]*")


def apply_sets(table: Mapping[str, object], overrides: Sequence[str]) -> dict[str, object]:
    """A copy of `table` with each "dotted.key=value" laid over it, the later ones winning.

    A value is read as TOML; a bare word, or a length with its unit, is taken as text. An override
    also removes what it would contradict in `table` (an offset removes a wanted rake), so that one
    --set is enough.

    Raises:
        InputError: no "=", no key, an unreadable value, or a key inside something that is no table.
    """
    return apply_values(table, pairs_of(overrides))


def pairs_of(overrides: Sequence[str]) -> list[tuple[str, object]]:
    """Key and value of each "dotted.key=value".

    Raises:
        InputError: no "=", no key, or an unreadable value.
    """
    return [_split(text) for text in overrides]


def apply_values(
    table: Mapping[str, object], pairs: Sequence[tuple[str, object]]
) -> dict[str, object]:
    """The same with keys and values already told apart.

    Raises:
        InputError: a key inside something that is no table.
    """
    named = {key for key, _ in pairs}
    result = dict(table)
    for key, value in pairs:
        _put(result, key, value)
    # What two of them settle together contradicts a third that was there.
    for key, value in pairs:
        for rival in rivals(key, value, result):
            if rival not in named:
                _remove(result, rival)
    return result


def _split(text: str) -> tuple[str, object]:
    key, equals, raw = text.partition("=")
    key, raw = key.strip(), raw.strip()
    if not equals or not key or not raw or "" in key.split("."):
        raise InputError("--set", text, "key=value with a dotted key, e.g. flutes.offset=1.2")
    if key in TEXTS and not raw.startswith(('"', "'")):
        return key, raw
    if key in _lists() and not raw.startswith(("[", '"', "'")):
        words = raw.removesuffix(",").split(",")
        meant = parted_at_comma(words) if unit_of(key) is Unit.MM else ""
        if meant:
            raise WriteError(f"--set {key}", raw, f"{meant}; a comma parts the entries of a list")
        return key, [_entry(word.strip()) for word in words]
    if key in DESCRIBED and not raw.startswith(('"', "'")):
        return key, raw
    return key, read_value(f"--set {key}", raw)


def read_value(named: str, raw: str) -> object:
    """A value as TOML has it; a bare word, a length with its unit or a list of such as text.

    Raises:
        InputError: unreadable; `named` is what the message calls it.
    """
    try:
        found = tomllib.loads(f"value = {raw}")
    except (ValueError, RecursionError):
        found = {}
    if set(found) == {"value"}:
        return found["value"]
    if BARE_WORD.fullmatch(raw) or millimetres_of(raw) is not None:
        return float(raw) if _BARE_PART.fullmatch(raw) else raw
    entries = _bare_list(raw)
    if entries:
        return entries
    meant = rewritten(raw)
    if meant:
        raise WriteError(named, raw, meant)
    allowed = 'a number, a length such as 1/4in, true, false, a word, "text" or [a, list]'
    raise InputError(named, raw, allowed)


def _bare_list(raw: str) -> list[object]:
    """The entries of a list without quotes, [1/4in, 6mm] or [number]; none where it is none."""
    if not (raw.startswith("[") and raw.endswith("]")):
        return []
    words = [word.strip() for word in raw[1:-1].removesuffix(",").split(",")]
    bare = all(BARE_WORD.fullmatch(word) or millimetres_of(word) is not None for word in words)
    return [_entry(word) for word in words] if bare else []


def _entry(word: str) -> object:
    """A number as the file would hold it; any other word as text, for the job to judge."""
    try:
        return tomllib.loads(f"value = {word}")["value"]
    except (ValueError, KeyError):
        return word


@cache
def _lists() -> frozenset[str]:
    """Fields that hold a list, by dotted name; they take one with commas and no brackets, too."""
    return frozenset(name for name, field in job_fields().items() if is_list(field))


def rivals(key: str, value: object, table: Mapping[str, object]) -> tuple[str, ...]:
    """Fields of `table` that `value` for `key` contradicts, by dotted name."""
    return tuple(name for name in _possible_rivals(key, value, table) if _holds(table, name))


def _possible_rivals(key: str, value: object, table: Mapping[str, object]) -> list[str]:
    rivals = [name for row in EXCLUSIVE if key in row for name in row if name != key]
    section, _, last = key.rpartition(".")
    if section.startswith("relief.") and last == "kind":
        rivals += [f"{section}.{name}" for name in ("margin_angle", "edge_angle", "heel_drop")]
    if section.startswith("relief.") and last in {"margin_angle", "edge_angle"}:
        kind = (_parent(table, f"{section}.kind") or {}).get("kind")
        rivals += [f"{section}.kind"] if str(kind).lower() != MEANT[last] else []
        rivals += [f"{section}.{_other_angle(last)}"]
    if section == "chamfer":
        rivals += _third_of_chamfer(key, table)
    if key in NECK:
        # Only "no neck" in the one contradicts a neck in the other.
        other = NECK[1 - NECK.index(key)]
        parent = _parent(table, other) or {}
        held = parent.get(other.rpartition(".")[2])
        rivals += [other] if (in_millimetres(held) == 0) != (in_millimetres(value) == 0) else []
    return rivals


def _third_of_chamfer(key: str, table: Mapping[str, object]) -> list[str]:
    """What gives way when `key` would overfix the chamfer: its length for an angle, else angle."""
    angle, point = "chamfer.angle", "chamfer.point_diameter"
    if key == angle and _holds(table, point):
        return list(CHAMFER_LENGTH)
    length_held = any(_holds(table, name) for name in CHAMFER_LENGTH)
    if (key == point and length_held) or (key in CHAMFER_LENGTH and _holds(table, point)):
        return [angle]
    return []


def _other_angle(name: str) -> str:
    return "edge_angle" if name == "margin_angle" else "margin_angle"


def _is_table(value: object) -> TypeGuard[dict[str, object]]:
    return isinstance(value, dict)


def _holds(table: Mapping[str, object], key: str) -> bool:
    return _parent(table, key) is not None


def _parent(table: Mapping[str, object], key: str) -> dict[str, object] | None:
    """The table that holds the key, None where none does."""
    *path, last = key.split(".")
    here: object = table
    for part in path:
        here = here.get(part) if _is_table(here) else None
    return here if _is_table(here) and last in here else None


def _remove(table: dict[str, object], key: str) -> None:
    if _holds(table, key):
        *path, last = key.split(".")
        del _opened(table, path, key)[last]


def _put(table: dict[str, object], key: str, value: object) -> None:
    *path, last = key.split(".")
    _opened(table, path, key)[last] = value


def _opened(table: dict[str, object], path: Sequence[str], key: str) -> dict[str, object]:
    """The table at the end of a path, on which every table is a copy: the caller's stay as is."""
    here = table
    for part in path:
        inner = here.get(part, {})
        if not _is_table(inner):
            raise InputError("--set", key, f"a key inside a table; {part} is none")
        here[part] = here = dict(inner)
    return here
