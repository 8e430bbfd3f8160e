"""Rules on what the tap has to bear in the hole: torque against strength, and room for chips."""

import math

from tapmodel.designing.codes import Code
from tapmodel.designing.judging import (
    NOTE,
    WARNING,
    Findings,
    at_least,
    at_most,
    finding,
    more,
    over,
    under,
)
from tapmodel.designing.provenance import OWN_RULE
from tapmodel.designing.record import TapDesign
from tapmodel.prediction.prediction import Prediction
from tapmodel.values import Values

UNIT = "N·m"


def judge(design: TapDesign) -> Findings:
    """Every finding on the load; `design` has its prediction.

    Source: each names its own.
    """
    if design.prediction is None:
        return
    yield from _torque(design, design.prediction)
    yield from _room(design, design.prediction)


def _torque(design: TapDesign, foreseen: Prediction) -> Findings:
    """The likely torque above the one to stop at; or what it may come to, which is only a note."""
    torque, stop = foreseen.torque.band, foreseen.strength.stop_at
    field, limit = "prediction.torque", at_most(stop, UNIT)
    values = Values(
        material=design.work.material.name,
        assumed=float(design.work.assumed),
        most=torque.high,
        breaks=foreseen.strength.breaks.low,
        place=foreseen.strength.governs.place,
        taps=float(taps_needed(torque.likely, stop)),
    )
    if over(torque.likely, stop):
        core, drill = design.tap.flutes.core_diameter, design.drill
        levers = (more("flutes.core_diameter", core), more("hole.drill", drill))
        yield finding(
            Code.TAP_OVERLOADED,
            WARNING,
            field,
            torque.likely,
            limit,
            OWN_RULE,
            values=values,
            levers=levers,
        )
    elif over(torque.high, stop):
        yield finding(Code.TORQUE_NEAR, NOTE, field, torque.high, limit, OWN_RULE, values=values)


def taps_needed(torque: float, stop: float) -> int:
    """Among how many taps the work is shared so that none takes more than the torque to stop at.

    Source: rule of this program: a first tap does 0.7 of the work of two and 0.6 of that of three;
    more than three are never made.
    """
    return 2 if 0.7 * torque <= stop else 3


def _room(design: TapDesign, foreseen: Prediction) -> Findings:
    """Chips that the flutes do not hold, though half of those of a through hole fall out of it."""
    room, depth = foreseen.room, design.work.depth
    held, least = (room.blind, depth) if design.work.blind else (room.through, depth / 2)
    if math.isfinite(held) and under(held, least):
        values = Values(depth=depth)
        limit = at_least(least)
        yield finding(Code.CHIP_ROOM, NOTE, "prediction.room", held, limit, OWN_RULE, values=values)
