"""Nodes along the edge of a section, bunched at its corners, for this room's integral equations.

A section that is the same after a turn by 360/n degrees is given by one sector of its edge. As
complex numbers `p = x + iy` the whole section is then told by the powers `p**n` of one sector, and
so is every function that turns with it: no other sector is ever written down.
"""

import math
from dataclasses import dataclass
from functools import cache

import numpy as np
from numpy.typing import NDArray

from tapmodel.shape.outlines.outline import Arc, Line, Loop, Piece

Floats = NDArray[np.float64]
Complexes = NDArray[np.complex128]

NODES = 96
"""Nodes on a sector, bore included: J to 1e-6 and the peak to 1e-3 on fluted sections. From 100
equations on the library of linear algebra wakes threads, which on a busy machine now and then
keep it waiting for a second."""

_INNER_SHARE = 1.6
"""A piece that is hollow, where the shear peaks, has so many times the nodes of another."""

_ORDER = 5
"""How strongly nodes crowd at the ends of a piece; at a distance that falls with its power."""

_NOTHING = 1e-7
"""Pieces shorter than this share of the section's size are rounding and carry no nodes."""

_FEWEST, _MOST = 16, 40
"""Nodes that a piece has at least, and more than which no straight one needs."""

_BORE = 16
"""Nodes on one sector of a bore about the axis, on which nothing is peaked."""


@dataclass(frozen=True, slots=True, eq=False)
class Edge:
    """One sector of the edge of a section, run with the body at its left.

    The nodes are numbered along the edge, and a sum over a sector's nodes of `step` times a
    function is its integral along it.

    Attributes:
        turns: sectors in the whole section.
        places: nodes on the outside, x + iy, shape (n,) [mm].
        steps: their derivative by the node's number, shape (n,) [mm].
        bends: curvature at each node, + where the body is convex, shape (n,) [1/mm].
        bore: radius of a bore about the axis [mm], 0 for none.
        bore_places, bore_steps: of its sector, clockwise, shape (m,); empty without a bore [mm].
    """

    turns: int
    places: Complexes
    steps: Complexes
    bends: Floats
    bore: float
    bore_places: Complexes
    bore_steps: Complexes

    @property
    def size(self) -> float:
        """Greatest distance of a node from the axis [mm]."""
        return float(np.abs(self.places).max())


def edge_of(
    sector: Loop, turns: int = 1, bore: float = 0.0, points: int = 0, *, even: bool = False
) -> Edge:
    """Nodes on one sector of an edge of lines and arcs.

    Args:
        sector: its pieces in order, counter-clockwise; the last ends where the first begins,
            turned by 360/`turns` degrees about the axis.
        turns: sectors in the whole section.
        bore: radius of a bore about the axis, smaller than all the rest [mm].
        points: nodes on each piece; 0 to share `NODES` out.
        even: whether they stand at equal distances on a piece, and do not crowd at its ends.

    Source: the graded rule of R. Kress, Numerische Mathematik 58 (1990) 145, from memory.
    """
    size = max(math.hypot(*piece.start) for piece in sector)
    kept = [piece for piece in sector if _length(piece) > _NOTHING * size]
    spread = _even if even else _graded
    counts = [points] * len(kept) if points else _shared_out(kept, NODES - (_BORE if bore else 0))
    laid = [_lay(piece, *spread(count)) for piece, count in zip(kept, counts, strict=True)]
    places, steps, bends = (np.concatenate(column) for column in zip(*laid, strict=True))
    bore_places, bore_steps = _bore(bore, turns)
    return Edge(turns, places, steps, bends, bore, bore_places, bore_steps)


def smooth_edge(places: Complexes, steps: Complexes, bends: Floats) -> Edge:
    """A whole closed edge without corners, by nodes at equal steps of any parameter [mm]."""
    nothing = np.zeros(0, dtype=np.complex128)
    return Edge(1, places, steps, bends, 0.0, nothing, nothing)


def by_number(values: Floats) -> Floats:
    """Derivative by the node's number of a function given at all nodes of one closed edge.

    Args:
        values: at the nodes of one sector, the same in each, shape (n,).

    Source: its trigonometric interpolation.
    """
    count = len(values)
    wave = np.arange(count // 2 + 1)
    turned = np.fft.rfft(values) * (2j * math.pi / count * wave)
    if count % 2 == 0:
        turned[-1] = 0.0
    return np.fft.irfft(turned, count)


def _shared_out(pieces: list[Piece], nodes: int) -> list[int]:
    """How many nodes each piece has of so many, at least `_FEWEST`."""
    weights = [_INNER_SHARE if _is_hollow(piece) else 1.0 for piece in pieces]
    each = min(nodes / sum(weights), _MOST)
    return [max(int(weight * each) & ~1, _FEWEST) for weight in weights]


def _is_hollow(piece: Piece) -> bool:
    return isinstance(piece, Arc) and piece.end_angle < piece.start_angle


def _length(piece: Piece) -> float:
    if isinstance(piece, Line):
        return math.dist(piece.start, piece.end)
    return piece.radius * abs(math.radians(piece.end_angle - piece.start_angle))


def _even(points: int) -> tuple[Floats, Floats]:
    return (np.arange(points) + 0.5) / points, np.full(points, 1 / points)


@cache
def _graded(points: int) -> tuple[Floats, Floats]:
    """Share of a piece run at each of its nodes, and its derivative by the node's number."""
    at = (np.arange(points) + 0.5) / points
    side, slope = _bunched(at)
    other = 1 - at
    far, far_slope = _bunched(other)
    near_power, far_power = side**_ORDER, far**_ORDER
    both = near_power + far_power
    share = near_power / both
    climb = _ORDER * side ** (_ORDER - 1) * far ** (_ORDER - 1)
    speed = climb * (slope * far + far_slope * side) / both**2
    return share, speed / points


def _bunched(at: Floats) -> tuple[Floats, Floats]:
    centred = 1 - 2 * at
    skew = 1 / _ORDER - 0.5
    value = skew * centred**3 - centred / _ORDER + 0.5
    return value, -6 * skew * centred**2 + 2 / _ORDER


def _lay(piece: Piece, share: Floats, speed: Floats) -> tuple[Complexes, Complexes, Floats]:
    """Nodes, steps and curvature on one piece."""
    if isinstance(piece, Line):
        start, end = complex(*piece.start), complex(*piece.end)
        back = share[::-1]  # one less the share, with all its digits
        places = np.where(share < 0.5, start + (end - start) * share, end - (end - start) * back)
        return _complex(places), _complex((end - start) * speed), np.zeros_like(share)
    return _lay_arc(piece, share, speed)


def _lay_arc(arc: Arc, share: Floats, speed: Floats) -> tuple[Complexes, Complexes, Floats]:
    turn = math.radians(arc.end_angle - arc.start_angle)
    spokes = arc.radius * np.exp(1j * (math.radians(arc.start_angle) + turn * share))
    bend = math.copysign(1 / arc.radius, turn)
    places, steps = complex(*arc.centre) + spokes, 1j * turn * spokes * speed
    return _complex(places), _complex(steps), np.full_like(share, bend)


def _bore(radius: float, turns: int) -> tuple[Complexes, Complexes]:
    if radius <= 0.0:
        nothing = np.zeros(0, dtype=np.complex128)
        return nothing, nothing
    step = 2 * math.pi / (turns * _BORE)
    places = radius * np.exp(-1j * step * (np.arange(_BORE) + 0.5))
    return _complex(places), _complex(places * (-1j * step))


def _complex(numbers: NDArray[np.complexfloating] | Floats) -> Complexes:
    return np.asarray(numbers, np.complex128)
