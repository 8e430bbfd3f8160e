"""The relief law: how far a surface has dropped at an angle behind the crest edge of its land.

The drop is the same for every point of the profile when relief applies to the thread, and for
every point of the cone when it applies to the chamfer:

* thread:  `r = r_profile(w) - drop(phi)`, the profile moves inwards bodily;
* crest:   `r = min(r_profile(w), major/2 - drop(phi))`, the flanks stay;
* chamfer: `r = point_diameter/2 + z*tan(angle) - drop(phi)`;

with `phi = theta - theta_crest_edge` and `theta_crest_edge = angles[j] + crest_edge_angle(...)`,
the polar angle at which the cutting face of land j reaches the major diameter.

The arc is a circle about a displaced centre. Eccentric relief begins at the edge and has the tap's
own radius; con-eccentric relief leaves a margin tangentially, so that its centre lies on the radius
through the margin's end.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.tap.tap import Relief
from tapmodel.words import ReliefKind, ReliefPlace

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Arc:
    """The circle that the relief is ground on.

    Attributes:
        radius: of the circle [mm].
        offset: of its centre from the axis of the tap [mm].
        direction: of the centre [deg], counted from the crest edge of the land in the sense of phi.
    """

    radius: float
    offset: float
    direction: float


def arc_of(relief: Relief, major: float) -> Arc:
    """The arc of a relief on a tap of diameter `major` over the crests [mm].

    Source: derived here.
    """
    if relief.kind is ReliefKind.CON_ECCENTRIC:
        return Arc(major / 2 - relief.arc_offset, relief.arc_offset, relief.margin_angle)
    if relief.kind is ReliefKind.ECCENTRIC:
        direction = edge_angle(relief, major) / 2 - 90
        return Arc(major / 2, relief.arc_offset, direction)
    return Arc(major / 2, 0.0, 0.0)


def edge_angle(relief: Relief, major: float) -> float:
    """Relief angle at the edge, 0 but for eccentric relief [deg].

    The edge lies on the arc and the arc's normal there leans by that angle, so the centre is
    `major/2` from the edge along that normal.

    Source: derived here.
    """
    if relief.kind is not ReliefKind.ECCENTRIC:
        return 0.0
    return math.degrees(2 * math.asin(relief.arc_offset / major))


def drop(relief: Relief, major: float, phi: Floats) -> Floats:
    """Radial drop at `phi` behind the crest edge.

    In polar form the arc is `arc(phi) = o*cos(phi - d) + sqrt(a**2 - (o*sin(phi - d))**2)` with
    radius a, offset o and direction d, and the drop is `arc(phi0) - arc(phi)`: phi0 = 0 for
    eccentric relief, which also continues before the edge (a face with negative rake lies there),
    and phi0 = margin_angle for con-eccentric, zero up to phi0.

    Args:
        relief: of the surface.
        major: diameter over the crests [mm].
        phi: angles behind the crest edge, any shape [deg].

    Returns:
        Drop, same shape [mm].

    Source: derived here from the definition of a circle turned about an offset centre.
    """
    if relief.kind is ReliefKind.CONCENTRIC:
        return np.zeros_like(phi)
    arc = arc_of(relief, major)
    if relief.kind is ReliefKind.ECCENTRIC:
        return _reach(arc, np.zeros(())) - _reach(arc, phi)
    begin = np.asarray(relief.margin_angle)
    return _reach(arc, begin) - _reach(arc, np.maximum(phi, begin))


def _reach(arc: Arc, phi: Floats) -> Floats:
    turned = np.radians(phi - arc.direction)
    along = arc.offset * np.cos(turned)
    # Beyond the land the ray may miss the circle; its nearest point keeps the law continuous.
    reach = arc.radius**2 - (arc.offset * np.sin(turned)) ** 2
    return along + np.sqrt(np.maximum(reach, 0.0))


def drop_rate(relief: Relief, major: float, phi: Floats) -> Floats:
    """How fast the drop grows with the angle at `phi` behind the crest edge.

    Args:
        relief: of the surface.
        major: diameter over the crests [mm].
        phi: angles behind the crest edge, any shape [deg].

    Returns:
        Derivative of `drop`, same shape [mm/rad].

    Source: derived here, from the arc's polar form.
    """
    if relief.kind is ReliefKind.CONCENTRIC:
        return np.zeros_like(phi)
    arc = arc_of(relief, major)
    turned = np.radians(phi - arc.direction)
    across = arc.offset * np.sin(turned)
    # Where the ray only just meets the circle its rate has no end; there is no land so wide.
    reach = np.sqrt(np.maximum(arc.radius**2 - across**2, np.finfo(float).tiny))
    rate = across * (1 + arc.offset * np.cos(turned) / reach)
    if relief.kind is ReliefKind.ECCENTRIC:
        return rate
    return np.where(phi > relief.margin_angle, rate, 0.0)


def heel_drop(relief: Relief, major: float, land_angle: float) -> float:
    """Drop at the heel of a land of `land_angle` [deg] at the major diameter [mm]."""
    return drop_law(relief, major)(land_angle)


def drop_law(relief: Relief, major: float) -> Callable[[float], float]:
    """The law of `drop` for one angle, which a section asks for thousands of times.

    Args:
        relief: of the surface.
        major: diameter over the crests [mm].

    Returns:
        Drop [mm] at an angle behind the crest edge [deg].
    """
    if relief.kind is ReliefKind.CONCENTRIC:
        return lambda _: 0.0
    arc = arc_of(relief, major)
    begin = -math.inf if relief.kind is ReliefKind.ECCENTRIC else relief.margin_angle
    highest = _reach_at(arc, max(0.0, begin))
    return lambda phi: highest - _reach_at(arc, max(phi, begin))


def _reach_at(arc: Arc, phi: float) -> float:
    """As `_reach`."""
    turned = math.radians(phi - arc.direction)
    reach = arc.radius**2 - (arc.offset * math.sin(turned)) ** 2
    return arc.offset * math.cos(turned) + math.sqrt(max(reach, 0.0))


def concentric(applies_to: ReliefPlace) -> Relief:
    """No relief: the surface keeps its radius."""
    return Relief(ReliefKind.CONCENTRIC, applies_to, 0.0, 0.0)


def con_eccentric(
    applies_to: ReliefPlace, major: float, land_angle: float, margin_angle: float, heel_drop: float
) -> Relief:
    """Margin without drop, then an arc that leaves it tangentially and reaches the heel drop.

    Tangency at the margin puts the centre on the radius through it: arc radius + arc offset =
    major/2, and the offset follows in closed form from the drop at the heel.

    Args:
        applies_to: surface that carries the relief.
        major: diameter over the crests [mm].
        land_angle: angle of the land at that diameter [deg].
        margin_angle: angle without drop, less than the land [deg].
        heel_drop: drop at the heel [mm].

    Source: derived here.
    """
    full, reached = major / 2, major / 2 - heel_drop
    cosine = math.cos(math.radians(land_angle - margin_angle))
    # |heel - centre| = arc radius, heel at radius `reached`, centre `offset` out along the margin
    offset = (full**2 - reached**2) / (2 * (full - reached * cosine))
    return Relief(ReliefKind.CON_ECCENTRIC, applies_to, margin_angle, offset)


def eccentric_by_edge(applies_to: ReliefPlace, major: float, edge_angle: float) -> Relief:
    """Drop that starts at the edge with `edge_angle`, on an arc of the tap's own radius.

    Args:
        applies_to: surface that carries the relief.
        major: diameter over the crests [mm].
        edge_angle: relief angle at the edge [deg].

    Source: derived here.
    """
    offset = major * math.sin(math.radians(edge_angle / 2))
    return Relief(ReliefKind.ECCENTRIC, applies_to, 0.0, offset)


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

    Source: derived here.
    """
    full, reached = major / 2, major / 2 - heel_drop
    along = reached * math.cos(math.radians(land_angle))
    across = reached * math.sin(math.radians(land_angle))
    chord = reached**2 - 2 * full * along + full**2
    cosine, sine = 2 * full * (along - full), 2 * full * across
    angle = math.atan2(sine, cosine) - math.acos(-chord / math.hypot(sine, cosine))
    return eccentric_by_edge(applies_to, major, math.degrees(angle))
