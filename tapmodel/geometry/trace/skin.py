"""The tap's surface as corners, edges and faces: topology by arithmetic, no kernel.

Edges come from the loci; their ends are the corners; a face is the cycle (or cycles) of the edges
that name it. Each corner must join exactly two edges of each face that meets there: an edge that
was missed shows at once as an open cycle.
"""

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.errors import KernelError
from tapmodel.geometry.trace import cone_arc as edges_cone_arc
from tapmodel.geometry.trace import outline as edges_outline
from tapmodel.geometry.trace import runout as edges_runout
from tapmodel.geometry.trace import section as edges_section
from tapmodel.geometry.trace import thread as edges_thread
from tapmodel.geometry.trace import wall as edges_wall
from tapmodel.geometry.trace.coincidence import labels
from tapmodel.geometry.trace.keys import FaceKey
from tapmodel.geometry.trace.tracing import Edge, trace
from tapmodel.shape.form import Form
from tapmodel.shape.parting import partings, shifts
from tapmodel.stages import Stage
from tapmodel.tap.tap import Tap

Floats = NDArray[np.float64]
Cycle = list[tuple[int, bool]]

# Corners found from different loci agree to some 1e-11 mm; corners of a real tap lie far wider.
SAME_CORNER = 1e-7
# Edges as short as this, or surfaces as near, are likely to be coincidences [mm].
CLEAR = 1e-4


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
    loops: dict[FaceKey, list[Cycle]]
    bodies: list[FaceKey]
    opening_end: float


def first_skin(tap: Tap) -> Skin:
    """The first of `skins`."""
    return next(skins(tap))


def skins(tap: Tap) -> Iterator[Skin]:
    """Skins of the tap in front of the uncut shank, the most trustworthy first.

    The design itself comes first, unless surfaces meet in it: then the moves that part them
    furthest do (see `parting`), and it comes last. A moved thread is tried before moved radii, but
    only where it clears everything.

    Raises:
        KernelError: when the edges of none close; what it says is of the design itself.
    """
    plain, failure = _closed(Form(tap))
    last = [] if plain is None else [plain]
    if last and _clearance(last[0]) > CLEAR:
        yield last.pop()
        failure = None
    # One by one as they are asked for: the first is nearly always good enough.
    shifted = (_closed(Form(tap, parting))[0] for parting in shifts())
    yield from (skin for skin in shifted if skin and _clearance(skin) > CLEAR)
    for group in partings(tap):
        tried = [_closed(Form(tap, parting))[0] for parting in group]
        closed = sorted(filter(None, tried), key=_clearance, reverse=True)
        yield from closed
        failure = None if closed else failure
    yield from last
    if failure is not None:
        raise failure


def _closed(form: Form) -> tuple[Skin | None, KernelError | None]:
    """The skin of a form, or why its edges do not close."""
    try:
        return skin_of(form), None
    except KernelError as error:
        return None, error


def _clearance(skin: Skin) -> float:
    """The least distance that decides which edges there are [mm]."""
    ends = skin.corners[skin.ends]
    shortest = float(np.linalg.norm(ends[:, 1] - ends[:, 0], axis=1).min())
    form = skin.form
    first = form.turned[0].start_radius
    thread = first + form.narrowed_at_end
    near = [abs(thread - form.crest_radius), abs(thread - form.root_radius)]
    # A wall between the thread and the ball of no height closes, but is no face.
    near.append(abs(form.full_depth - form.thread_end))
    near += [abs(piece.end - skin.opening_end) for piece in form.turned]
    near += [abs(piece.end - form.full_depth) for piece in form.turned]
    return min(shortest, *near)


def skin_of(form: Form) -> Skin:
    """The skin of a form as it is.

    Raises:
        KernelError: when its edges do not close.
    """
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
    edges = [edge for family, shape in loci for edge in trace(family, shape)]
    corners, ends = _corners(edges)
    loops = _loops(edges, ends)
    return Skin(form, corners, edges, ends, loops, bodies, edges_runout.opening_end(form))


def _corners(edges: list[Edge]) -> tuple[Floats, NDArray[np.intp]]:
    """Shared corners out of the ends of all edges."""
    points = np.array([point for edge in edges for point in (edge.start, edge.end)])
    corner = labels(points, SAME_CORNER)
    _, kept = np.unique(corner, return_index=True)
    ends = corner.reshape(-1, 2)
    if np.any(ends[:, 0] == ends[:, 1]):
        raise KernelError(Stage.EDGES, "an edge shorter than a corner was found")
    return points[kept], ends


def _loops(edges: list[Edge], ends: NDArray[np.intp]) -> dict[FaceKey, list[Cycle]]:
    mine: dict[FaceKey, list[int]] = defaultdict(list)
    for number, edge in enumerate(edges):
        for key in edge.carriers:
            mine[key].append(number)
    pairs = ends.tolist()
    return {key: _cycles(key, numbers, pairs) for key, numbers in mine.items()}


def _cycles(key: FaceKey, numbers: list[int], ends: list[list[int]]) -> list[Cycle]:
    at: dict[int, list[int]] = defaultdict(list)
    for number in numbers:
        for corner in ends[number]:
            at[corner].append(number)
    wrong = [corner for corner, joined in at.items() if len(joined) != 2]
    if wrong:
        raise KernelError(Stage.EDGES, f"face {key} does not close at {len(wrong)} corners")
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
