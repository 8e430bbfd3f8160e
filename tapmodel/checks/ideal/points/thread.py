"""Points of the ideal thread and chamfer: on each part of each tooth, and on their edges."""

import math
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from tapmodel.checks.ideal.areas import land_tops
from tapmodel.checks.ideal.land_tops import borders, flat_halves
from tapmodel.checks.ideal.laws import land_radius, narrowed, profile_radius
from tapmodel.checks.ideal.points.spread import polar, strewn
from tapmodel.checks.ideal.walls import crest_edge, half_width, spacing, wall_angles
from tapmodel.tap.tap import Tap

Floats = NDArray[np.float64]
PER_PART = 2  # points on each crest, flank and root of each tooth
EDGE = 1e-3  # share of a part or land that its points keep from the borders
CHAMFER_SECTIONS = 5.3  # in a pitch, for the edges between cone and thread


def thread_points(tap: Tap) -> dict[str, Floats]:
    """Candidates on the right-hand tap, some beyond what other features leave of them."""
    lands = range(tap.flutes.count)
    return {
        "thread": np.concatenate([_parts(tap, land) for land in lands]),
        "profile corners": np.concatenate([_profile_corners(tap, land) for land in lands]),
        "cutting edges": np.concatenate([_edges(tap, n, heel=False) for n in lands]),
        "heel edges": np.concatenate([_edges(tap, n, heel=True) for n in lands]),
        "chamfer": np.concatenate([_cone(tap, land) for land in lands]),
    }


def _offsets(tap: Tap) -> list[float]:
    """Axial offsets of the four corners of the profile from a crest's middle, and the next [mm]."""
    pitch = tap.thread.pitch
    crest, root = flat_halves(tap.thread)
    return [-crest, crest, pitch / 2 - root, pitch / 2 + root, pitch - crest]


def _turns(tap: Tap, land: int) -> NDArray[np.intp]:
    """Numbers of the crests that a land may carry, counted in pitches."""
    thread = tap.thread
    edge = tap.flutes.angles[land]
    low = -thread.first_z - thread.lead * (edge + 540.0) / 360.0
    high = tap.blank.thread_length - thread.first_z - thread.lead * (edge - 180.0) / 360.0
    return np.arange(math.floor(low / thread.pitch) - 1, math.ceil(high / thread.pitch) + 1)


def _on_land(tap: Tap, land: int, w: Floats, share: Floats, *, turns: NDArray[np.intp]) -> Floats:
    """Points of a land's top at axial offsets `w` and shares of the land from face to heel."""
    thread, flutes = tap.thread, tap.flutes
    crest = crest_edge(flutes, thread.major)
    radius = profile_radius(thread, (w + thread.pitch / 2) % thread.pitch - thread.pitch / 2)
    # near enough to the angle of the cutting face: the walls turn little within a back taper
    middle = thread.first_z + thread.lead * (flutes.angles[land] + crest) / 360.0
    radius = radius - narrowed(tap, middle + w + turns * thread.pitch)
    heel, face = wall_angles(flutes, radius, half_width(flutes, np.zeros_like(radius)))
    start, end = face - crest, heel - crest + spacing(flutes)
    phi = start + (end - start) * share
    theta = flutes.angles[land] + crest + phi
    z = thread.first_z + thread.lead * theta / 360.0 + w + turns * thread.pitch
    z, phi, theta = (part.ravel() for part in np.broadcast_arrays(z, phi, theta))
    on = (z > 0.0) & (z < tap.blank.thread_length)
    z, phi, theta = z[on], phi[on], theta[on]
    return polar(land_radius(tap, phi, theta, z), theta, z)


def _parts(tap: Tap, land: int) -> Floats:
    turns = _turns(tap, land)
    ends = np.array(list(pairwise(_offsets(tap))))
    across, along = (
        EDGE + (1 - 2 * EDGE) * part for part in strewn(len(turns), len(ends), PER_PART)
    )
    w = ends[:, 0, None] + (ends[:, 1] - ends[:, 0])[:, None] * across
    return _on_land(tap, land, w, along, turns=turns[:, None, None])


def _profile_corners(tap: Tap, land: int) -> Floats:
    turns = _turns(tap, land)
    w = np.array(_offsets(tap)[:-1])
    along, _ = strewn(len(turns), len(w))
    return _on_land(tap, land, np.broadcast_to(w, along.shape), along, turns=turns[:, None])


def _edges(tap: Tap, land: int, *, heel: bool) -> Floats:
    """Points where a wall meets the top of a land, one for each part of each tooth."""
    turns = _turns(tap, land)
    ends = np.array(list(pairwise(_offsets(tap))))
    across, _ = strewn(len(turns), len(ends))
    w = ends[:, 0] + (ends[:, 1] - ends[:, 0]) * across
    share = np.full_like(w, 1.0 if heel else 0.0)
    z = _on_land(tap, land, w, share, turns=turns[:, None])[:, 2]
    tops, _, _ = land_tops(tap, z, np.full(z.shape, land))
    phi = tops.end if heel else tops.start
    return _top_points(tap, z, tops.edge, phi)


def _cone(tap: Tap, land: int) -> Floats:
    """Points of the chamfer and of its edges with the thread, in sections along it."""
    length = min(tap.chamfer_length, tap.blank.thread_length)
    count = math.ceil(CHAMFER_SECTIONS * length / tap.thread.pitch)
    z = np.concatenate([[0.0], (np.arange(count) + 0.5) * length / count])
    tops, _, _ = land_tops(tap, z, np.full(z.shape, land))
    phi = borders(tap, tops)
    row, piece = np.nonzero(np.diff(phi, axis=1, append=np.inf) > 1e-9)
    return _top_points(tap, z[row], tops.edge[row], phi[row, piece])


def _top_points(tap: Tap, z: Floats, edge: Floats, phi: Floats) -> Floats:
    return polar(land_radius(tap, phi, edge + phi, z), edge + phi, z)
