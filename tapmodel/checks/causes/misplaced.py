"""How a solid that is not the designed tap lies elsewhere, is mirrored or of another size.

Nothing is guessed: it is named only if every point of the faces lies on the ideal tap once it is
undone.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product

import numpy as np
from numpy.typing import NDArray

from tapmodel import precision
from tapmodel.checks.ideal.deviation import distance_to_ideal
from tapmodel.checks.ideal.expected import solid_volume
from tapmodel.checks.ideal.laws import blank_radius
from tapmodel.shape.figures import figures_of
from tapmodel.tap.tap import Tap

Floats = NDArray[np.float64]

INCH = 25.4
"""Between sizes in inches and the same numbers in mm."""

AXES = {
    "z": np.eye(3),
    "-z": np.diag([1.0, -1.0, -1.0]),
    "x": np.array([[0.0, 1.0, 0.0], [0.0, 0.0, 1.0], [1.0, 0.0, 0.0]]),
    "-x": np.array([[0.0, 1.0, 0.0], [0.0, 0.0, -1.0], [-1.0, 0.0, 0.0]]),
    "y": np.array([[0.0, 0.0, 1.0], [1.0, 0.0, 0.0], [0.0, 1.0, 0.0]]),
    "-y": np.array([[0.0, 0.0, -1.0], [1.0, 0.0, 0.0], [0.0, -1.0, 0.0]]),
}
"""By the way from front to rear: the turn that puts it along z."""

# How near the size along the axis comes to a known one, and its cube to the volume: the one is
# measured on corners, the other by the kernel's integral.
_SIZE, _VOLUME = 1e-6, 1e-4
_STEP = 0.5  # of the angles tried [deg]
_TRIED, _FITTED = 150, 600  # points looked at for that, and to fit the place
_NEAR = 0.1  # largest mean of their distances from which a fit can be hoped for, of the pitch
_SHANK = (0.4, 0.95)  # shares of the way from the run-out to the square, where the shank is round
_ALIKE = 1e-6  # [mm]
_ROUNDS = 8
_SHIFT = 1e-5  # for slopes [mm, deg]
# A place is told from this on; what is less lies within the tolerance [mm, deg].
_TOLD = precision.FOREIGN_FACE


@dataclass(frozen=True, slots=True)
class Misplaced:
    """What was done to the designed tap to make the solid, in this order.

    Attributes:
        mirrored: into the other hand, through the plane y = 0.
        turn: about its axis, counter-clockwise seen from the rear [deg].
        shift: along x, y and z [mm].
        axis: way from front to rear afterwards: "z" as designed, or "-z", "x", "-x", "y", "-y".
        scale: factor of all lengths.
    """

    mirrored: bool
    turn: float
    shift: tuple[float, float, float]
    axis: str
    scale: float


def misplaced(tap: Tap, points: Floats, corners: Floats, volume: float) -> Misplaced | None:
    """How the designed tap became a solid, if it lies elsewhere, is mirrored or of another size.

    Args:
        tap: the tap.
        points: of the solid's faces, on the exact surfaces, (n, 3) [mm].
        corners: of triangles of its faces, likewise, with all its corners, (m, 3) [mm].
        volume: of the solid [mm³].

    Returns:
        What undone leaves no point off by more than is allowed of foreign files; None where
        nothing of the kind does.
    """
    for (axis, scale), mirrored in product(_sizes(tap, corners, volume), (False, True)):
        turned = points @ AXES[axis].T / scale
        front = float((corners @ AXES[axis].T)[:, 2].min()) / scale
        place = _fitted(tap, turned, front, mirrored=mirrored)
        if place is None:
            continue
        off = np.abs(distance_to_ideal(tap, _undone(turned, place, mirrored=mirrored)).distance)
        if off.max() <= precision.FOREIGN_FACE:
            x, y, z, turn = (value if abs(value) > _TOLD else 0.0 for value in place.tolist())
            return Misplaced(mirrored, turn, (x, y, z), axis, scale)
    return None


def _sizes(tap: Tap, corners: Floats, volume: float) -> Iterator[tuple[str, float]]:
    """Axes along which the solid is as long as its volume lets a scaled tap be, with the scale."""
    expected = solid_volume(tap)
    long = np.ptp(corners, axis=0) / tap.blank.overall_length
    for axis in AXES:
        scale = float(long["xyz".index(axis[-1])])
        known = [one for one in (1.0, INCH, 1 / INCH) if abs(scale / one - 1) <= _SIZE]
        if scale > 0 and abs(abs(volume) / scale**3 / expected - 1) <= _VOLUME:
            yield axis, (known or [scale])[0]


def _undone(points: Floats, place: Floats, *, mirrored: bool) -> Floats:
    """Points moved and turned back; `place` is the shift [mm] and the turn [deg]."""
    x, y, z = (points - place[:3]).T
    angle = np.radians(place[3])
    back = np.cos(angle) * x + np.sin(angle) * y, np.cos(angle) * y - np.sin(angle) * x
    return np.stack([back[0], -back[1] if mirrored else back[1], z], axis=1)


def _fitted(tap: Tap, points: Floats, front: float, *, mirrored: bool) -> Floats | None:
    """Shift and turn of points whose axis lies along z, None where no turn comes near [mm, deg]."""
    middle = shank_middle(tap, points, front)
    if middle is None:
        return None
    cut = points[points[:, 2] - front < figures_of(tap).runout_end]
    few = cut[:: max(len(cut) // _TRIED, 1)]
    angles = np.arange(-180.0, 180.0, _STEP)
    angles = angles[np.argsort(np.abs(angles), kind="stable")]
    places = np.array([(*middle, front, angle) for angle in angles])
    tried = np.concatenate([_undone(few, place, mirrored=mirrored) for place in places])
    away = np.abs(distance_to_ideal(tap, tried).distance).reshape(len(places), len(few))
    # the mean, for which the thread counts too: flutes alone look alike from one to the next
    typical = away.mean(axis=1)
    # a tap of several starts may look alike at several turns: the least of them will do
    best = int(np.argmax(typical <= typical.min() + _ALIKE))
    if not typical[best] <= _NEAR * tap.thread.pitch:
        return None
    return _refined(tap, cut[:: max(len(cut) // _FITTED, 1)], places[best], mirrored=mirrored)


def shank_middle(tap: Tap, points: Floats, front: float) -> tuple[float, float] | None:
    """Where the axis stands, from points of the shank; None where they lie on no circle [mm].

    Args:
        tap: the tap, which tells where the shank is.
        points: of the faces of a solid with its axis along z, shape (n, 3) [mm].
        front: height of its front [mm].
    """
    z = points[:, 2] - front
    begins, ends = figures_of(tap).runout_end, tap.blank.square_start
    full = np.abs(blank_radius(tap.blank, z) - tap.blank.shank_diameter / 2) < precision.ANY_FACE
    # well clear of both ends: the square's shoulder, and flutes that run out later than the tap's
    low, high = (begins + share * (ends - begins) for share in _SHANK)
    on_shank = points[(z > low) & (z < high) & full]
    if len(on_shank) < 3:
        return None
    # x² + y² = 2 a x + 2 b y + c on the circle about (a, b)
    x, y = on_shank[:, 0], on_shank[:, 1]
    rows = np.stack([2 * x, 2 * y, np.ones_like(x)], axis=1)
    a, b, _ = np.linalg.lstsq(rows, x**2 + y**2)[0].tolist()
    radii = np.hypot(x - a, y - b)
    return (a, b) if np.ptp(radii) <= precision.ANY_FACE else None


def _refined(tap: Tap, points: Floats, place: Floats, *, mirrored: bool) -> Floats:
    """Shift and turn at which the points lie on the tap: Gauss and Newton, of the nearer half."""

    def away(at: Floats) -> Floats:
        return distance_to_ideal(tap, _undone(points, at, mirrored=mirrored)).distance

    for _ in range(_ROUNDS):
        here = away(place)
        slopes = np.stack(
            [(away(place + step) - here) / _SHIFT for step in _SHIFT * np.eye(4)], axis=1
        )
        # where another surface is the nearer one, the distance says nothing of the place
        near = np.abs(here) <= np.median(np.abs(here))
        place = place - np.linalg.lstsq(slopes[near], here[near])[0]
    return place
