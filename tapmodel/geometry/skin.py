"""The tap's surface as corners, edges and faces: topology by arithmetic, no kernel.

Edges come from the loci; their ends are the corners; a face is the cycle (or cycles) of the edges
that name it. Each corner must join exactly two edges of each face that meets there: an edge that
was missed shows at once as an open cycle.
"""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false
# The search tree comes without types.

from collections import defaultdict
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.spatial import cKDTree

from tapmodel.design.tap_design import TapDesign
from tapmodel.errors import KernelError
from tapmodel.geometry import (
    edges_cone_arc,
    edges_outline,
    edges_runout,
    edges_section,
    edges_thread,
    edges_wall,
)
from tapmodel.geometry.form import Form
from tapmodel.geometry.tracing import Edge, SheetKey, trace

Floats = NDArray[np.float64]
Cycle = list[tuple[int, bool]]

# Corners found from different loci agree to some 1e-11 mm; corners of a real tap lie far wider.
SAME_CORNER = 1e-7
# Samples on each locus; the finer ones are tried only where the coarse missed a small edge.
GRIDS = (49, 193)
# Nudges of the lengths, tried in order [mm]: well within the closeness that faces are held to.
NUDGES = (0.0, -1e-5, 1e-5)
# Edges as short as this are likely to be coincidences [mm].
SHORT = 1e-4


@dataclass(frozen=True, slots=True)
class Skin:
    """Everything about the surface but its curved equations.

    Attributes:
        form: the surfaces it was woven on.
        corners: (n, 3) [mm].
        edges: in order of tracing.
        ends: (m, 2) corner numbers of each edge, start and end.
        loops: per face, its closed cycles as (edge number, forward) pairs.
        bodies: keys of the turned lengths that the flutes cut, the last a ring.
        opening_end: where the run-out leaves the blank [mm].
    """

    form: Form
    corners: Floats
    edges: list[Edge]
    ends: NDArray[np.intp]
    loops: dict[SheetKey, list[Cycle]]
    bodies: list[SheetKey]
    opening_end: float


def weave(design: TapDesign) -> Skin:
    """The skin of the tap in front of the uncut shank.

    Round numbers can bring edges together that belong apart: a cutter that just leaves the shank
    at its centre, a shank as thick as the root. Where the edges then do not close, or one is
    shorter than the kernel can hold, the tap is made with lengths nudged by some 10 nm.

    Raises:
        KernelError: when the edges do not close even so.
    """
    woven: list[Skin] = []
    failure: KernelError | None = None
    for nudge in NUDGES:
        try:
            woven.append(_on_finer_grids(Form(design, nudge)))
        except KernelError as error:
            failure = failure or error
        if nudge == 0 and woven and not _short_edges(woven[0]):
            return woven[0]
    if not woven:
        raise failure or KernelError("edges", "no edges")
    # A coincidence is parted cleanly to one side only; there fewer edges are short.
    return min(woven, key=_short_edges)


def _on_finer_grids(form: Form) -> Skin:
    for grid in GRIDS[:-1]:
        try:
            return _weave(form, grid)
        except KernelError:
            continue
    return _weave(form, GRIDS[-1])


def _short_edges(skin: Skin) -> int:
    """How many edges are so short that a coincidence is likely behind them."""
    ends = skin.corners[skin.ends]
    return int(np.sum(np.linalg.norm(ends[:, 1] - ends[:, 0], axis=1) < SHORT))


def _weave(form: Form, grid: int) -> Skin:
    bodies = edges_runout.cut_bodies(form)
    first = bodies[0]
    loci = [
        *edges_thread.families(form),
        *edges_cone_arc.families(form),
        *edges_outline.families(form, first),
        *edges_wall.families(form, bodies),
        *edges_section.families(form),
        *edges_runout.families(form, bodies),
    ]
    edges = [edge for family, shape in loci for edge in trace(family, shape, grid)]
    corners, ends = _corners(edges)
    loops = _loops(edges, ends)
    return Skin(form, corners, edges, ends, loops, bodies, edges_runout.opening_end(form))


def _corners(edges: list[Edge]) -> tuple[Floats, NDArray[np.intp]]:
    """Shared corners out of the ends of all edges."""
    points = np.array([point for edge in edges for point in (edge.start, edge.end)])
    number = np.arange(len(points))
    pairs = cKDTree(points).query_pairs(SAME_CORNER, output_type="ndarray")
    for a, b in pairs[np.lexsort((pairs[:, 1], pairs[:, 0]))]:
        number[b] = min(number[b], number[a])
    kept, ends = np.unique(number, return_inverse=True)
    ends = ends.reshape(-1, 2)
    if np.any(ends[:, 0] == ends[:, 1]):
        raise KernelError("edges", "an edge shorter than a corner was found")
    return points[kept], ends


def _loops(edges: list[Edge], ends: NDArray[np.intp]) -> dict[SheetKey, list[Cycle]]:
    mine: dict[SheetKey, list[int]] = defaultdict(list)
    for number, edge in enumerate(edges):
        for key in edge.sheets:
            mine[key].append(number)
    pairs = ends.tolist()
    return {key: _cycles(key, numbers, pairs) for key, numbers in mine.items()}


def _cycles(key: SheetKey, numbers: list[int], ends: list[list[int]]) -> list[Cycle]:
    at: dict[int, list[int]] = defaultdict(list)
    for number in numbers:
        for corner in ends[number]:
            at[corner].append(number)
    wrong = [corner for corner, joined in at.items() if len(joined) != 2]
    if wrong:
        raise KernelError("edges", f"face {key} does not close at {len(wrong)} corners")
    left = dict.fromkeys(numbers)
    cycles: list[Cycle] = []
    while left:
        number = next(iter(left))
        first, corner = ends[number]
        cycle = [(number, True)]
        del left[number]
        while corner != first:
            a, b = at[corner]
            number = b if a == number else a
            forward = ends[number][0] == corner
            cycle.append((number, forward))
            del left[number]
            corner = ends[number][1] if forward else ends[number][0]
        cycles.append(cycle)
    return cycles
