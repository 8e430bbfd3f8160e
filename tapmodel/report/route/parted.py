"""A chapter of the sheet parted into what is set before the work and what is measured after it."""

from collections.abc import Iterable

from tapmodel.report.blocks import Block, Chapter, Row, Rows


def settings_of(*chapters: Chapter) -> tuple[Block, ...]:
    """All that is told, without the rows that `measured_in` finds."""
    kept = (_set(block) for chapter in chapters for block in chapter.blocks)
    return tuple(block for block in kept if block is not None)


def measured_in(*chapters: Chapter) -> tuple[Row, ...]:
    """Rows with a field to write in, of tables without a caption.

    What stands under a caption, such as readings of a dial, is written down where it is set.
    """
    blocks = (block for chapter in chapters for block in chapter.blocks)
    return measured(
        row
        for block in blocks
        if isinstance(block, Rows)
        if not block.caption
        for row in block.rows
    )


def measured(rows: Iterable[Row]) -> tuple[Row, ...]:
    """Those with a field to write in."""
    return tuple(row for row in rows if row.measured)


def unmeasured(rows: Iterable[Row]) -> tuple[Row, ...]:
    """Those without."""
    return tuple(row for row in rows if not row.measured)


def table(rows: Iterable[Row], caption: str = "") -> tuple[Block, ...]:
    """Rows as a table, none of no rows."""
    found = tuple(rows)
    return (Rows(found, caption),) if found else ()


def _set(block: Block) -> Block | None:
    if not isinstance(block, Rows) or block.caption:
        return block
    left = unmeasured(block.rows)
    return Rows(left) if left else None
