"""The files of a folder, and the record that vouches for them."""

import contextlib
import json
import os
from collections.abc import Iterator
from pathlib import Path
from typing import Any, cast

from tapmodel.export.manifest import file_record

RECORD = "record.json"


def entries(folder: Path) -> Iterator[Path]:
    """Everything inside that is no folder, and folders that are empty; relative, links as such.

    Raises:
        OSError: when a folder cannot be read, or is the root of another file system.
    """
    for place, folders, files in os.walk(folder, onerror=_raise):
        here = Path(place)
        links = [name for name in folders if (here / name).is_symlink()]
        if any(os.path.ismount(here / name) for name in folders):
            raise OSError(0, "a file system is mounted inside")
        found = sorted([*files, *links])
        for name in found:
            yield (here / name).relative_to(folder)
        if not found and not folders and here != folder:
            yield here.relative_to(folder)


def _raise(error: OSError) -> None:
    raise error


def read_record(folder: Path) -> dict[str, Any] | None:
    """The record of a folder; None where there is none that can be read."""
    with contextlib.suppress(OSError, ValueError):
        found: object = json.loads((folder / RECORD).read_bytes())
        if isinstance(found, dict) and "schema" in found:
            return cast("dict[str, Any]", found)
    return None


def vouched(folder: Path) -> dict[str, dict[str, Any]]:
    """Entries of the record, by path, of those files that still are as it says."""
    record = read_record(folder) or {}
    found: dict[str, dict[str, Any]] = {}
    with contextlib.suppress(TypeError, KeyError, AttributeError):
        for entry in record.get("files", []):
            path = folder / entry["path"]
            if path.is_symlink() or not path.is_file() or path.stat().st_size != entry["bytes"]:
                continue
            if file_record(path, folder).sha256 == entry["sha256"]:
                found[entry["path"]] = entry
    return found


def free_name(wanted: Path, *folders: Path) -> Path:
    """A name like `wanted` that is taken in none of the folders: `part.kept-1.stl`."""
    number = 1
    while True:
        name = wanted.with_name(f"{wanted.stem}.kept-{number}{wanted.suffix}")
        if not any(os.path.lexists(folder / name) for folder in folders):
            return name
        number += 1
