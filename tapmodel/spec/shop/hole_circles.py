"""Circles of a dividing head's plates, each named by its number of holes."""

from functools import partial

from tapmodel.spec.shop.counts import Counts, numbers_of

_FEWEST, _MOST, _MOST_CIRCLES = 2, 1000, 200

CIRCLES = Counts(
    form="hole circles",
    fewest=_FEWEST,
    most=_MOST,
    fewest_entries=1,
    most_entries=_MOST_CIRCLES,
    how=f"whole numbers of holes from {_FEWEST} to {_MOST} and ranges of them, such as "
    f"15-20,21,23; at most {_MOST_CIRCLES} circles in all",
)
"""The circles on all the plates of a shop."""

circles_of = partial(numbers_of, kind=CIRCLES)
"""Holes of every circle that a list or a text names."""
