"""Shares of a set with which all its taps turn equally hard."""

import math
from collections.abc import Sequence
from dataclasses import replace

from tapmodel.prediction.part import earlier
from tapmodel.prediction.sets import Plan, TapOfSet, split
from tapmodel.prediction.thread_section import moment_above
from tapmodel.tap.tap import TapThread

_ROUNDS = 40
_CLOSE = 1e-10


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
        last = tap is taps[-1]
        own = thread if last else earlier(thread, tap.major, tap.pitch_diameter)
        moment = moment_above(own, bore)
        found.append((moment - before) * math.sin(rise) ** -exponent)
        before = moment
    return found
