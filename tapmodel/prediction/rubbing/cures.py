"""What clears the chamfer: its drop, a narrower land, a narrower margin."""

import math

import numpy as np

from tapmodel.numerics import border
from tapmodel.prediction.rubbing.land import Edges, clearances, gain, heel_phi
from tapmodel.prediction.rubbing.record import ChamferCure, Threshold
from tapmodel.prediction.rubbing.surfaces import Land, Surface
from tapmodel.shape.relief import con_eccentric, edge_angle, heel_drop
from tapmodel.tap.tap import Relief
from tapmodel.words import ReliefKind, ReliefPlace

# Parts of the land behind the edge at which an eccentric arc is held to its task. It bends towards
# the axis ever less, so that beside the heel only the very edge can decide.
_SHARES = np.array([0.01, 0.5, 1.0])
_ROUNDS = 8
# The drop is settled when it is this close [mm].
_CLOSE = 1e-7
# Steepest relief of an edge that is looked at [deg].
_STEEPEST = 45.0
# Narrower lands begin their search as if they were so wide.
_LEAST_SINE = 0.1
# A margin is told to this part of its land.
_FINE = 1e-3


def cure_of(surface: Surface, land: Land, heel: float, threshold: Threshold) -> ChamferCure:
    """What clears a chamfer, each value by itself.

    Args:
        surface: the chamfer's cone.
        land: its clearance as it is.
        heel: angle of the heel of the crest behind its edge [deg].
        threshold: noise and reserve.

    Source: derived here.
    """
    edges, advance, major = surface.edges, surface.advance, surface.edges.major
    least, safe = eccentrics_that_clear(edges, advance, (0.0, threshold.reserve))
    narrow = widest_land(land, threshold.noise)
    return ChamferCure(
        heel_drop=None if least is None else heel_drop(least, major, heel),
        edge_angle=None if least is None else edge_angle(least, major),
        arc_offset=None if least is None else least.arc_offset,
        safe_heel_drop=None if safe is None else heel_drop(safe, major, heel),
        safe_edge_angle=None if safe is None else edge_angle(safe, major),
        safe_arc_offset=None if safe is None else safe.arc_offset,
        land_angle=narrow,
        land_width=None if narrow is None else math.radians(narrow) * major / 2,
        margin_angle=None if narrow is None else widest_margin(surface, land, heel, threshold),
    )


def eccentrics_that_clear(
    edges: Edges, advance: float, reserves: tuple[float, ...]
) -> list[Relief | None]:
    """Least eccentric reliefs of a chamfer that clear on its land with a reserve at the heel.

    Between edge and heel the clearance must grow at least as evenly as to the reserve. Found by the
    secant rule on the arc's offset, which begins at none and at what the sine of the land makes of
    the want: the drop is all but proportional to it.

    Args:
        edges: points of the cone's edge.
        advance: of the cone [mm/deg].
        reserves: beyond clearing, at the heel [mm].

    Returns:
        A relief for each reserve, or None where no arc of a sensible edge clears.

    Source: derived here.
    """
    bare = _spare(edges, advance, 0.0)
    heel = min(float(np.max(edges.level_heel)), 90.0)
    across = max(math.sin(math.radians(heel)), _LEAST_SINE)
    return [_that_clears(edges, advance, (bare - spare, spare), across) for spare in reserves]


def _that_clears(
    edges: Edges, advance: float, wants: tuple[float, float], across: float
) -> Relief | None:
    most = edges.major * math.sin(math.radians(_STEEPEST / 2))
    (at_before, reserve), before = wants, 0.0
    offset = min(-at_before / across, most)
    for _ in range(_ROUNDS):
        found = _spare(edges, advance, offset) - reserve
        if abs(found) < _CLOSE:
            return _eccentric(offset)
        if found == at_before:
            return None
        step = -found * (offset - before) / (found - at_before)
        before, at_before, offset = offset, found, offset + step
        if not 0 < offset <= most:
            return None
    return None


def _eccentric(offset: float) -> Relief:
    return Relief(ReliefKind.ECCENTRIC, ReliefPlace.CHAMFER, 0.0, offset)


def _spare(edges: Edges, advance: float, offset: float) -> float:
    """Least clearance, brought to the heel in proportion to the way behind the edge [mm]."""
    relief = _eccentric(offset)
    start = edges.phi[:, None]
    phi = start + (heel_phi(edges, relief, advance)[:, None] - start) * _SHARES
    return float(np.min(clearances(edges, relief, advance, phi) / _SHARES))


def widest_land(land: Land, noise: float) -> float | None:
    """Angle behind the edge up to which the land stands proud by `noise` [mm] at most [deg].

    Returns:
        None where that is the whole land.

    Source: derived here; between neighbours the clearance is taken to run straight.
    """
    short = land.clearance + noise
    rows, columns = np.nonzero((short[:, :-1] >= 0) & (short[:, 1:] < 0))
    if len(rows) == 0:
        return None
    before, behind = short[rows, columns], short[rows, columns + 1]
    low, high = land.phi[rows, columns], land.phi[rows, columns + 1]
    crossing = low + (high - low) * before / (before - behind)
    return float(np.min(crossing - land.phi[rows, 0]))


def widest_margin(surface: Surface, land: Land, heel: float, threshold: Threshold) -> float | None:
    """Widest margin of a con-eccentric chamfer that stands proud by the noise at most [deg].

    Its drop at the heel of the crest is kept.

    Args:
        surface: the chamfer's cone.
        land: its clearance as it is.
        heel: angle of that heel behind its edge [deg].
        threshold: the noise.

    Source: derived here, by bisection.
    """
    relief, major = surface.relief, surface.edges.major
    if relief.kind is not ReliefKind.CON_ECCENTRIC:
        return None
    kept = heel_drop(relief, major, heel)
    edges, phi = surface.edges, land.phi[:, ::2]

    def clears(margin: float) -> bool:
        trial = con_eccentric(ReliefPlace.CHAMFER, major, heel, margin, kept)
        found = gain(trial, major, surface.advance, phi)
        start = gain(trial, major, surface.advance, edges.phi)
        return float(np.min(found - start[:, None])) >= -threshold.noise

    if not clears(0.0):
        return None
    return border(clears, 0.0, relief.margin_angle, _FINE)[0]
