"""Answers in JSON, written from the records that hold them."""

import json
from dataclasses import fields, is_dataclass
from functools import cache

from starlette.responses import JSONResponse


class Written(JSONResponse):
    """An answer that may hold records, as tables of their fields.

    They are read as they are written: to copy them first takes as long as to cut a section.
    """

    def render(self, content: object) -> bytes:
        """The answer as it is sent.

        Raises:
            TypeError: something in it is neither known to JSON nor a record.
            ValueError: a number in it is none.
        """
        return json.dumps(
            content,
            default=_table,
            ensure_ascii=False,
            allow_nan=False,
            separators=(",", ":"),
        ).encode()


def _table(record: object) -> dict[str, object]:
    if not is_dataclass(record):
        raise TypeError(f"{type(record).__name__} is no record")
    return {name: getattr(record, name) for name in _names(type(record))}


@cache
def _names(kind: type) -> tuple[str, ...]:
    return tuple(field.name for field in fields(kind))
