"""How the wide drawings are dealt out to pages, so that none is left half empty."""

from collections.abc import Sequence
from functools import cache
from itertools import combinations

Pages = tuple[tuple[int, ...], ...]
"""Numbers of the drawings on each page, the first page that on which the text ends."""

_Dealt = tuple[int, float, Pages]
"""How many whole pages, less how far the emptiest page is filled [mm], and what is on each."""


def dealt(heights: Sequence[float], left: float, room: float) -> Pages:
    """Drawings on the fewest pages, the emptiest of which is as full as can be.

    Args:
        heights: of the drawings, with their headings [mm].
        left: free under the text on the page where it ends [mm].
        room: of a whole page [mm]; a drawing that is higher has a page of its own.

    Returns:
        Every drawing once, in order within its page; the page of the text may get none.
    """

    @cache
    def height(page: tuple[int, ...]) -> float:
        return sum(heights[number] for number in page)

    # The same rest is left by many choices before it.
    @cache
    def best(rest: tuple[int, ...]) -> _Dealt:
        """On whole pages, the first drawing on the first of them."""
        if not rest:
            return 0, -room, ()
        first, *others = rest
        ways = list[_Dealt]()
        for more in _choices(tuple(others)):
            page = (first, *more)
            if len(page) == 1 or height(page) <= room:
                count, least, pages = best(_without(rest, page))
                ways.append((count + 1, max(-height(page), least), (page, *pages)))
        return min(ways)

    numbers = tuple(range(len(heights)))
    ways = list[_Dealt]()
    for under in _choices(numbers):
        if height(under) <= left:
            count, least, pages = best(_without(numbers, under))
            ways.append((count, max(left - room - height(under), least), (under, *pages)))
    return min(ways)[2]


def _without(numbers: tuple[int, ...], gone: tuple[int, ...]) -> tuple[int, ...]:
    return tuple(number for number in numbers if number not in gone)


def _choices(numbers: tuple[int, ...]) -> list[tuple[int, ...]]:
    """Every choice of some of them, in order."""
    return [chosen for size in range(len(numbers) + 1) for chosen in combinations(numbers, size)]
