"""Normals of a mesh that is looked at, held against the laws of the surfaces it stands for."""

import base64
import gzip

import numpy as np
import pytest
from asked import settled_of
from numpy.typing import NDArray

from tapmodel.geometry.preview.quick_mesh import preview_mesh
from tapmodel.geometry.smooth.smoothed import Smoothed, smoothed
from tapmodel.geometry.smooth.surfaces import Kind
from tapmodel.report.page.solid import Model, packed_model
from tapmodel.shape.form import Form
from tapmodel.shape.walls import FACE, HEEL
from tapmodel.tap.tap import Tap
from tapmodel.words import Hand

Floats = NDArray[np.float64]
JOBS = ["M10", "M10LH", "M18x0.75", "G 1/2", "Tr20x4"]
STEP = 1e-5  # of differences [mm]


@pytest.fixture(scope="module", params=JOBS)
def shown(request: pytest.FixtureRequest) -> tuple[Tap, Smoothed]:
    tap = settled_of(request.param).tap
    mesh = preview_mesh(tap)
    return tap, smoothed(tap, mesh.vertices, mesh.triangles)


def _right(tap: Tap, vectors: Floats) -> Floats:
    return vectors * [1, -1 if tap.thread.hand is Hand.LEFT else 1, 1]


def _seen(tap: Tap, mesh: Smoothed, kind: Kind) -> tuple[Floats, Floats, Floats]:
    """Beside the corners of a kind's triangles: points, normals shown there, shares of the area."""
    mine = mesh.triangles[mesh.kinds[mesh.triangles[:, 0]] == kind]
    corners = mesh.vertices[mine]
    sides = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    # On a border two surfaces meet: a hundredth of the way inwards there is one alone.
    beside = 0.99 * corners + 0.01 * corners.mean(axis=1, keepdims=True)
    area = np.repeat(np.linalg.norm(sides, axis=1) / 6, 3)
    return _right(tap, beside.reshape(-1, 3)), _right(tap, mesh.normals[mine].reshape(-1, 3)), area


def _degrees(a: Floats, b: Floats) -> Floats:
    return np.degrees(np.arccos(np.clip(np.einsum("ij,ij->i", a, b), -1, 1)))


def _above(form: Form, points: Floats) -> Floats:
    """How far points stand out of thread and chamfer cone along the radius [mm]."""
    x, y, z = points.T
    r, theta = np.hypot(x, y), np.arctan2(y, x)
    middle = (form.walls.angle(FACE, r) + form.walls.angle(HEEL, r)) / 2
    land = np.floor((theta - middle) / form.spacing).astype(np.intp)
    phi = theta - land * form.spacing - form.edge_angle
    land %= form.lands
    return r - form.threaded(land, phi, z).min(axis=0)


def test_threads_are_lit_as_their_law_says(shown: tuple[Tap, Smoothed]) -> None:
    tap, mesh = shown
    points, normals, area = _seen(tap, mesh, Kind.THREAD)
    form = Form(tap)
    slopes = np.stack(
        [_above(form, points + step) - _above(form, points - step) for step in STEP * np.eye(3)],
        axis=1,
    )
    slopes /= np.linalg.norm(slopes, axis=1)[:, None]
    off = _degrees(normals, slopes)
    assert len(off) > 3000
    # Slips of triangles at a border have their middle beyond it.
    assert np.sum(area[off > 1.0]) < 0.002 * np.sum(area)


def test_flutes_are_lit_as_the_cutter_left_them(shown: tuple[Tap, Smoothed]) -> None:
    tap, mesh = shown
    points, normals, area = _seen(tap, mesh, Kind.FLUTE)
    flutes, b = tap.flutes, tap.flutes.cutter_diameter / 2
    found = np.full(len(points), np.inf)
    for angle in np.radians(flutes.angles):
        c, s = np.cos(angle), np.sin(angle)
        axis = np.stack(
            [
                np.full(len(points), flutes.centre_radius * c - flutes.offset * s),
                np.full(len(points), flutes.centre_radius * s + flutes.offset * c),
                np.minimum(points[:, 2], flutes.full_depth_length),
            ],
            axis=1,
        )
        # Above the ball's middle the cutter is round about its own axis.
        over = np.maximum((points - axis) @ [c, s, 0], 0)[:, None] * [c, s, 0]
        towards = axis + over - points
        far = np.linalg.norm(towards, axis=1)
        near = np.abs(far - b) < 5e-3 * b
        off = _degrees(normals, towards / far[:, None])
        found = np.where(near, np.minimum(found, off), found)
    assert np.sum(area[found > 1.0]) < 1e-3 * np.sum(area)


def test_no_edge_lies_within_a_surface(shown: tuple[Tap, Smoothed]) -> None:
    _, mesh = shown
    places = [tuple(point) for point in np.round(mesh.vertices, 9)]
    facing: dict[tuple[float, ...], list[Floats]] = {}
    for place, normal in zip(places, mesh.normals, strict=True):
        facing.setdefault(place, []).append(normal)
    least = {place: np.min(np.stack(some) @ np.stack(some).T) for place, some in facing.items()}
    for one, other in mesh.edges.tolist():
        assert min(least[places[one]], least[places[other]]) < np.cos(np.radians(13.9))


def test_packing_keeps_normals_and_places() -> None:
    design = settled_of("M10")
    mesh = preview_mesh(design.tap)
    packed = packed_model(Model(mesh.vertices, mesh.triangles, "told"), design)
    data = gzip.decompress(base64.b64decode(packed["data"]))
    lengths = packed["lengths"]
    count = packed["vertices"]
    places = np.frombuffer(data, "<u2", 3 * count).reshape(-1, 3)
    begin = -(-lengths["places"] // 4) * 4
    x, y = np.frombuffer(data, "<i2", 2 * count, begin).reshape(-1, 2).T / 32767
    z = 1 - np.abs(x) - np.abs(y)
    turned = np.maximum(-z, 0)
    normals = np.stack([x - np.sign(x) * turned, y - np.sign(y) * turned, z], axis=1)
    normals /= np.linalg.norm(normals, axis=1)[:, None]
    right = smoothed(design.tap, mesh.vertices, mesh.triangles)
    assert np.max(np.linalg.norm(normals - right.normals, axis=1)) < np.radians(0.02)
    found = np.array(packed["low"]) + places * np.array(packed["step"])
    assert np.max(np.abs(found - right.vertices)) <= 0.51 * np.max(packed["step"])
