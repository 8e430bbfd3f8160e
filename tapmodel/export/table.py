"""A table for programs that calculate: comma-separated values with a head, by RFC 4180."""

import csv
import io
from collections.abc import Iterable, Sequence
from pathlib import Path

from tapmodel.export.atomic import write_whole

Cell = float | int | str | None


def write_table(path: Path, head: Sequence[str], lines: Iterable[Sequence[Cell]]) -> None:
    """Write a table whole or not at all, its numbers to the last digit.

    Args:
        path: of the file.
        head: a name for each column.
        lines: with as many cells as the head; None is left empty.

    Raises:
        InputError: when nothing can be written there.

    Source: RFC 4180 (from memory).
    """
    stream = io.StringIO(newline="")
    writer = csv.writer(stream)
    writer.writerow(head)
    writer.writerows([_written(cell) for cell in line] for line in lines)
    write_whole(path, stream.getvalue().encode(errors="backslashreplace"))


def _written(cell: Cell) -> str:
    if cell is None:
        return ""
    if isinstance(cell, bool):
        return str(cell).lower()
    return repr(cell) if isinstance(cell, float) else str(cell)
