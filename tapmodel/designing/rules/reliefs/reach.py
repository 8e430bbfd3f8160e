"""How a relieved surface meets the two walls of its land: what the rules on the arcs look at.

Going down a wall from the crest, the angle phi behind the edge changes, and with it the drop. The
surface of nominal radius n ends on the wall where `r + drop(phi(r)) = n`. It ends there once, and
cleanly, when that sum grows steadily with r.
"""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from tapmodel.designing.record import TapDesign
from tapmodel.shape.flute_section import FluteSection, face_angle, section_of, wall_angles
from tapmodel.shape.relief import arc_of, drop, heel_drop
from tapmodel.tap.tap import Relief
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
    flutes, crest = design.tap.flutes, design.tap.thread.major / 2
    return _walls(section_of(flutes), flutes.count, crest, lowest, max(lowest, highest))


# Both reliefs ask for the same walls, and so does each trial of another value than the flutes'.
@lru_cache(maxsize=16)
def _walls(section: FluteSection, count: int, crest: float, lowest: float, highest: float) -> Walls:
    edge, spacing = face_angle(section, crest), 360 / count
    radii = np.linspace(lowest, highest, STEPS)
    face = wall_angles(section, radii, 1) - edge
    heel = wall_angles(section, radii, -1) - edge + spacing
    for shared in (radii, face, heel):
        shared.flags.writeable = False
    return Walls(radii, face, heel)


def spans(relief: Relief, major: float, land: Walls) -> bool:
    """Whether the arc covers every angle of the land of a tap of that diameter [mm].

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
    arc = arc_of(relief, major)
    beside = arc.offset * np.sin(np.radians(phi - arc.direction))
    return float(np.max(np.abs(beside))) < 0.999 * arc.radius


def meets_cleanly(relief: Relief, major: float, land: Walls, nominal: float) -> bool:
    """Whether the surfaces from `nominal` radius [mm] to the crest meet both walls once, not flat.

    Source: rule of this program.
    """
    return all(
        _cleanly(drop(relief, major, phi), land.radii, nominal) for phi in (land.face, land.heel)
    )


def _cleanly(fallen: Floats, radii: Floats, nominal: float) -> bool:
    below = np.nonzero(radii + fallen <= nominal)[0]
    foot = int(below[-1]) if len(below) else 0
    if np.any(radii[:foot] + fallen[:foot] > nominal):
        return False
    lost = -np.diff(fallen[foot:])
    return bool(np.all(lost <= STEEPEST * np.diff(radii[foot:])))


def lowest_nominal(relief: Relief, major: float, land: Walls) -> float:
    """Nominal radius whose surface just stays above the walls of `land`, and above their top [mm].

    Source: derived here.
    """
    fallen = np.maximum(drop(relief, major, land.face), drop(relief, major, land.heel))
    nominal = float(np.max(land.radii + np.maximum(fallen, 0.0)))
    lowest = lowest_angle(relief, major)
    if lowest >= float(land.heel[-1]):
        return nominal
    return max(nominal, float(land.radii[-1] + heel_drop(relief, major, lowest)))


def lowest_angle(relief: Relief, major: float) -> float:
    """Angle behind the edge from which the surface rises again [deg]: the arc's nearest point.

    Source: derived here.
    """
    return arc_of(relief, major).direction + 180 if relief.arc_offset > 0 else float("inf")
