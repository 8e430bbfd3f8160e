"""Reading a record, of this version or an earlier one."""

import json
from os import PathLike
from pathlib import Path
from typing import Any, cast

from pydantic import ValidationError

from tapmodel.errors import InputError
from tapmodel.run.record.model import READABLE, Record


def read_record(file: str | PathLike[str]) -> Record:
    """The record in a file that a run has written.

    Args:
        file: `record.json` of a delivered folder.

    Raises:
        InputError: no file that can be read, no JSON, or no record of a version known here.
    """
    try:
        found = json.loads(Path(file).read_text(encoding="utf-8"))
    except OSError as failure:
        raise InputError("record", str(file), f"a file to read ({failure.strerror})") from None
    except ValueError:
        raise InputError("record", str(file), "a record in JSON") from None
    return record_of(found, str(file))


def record_of(found: Any, where: str) -> Record:  # noqa: ANN401  (whatever a file holds)
    """The record in a table of JSON; `where` it was found goes into the message.

    Raises:
        InputError: no record of a version known here, or a part that it cannot have.
    """
    table = cast("dict[str, Any]", found) if isinstance(found, dict) else {}
    version = table.get("schema")
    if version not in READABLE:
        raise InputError(f"{where}: schema", version, " or ".join(READABLE))
    try:
        return Record.model_validate(table)
    except ValidationError as failure:
        first = failure.errors()[0]
        field = ".".join(map(str, first["loc"]))
        raise InputError(f"{where}: {field}", first["input"], first["msg"]) from None


def json_schema() -> dict[str, Any]:
    """JSON Schema of the record."""
    return Record.model_json_schema(by_alias=True)
