"""Grids of triangles on which the carbon is computed: a strip under a flat, and half a tooth."""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Numbers = NDArray[np.int64]

_CELLS = 8.0
"""Cells at the surface in the length that carbon goes, for the usual fineness."""

_GROWTH = 1.12
"""Of each cell over the one nearer to the surface, at most, for the usual fineness."""

_FEWEST = 4  # cells of a side


@dataclass(frozen=True, slots=True)
class Grid:
    """Triangles of a section, in a plane.

    Attributes:
        nodes: shape (n, 2) [mm]; x along the axis of the tap, y outwards.
        triangles: numbers of their nodes, shape (m, 3); they cover the section twice.
        surface: which nodes the carbon enters at, shape (n,).
        under_crest, under_root: numbers of the nodes from the surface down, in the middle of crest
            and root; the same for a flat.
        rows: numbers of the nodes in rows from the outside in, each along the axis; -1 where a row
            has no more, shape (rows, columns).
    """

    nodes: Floats
    triangles: Numbers
    surface: NDArray[np.bool_]
    under_crest: Numbers
    under_root: Numbers
    rows: Numbers

    def depths(self, line: Numbers) -> Floats:
        """How deep the nodes of a line lie below its first [mm]."""
        heights = self.nodes[line, 1]
        return heights[0] - heights

    def at_depth(self, values: Floats, line: Numbers, depth: Floats) -> Floats:
        """Values of nodes at depths [mm] below the first node of a line, between its ends.

        Source: cubics with the slopes of the parabola through three neighbours.
        """
        places, known = self.depths(line), values[line]
        steps, rises = np.diff(places), np.diff(known) / np.diff(places)
        inner = (steps[1:] * rises[:-1] + steps[:-1] * rises[1:]) / (steps[1:] + steps[:-1])
        slopes = np.concatenate([rises[:1], inner, rises[-1:]])
        cell = np.clip(np.searchsorted(places, depth) - 1, 0, len(steps) - 1)
        step, share = steps[cell], (depth - places[cell]) / steps[cell]
        back = 1 - share
        ends = known[cell] * (1 + 2 * share) * back**2 + known[cell + 1] * (1 + 2 * back) * share**2
        bent = slopes[cell] * back - slopes[cell + 1] * share
        return ends + step * share * back * bent


@dataclass(frozen=True, slots=True)
class Spacing:
    """How finely a side is divided.

    Attributes:
        first: cell at the surface [mm].
        growth: of each cell over the one before, at most.
    """

    first: float
    growth: float

    def shares(self, length: float) -> Floats:
        """Places from 0, at the surface, to 1; cells grow by one ratio."""
        most = math.log1p(length * (self.growth - 1) / self.first) / math.log(self.growth)
        count = max(_FEWEST, math.ceil(most))
        ratio = _ratio(length / self.first, count)
        steps = ratio ** np.arange(count)
        return np.concatenate([[0.0], np.cumsum(steps) / np.sum(steps)])

    def both_ends(self, length: float) -> Floats:
        """Places from 0 to 1, close at both ends."""
        half = self.shares(length / 2) / 2
        return np.concatenate([half, 1 - half[-2::-1]])


def spacing(reach: float, fineness: float = 1.0) -> Spacing:
    """For carbon that goes a length `reach` [mm]; twice the `fineness` halves the cells."""
    return Spacing(reach / (_CELLS * fineness), _GROWTH ** (1 / fineness))


def strip(depth: float, fine: Spacing) -> Grid:
    """Under a flat surface: one cell wide, so that nothing changes across.

    Args:
        depth: of the strip [mm].
        fine: how finely it is divided.
    """
    down = -depth * fine.shares(depth)
    wide = np.array([0.0, depth])
    x, y = np.meshgrid(wide, down, indexing="ij")
    numbers = numbered(*x.shape)
    surface = np.zeros(x.size, dtype=bool)
    surface[numbers[:, 0]] = True
    nodes = np.stack([x.ravel(), y.ravel()], axis=-1)
    return Grid(nodes, split(numbers), surface, numbers[0], numbers[0], numbers.T)


def numbered(rows: int, columns: int) -> Numbers:
    """Numbers of the nodes of a block, row by row."""
    return np.arange(rows * columns, dtype=np.int64).reshape(rows, columns)


def split(numbers: Numbers) -> Numbers:
    """The triangles of a block of nodes, whose numbers stand in rows and columns.

    Every cell is parted along both of its diagonals, so that none is preferred.
    """
    a, b = numbers[:-1, :-1].ravel(), numbers[1:, :-1].ravel()
    c, d = numbers[1:, 1:].ravel(), numbers[:-1, 1:].ravel()
    corners = ((a, b, c), (a, c, d), (a, b, d), (b, c, d))
    return np.concatenate([np.stack(three, axis=-1) for three in corners])


def _ratio(cells: float, count: int) -> float:
    """Growth with which so many cells, the first of length 1, fill a side of length `cells`."""
    if cells <= count:
        return 1.0
    low, high = 1.0, cells
    for _ in range(80):
        middle = (low + high) / 2
        filled = (middle**count - 1) / (middle - 1) if middle > 1 else count
        low, high = (middle, high) if filled < cells else (low, middle)
    return (low + high) / 2
