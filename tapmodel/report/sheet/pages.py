"""How the wide drawings are dealt out to pages, so that none is left half empty."""

from collections.abc import Sequence
from functools import lru_cache
from itertools import combinations

Pages = tuple[tuple[int, ...], ...]
"""Numbers of the drawings on each page, the first page that on which the text ends."""


def dealt(heights: Sequence[float], left: float, room: float) -> Pages:
    """Drawings on the fewest pages, the emptiest of which is as full as can be.

    Args:
        heights: of the drawings, with their headings [mm].
        left: free under the text on the page where it ends [mm].
        room: of a whole page [mm]; a drawing that is higher has a page of its own.

    Returns:
        Every drawing once, in order within its page; the page of the text may get none.
    """
    best = ((len(heights) + 1, 0.0), ((), *((number,) for number in range(len(heights)))))
    for under in _choices(tuple(range(len(heights)))):
        if _height(heights, under) > left:
            continue
        rest = tuple(number for number in range(len(heights)) if number not in under)
        for pages in _dealt(rest, tuple(heights), room):
            ended = room - left + _height(heights, under)
            emptiest = min(ended, *(_height(heights, page) for page in pages), room)
            best = min(best, ((len(pages), -emptiest), (under, *pages)))
    return best[1]


@lru_cache(1024)
def _dealt(numbers: tuple[int, ...], heights: tuple[float, ...], room: float) -> list[Pages]:
    """Every way to deal drawings out to whole pages, the first drawing on the first page."""
    if not numbers:
        return [()]
    first, *others = numbers
    ways = list[Pages]()
    for more in _choices(tuple(others)):
        page = (first, *more)
        if len(page) == 1 or _height(heights, page) <= room:
            rest = tuple(number for number in others if number not in more)
            ways += [(page, *after) for after in _dealt(rest, heights, room)]
    return ways


def _choices(numbers: tuple[int, ...]) -> list[tuple[int, ...]]:
    """Every choice of some of them, in order."""
    return [chosen for size in range(len(numbers) + 1) for chosen in combinations(numbers, size)]


def _height(heights: Sequence[float], page: Sequence[int]) -> float:
    return sum(heights[number] for number in page)
