"""Curves and surfaces of a STEP file: points along an edge, distances from a surface."""

import numpy as np
from scipy.interpolate import BSpline
from step_entities import Entity, StepFile

Floats = np.ndarray
_PER_EDGE = 9


def edge_points(step: StepFile, edge: Entity) -> tuple[Floats, Floats]:
    """Points along an edge, and the curve's own points nearest to its two vertices.

    Args:
        step: the file.
        edge: an EDGE_CURVE.
    """
    _, start, end, curve, forward = edge.params
    ends = np.array([step.numbers(start), step.numbers(end)])
    if str(forward) == ".F.":
        ends = ends[::-1]
    item = step[curve]
    points = _CURVES[item.name](step, item, ends)
    return points, np.array([points[0], points[-1]]) - ends


def _line(step: StepFile, item: Entity, ends: Floats) -> Floats:
    origin = step.numbers(item.params[1])
    way = step.numbers(step[item.params[2]].params[1])
    along = (ends - origin) @ way / (way @ way)
    return origin + np.linspace(*along, _PER_EDGE)[:, None] * way


def _circle(step: StepFile, item: Entity, ends: Floats) -> Floats:
    origin, axes = step.frame(item.params[1])
    local = (ends - origin) @ axes.T
    low, high = np.arctan2(local[:, 1], local[:, 0])
    angles = np.linspace(low, high + 2 * np.pi * (high <= low + 1e-9), _PER_EDGE)
    flat = np.stack([np.cos(angles), np.sin(angles), 0 * angles], axis=-1)
    return origin + item.params[2] * flat @ axes


def _hyperbola(step: StepFile, item: Entity, ends: Floats) -> Floats:
    origin, axes = step.frame(item.params[1])
    a, b = item.params[2:4]
    at = np.linspace(*np.arcsinh(((ends - origin) @ axes[1]) / b), _PER_EDGE)
    return origin + np.stack([a * np.cosh(at), b * np.sinh(at), 0 * at], axis=-1) @ axes


def _spline(step: StepFile, item: Entity, ends: Floats) -> Floats:
    del ends  # the whole curve is the edge
    _, degree, poles, _, _, _, multiplicities, knots, _ = item.params
    knots = np.repeat(np.array(knots, dtype=float), multiplicities)
    spline = BSpline(knots, np.array([step.numbers(pole) for pole in poles]), degree)
    return spline(np.linspace(knots[0], knots[-1], _PER_EDGE))


_CURVES = {
    "LINE": _line,
    "CIRCLE": _circle,
    "HYPERBOLA": _hyperbola,
    "B_SPLINE_CURVE_WITH_KNOTS": _spline,
}


def distances(step: StepFile, surface: Entity, points: Floats) -> Floats:
    """Distance of points (n, 3) from an untrimmed surface."""
    if surface.name == "B_SPLINE_SURFACE_WITH_KNOTS":
        return _from_spline(step, surface, points)
    origin, axes = step.frame(surface.params[1])
    x, y, z = ((points - origin) @ axes.T).T
    across = np.hypot(x, y)
    match surface.name:
        case "PLANE":
            return np.abs(z)
        case "CYLINDRICAL_SURFACE":
            return np.abs(across - surface.params[2])
        case "CONICAL_SURFACE":
            # STEP's cone is (R + v tan a, v); the distance is square to its generator.
            radius, angle = surface.params[2:4]
            return np.abs(across - radius - z * np.tan(angle)) * np.cos(angle)
        case "SPHERICAL_SURFACE":
            return np.abs(np.sqrt(x**2 + y**2 + z**2) - surface.params[2])
    raise KeyError(surface.name)


def _from_spline(step: StepFile, surface: Entity, points: Floats) -> Floats:
    """Distance by Newton's method on the parameters, from the nearest point of a grid."""
    _, p, q, rows, _, _, _, _, u_times, v_times, u_knots, v_knots, _ = surface.params
    poles = np.array([[step.numbers(pole) for pole in row] for row in rows])
    u_basis, v_basis = _Basis(p, u_knots, u_times), _Basis(q, v_knots, v_times)
    grid_u, grid_v = np.linspace(*u_basis.range, 33), np.linspace(*v_basis.range, 5)
    grid = np.einsum("ai,bj,ijd->abd", u_basis(grid_u), v_basis(grid_v), poles)
    nearest = np.argmin(
        np.sum((grid[None] - points[:, None, None]) ** 2, -1).reshape(len(points), -1), axis=1
    )
    u, v = grid_u[nearest // 5], grid_v[nearest % 5]
    for _ in range(8):
        at, along, across = (
            np.einsum("ni,nj,ijd->nd", u_basis(u, m), v_basis(v, n), poles)
            for m, n in ((0, 0), (1, 0), (0, 1))
        )
        off = points - at
        jacobian = np.stack([along, across], axis=1)
        square = np.einsum("nkd,nld->nkl", jacobian, jacobian)
        wanted = np.einsum("nkd,nd->nk", jacobian, off)
        steps = np.linalg.solve(square, wanted[..., None])[..., 0]
        u = np.clip(u + steps[:, 0], *u_basis.range)
        v = np.clip(v + steps[:, 1], *v_basis.range)
    return np.linalg.norm(off, axis=1)


class _Basis:
    """All B-spline functions on one knot vector."""

    def __init__(self, degree: int, knots: tuple, multiplicities: tuple) -> None:
        full = np.repeat(np.array(knots, dtype=float), multiplicities)
        count = len(full) - degree - 1
        self.range = (full[degree], full[count])
        value = BSpline(full, np.eye(count), degree)
        self._orders = (value, value.derivative())

    def __call__(self, at: Floats, order: int = 0) -> Floats:
        return self._orders[order](at)
