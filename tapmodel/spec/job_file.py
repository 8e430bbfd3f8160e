"""From a TOML file, a designation and `--set` overrides to one checked `Job`."""

import stat
import tomllib
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from tapmodel.errors import InputError
from tapmodel.spec.conflicts import refuse_conflicts
from tapmodel.spec.job import Job
from tapmodel.spec.job_errors import input_error
from tapmodel.spec.overrides import apply_sets
from tapmodel.spec.toml_faults import ALLOWED, toml_fault

__all__ = ["apply_sets", "checked", "job_for", "json_schema", "read_job", "read_table"]

LARGEST_FILE = 1_000_000
"""Bytes; a full job file has about 6 000, so anything above this is some other file."""


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
        raise input_error(failure, where, table) from None
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
    except RecursionError:
        raise InputError(str(path), "too deeply nested", ALLOWED) from None
    except ValueError as failure:
        raise toml_fault(str(path), text, failure) from None


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


def json_schema() -> dict[str, Any]:
    """JSON Schema of the job file."""
    return Job.model_json_schema(by_alias=True)
