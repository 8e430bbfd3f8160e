"""How far points of the ideal boundary lie from a solid: what its faces leave uncovered."""

import math
from collections import defaultdict
from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from tapmodel.checks.proof.nearest import near_triangles
from tapmodel.geometry.kernel.measure.trimmed import TrimmedFaces

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]
REACH = 2.0  # from a face's triangles, within which a point on the face lies [chords]
BESIDE = 0.2  # farther than the nearest face by more, a face comes later [chords]
FOUND = 1e-6  # near enough to look no further [mm]
DOUBT = 1e-5  # farther than this the kernel's exact search is asked [mm]


def largest_by_feature(features: dict[str, Floats], faces: TrimmedFaces) -> dict[str, float]:
    """Largest distance to the solid among the points of each feature [mm].

    Beyond `DOUBT` it is the distance of one point that is off, not of the farthest.

    Args:
        features: points by name, shape (n, 3) each [mm].
        faces: of the solid.
    """
    points = np.concatenate(list(features.values()))
    distances, beside = _distances(points, faces)
    numbers: Indices = np.arange(len(points), dtype=np.intp)
    of_features = np.split(numbers, np.cumsum(list(map(len, features.values()))))
    return {
        name: _largest(points, own, distances[own], beside, faces)
        for name, own in zip(features, of_features, strict=False)
    }


def _largest(
    points: Floats,
    numbers: Indices,
    distance: Floats,
    beside: dict[int, list[int]],
    faces: TrimmedFaces,
) -> float:
    """The largest distance of some points, those in doubt measured again until one is confirmed.

    First to the faces beside a point alone, since the search takes longer with every edge.
    """
    sure = distance <= DOUBT
    largest = float(distance[sure].max(initial=0.0))
    for n in numbers[~sure][np.argsort(-distance[~sure], kind="stable")].tolist():
        x, y, z = points[n].tolist()
        to_faces = (faces.faces[face].exact_distance((x, y, z)) for face in beside.get(n, ()))
        off = next((found for found in to_faces if found <= DOUBT), math.inf)
        largest = max(largest, faces.exact_distance((x, y, z)) if off > DOUBT else off)
        if largest > DOUBT:
            break
    return largest


def _distances(points: Floats, faces: TrimmedFaces) -> tuple[Floats, dict[int, list[int]]]:
    """Upper bounds of the points' distances, exact where a face is met; shape (n,) [mm].

    With them the faces beside each point that is still in doubt.
    """
    found = [math.inf] * len(points)
    beside = defaultdict[int, list[int]](list)
    places = points.tolist()
    for point, face, start in _candidates(points, faces):
        if found[point] > FOUND:
            beside[point].append(face)
            off = faces.faces[face].distance(places[point], start, found[point])
            found[point] = min(found[point], off)
    return np.array(found), beside


def _candidates(
    points: Floats, faces: TrimmedFaces
) -> Iterator[tuple[int, int, tuple[float, float]]]:
    """Point, face near it, and parameters on the face to start from; by point.

    Of faces about equally near the one of the fewest triangles comes first: whether a point on an
    edge lies within the borders takes longer to see with every edge, and a wall has hundreds.
    """
    near = near_triangles(points, faces.corners, REACH * faces.chord)
    owner = faces.owner[near.triangle]
    # of each face the nearest triangle, which is the first
    pairs, first = np.unique(near.point * len(faces.faces) + owner, return_index=True)
    point, face = np.divmod(pairs, len(faces.faces))
    distance = near.distance[first]
    nearest = np.full(len(points), np.inf)
    np.minimum.at(nearest, point, distance)
    beside = distance > nearest[point] + BESIDE * faces.chord
    order = np.lexsort((faces.sizes[face], beside, point))
    starts = np.einsum("nk,nkd->nd", near.weights[first], faces.uv[near.triangle[first]])
    rows = zip(point[order].tolist(), face[order].tolist(), starts[order].tolist(), strict=True)
    for number, owner, (u, v) in rows:
        yield number, owner, (u, v)
