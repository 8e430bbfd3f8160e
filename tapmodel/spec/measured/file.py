"""The file beside a job that keeps what was measured: read, and checked key by key."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from datetime import UTC, date, datetime
from difflib import get_close_matches
from pathlib import Path
from typing import cast

from tapmodel.errors import InputError, LackingError, shortened
from tapmodel.spec.job_file import read_table
from tapmodel.spec.measured.record import Earlier, Found, Measured, found_of, measured_of
from tapmodel.spec.measured.sizes import Size

ENDING = ".measured.toml"

VALUE, WIRE, ON, EARLIER = "value", "wire", "on", "earlier"
"""Keys of a reading: what was typed, the wire, when; and of the list of those replaced."""

_LONGEST = 60
"""Letters of a key that are shown and that suggestions are sought for."""


def beside(job: Path) -> Path:
    """The file that belongs to a job file: lens-cell.measured.toml beside lens-cell.toml."""
    return job.with_name(f"{job.stem}{ENDING}")


def read_measured(path: Path) -> Measured | None:
    """What a file keeps; None where there is none.

    A size is a number, a text with its unit, or a table with `value`, `on` (when) and, of a value
    over wires, `wire`. Keys that name no size are left to
    their owner.

    Raises:
        InputError: a file that cannot be read, or a value that is none; it names file, key, value
            and what is allowed.
    """
    # A name too long for the system, or a link that leads nowhere, holds nothing either.
    try:
        path.lstat()
    except (FileNotFoundError, NotADirectoryError):
        return None
    except (OSError, ValueError):
        pass  # the reader of files says what is wrong
    return measured_in(read_table(path), str(path))


def measured_in(table: Mapping[str, object], where: str) -> Measured:
    """The same from a table; `where`, the file's name, goes into messages.

    Raises:
        InputError: as `read_measured`.
    """
    sizes = {size: table[size.value] for size in Size if size.value in table}
    found = {size: _found(size, value, f"{where}: {size}") for size, value in sizes.items()}
    return replace(
        measured_of(found),
        earlier=tuple(_earlier(table.get(EARLIER))),
        strange=tuple(_mistyped(table)),
    )


def _found(size: Size, value: object, field: str) -> Found:
    if not isinstance(value, dict):
        return found_of(size, value, field)
    table = cast("dict[str, object]", value)
    if VALUE not in table:
        raise LackingError(field, None, f"{size} = {{ value = ... }}")
    found = found_of(size, table[VALUE], field, table.get(WIRE))
    return replace(found, on=_moment(table.get(ON), f"{field}: {ON}"))


def _moment(value: object, field: str) -> datetime | None:
    """A date, with or without the time of day; UTC where no zone is told."""
    if value is None:
        return None
    if isinstance(value, datetime):
        return value if value.tzinfo else value.replace(tzinfo=UTC)
    if isinstance(value, date):
        return datetime(value.year, value.month, value.day, tzinfo=UTC)
    raise InputError(field, value, "a date such as 2026-11-26, without quotes")


def _earlier(listed: object) -> Iterator[Earlier]:
    """What counts no more is only shown, so what cannot be read of it is passed over."""
    for entry in cast("list[object]", listed) if isinstance(listed, list) else ():
        if isinstance(entry, dict):
            table = cast("dict[str, object]", entry)
            typed = shortened(str(table.get(VALUE, "")), _LONGEST)
            on = table.get(ON)
            moment = _moment(on, ON) if isinstance(on, date) else None
            yield Earlier(shortened(str(table.get("size", "")), _LONGEST), typed, moment)


def _mistyped(table: Mapping[str, object]) -> Iterator[str]:
    """Keys that are almost the name of a size, with the size; others are their owner's."""
    names = [*Size, EARLIER]
    for key in table:
        close = get_close_matches(key[:_LONGEST].lower(), names, n=1, cutoff=0.7)
        if close and key not in names:
            yield f"{shortened(key, _LONGEST)} (did you mean {close[0]}?)"
