"""Change wheels, each named by its number of teeth; one that is there twice is named twice."""

from functools import partial

from tapmodel.spec.shop.counts import Counts, numbers_of

_FEWEST, _MOST, _MOST_WHEELS = 8, 400, 200

WHEELS = Counts(
    form="tooth counts",
    fewest=_FEWEST,
    most=_MOST,
    fewest_entries=2,
    most_entries=_MOST_WHEELS,
    how=f"whole numbers of teeth from {_FEWEST} to {_MOST} and ranges of them, such as "
    f"20,24,25,30,30; a wheel that is there twice stands twice, 2 to {_MOST_WHEELS} wheels in all",
)
"""The change wheels of a lathe."""

teeth_of = partial(numbers_of, kind=WHEELS)
"""Teeth of every wheel that a list or a text names."""
