"""How a relieved surface meets the two walls of its land: what the rules on the arcs look at.

Going down a wall from the crest, the angle phi behind the edge changes, and with it the drop. The
surface of nominal radius n ends on the wall where `r + drop(phi(r)) = n`. It ends there once, and
cleanly, when that sum grows steadily with r.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.shape.flute_section import face_angle, section_of, wall_angles
from tapmodel.shape.relief import drop
from tapmodel.tap.design import Relief, TapDesign
from tapmodel.words import ReliefKind

Floats = NDArray[np.float64]

STEEPEST = 0.6
"""Fall of the surface per fall of the wall that it must meet; at 1 it never gets there."""

ABOVE_CORE = 1e-6
"""Least radius over the core at which walls are looked at [mm]; at the core both are one."""

STEPS = 129


@dataclass(frozen=True, slots=True)
class Walls:
    """The walls of a land: angles behind the crest edge [deg] at growing radii [mm]."""

    radii: Floats
    face: Floats
    heel: Floats


def walls(design: TapDesign, lowest: float, highest: float) -> Walls:
    """Both walls from the radius `lowest` to the radius `highest` [mm].

    Source: derived here by `tapmodel.shape.flute_section`.
    """
    section, crest = section_of(design.flutes), design.thread.major / 2
    edge, spacing = face_angle(section, crest), 360 / design.flutes.count
    radii = np.linspace(lowest, max(lowest, highest), STEPS)
    return Walls(
        radii,
        wall_angles(section, radii, 1) - edge,
        wall_angles(section, radii, -1) - edge + spacing,
    )


def spans(relief: Relief, land: Walls, land_angle: float) -> bool:
    """Whether the arc covers every angle of the land, and reaches its heel drop on the outside.

    Seen from the tap's axis the arc ends where the ray only touches its circle.

    Source: derived here.
    """
    if relief.kind is ReliefKind.CONCENTRIC:
        return True
    low, high = float(np.min(land.face)), float(np.max(land.heel))
    hair = 0.02 * (high - low)
    phi = np.linspace(low - hair, high + hair, 2 * STEPS)
    if relief.kind is ReliefKind.CON_ECCENTRIC:
        phi = np.maximum(phi, relief.margin_angle)
    beside = relief.arc_offset * np.sin(np.radians(phi - relief.arc_direction))
    if float(np.max(np.abs(beside))) >= 0.999 * relief.arc_radius:
        return False
    heel = float(drop(relief, np.asarray(land_angle)))
    return abs(heel - relief.heel_drop) < 1e-6


def meets_cleanly(relief: Relief, land: Walls, nominal: float) -> bool:
    """Whether the surfaces from `nominal` radius [mm] to the crest meet both walls once, not flat.

    Source: rule of this program.
    """
    return all(_cleanly(relief, land.radii, phi, nominal) for phi in (land.face, land.heel))


def _cleanly(relief: Relief, radii: Floats, phi: Floats, nominal: float) -> bool:
    fallen = drop(relief, phi)
    below = np.nonzero(radii + fallen <= nominal)[0]
    foot = int(below[-1]) if len(below) else 0
    if np.any(radii[:foot] + fallen[:foot] > nominal):
        return False
    lost = -np.diff(fallen[foot:])
    return bool(np.all(lost <= STEEPEST * np.diff(radii[foot:])))


def lowest_nominal(relief: Relief, land: Walls) -> float:
    """Nominal radius whose surface just stays above the walls of `land`, and above their top [mm].

    Source: derived here.
    """
    fallen = np.maximum(drop(relief, land.face), drop(relief, land.heel))
    nominal = float(np.max(land.radii + np.maximum(fallen, 0.0)))
    lowest = lowest_angle(relief)
    if lowest >= float(land.heel[-1]):
        return nominal
    return max(nominal, float(land.radii[-1] + drop(relief, np.asarray(lowest))))


def lowest_angle(relief: Relief) -> float:
    """Angle behind the edge from which the surface rises again [deg]: the arc's nearest point.

    Source: derived here.
    """
    return relief.arc_direction + 180 if relief.arc_offset > 0 else float("inf")
