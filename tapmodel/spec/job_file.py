"""From a TOML file, a designation and `--set` overrides to one checked `Job`."""

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from tapmodel.spec.conflicts import refuse_conflicts
from tapmodel.spec.job import Job
from tapmodel.spec.job_errors import input_error
from tapmodel.spec.overrides import apply_sets
from tapmodel.spec.shop_file import located, with_shop_file
from tapmodel.spec.toml_file import read_table

__all__ = [
    "apply_sets",
    "checked",
    "job_for",
    "job_of_table",
    "json_schema",
    "read_job",
    "read_job_table",
    "read_table",
]


def read_job(path: Path, overrides: Sequence[str] = ()) -> Job:
    """Read the job file at `path`, apply the `--set` texts in order, check everything.

    Raises:
        InputError: naming file, field, value and what is allowed.
    """
    return job_of_table(apply_sets(read_job_table(path), overrides), str(path))


def job_for(designation: str, overrides: Sequence[str] = ()) -> Job:
    """The job that a bare designation asks for, with `--set` texts applied.

    Raises:
        InputError: as `read_job`.
    """
    return job_of_table(apply_sets({"designation": designation}, overrides))


def read_job_table(path: Path) -> dict[str, object]:
    """Read a job file into a nested table; its pointer to a shop leads on from the working folder.

    Raises:
        InputError: as `read_table`.
    """
    return located(read_table(path), path.parent)


def job_of_table(table: Mapping[str, object], where: str = "") -> Job:
    """As `checked`, with what the file says of the shop that the table points to.

    Raises:
        InputError: as `checked`, or of that file.
    """
    return checked(with_shop_file(table), where)


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


def json_schema() -> dict[str, Any]:
    """JSON Schema of the job file."""
    return Job.model_json_schema(by_alias=True)
