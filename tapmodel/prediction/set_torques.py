"""Shares of a set with which all its taps turn equally hard."""

import math
from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from tapmodel.prediction.sets import Plan, TapOfSet, split
from tapmodel.shape.profile import profile_radius, segments
from tapmodel.tap.tap import TapThread

_ROUNDS = 40
_CLOSE = 1e-10
# Places in a pitch at which a profile is summed up.
_OFFSETS = 4000


def equal_torque_shares(
    thread: TapThread, bore: float, plan: Plan, point: float, exponent: float
) -> tuple[float, ...]:
    """Shares with which every tap of a set needs the same torque to cut.

    A tap needs its area times the radius at which it lies times the specific force, and that falls
    with the chip's thickness to the power `exponent`. The thickness goes with the sine of the
    chamfer's angle, which follows from the tap's height above its point and the chamfer's length;
    friction is left out.

    Args:
        thread: of the last tap.
        bore: diameter of the drilled hole [mm].
        plan: chamfers and allowance; its shares are where the search begins.
        point: diameter of the points of all taps [mm].
        exponent: of the chip's thickness in the specific force, 0 to 0.5.

    Raises:
        ValueError: as `split`.

    Source: derived here; the power law as given by O. Kienzle, VDI-Z 94 (1952), from memory.
    """
    shares = plan.shares
    for _ in range(_ROUNDS):
        taps = split(thread, bore, replace(plan, shares=shares))
        torques = _torques(thread, bore, taps, point, exponent)
        easy = [tap.area / torque for tap, torque in zip(taps, torques, strict=True)]
        before, shares = shares, tuple(one / sum(easy) for one in easy)
        if max(abs(a - b) for a, b in zip(before, shares, strict=True)) < _CLOSE:
            break
    return shares


def _torques(
    thread: TapThread, bore: float, taps: Sequence[TapOfSet], point: float, exponent: float
) -> list[float]:
    """Torques of all taps of a set, first to last, in one and any unit."""
    found: list[float] = []
    before = 0.0
    for tap in taps:
        rise = math.atan2((tap.major - point) / 2, tap.chamfer_leads * thread.lead)
        moment = _moment(_as_cut(thread, tap, tap is taps[-1]), bore)
        found.append((moment - before) * math.sin(rise) ** -exponent)
        before = moment
    return found


def _moment(thread: TapThread, bore: float) -> float:
    """First moment about the axis of the section above the hole, of one start [mm³]."""
    offsets = thread.pitch * (np.arange(_OFFSETS) + 0.5) / _OFFSETS
    radii = profile_radius(segments(thread), offsets)
    above = np.maximum(radii**2 - (bore / 2) ** 2, 0.0) / 2
    return float(np.mean(above)) * thread.pitch


def _as_cut(thread: TapThread, tap: TapOfSet, last: bool) -> TapThread:
    return replace(
        thread,
        major=tap.major,
        pitch_diameter=tap.pitch_diameter,
        minor=tap.minor,
        rounded_crest=thread.rounded_crest and last,
    )
