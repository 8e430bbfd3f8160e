"""Points on a solid's exact surfaces, spread over all its faces."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.geometry.kernel.measure.trimmed import TrimmedFaces

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]

# Additive recurrence of lowest discrepancy in three dimensions, after the real root of
# x^4 = x + 1: the powers of its inverse.
_STEP = 1.2207440846057596 ** -np.arange(1.0, 4.0)
_MOST_ROUNDS = 8


@dataclass(frozen=True, slots=True)
class Samples:
    """Points of a solid's faces.

    Attributes:
        points: on the exact surfaces, shape (n, 3) [mm].
        faces: number of the face of each in the order of the shell, (n,).
        slivers: faces so narrow that points were found on their borders only.
    """

    points: Floats
    faces: Indices
    slivers: int


def sample_faces(solid: TrimmedFaces, per_face: int, spread: int) -> Samples:
    """Points strictly inside the trimmed faces, evenly by area on each, always the same.

    Args:
        solid: the faces.
        per_face: points on every face, however small.
        spread: further points, shared out by area.
    """
    areas = solid.areas()
    counts = per_face + np.floor(spread * areas / areas.sum()).astype(np.intp)
    kept: list[list[tuple[float, float, float]]] = [[] for _ in solid.faces]
    for turn in range(_MOST_ROUNDS):
        short = [n for n, count in enumerate(counts.tolist()) if len(kept[n]) < count]
        if not short:
            break
        owners = np.repeat(short, counts[short])
        places = _spread(solid, owners, turn)
        rows: list[tuple[int, list[float]]] = list(
            zip(owners.tolist(), places.tolist(), strict=True)
        )
        for number, (u, v) in rows:
            face = solid.faces[number]
            if len(kept[number]) < counts[number] and face.inside(u, v):
                kept[number].append(face.point(u, v))
    # Where a face has no inside to hold them, the ends of its edges stand for it.
    slivers = [n for n, found in enumerate(kept) if len(found) < counts[n]]
    held = [np.array(found) for found in kept]
    for n in slivers:
        held[n] = solid.faces[n].mesh.nodes
    return Samples(
        points=np.concatenate(held),
        faces=np.repeat(np.arange(len(held), dtype=np.intp), list(map(len, held))),
        slivers=len(slivers),
    )


def _spread(solid: TrimmedFaces, owners: Indices, turn: int) -> Floats:
    """Parameters of places on the triangles of the faces `owners`, sorted, evenly by area.

    Each face goes on in the sequence where it stopped the `turn` before.
    """
    first, counts = np.unique(owners, return_index=True, return_counts=True)[1:]
    step = np.arange(1, len(owners) + 1) + np.repeat(turn * counts - first, counts)
    fractions: Floats = (0.5 + step[:, None] * _STEP) % 1.0
    share: Floats = np.concatenate([[0.0], np.cumsum(solid.triangle_areas)])
    ends: Indices = np.concatenate([[0], np.cumsum(solid.sizes)])
    low, high = share[ends[owners]], share[ends[owners + 1]]
    target: Floats = low + fractions[:, 0] * (high - low)
    found: Indices = np.searchsorted(share, target, side="right") - 1
    which: Indices = np.clip(found, ends[owners], ends[owners + 1] - 1)
    # Folded, so that a square's points fall evenly into a triangle.
    sides = fractions[:, 1:]
    sides = np.where(sides.sum(axis=-1, keepdims=True) > 1, 1 - sides, sides)
    weights = np.concatenate([1 - sides.sum(axis=-1, keepdims=True), sides], axis=-1)
    return np.einsum("nk,nkd->nd", weights, solid.uv[which])
