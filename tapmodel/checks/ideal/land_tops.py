"""Half the integral of radius squared over the tops of lands: their part of a section's area.

The top of a land in a section at z is the least of a few surfaces, each smooth in the angle
between known corners. The integral is cut at the corners and where two surfaces change places,
and each piece is integrated by Gauss: what remains is rounding.
"""

import math
from dataclasses import dataclass
from itertools import combinations

import numpy as np
from numpy.typing import NDArray

from tapmodel.checks.ideal.laws import land_radii
from tapmodel.numerics import bracketed_roots
from tapmodel.tap.tap import Tap, TapThread

Floats = NDArray[np.float64]
NODES, WEIGHTS = np.polynomial.legendre.leggauss(6)
FRACTIONS = np.linspace(0.0, 1.0, 7)  # also parts pieces on which two surfaces might cross twice
ROOTS = 1e-13  # to this, relative above 1, the angles of crossings are settled [deg]
ARC_PARTS = 6  # of half a rounded crest or root


@dataclass(frozen=True, slots=True)
class Tops:
    """Tops of lands in sections, all arrays of one shape (n,).

    Attributes:
        z: height of the section [mm].
        edge: polar angle of the land's crest edge [deg].
        start, end: angles behind the crest edge between which the top runs [deg].
    """

    z: Floats
    edge: Floats
    start: Floats
    end: Floats


def sweep(tap: Tap, tops: Tops) -> Floats:
    """Half the integral of radius squared over angle, of each top [mm²]."""
    ends = borders(tap, tops)
    widths = np.diff(ends, axis=1)
    row, piece = np.nonzero(widths > 1e-10)
    half = widths[row, piece, None] / 2
    phi = ends[row, piece, None] + half * (1 + NODES)
    radius = np.minimum.reduce(_radii(tap, tops, row[:, None], phi))
    swept = (radius**2 @ WEIGHTS) * np.radians(half[:, 0]) / 2
    total = np.zeros_like(tops.z)
    np.add.at(total, row, swept)
    return total


def borders(tap: Tap, tops: Tops) -> Floats:
    """Angles between which each top is one smooth surface, sorted, some twice, (n, m) [deg]."""
    return _with_crossings(tap, tops, _corners(tap, tops))


def flat_halves(thread: TapThread) -> tuple[float, float]:
    """Distances from the middles of crest and root at which the flanks begin [mm]."""
    lean = math.radians(thread.flank_angle)
    slope, reach = math.tan(lean), math.cos(lean)
    crest = thread.pitch / 4 - (thread.major - thread.pitch_diameter) / 2 * slope
    root = thread.pitch / 4 - (thread.pitch_diameter - thread.minor) / 2 * slope
    return (
        thread.crest_radius * reach if thread.crest_radius else crest,
        thread.root_radius * reach if thread.root_radius else root,
    )


def _radii(tap: Tap, tops: Tops, row: NDArray[np.intp], phi: Floats) -> list[Floats]:
    z = np.broadcast_to(tops.z[row], phi.shape)
    return land_radii(tap, phi, tops.edge[row] + phi, z)


def _corner_offsets(thread: TapThread) -> list[float]:
    """Axial offsets from the crest's middle of the corners of the profile [mm].

    Where it is rounded, of places along the arc, so that no piece bends much.
    """
    crest, root = flat_halves(thread)
    beside = _half_places(thread, root, thread.root_radius)
    return [
        *(side * w for w in _half_places(thread, crest, thread.crest_radius) for side in (-1, 1)),
        *(thread.pitch / 2 + side * w for w in beside for side in (-1, 1)),
    ]


def _half_places(thread: TapThread, flat: float, arc: float) -> list[float]:
    """Distances from the middle of a crest or root at which its pieces end [mm]."""
    if arc == 0:
        return [flat]
    widest = math.radians(90.0 - thread.flank_angle)
    return [arc * math.sin(widest * part / ARC_PARTS) for part in range(ARC_PARTS + 1)]


def _corners(tap: Tap, tops: Tops) -> Floats:
    """Angles between which every surface is smooth, sorted, shape (n, m) [deg]."""
    thread, reliefs = tap.thread, tap.relief
    start, end = tops.start[:, None], tops.end[:, None]
    period = 360.0 * thread.pitch / thread.lead
    turns = np.arange(math.ceil(float((tops.end - tops.start).max()) / period)) * period
    found = [start + (end - start) * FRACTIONS]
    for offset in _corner_offsets(thread):
        at = (tops.z - thread.first_z - offset) * 360.0 / thread.lead - tops.edge
        first = tops.start + (at - tops.start) % period
        found.append(first[:, None] + turns)
    margins = [reliefs.thread.margin_angle, reliefs.chamfer.margin_angle]
    found.append(np.broadcast_to(margins, (tops.z.size, 2)))
    return np.sort(np.clip(np.concatenate(found, axis=1), start, end), axis=1)


def _with_crossings(tap: Tap, tops: Tops, corners: Floats) -> Floats:
    """The corners, and the angles between them at which two surfaces change places [deg]."""
    rows = np.broadcast_to(np.arange(tops.z.size)[:, None], corners.shape)
    radii = _radii(tap, tops, rows, corners)
    found = [corners]
    for one, other in combinations(range(len(radii)), 2):
        gap = radii[one] - radii[other]
        row, piece = np.nonzero(gap[:, :-1] * gap[:, 1:] < 0)
        low, high = corners[row, piece], corners[row, piece + 1]

        def difference(
            phi: Floats, row: NDArray[np.intp] = row, a: int = one, b: int = other
        ) -> Floats:
            both = _radii(tap, tops, row, phi)
            return both[a] - both[b]

        crossing = corners[:, :-1].copy()
        crossing[row, piece] = bracketed_roots(difference, low, high, ROOTS)
        found.append(crossing)
    return np.sort(np.concatenate(found, axis=1), axis=1)
