"""A triangle mesh of a tap with the normals of the surfaces that it stands for.

Facets show where a picture takes its light from the facets. Here each triangle is told to the
surface whose law its corners keep, and the light is taken from that law. Corners are shared
within a surface and parted between two.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.geometry.smooth.places import Places, places_of
from tapmodel.geometry.smooth.surfaces import Surface, surfaces_of
from tapmodel.shape.form import Form
from tapmodel.tap.tap import Tap
from tapmodel.words import Hand

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]
Bytes = NDArray[np.uint8]

# A corner keeps a surface's law within this share of the tap's radius: chords lie off it by less.
_ON = 1e-3
# Surfaces meet in an edge that is seen where their normals part by more than this [deg].
_SEEN = 14.0
# What lies nearer to the axis is the tip of a centre, of the tap's width.
_TIP = 1e-6


@dataclass(frozen=True, slots=True)
class Smoothed:
    """The mesh for looking at.

    Attributes:
        vertices: (n, 3), those on an edge once for each surface [mm].
        normals: (n, 3), of length 1, out of the metal.
        kinds: (n,), `Kind` of the surface.
        triangles: (m, 3) vertex numbers.
        edges: (k, 2) vertex numbers, between surfaces that meet at an angle.
        fine: how many of the edges, the last of them, lie between parts of the thread's profile.
    """

    vertices: Floats
    normals: Floats
    kinds: Bytes
    triangles: Indices
    edges: Indices
    fine: int


def smoothed(tap: Tap, vertices: Floats, triangles: Indices) -> Smoothed:
    """Normals and edges of a mesh of a tap.

    Args:
        tap: of which it is a mesh.
        vertices: (n, 3) [mm].
        triangles: (m, 3) vertex numbers, counter-clockwise seen from outside.
    """
    mirror = np.array([1.0, -1.0 if tap.thread.hand is Hand.LEFT else 1.0, 1.0])
    form = Form(tap)
    surfaces = surfaces_of(form)
    facets = _facets(vertices * mirror, triangles) * mirror[1]
    vertices, parted, points = _tips_parted(vertices, triangles)
    places = places_of(form, points * mirror)
    told = _told(surfaces, places, parted, facets, _ON * tap.thread.major / 2)
    keys, numbers = np.unique(told[:, None] + len(surfaces) * parted, return_inverse=True)
    numbers = numbers.reshape(triangles.shape)
    owner, vertex = keys % len(surfaces), keys // len(surfaces)
    normals = _normals(surfaces, places, owner, vertex)
    normals = _towards(normals, numbers, facets)
    made = np.array([int(surface.kind) for surface in surfaces], dtype=np.uint8)
    kinds: Bytes = made[owner]
    edges, fine = _edges(surfaces, triangles, numbers, (owner, normals))
    return Smoothed(vertices[vertex], normals * mirror, kinds, numbers, edges, fine)


def _tips_parted(vertices: Floats, triangles: Indices) -> tuple[Floats, Indices, Floats]:
    """The tip of a centre once for each triangle there, for it faces a way of its own in each.

    Returns:
        Vertices, triangles, and the points that say how each faces: beside the tip on the way to
        the middle of its triangle.
    """
    on_axis = np.hypot(*vertices[:, :2].T) < _TIP * np.ptp(vertices[:, 0])
    rows, columns = np.nonzero(on_axis[triangles])
    parted = triangles.copy()
    parted[rows, columns] = len(vertices) + np.arange(len(rows))
    tips = vertices[triangles[rows, columns]]
    beside = tips + _TIP * (vertices[triangles[rows]].mean(axis=1) - tips) * (1.0, 1.0, 0.0)
    return np.concatenate([vertices, tips]), parted, np.concatenate([vertices, beside])


def _facets(vertices: Floats, triangles: Indices) -> Floats:
    """Normals of the triangles, as long as twice their areas."""
    a, b, c = (vertices[triangles[:, corner]] for corner in range(3))
    return np.cross(b - a, c - a)


def _told(
    surfaces: list[Surface], places: Places, triangles: Indices, facets: Floats, near: float
) -> Indices:
    """Number of the surface of each triangle."""
    off = np.stack([surface.off(places) for surface in surfaces])
    worst = np.max(off[:, triangles], axis=2)
    first = np.argmin(worst, axis=0)
    row = np.arange(len(triangles))
    least = worst[first, row]
    worst[first, row] = np.inf
    second = np.argmin(worst, axis=0)
    # Slivers along an edge lie on both its surfaces: the way they face tells.
    doubtful = np.flatnonzero(worst[second, row] < near + least)
    corners = triangles[doubtful]
    fits = [
        distance[doubtful] / near
        - _alike(surfaces, places, which[doubtful], corners, facets[doubtful])
        for distance, which in ((least, first), (worst[second, row], second))
    ]
    first[doubtful] = np.where(fits[0] <= fits[1], first[doubtful], second[doubtful])
    return first


def _alike(
    surfaces: list[Surface], places: Places, which: Indices, corners: Indices, facets: Floats
) -> Floats:
    """Cosine between triangles and the surfaces `which` at their corners."""
    owner, vertex = np.repeat(which, 3), corners.ravel()
    normals = _normals(surfaces, places, owner, vertex).reshape(-1, 3, 3).mean(axis=1)
    long = np.linalg.norm(facets, axis=1)
    dots = np.einsum("ij,ij->i", normals, facets)
    return dots / np.maximum(long, np.finfo(float).tiny)


def _normals(surfaces: list[Surface], places: Places, owner: Indices, vertex: Indices) -> Floats:
    """Normals of the surfaces `owner` at points `vertex`, of length 1."""
    found = np.empty((len(owner), 3))
    for number, surface in enumerate(surfaces):
        mine = np.flatnonzero(owner == number)
        if len(mine):
            found[mine] = surface.facing(places.some(vertex[mine]))
    return found / np.maximum(np.linalg.norm(found, axis=1), np.finfo(float).tiny)[:, None]


def _towards(normals: Floats, triangles: Indices, facets: Floats) -> Floats:
    """The normals, turned round where the facets about them face the other way.

    That holds for the plane in which a thread ends: it faces the square or the front, as the
    neck is thinner or thicker.
    """
    summed = np.zeros_like(normals)
    for axis in range(3):
        weights = np.repeat(facets[:, axis], 3)
        summed[:, axis] = np.bincount(triangles.ravel(), weights, len(normals))
    return normals * np.where(np.einsum("ij,ij->i", normals, summed) < 0, -1.0, 1.0)[:, None]


def _edges(
    surfaces: list[Surface],
    triangles: Indices,
    numbers: Indices,
    corners: tuple[Indices, Floats],
) -> tuple[Indices, int]:
    """Sides between two surfaces that meet at an angle, and how many of them are fine."""
    owner, normals = corners
    one = triangles[:, [0, 1, 1, 2, 2, 0]].reshape(-1, 2)
    mine = numbers[:, [0, 1, 1, 2, 2, 0]].reshape(-1, 2)
    most = int(triangles.max()) + 1
    up = one[:, 0] < one[:, 1]
    there, back = np.flatnonzero(up), np.flatnonzero(~up)
    there = there[np.argsort(one[there] @ [most, 1])]
    back = back[np.argsort(one[back] @ [1, most])]
    if len(there) != len(back):
        return np.zeros((0, 2), dtype=np.intp), 0
    apart = owner[mine[there, 0]] != owner[mine[back, 0]]
    here, beyond = mine[there[apart]], mine[back[apart]][:, ::-1]
    facing = np.einsum("ijk,ijk->ij", normals[here], normals[beyond])
    seen = np.min(facing, axis=1) < np.cos(np.radians(_SEEN))
    here, beyond = here[seen], beyond[seen]
    profile = np.array([surface.profile for surface in surfaces])
    fine = profile[owner[here[:, 0]]] & profile[owner[beyond[:, 0]]]
    return np.concatenate([here[~fine], here[fine]]), int(fine.sum())
