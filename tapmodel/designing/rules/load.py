"""Rules on what the tap has to bear in the hole: torque against strength, and room for chips."""

import math
from collections.abc import Iterator

from tapmodel.designing.codes import Code
from tapmodel.designing.judging import (
    ERROR,
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
from tapmodel.findings import Lever
from tapmodel.prediction.prediction import Prediction
from tapmodel.prediction.thread_section import moment_above
from tapmodel.values import Values
from tapmodel.words import Severity

UNIT = "N·m"

CODES = frozenset({Code.TAP_OVERLOADED, Code.TORQUE_NEAR, Code.CHIP_ROOM})
"""Of the rules that need the prediction."""


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
    torque, stop = foreseen.torque.band, foreseen.strength.bears
    field, limit = "prediction.torque", at_most(stop, UNIT)
    values = Values(
        material=design.work.material.told,
        assumed=float(design.work.assumed),
        most=torque.high,
        yields=foreseen.strength.yields.low,
        breaks=foreseen.strength.breaks.low,
        place=foreseen.strength.governs.place,
        taps=float(design.part.taps if design.part else 1),
    )
    if over(torque.likely, stop):
        code, severity = Code.TAP_OVERLOADED, _severity(design)
        levers = tuple(_levers(design, torque.likely, stop))
        yield finding(
            code, severity, field, torque.likely, limit, OWN_RULE, values=values, levers=levers
        )
    elif over(torque.high, stop):
        yield finding(Code.TORQUE_NEAR, NOTE, field, torque.high, limit, OWN_RULE, values=values)


def _severity(design: TapDesign) -> Severity:
    """An error where the job says what is tapped, by one tap.

    By an assumed material nothing is refused; and who has shared the work already may know better
    than these bands how hard he can turn.
    """
    return WARNING if design.work.assumed or design.part else ERROR


def _levers(design: TapDesign, torque: float, stop: float) -> Iterator[Lever]:
    """A core as much larger as its cube asks for; a larger drill, if one inside the limits may do.

    Torque falls by less than the moment of what is left to cut, as chips grow thinner and friction
    stays.
    """
    core, drill, thread = design.tap.flutes.core_diameter, design.drill, design.tap.thread
    yield more("flutes.core_diameter", core, core * (torque / stop) ** (1 / 3))
    largest = design.hole.minor_max
    if drill < largest:
        left = moment_above(thread, largest) / moment_above(thread, drill)
        if left * torque < stop:
            yield more("hole.drill", drill)


def _room(design: TapDesign, foreseen: Prediction) -> Findings:
    """Chips that the flutes do not hold, though half of those of a through hole fall out of it."""
    held, depth = foreseen.chips_held, design.work.depth
    least = depth if design.work.blind else depth / 2
    if math.isfinite(held) and under(held, least):
        lead = design.tap.thread.lead
        values = Values(depth=depth, lead=lead)
        limit = at_least(least)
        yield finding(Code.CHIP_ROOM, NOTE, "prediction.room", held, limit, OWN_RULE, values=values)
