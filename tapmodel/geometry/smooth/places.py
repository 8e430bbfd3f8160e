"""Points near a tap in the coordinates of its lands and of its flutes."""

from dataclasses import dataclass, fields

import numpy as np
from numpy.typing import NDArray

from tapmodel.shape.form import Form
from tapmodel.shape.walls import FACE, HEEL

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]


@dataclass(frozen=True, slots=True)
class Places:
    """Points of a right-hand tap, each array of shape (n,); angles in radians, lengths in mm.

    Attributes:
        x, y, z: in the tap's frame.
        r, theta: about its axis.
        phi: behind the crest edge of the land that the point is on.
        w: axial offset from the middle of a crest of that land, not reduced to one pitch.
        u, t: in the frame of the nearest flute, outwards and along +theta.
        turn: angle of that flute.
    """

    x: Floats
    y: Floats
    z: Floats
    r: Floats
    theta: Floats
    phi: Floats
    w: Floats
    u: Floats
    t: Floats
    turn: Floats

    def some(self, which: Indices) -> "Places":
        """The points of these numbers."""
        return Places(*(getattr(self, field.name)[which] for field in fields(self)))


def places_of(form: Form, points: Floats) -> Places:
    """Where points lie to the lands and flutes of a tap.

    Args:
        form: its surfaces.
        points: shape (n, 3), of the right-hand tap [mm].
    """
    x, y, z = points.T
    r, theta = np.hypot(x, y), np.arctan2(y, x)
    least = form.tap.flutes.core_diameter / 2
    reached = np.clip(r, least * (1 + 1e-9), None)
    middle = (form.walls.angle(FACE, reached) + form.walls.angle(HEEL, reached)) / 2
    beyond = (theta - middle) / form.spacing
    land = np.floor(beyond)
    phi = theta - land * form.spacing - form.edge_angle
    w = z - form.crest_z[0] - form.advance * (theta - form.edge_angle)
    turn: Floats = np.rint(beyond) * form.spacing
    cosine, sine = np.cos(turn), np.sin(turn)
    return Places(x, y, z, r, theta, phi, w, x * cosine + y * sine, y * cosine - x * sine, turn)
