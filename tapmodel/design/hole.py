"""The hole that the tap is for: thread, class, limits, drill."""

import math
from dataclasses import dataclass

from tapmodel.design.ledger import Ledger, Rule
from tapmodel.design.provenance import OWN_RULE
from tapmodel.errors import InputError
from tapmodel.sources import Source
from tapmodel.spec.designation import Designation, parse
from tapmodel.spec.hole_class import HoleClass, parse_hole_class
from tapmodel.standards.hole_limits import metric_hole_limits
from tapmodel.standards.limits import HoleLimits, HoleLimitsFound
from tapmodel.standards.metric_pitches import coarse_pitch
from tapmodel.words import Certainty, Hand

CLASS_RULE = Rule("the class meant when none is written", Source("ISO 965-1", "", Certainty.MEMORY))


@dataclass(frozen=True, slots=True)
class TappedHole:
    """Thread to be cut, with every number settled.

    Attributes:
        text: shortest standard designation.
        diameter, pitch: nominal [mm].
        starts, hand: of the thread.
        hole_class: tolerance class.
        found: limits with their origin.
        drill: diameter [mm].
    """

    text: str
    diameter: float
    pitch: float
    starts: int
    hand: Hand
    hole_class: HoleClass
    found: HoleLimitsFound
    drill: float


def tapped_hole(designation: str, ledger: Ledger) -> TappedHole:
    """Read the designation, look up its limits, choose the drill.

    Raises:
        InputError: the designation cannot be read, or contradicts the job's hole class.

    Source: as the standards functions that it calls; drill by `nearest_drill`.
    """
    thread = parse(designation)
    pitch = coarse_pitch(thread.diameter) if thread.pitch is None else thread.pitch
    hole_class = _class(thread, ledger)
    found = metric_hole_limits(thread.diameter, pitch, hole_class)
    rule = Rule(
        "nominal diameter less one pitch, on the next step of 0.1 mm (0.05 mm below pitch 1) "
        "inside the minor limits",
        OWN_RULE,
    )
    drill = ledger.number(
        "hole.drill", nearest_drill(thread.diameter - pitch, pitch, found.limits), rule
    )
    text = Designation(
        thread.diameter, pitch, thread.hand, hole_class, thread.text, thread.starts
    ).canonical()
    return TappedHole(
        text, thread.diameter, pitch, thread.starts, thread.hand, hole_class, found, drill
    )


def _class(thread: Designation, ledger: Ledger) -> HoleClass:
    named = thread.hole_class
    if named is not None and not ledger.has("hole.class"):
        rule = Rule("as the designation says", Source("job", "designation", Certainty.READ))
        ledger.word("hole.class", str(named), rule)
        return named
    chosen = parse_hole_class(ledger.word("hole.class", str(thread.effective_class), CLASS_RULE))
    if named is not None and chosen != named:
        raise InputError(
            "hole.class together with designation",
            f"{chosen} and {thread.text}",
            "the same class in both; delete hole.class or take the class out of the designation",
        )
    return chosen


def nearest_drill(wanted: float, pitch: float, hole: HoleLimits) -> float:
    """Drill nearest to `wanted` [mm] on the coarsest step that falls inside the minor limits.

    Ties go to the even step, which gives 6.8 for M8, 10.2 for M12 and 8.8 for M10x1.25 as
    ISO 2306 lists them.

    Source: derived here; agrees with ISO 2306 (read) at M3 to M30 coarse.
    """
    for step in (0.1, 0.05, 0.01) if pitch >= 1 else (0.05, 0.01):
        lowest = math.ceil(round(hole.minor_min / step, 6))
        highest = math.floor(round(hole.minor_max / step, 6))
        if lowest <= highest:
            steps = min(max(round(round(wanted / step, 6)), lowest), highest)
            return round(steps * step, 2)
    return round((hole.minor_min + hole.minor_max) / 2, 3)
