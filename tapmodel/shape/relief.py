"""The relief law: how far a surface has dropped at an angle behind the crest edge of its land.

The drop is the same for every point of the profile when relief applies to the thread, and for
every point of the cone when it applies to the chamfer:

* thread:  `r = r_profile(w) - drop(phi)`, the profile moves inwards bodily;
* crest:   `r = min(r_profile(w), major/2 - drop(phi))`, the flanks stay;
* chamfer: `r = point_diameter/2 + z*tan(angle) - drop(phi)`;

with `phi = theta - theta_crest_edge` and `theta_crest_edge = angles[j] + crest_edge_angle(...)`,
the polar angle at which the cutting face of land j reaches the major diameter.
"""

import math
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from tapmodel.tap.design import Relief
from tapmodel.words import ReliefKind, ReliefPlace

Floats = NDArray[np.float64]


def drop(relief: Relief, phi: Floats) -> Floats:
    """Radial drop at `phi` behind the crest edge.

    The arc is a circle about a displaced centre, in polar form
    `arc(phi) = o*cos(phi - d) + sqrt(a**2 - (o*sin(phi - d))**2)` with radius a, offset o and
    direction d from the record, and the drop is `arc(phi0) - arc(phi)`: phi0 = 0 for eccentric
    relief, which also continues before the edge (a face with negative rake lies there), and
    phi0 = margin_angle for con-eccentric, zero up to phi0.

    Args:
        relief: record of the relief.
        phi: angles behind the crest edge, any shape [deg].

    Returns:
        Drop, same shape [mm].

    Source: derived here from the definition of a circle turned about an offset centre.
    """
    if relief.kind is ReliefKind.CONCENTRIC:
        return np.zeros_like(phi)
    reach = _arc(relief, np.asarray(relief.margin_angle))
    if relief.kind is ReliefKind.CON_ECCENTRIC:
        return reach - _arc(relief, np.maximum(phi, relief.margin_angle))
    return reach - _arc(relief, phi)


def _arc(relief: Relief, phi: Floats) -> Floats:
    turned = np.radians(phi - relief.arc_direction)
    along = relief.arc_offset * np.cos(turned)
    # Beyond the land the ray may miss the circle; its nearest point keeps the law continuous.
    reach = relief.arc_radius**2 - (relief.arc_offset * np.sin(turned)) ** 2
    return along + np.sqrt(np.maximum(reach, 0.0))


def concentric(applies_to: ReliefPlace, major: float) -> Relief:
    """No relief: the surface keeps its radius [mm]; `major` is the diameter over the crests."""
    return Relief(ReliefKind.CONCENTRIC, applies_to, 0.0, 0.0, 0.0, major / 2, 0.0, 0.0)


def con_eccentric(
    applies_to: ReliefPlace, major: float, land_angle: float, margin_angle: float, heel_drop: float
) -> Relief:
    """Margin without drop, then an arc that leaves it tangentially and reaches the heel drop.

    Tangency at the margin puts the centre on the radius through it: arc_radius + arc_offset =
    major/2, and the offset follows in closed form from the drop at the heel.

    Args:
        applies_to: surface that carries the relief.
        major: diameter over the crests [mm].
        land_angle: angle of the land at that diameter [deg].
        margin_angle: angle without drop, less than the land [deg].
        heel_drop: drop at the heel [mm].

    Returns:
        The record, with the arc that grinds it.

    Source: derived here.
    """
    full, reached = major / 2, major / 2 - heel_drop
    cosine = math.cos(math.radians(land_angle - margin_angle))
    # |heel - centre| = arc_radius, heel at radius `reached`, centre `offset` out along the margin
    offset = (full**2 - reached**2) / (2 * (full - reached * cosine))
    return Relief(
        ReliefKind.CON_ECCENTRIC,
        applies_to,
        margin_angle,
        0.0,
        heel_drop,
        full - offset,
        offset,
        margin_angle,
    )


def eccentric_by_edge(
    applies_to: ReliefPlace, major: float, land_angle: float, edge_angle: float
) -> Relief:
    """Drop that starts at the edge with `edge_angle`, on an arc of the tap's own radius.

    The edge lies on the arc and the arc's normal there leans by the edge angle, so the centre is
    `major/2` from the edge along that normal.

    Args:
        applies_to: surface that carries the relief.
        major: diameter over the crests [mm].
        land_angle: angle of the land at that diameter [deg].
        edge_angle: relief angle at the edge [deg].

    Returns:
        The record; `heel_drop` is what results.

    Source: derived here.
    """
    radius = major / 2
    relief = Relief(
        ReliefKind.ECCENTRIC,
        applies_to,
        0.0,
        edge_angle,
        0.0,
        radius,
        2 * radius * math.sin(math.radians(edge_angle / 2)),
        edge_angle / 2 - 90,
    )
    return replace(relief, heel_drop=float(drop(relief, np.asarray(land_angle))))


def eccentric_by_drop(
    applies_to: ReliefPlace, major: float, land_angle: float, heel_drop: float
) -> Relief:
    """Drop that starts at the edge and reaches `heel_drop` [mm] at the heel; see by_edge.

    The heel lies `major/2` from the centre as the edge does, which is linear in the sine and the
    cosine of the edge angle; of the two solutions the one near zero is a relief.

    Args:
        applies_to: surface that carries the relief.
        major: diameter over the crests [mm].
        land_angle: angle of the land at that diameter [deg].
        heel_drop: drop at the heel [mm].

    Returns:
        The record; `edge_angle` is what results.

    Source: derived here.
    """
    full, reached = major / 2, major / 2 - heel_drop
    along = reached * math.cos(math.radians(land_angle))
    across = reached * math.sin(math.radians(land_angle))
    chord = reached**2 - 2 * full * along + full**2
    cosine, sine = 2 * full * (along - full), 2 * full * across
    angle = math.atan2(sine, cosine) - math.acos(-chord / math.hypot(sine, cosine))
    return eccentric_by_edge(applies_to, major, land_angle, math.degrees(angle))
