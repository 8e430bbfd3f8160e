"""The temper for a wanted hardness, and between which printed rows it lies."""

from dataclasses import dataclass
from itertools import pairwise

from tapmodel.errors import InputError
from tapmodel.standards.materials.steels import ROUNDED, TemperRow, temper_rows


@dataclass(frozen=True, slots=True)
class Tempering:
    """A temper, and what it leaves.

    Attributes:
        temper: temperature [deg C].
        hardness: after it [HRC].
        before, after: printed rows between which it lies; one and the same where it is a row.
    """

    temper: float
    hardness: float
    before: TemperRow
    after: TemperRow


def tempering_for(name: str, hardness: float, field: str) -> Tempering:
    """The temper that leaves a hardness, straight between the printed rows.

    Args:
        name: one of `steel_names`.
        hardness: wanted [HRC].
        field: in which it was asked for, for the message.

    Raises:
        InputError: the table does not go so high or so low.

    Source: as `temper_rows`; where rows are equally hard, the hotter and tougher.
    """
    rows = temper_rows(name)
    for before, after in reversed(tuple(pairwise(rows))):
        if before.hardness >= hardness >= after.hardness:
            share = (before.hardness - hardness) / (before.hardness - after.hardness)
            return _tempering(before, after, share)
    hardest, softest = (pick(row.hardness for row in rows) for pick in (max, min))
    raise InputError(
        field, hardness, f"{softest:g} to {hardest:g} HRC for {name}, as its table goes"
    )


def tempering_at(name: str, temper: float, field: str) -> Tempering:
    """What a temper [deg C] leaves; arguments, errors and source as `tempering_for`."""
    rows = temper_rows(name)
    for before, after in pairwise(rows):
        if before.temper - ROUNDED <= temper <= after.temper + ROUNDED:
            share = (temper - before.temper) / (after.temper - before.temper)
            return _tempering(before, after, min(max(share, 0.0), 1.0))
    low, high = rows[0].temper, rows[-1].temper
    raise InputError(field, temper, f"{low:.0f} to {high:.0f} °C for {name}, as its table goes")


def _tempering(before: TemperRow, after: TemperRow, share: float) -> Tempering:
    temper = before.temper + share * (after.temper - before.temper)
    hardness = before.hardness + share * (after.hardness - before.hardness)
    first = after if share == 1 else before
    last = before if share == 0 else after
    return Tempering(temper, hardness, first, last)
