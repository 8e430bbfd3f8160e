"""From what a caller hands over (text, path, table or job) to a checked job."""

import os
from collections.abc import Iterator, Mapping
from pathlib import Path

from tapmodel.spec.job import Job
from tapmodel.spec.job_file import job_of_table, read_job_table
from tapmodel.spec.overrides import apply_values

Request = str | os.PathLike[str] | Mapping[str, object] | Job


def job_of(what: Request, sets: Mapping[str, object]) -> Job:
    """The job that is asked for.

    Args:
        what: a designation, the path of a job file (as a path, or as text that ends in ".toml"), a
            nested table as a job file holds it, or a job.
        sets: values laid over it; keys dotted ("flutes.count") or tables within tables.

    Raises:
        InputError: naming field, value and what is allowed.
    """
    return job_of_table(apply_values(table_of(what), flat(sets)), where_of(what))


def flat(sets: Mapping[str, object]) -> list[tuple[str, object]]:
    """Values with their dotted keys; keys may be dotted, or tables within tables."""
    return list(_flat(sets, ""))


def table_of(what: Request) -> Mapping[str, object]:
    """What is asked for as a nested table.

    Raises:
        InputError: a file that cannot be read.
    """
    if isinstance(what, Job):
        return apply_values(what.table(), [*what.typed().items()])
    if isinstance(what, Mapping):
        return what
    if _is_file(what):
        return read_job_table(Path(what))
    # Anything else that a caller may hand over is refused as a designation.
    return {"designation": what}


def _is_file(what: str | os.PathLike[str]) -> bool:
    return isinstance(what, os.PathLike) or str(what).lower().endswith(".toml")


def where_of(what: Request) -> str:
    """The file that it comes from, for messages; empty where it is none."""
    return str(what) if isinstance(what, str | os.PathLike) and _is_file(what) else ""


def _flat(table: Mapping[str, object], prefix: str) -> Iterator[tuple[str, object]]:
    for key, value in table.items():
        if isinstance(value, Mapping):
            yield from _flat(value, f"{prefix}{key}.")  # pyright: ignore[reportUnknownArgumentType]
        else:
            yield prefix + key, value
