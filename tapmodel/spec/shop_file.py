"""A shop described once, in a file of its own that jobs point to: what the job itself says wins."""

import os
from collections.abc import Mapping
from pathlib import Path
from typing import Any, cast

from pydantic import Field, ValidationError

from tapmodel.errors import InputError, shown
from tapmodel.spec.job import Group, Job, Shop
from tapmodel.spec.job_errors import input_error
from tapmodel.spec.toml_file import read_table

FIELD = "shop.file"

_SHOP, _FILE = FIELD.split(".")

_HOW = "a file that describes a shop: the table [shop] as in a job, and nothing else"

_ANY_THREAD = "M10"
"""The file is checked as the job of a thread that takes no part in it."""


class ShopFile(Group):
    """What a file that describes a shop may hold."""

    shop: Shop = Field(default_factory=Shop)


def points_to(table: Mapping[str, object]) -> str:
    """The file that a job's table points to.

    Empty where it points to none, or by no text, which the checking of the job tells.
    """
    found = _own(table).get(_FILE)
    return found if isinstance(found, str) else ""


def located(table: Mapping[str, object], folder: Path) -> dict[str, object]:
    """A job's table whose pointer leads to the file from the working folder.

    Args:
        table: of a job file, nested.
        folder: where that file lies, by which its pointer goes.
    """
    pointer = points_to(table)
    if not pointer:
        return dict(table)
    return _with(table, {_FILE: Path(folder, pointer).as_posix()})


def with_shop_file(table: Mapping[str, object]) -> dict[str, object]:
    """A job's table with the values of the file that it points to, where it has none of its own.

    Args:
        table: of a job, nested; its pointer leads on from the working folder.

    Raises:
        InputError: no such file, or one that describes no shop; naming file, field and value.
    """
    pointer = points_to(table)
    if not pointer:
        return dict(table)
    return _with(table, _read(Path(pointer)) | _own(table))


def shop_values(path: Path) -> dict[str, object]:
    """What a file says of the shop, by dotted name of the job's field.

    Raises:
        InputError: as `with_shop_file`.
    """
    given = _job(path, _read(path)).given()
    return {field: value for field, value in given.items() if field.startswith(f"{_SHOP}.")}


def pointer_from(pointer: str, folder: Path) -> str:
    """How a job in another folder points to the same file; an absolute pointer stays.

    Args:
        pointer: that leads on from the working folder.
        folder: of the other job.
    """
    if Path(pointer).is_absolute():
        return pointer
    try:
        return Path(os.path.relpath(pointer, folder)).as_posix()
    except ValueError:  # another drive of Windows
        return Path(pointer).absolute().as_posix()


def shop_schema() -> dict[str, Any]:
    """JSON Schema of a file that describes a shop."""
    return ShopFile.model_json_schema(by_alias=True)


def _read(path: Path) -> dict[str, object]:
    """The shop's table of a file, checked."""
    table = read_table(path, FIELD)
    other = next((key for key in table if key != _SHOP), None)
    if other is not None:
        raise InputError(f"{path}: {other}", shown(table[other]), _instead(other))
    held = _own(table)
    if _FILE in held:
        allowed = "no pointer: only a job points to a shop"
        raise InputError(f"{path}: {FIELD}", shown(held[_FILE]), allowed)
    _job(path, table.get(_SHOP, {}))
    return held


def _instead(key: str) -> str:
    if key in Shop.model_fields:
        return f'"{_SHOP}.{key}", as in a job: put [{_SHOP}] above it'
    if key in {field.alias or name for name, field in Job.model_fields.items()}:
        return f"{_HOW}; this is a job file"
    return _HOW


def _job(path: Path, shop: object) -> Job:
    """A job of any thread in that shop."""
    table = {"designation": _ANY_THREAD, _SHOP: shop}
    try:
        return Job.model_validate(table)
    except ValidationError as failure:
        raise input_error(failure, str(path), table) from None


def _own(table: Mapping[str, object]) -> dict[str, object]:
    own = table.get(_SHOP)
    return dict(cast("dict[str, object]", own)) if isinstance(own, dict) else {}


def _with(table: Mapping[str, object], values: Mapping[str, object]) -> dict[str, object]:
    return {**table, _SHOP: {**_own(table), **values}}
