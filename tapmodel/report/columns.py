"""Text in columns, as every page and table on the screen has it."""

from collections.abc import Iterable, Sequence


def columns(
    lines: Iterable[Sequence[str]], widths: Sequence[int], *, right: bool = False, gap: str = ""
) -> list[str]:
    """Lines of cells as lines of text.

    Args:
        lines: each with as many cells as there are `widths`.
        widths: of the columns, in letters; a longer cell pushes the next ones on.
        right: whether cells end at their column's right side instead of beginning at its left.
        gap: what stands between two columns.
    """
    side = ">" if right else "<"
    return [
        gap.join(f"{cell:{side}{width}}" for cell, width in zip(line, widths, strict=True))
        for line in lines
    ]
