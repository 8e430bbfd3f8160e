"""Zeros of functions of one parameter, isolated so that none is passed over, many rows at once.

A row has several functions, and only the stretch matters on which all of them are positive: a
cell of the parameter on which one is surely negative is left alone. So is a cell on which each is
decided: its ends lie further from zero than the function can climb within the cell, or the
function runs one way through the cell and both its neighbours. Every other cell is divided. So the
work goes where a function is close to zero and turns, whatever the length of the parameter.

How far a function can climb is measured, not given: by the steepest chord of a cell and its
neighbours, with a reserve. That holds where the first cells resolve the scale of each function;
a locus family's `density` sees to that, and so does keeping the functions apart: the least of them
may rise and fall within one cell.
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.numerics import bracketed_roots

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]
Function = Callable[[Indices, Floats], Floats]

# First cells of a row, for each unit of density.
_CELLS = 32
# Into how many an undecided cell is divided.
_PARTS = 8
# How much steeper than the steepest chord at hand a function may be within a cell.
_STEEPER = 1.5
# Chords of one sign whose steepness differs by less than this factor belong to a steady run.
_UNEVEN = 4.0
# By how many times the change from the last cell but one a chord may change beyond a row's end.
_BEYOND = 100.0
# A cell is not divided below this share of its row: a sign change in it is one zero.
_SMALLEST = 1e-11
# Values as small as this are rounding [mm or rad]: between them nothing is looked for.
_ROUNDING = 1e-13


@dataclass(frozen=True, slots=True)
class _Cells:
    """Cells of the parameter, n of them, with the values of k functions.

    Attributes:
        row: which row each belongs to, (n,).
        ends: its ends, (2, n).
        values: at the ends, (2, k, n).
        chords: of the cell before, the cell itself and the one after, (3, k, n).
    """

    row: Indices
    ends: Floats
    values: Floats
    chords: Floats

    def pick(self, keep: NDArray[np.bool_]) -> "_Cells":
        """Those that are marked."""
        return _Cells(
            self.row[keep], self.ends[:, keep], self.values[..., keep], self.chords[..., keep]
        )


def zeros(
    functions: Function, locus: Indices, lower: Floats, upper: Floats, density: int = 1
) -> list[list[float]]:
    """Zeros on each row, rising: all that bound a stretch on which every function is positive.

    Args:
        functions: of locus numbers and parameters, arrays of one shape; values (k, ...).
        locus: (n,) the locus that each row lies on.
        lower: (n,) first parameter of each row.
        upper: (n,) last parameter of each row.
        density: first cells of a row, in units of 32: so many that each function is smooth, or
            has one kink, within a cell.
    """
    found: list[list[float]] = [[] for _ in range(len(locus))]
    smallest = _SMALLEST * np.abs(upper - lower)
    cells = _first(functions, locus, (lower, upper), density)
    single: list[tuple[Indices, Indices, Floats]] = []
    while len(cells.row):
        open_, crossed = _judged(cells, smallest)
        which, at = np.nonzero(crossed)
        single.append((which, cells.row[at], cells.ends[:, at]))
        cells = _divided(functions, locus, cells.pick(open_))
    which = np.concatenate([which for which, _, _ in single])
    row = np.concatenate([row for _, row, _ in single])
    low, high = np.concatenate([ends for _, _, ends in single], axis=1)
    if len(row):
        places = locus[row]
        roots = bracketed_roots(lambda t: _of(functions(places, t), which), low, high)
        rows: list[int] = row.tolist()
        for number, root in zip(rows, roots.tolist(), strict=True):
            found[number].append(root)
    return [sorted(marks) for marks in found]


def _of(values: Floats, which: Indices) -> Floats:
    """Of k functions' values (k, n) the one that is meant for each of n places."""
    return values[which, np.arange(len(which))]


def _first(
    functions: Function, locus: Indices, bounds: tuple[Floats, Floats], density: int
) -> _Cells:
    lower, upper = bounds
    steps = np.linspace(0.0, 1.0, _CELLS * density + 1)
    t = lower[:, None] + (upper - lower)[:, None] * steps
    t[:, -1] = upper
    values = functions(np.broadcast_to(locus[:, None], t.shape), t)
    return _between(np.arange(len(locus)), t, values, None)


def _between(
    row: Indices, t: Floats, values: Floats, beside: tuple[Floats, Floats] | None
) -> _Cells:
    """Cells between the columns of t (n, m); `beside` are the chords next to first and last."""
    with np.errstate(divide="ignore", invalid="ignore"):
        own = np.nan_to_num(np.diff(values, axis=-1) / np.diff(t, axis=-1))
    if beside is None:
        # Where a row begins or ends nothing stands for a neighbour but how the function bends.
        beside = (
            own[..., 0] + _BEYOND * (own[..., 0] - own[..., 1]),
            own[..., -1] + _BEYOND * (own[..., -1] - own[..., -2]),
        )
    first, last = beside
    before = np.concatenate([first[..., None], own[..., :-1]], axis=-1)
    after = np.concatenate([own[..., 1:], last[..., None]], axis=-1)
    count = len(values)
    return _Cells(
        np.repeat(row, own.shape[-1]),
        np.stack([t[:, :-1].ravel(), t[:, 1:].ravel()]),
        np.stack([values[..., :-1].reshape(count, -1), values[..., 1:].reshape(count, -1)]),
        np.stack([chord.reshape(count, -1) for chord in (before, own, after)]),
    )


def _judged(cells: _Cells, smallest: Floats) -> tuple[NDArray[np.bool_], NDArray[np.bool_]]:
    """Which cells are to be divided, (n,), and which hold one zero of which function, (k, n)."""
    length = cells.ends[1] - cells.ends[0]
    steep = np.abs(cells.chords)
    most, least = steep.max(axis=0), steep.min(axis=0)
    one_way = np.all(cells.chords > 0, axis=0) | np.all(cells.chords < 0, axis=0)
    steady = one_way & (most <= _UNEVEN * least)
    away = np.abs(cells.values).sum(axis=0)
    positive = cells.values > 0
    crosses = positive[0] != positive[1]
    clear = ~crosses & (away > _STEEPER * most * length)
    small = (length <= smallest[cells.row]) | (away <= _ROUNDING)
    decided = clear | steady | small
    hidden = np.any(decided & ~positive[0] & ~positive[1], axis=0)
    open_ = ~hidden & np.any(~decided, axis=0)
    return open_, crosses & decided & ~hidden & ~open_


def _divided(functions: Function, locus: Indices, cells: _Cells) -> _Cells:
    """Every cell in parts."""
    steps = np.linspace(0.0, 1.0, _PARTS + 1)
    low, high = cells.ends
    t = low[:, None] + (high - low)[:, None] * steps
    t[:, -1] = high
    inner = t[:, 1:-1]
    middle = functions(np.broadcast_to(locus[cells.row][:, None], inner.shape), inner)
    values = np.concatenate(
        [cells.values[0, ..., None], middle, cells.values[1, ..., None]], axis=-1
    )
    return _between(cells.row, t, values, (cells.chords[0], cells.chords[2]))
