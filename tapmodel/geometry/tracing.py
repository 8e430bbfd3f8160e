"""Which parts of a locus are edges of the tap: sampling, root finding, fitting, in one batch.

A *locus* is a smooth curve on which an edge may lie: a profile corner on its helix, the chamfer
cone against a flank, the profile on a cutting face. Its `margin` is positive where the point lies
on the tap's surface, so the edges are the intervals of positive margin. Every corner of the tap
is found this way, as the zero of a margin, from each locus that ends in it; that the results meet
is checked afterwards, when the edges are linked to faces.
"""

from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise
from typing import Protocol

import numpy as np
from numpy.typing import NDArray

from tapmodel.geometry import bezier

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]
SheetKey = tuple[str | int, ...]
SheetPair = tuple[SheetKey, SheetKey]
# A locus and the marks of one edge on it: its ends and the kinks between.
Piece = tuple[int, list[float]]
Function = Callable[[Indices, Floats], Floats]

# Circles are followed in the parameters of the surfaces they bound by this degree.
_ARC_DEGREE = 7
# A root is settled when a round moves it by less than this, relative above 1.
_SHARP = 5e-16
_MOST_ROUNDS = 60
_TINY = 1e-300
# How many times its change over a step a function may be away from a zero it still grazes.
_REACH = 2.0
# Golden section narrows two grid steps this often in search of a grazing contact.
_NARROWINGS = 30
_GOLDEN = (5**0.5 - 1) / 2
# Edges end where their curvature jumps: readers that fit curves anew lose 10 nm on a jump and less
# than 0.1 nm without. A jump closer to an end than this share of the edge stays inside it.
_SLIVER = 0.02


class Family(Protocol):
    """Loci of one kind, evaluated together: locus `i` at parameter `t` (arrays of one shape).

    `lower` and `upper` bound the parameter; `longest_span` is the most that one polynomial may
    cover and `least_degree` its least degree; `density` multiplies the grid where a locus passes
    many corners.
    """

    lower: Floats
    upper: Floats
    longest_span: float
    least_degree: int
    density: int

    def at(self, i: Indices, t: Floats) -> Floats:
        """Points, shape (..., 3) [mm]."""
        ...

    def margin(self, i: Indices, t: Floats) -> Floats:
        """Positive where the locus is an edge of the tap."""
        ...

    def cuts(self) -> list[Function]:
        """Functions at whose zeros the edge passes from one neighbour face to another."""
        ...

    def kinks(self) -> list[Function]:
        """Functions at whose zeros the curvature jumps, so that one polynomial must end."""
        ...

    def sheets(self, i: Indices, t: Floats) -> list[SheetPair]:
        """The two faces that meet along loci `i` about parameters `t`, shape (n,) both."""
        ...


@dataclass(frozen=True, slots=True)
class Edge:
    """A piece of a locus between two corners.

    Attributes:
        sheets: the two faces that meet in it.
        knots: ends of its polynomial spans, shape (n + 1,), increasing.
        samples: points at `bezier.span_parameters` of each span, (n, degree + 1, 3) [mm].
        shape: "line", "circle" or "spline".
    """

    sheets: SheetPair
    knots: Floats
    samples: Floats
    shape: str

    @property
    def start(self) -> Floats:
        """First point [mm]."""
        return self.samples[0, 0]

    @property
    def end(self) -> Floats:
        """Last point [mm]."""
        return self.samples[-1, -1]


def trace(family: Family, shape: str, grid: int) -> list[Edge]:
    """All edges on the loci of `family`.

    Args:
        family: the loci.
        shape: what the curves are: "line", "circle" or "spline".
        grid: number of samples on a locus; features narrower than a step can be missed.
    """
    if len(family.lower) == 0:
        return []
    pieces: list[Piece] = []
    visible = _roots(family, [family.margin], grid)
    breaks = _roots(family, [*family.cuts()], grid) if family.cuts() else None
    kinks = _roots(family, [*family.kinks()], grid) if family.kinks() else None
    starts, values = _intervals(family, visible)
    for locus, begin, end in zip(starts, values[0], values[1], strict=True):
        ends = [begin, *_within(breaks, locus, begin, end), end]
        for a, b in pairwise(_parted(ends, _within(kinks, locus, begin, end))):
            pieces.append((locus, _knots(family, kinks, locus, (a, b))))
    return _fit(family, pieces, shape)


def _roots(family: Family, functions: list[Function], grid: int) -> list[list[float]]:
    """Sorted zeros of all `functions` on each locus."""
    count = len(family.lower)
    found: list[list[float]] = [[] for _ in range(count)]
    steps = np.linspace(0.0, 1.0, grid * family.density)
    t = family.lower[:, None] + (family.upper - family.lower)[:, None] * steps
    i = np.broadcast_to(np.arange(count)[:, None], t.shape)
    for function in functions:
        values = function(i, t)
        for rows, low, high in (_crossings(t, values), *_grazings(function, t, values)):
            roots = _root(function, rows, low, high)
            numbers: list[int] = rows.tolist()
            for row, root in zip(numbers, roots.tolist(), strict=True):
                found[row].append(root)
    return [sorted(roots) for roots in found]


_Brackets = tuple[Indices, Floats, Floats]


def _crossings(t: Floats, values: Floats) -> _Brackets:
    """Steps of the grid over which the sign changes."""
    positive = values > 0
    rows, columns = np.nonzero(positive[:, :-1] != positive[:, 1:])
    return rows, t[rows, columns], t[rows, columns + 1]


def _grazings(function: Function, t: Floats, values: Floats) -> tuple[_Brackets, ...]:
    """Pairs of brackets where a function dips through zero and back within two steps.

    Wherever its magnitude is least against both neighbours, the extremum is searched; if the sign
    differs there, a zero lies on each side of it.
    """
    size, positive = np.abs(values), values > 0
    before, at, after = size[:, :-2], size[:, 1:-1], size[:, 2:]
    same = (positive[:, :-2] == positive[:, 1:-1]) & (positive[:, 2:] == positive[:, 1:-1])
    # A function that hardly moves from step to step cannot reach a far zero within one.
    near = at <= _REACH * np.maximum(before - at, after - at)
    rows, columns = np.nonzero(same & near & (at <= before) & (at <= after))
    if len(rows) == 0:
        return ()
    low, high = t[rows, columns], t[rows, columns + 2]
    sign = np.where(positive[rows, columns + 1], 1.0, -1.0)
    middle = _least(lambda at: sign * function(rows, at), low, high)
    dips = sign * function(rows, middle) < 0
    rows, low, middle, high = rows[dips], low[dips], middle[dips], high[dips]
    return (rows, low, middle), (rows, middle, high)


def _least(value: Callable[[Floats], Floats], low: Floats, high: Floats) -> Floats:
    """Where `value` is least between `low` and `high`, by golden section."""
    inner, outer = high - _GOLDEN * (high - low), low + _GOLDEN * (high - low)
    at_inner, at_outer = value(inner), value(outer)
    for _ in range(_NARROWINGS):
        left = at_inner < at_outer
        low, high = np.where(left, low, inner), np.where(left, outer, high)
        new = np.where(left, high - _GOLDEN * (high - low), low + _GOLDEN * (high - low))
        at_new = value(new)
        inner, outer = np.where(left, new, outer), np.where(left, inner, new)
        at_inner, at_outer = np.where(left, at_new, at_outer), np.where(left, at_inner, at_new)
        if not np.any(np.minimum(at_inner, at_outer) > 0):
            break
    return np.where(at_inner < at_outer, inner, outer)


def _root(function: Function, rows: Indices, low: Floats, high: Floats) -> Floats:
    """Zeros in brackets, to the last bits: Ridders' method on all of them together."""
    at_low, at_high = function(rows, low), function(rows, high)
    new = low
    for _ in range(_MOST_ROUNDS):
        middle, last_new = (low + high) / 2, new
        at_middle = function(rows, middle)
        slope = np.sqrt(np.maximum(at_middle**2 - at_low * at_high, _TINY))
        new = middle + (middle - low) * np.sign(at_low - at_high) * at_middle / slope
        new = np.clip(new, low, high)
        if np.all(np.abs(new - last_new) <= _SHARP * np.maximum(np.abs(new), 1.0)):
            break
        at_new = function(rows, new)
        # The tightest bracket out of low, middle, new, high.
        first, last = np.minimum(middle, new), np.maximum(middle, new)
        swapped = new < middle
        at_first = np.where(swapped, at_new, at_middle)
        at_last = np.where(swapped, at_middle, at_new)
        below, above = (at_first > 0) == (at_low > 0), (at_last > 0) == (at_low > 0)
        low, at_low, high, at_high = (
            np.where(below, np.where(above, last, first), low),
            np.where(below, np.where(above, at_last, at_first), at_low),
            np.where(below, np.where(above, high, last), first),
            np.where(below, np.where(above, at_high, at_last), at_first),
        )
    return new


def _intervals(family: Family, roots: list[list[float]]) -> tuple[list[int], list[list[float]]]:
    """Loci and ends of the intervals with a positive margin at their middle."""
    loci: list[int] = []
    begins: list[float] = []
    ends: list[float] = []
    for locus, inner in enumerate(roots):
        marks = [float(family.lower[locus]), *inner, float(family.upper[locus])]
        loci += [locus] * (len(marks) - 1)
        begins += marks[:-1]
        ends += marks[1:]
    middle = (np.array(begins) + np.array(ends)) / 2
    keep = family.margin(np.array(loci), middle) > 0
    pick = np.nonzero(keep)[0].tolist()
    return [loci[p] for p in pick], [[begins[p] for p in pick], [ends[p] for p in pick]]


def _within(roots: list[list[float]] | None, locus: int, begin: float, end: float) -> list[float]:
    if roots is None:
        return []
    # A mark that coincides with an end of the piece does not divide it.
    hair = 1e-9 * (end - begin)
    return [root for root in roots[locus] if begin + hair < root < end - hair]


def _parted(ends: list[float], kinks: list[float]) -> list[float]:
    """Ends of edges with the kinks among them, but for those that would leave a sliver."""
    clear = _SLIVER * (ends[-1] - ends[0])
    far = [kink for kink in kinks if min(abs(kink - end) for end in ends) > clear]
    return sorted([*ends, *far])


def _knots(
    family: Family, kinks: list[list[float]] | None, locus: int, ends: tuple[float, float]
) -> list[float]:
    marks = [ends[0], *_within(kinks, locus, *ends), ends[1]]
    knots = [marks[0]]
    for a, b in pairwise(marks):
        parts = max(1, int(np.ceil((b - a) / family.longest_span)))
        knots += [a + (b - a) * (n + 1) / parts for n in range(parts)]
    return knots


def _fit(family: Family, pieces: list[Piece], shape: str) -> list[Edge]:
    if not pieces:
        return []
    counts = [len(knots) - 1 for _, knots in pieces]
    loci = np.array([locus for locus, _ in pieces])
    ends = np.concatenate([np.column_stack([knots[:-1], knots[1:]]) for _, knots in pieces])
    owner = np.repeat(np.arange(len(pieces)), counts)
    widest = float(np.max(np.abs(family.at(loci[owner], ends[:, 0])[:, :2])))

    def curve(number: Indices, t: Floats) -> Floats:
        points = family.at(loci[number], t)
        # The direction from the axis is followed as closely as the point: the angle is a
        # parameter of most surfaces, and bends more than the point does.
        flat = points[..., :2]
        reach = np.linalg.norm(flat, axis=-1, keepdims=True)
        return np.concatenate([points, flat * (widest / reach)], axis=-1)

    if shape == "spline":
        spans = bezier.follow(curve, owner, ends, family.least_degree)
    else:
        # Lines and circles are exact; their samples serve the parameters of the surfaces.
        degree = 3 if shape == "line" else _ARC_DEGREE
        spans = bezier.Spans(owner, ends, bezier.sample(curve, owner, ends, degree))
    first = np.searchsorted(spans.owner, np.arange(len(pieces) + 1)).tolist()
    starts, stops = spans.ends[first[:-1], 0], spans.ends[np.array(first[1:]) - 1, 1]
    sheets = family.sheets(loci, (starts + stops) / 2)
    edges: list[Edge] = []
    for number, pair in enumerate(sheets):
        mine = slice(first[number], first[number + 1])
        knots = np.append(spans.ends[mine, 0], stops[number])
        edges.append(Edge(pair, knots, spans.samples[mine, :, :3], shape))
    return edges
