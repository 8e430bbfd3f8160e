"""Which parts of a locus are edges of the tap: sampling, root finding, fitting, in one batch.

A *locus* is a smooth curve on which an edge may lie: a profile corner on its helix, the chamfer
cone against a flank, the profile on a cutting face. Its `conditions` are all positive where the
point lies on the tap's surface, so the edges are the intervals on which they are. Every corner of
the tap is found this way, as the zero of a condition, from each locus that ends in it; that the
results meet is checked afterwards, when the edges are linked to faces.
"""

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from tapmodel.geometry import bezier
from tapmodel.geometry.trace.keys import FaceKey, FacePair
from tapmodel.geometry.trace.loci import Loci
from tapmodel.geometry.trace.zeros import Function, zeros

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]
# A locus and the marks of one edge on it: its ends and the kinks between.
Piece = tuple[int, list[float]]

# Circles are followed in the parameters of the surfaces they bound by this degree.
_ARC_DEGREE = 7
# Edges end where their curvature jumps: readers that fit curves anew lose 10 nm on a jump and less
# than 0.1 nm without. A jump closer to an end than this share of the edge stays inside it.
_SLIVER = 0.02


@dataclass(frozen=True, slots=True)
class Edge:
    """A piece of a locus between two corners.

    Attributes:
        one, other: the two faces that meet in it.
        knots: ends of its polynomial spans, shape (n + 1,), increasing.
        samples: points at `bezier.span_parameters` of each span, (n, degree + 1, 3) [mm].
        shape: "line", "circle" or "spline".
    """

    one: FaceKey
    other: FaceKey
    knots: Floats
    samples: Floats
    shape: str

    @property
    def carriers(self) -> FacePair:
        """The two faces as a pair."""
        return self.one, self.other

    @property
    def start(self) -> Floats:
        """First point [mm]."""
        return self.samples[0, 0]

    @property
    def end(self) -> Floats:
        """Last point [mm]."""
        return self.samples[-1, -1]


def trace(family: Loci, shape: str) -> list[Edge]:
    """All edges on the loci of `family`.

    Args:
        family: the loci.
        shape: what the curves are: "line", "circle" or "spline".
    """
    loci = np.arange(len(family.lower))
    visible = zeros(family.conditions, loci, family.lower, family.upper, family.density)
    loci, begins, ends = _intervals(family, visible)
    if len(loci) == 0:
        return []
    breaks = _marks(family.cuts(), loci, begins, ends)
    kinks = _marks(family.kinks(), loci, begins, ends)
    pieces: list[Piece] = []
    rows = zip(loci.tolist(), begins.tolist(), ends.tolist(), breaks, kinks, strict=True)
    for locus, begin, end, inner, bends in rows:
        marks = [begin, *_within(inner, begin, end), end]
        for a, b in pairwise(_parted(marks, _within(bends, begin, end))):
            pieces.append((locus, _knots(family, bends, (a, b))))
    bent = [piece for piece in pieces if piece[1][-1] - piece[1][0] > family.bends_over]
    slight = [piece for piece in pieces if piece[1][-1] - piece[1][0] <= family.bends_over]
    return _fit(family, bent, shape) + _fit(family, slight, shape, slight=True)


def _marks(
    functions: list[Function], loci: Indices, begins: Floats, ends: Floats
) -> list[list[float]]:
    """Sorted zeros of all `functions` on each interval."""
    found: list[list[float]] = [[] for _ in range(len(loci))]
    for function in functions:
        for marks, more in zip(found, zeros(_alone(function), loci, begins, ends), strict=True):
            marks.extend(more)
    return [sorted(marks) for marks in found]


def _alone(function: Function) -> Function:
    return lambda i, t: function(i, t)[None]


def _intervals(family: Loci, roots: list[list[float]]) -> tuple[Indices, Floats, Floats]:
    """Loci and ends of the intervals with positive conditions at their middle."""
    loci: list[int] = []
    begins: list[float] = []
    ends: list[float] = []
    for locus, inner in enumerate(roots):
        marks = [float(family.lower[locus]), *inner, float(family.upper[locus])]
        loci += [locus] * (len(marks) - 1)
        begins += marks[:-1]
        ends += marks[1:]
    low, high, owner = np.array(begins), np.array(ends), np.array(loci, dtype=np.intp)
    if len(owner) == 0:
        return owner, low, high
    keep = np.all(family.conditions(owner, (low + high) / 2) > 0, axis=0)
    return owner[keep], low[keep], high[keep]


def _within(roots: list[float], begin: float, end: float) -> list[float]:
    # A mark that coincides with an end of the piece does not divide it.
    overlap = 1e-9 * (end - begin)
    return [root for root in roots if begin + overlap < root < end - overlap]


def _parted(ends: list[float], kinks: list[float]) -> list[float]:
    """Ends of edges with the kinks among them, but for those that would leave a sliver."""
    clear = _SLIVER * (ends[-1] - ends[0])
    far = [kink for kink in kinks if min(abs(kink - end) for end in ends) > clear]
    return sorted([*ends, *far])


def _knots(family: Loci, kinks: list[float], ends: tuple[float, float]) -> list[float]:
    marks = [ends[0], *_within(kinks, *ends), ends[1]]
    knots = [marks[0]]
    for a, b in pairwise(marks):
        parts = max(1, int(np.ceil((b - a) / family.longest_span)))
        knots += [a + (b - a) * (n + 1) / parts for n in range(parts)]
    return knots


def _fit(family: Loci, pieces: list[Piece], shape: str, *, slight: bool = False) -> list[Edge]:
    if not pieces:
        return []
    counts = [len(knots) - 1 for _, knots in pieces]
    loci = np.array([locus for locus, _ in pieces])
    ends = np.array([span for _, knots in pieces for span in pairwise(knots)])
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
        least_degree = 3 if slight else family.least_degree
        spans = bezier.follow(curve, owner, ends, least_degree, eased=True)
    else:
        # Lines and circles are exact; their samples serve the parameters of the surfaces.
        degree = 3 if shape == "line" else _ARC_DEGREE
        spans = bezier.Spans(owner, ends, bezier.sample(curve, owner, ends, degree))
    first = np.searchsorted(spans.owner, np.arange(len(pieces) + 1)).tolist()
    starts, stops = spans.ends[first[:-1], 0], spans.ends[np.array(first[1:]) - 1, 1]
    carriers = family.carriers(loci, (starts + stops) / 2)
    edges: list[Edge] = []
    for number, pair in enumerate(carriers):
        mine = slice(first[number], first[number + 1])
        knots = np.concatenate([spans.ends[mine, 0], stops[number : number + 1]])
        edges.append(Edge(*pair, knots, spans.samples[mine, :, :3], shape))
    return edges
