"""From a TOML file, a designation and `--set` overrides to one checked `Job`."""

import re
import stat
import tomllib
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any, cast

from pydantic import ValidationError

from tapmodel.errors import InputError
from tapmodel.spec.conflicts import CHAMFER_LENGTH, EXCLUSIVE, refuse_conflicts
from tapmodel.spec.job import Job
from tapmodel.spec.job_errors import input_error

LARGEST_FILE = 1_000_000
"""Bytes; a full job file has about 6 000, so anything above this is some other file."""

BARE_WORD = re.compile(r"[A-Za-z0-9][A-Za-z0-9 ./x()+-]*")


def read_job(path: Path, overrides: Sequence[str] = ()) -> Job:
    """Read the job file at `path`, apply the `--set` texts in order, check everything.

    Raises:
        InputError: naming file, field, value and what is allowed.
    """
    return checked(apply_sets(read_table(path), overrides), str(path))


def job_for(designation: str, overrides: Sequence[str] = ()) -> Job:
    """The job that a bare designation asks for, with `--set` texts applied.

    Raises:
        InputError: as `read_job`.
    """
    return checked(apply_sets({"designation": designation}, overrides))


def checked(table: Mapping[str, object], where: str = "") -> Job:
    """Validate a nested table; `where` (the file's name) goes into the message.

    Raises:
        InputError: unknown key, wrong type, out of range, not finite, or contradicting values.
    """
    try:
        job = Job.model_validate(table)
    except ValidationError as failure:
        raise input_error(failure, where) from None
    refuse_conflicts(job.given())
    return job


def read_table(path: Path) -> dict[str, object]:
    """Read a TOML file into a nested table, looking at its size before its content.

    Raises:
        InputError: not a readable regular file, too large, not UTF-8, or not TOML.
    """
    content = _read(path)
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as failure:
        raise InputError(
            str(path), f"byte {failure.start}", "text in UTF-8; save the file as UTF-8"
        ) from None
    try:
        return tomllib.loads(text)
    except (ValueError, RecursionError) as failure:
        raise InputError(
            str(path), _first_words(failure), 'a TOML file: key = value, text in "quotes"'
        ) from None


def _read(path: Path) -> bytes:
    try:
        facts = path.stat()
        if stat.S_ISDIR(facts.st_mode):
            raise InputError("job file", str(path), "a file, not a folder")
        if not stat.S_ISREG(facts.st_mode):
            raise InputError("job file", str(path), "a regular file, not a device or pipe")
        if facts.st_size > LARGEST_FILE:
            raise InputError(
                "job file", f"{path} of {facts.st_size} bytes", f"at most {LARGEST_FILE} bytes"
            )
        return path.read_bytes()
    except FileNotFoundError:
        raise InputError("job file", str(path), "an existing file; check the path") from None
    except PermissionError:
        raise InputError("job file", str(path), "a file that you may read") from None
    except (OSError, ValueError) as failure:
        raise InputError("job file", str(path), f"a readable file ({failure})") from None


def _first_words(failure: Exception) -> str:
    if isinstance(failure, RecursionError):
        return "too deeply nested"
    return str(failure).splitlines()[0]


def apply_sets(table: Mapping[str, object], overrides: Sequence[str]) -> dict[str, object]:
    """A copy of `table` with each "dotted.key=value" laid over it, the later ones winning.

    A value is read as TOML; a bare word is taken as text. An override also removes what it would
    contradict in `table` (an offset removes a wanted rake), so that one --set is enough.

    Raises:
        InputError: no "=", no key, an unreadable value, or a key inside something that is no table.
    """
    pairs = [_split(text) for text in overrides]
    named = {key for key, _ in pairs}
    result = _copied(table)
    for key, _ in pairs:
        for rival in _rivals(key, result):
            if rival not in named:
                _remove(result, rival)
    for key, value in pairs:
        _put(result, key, value)
    return result


def _split(text: str) -> tuple[str, object]:
    key, equals, raw = text.partition("=")
    key, raw = key.strip(), raw.strip()
    if not equals or not key or not raw or "" in key.split("."):
        raise InputError("--set", text, "key=value with a dotted key, e.g. flutes.offset=1.2")
    try:
        found = tomllib.loads(f"value = {raw}")
    except (ValueError, RecursionError):
        found = {}
    if set(found) == {"value"}:
        return key, found["value"]
    if BARE_WORD.fullmatch(raw):
        return key, raw
    raise InputError(f"--set {key}", raw, 'a number, true, false, a word, "text" or [a, list]')


def _rivals(key: str, table: Mapping[str, object]) -> list[str]:
    rivals = [name for row in EXCLUSIVE if key in row for name in row if name != key]
    section, _, last = key.rpartition(".")
    if section.startswith("relief.") and last == "kind":
        rivals += [f"{section}.{name}" for name in ("margin_angle", "edge_angle", "heel_drop")]
    if section.startswith("relief.") and last in {"margin_angle", "edge_angle"}:
        rivals += [f"{section}.kind", f"{section}.{_other_angle(last)}"]
    if section == "chamfer":
        rivals += _third_of_chamfer(key, table)
    if key in {"blank.neck_diameter", "blank.neck_length"}:
        rivals += [n for n in ("blank.neck_diameter", "blank.neck_length") if n != key]
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


def _copied(table: Mapping[str, object]) -> dict[str, object]:
    return {
        key: _copied(cast("Mapping[str, object]", value)) if isinstance(value, dict) else value
        for key, value in table.items()
    }


def _holds(table: Mapping[str, object], key: str) -> bool:
    return _parent(table, key) is not None


def _parent(table: Mapping[str, object], key: str) -> dict[str, object] | None:
    *path, last = key.split(".")
    here: object = table
    for part in path:
        here = cast("dict[str, object]", here).get(part) if isinstance(here, dict) else None
    return cast("dict[str, object]", here) if isinstance(here, dict) and last in here else None


def _remove(table: dict[str, object], key: str) -> None:
    parent = _parent(table, key)
    if parent is not None:
        del parent[key.rsplit(".", 1)[-1]]


def _put(table: dict[str, object], key: str, value: object) -> None:
    *path, last = key.split(".")
    here = table
    for part in path:
        inner = here.setdefault(part, {})
        if not isinstance(inner, dict):
            raise InputError(f"--set {key}", value, f"a key inside a table; {part} is none")
        here = cast("dict[str, object]", inner)
    here[last] = value


def json_schema() -> dict[str, Any]:
    """JSON Schema of the job file."""
    return Job.model_json_schema(by_alias=True)
