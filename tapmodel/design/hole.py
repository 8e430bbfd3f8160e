"""The hole that the tap is for: thread, class, limits, drill."""

import math
from dataclasses import dataclass, replace

from tapmodel.design.ledger import Ledger, Rule
from tapmodel.design.provenance import OWN_RULE
from tapmodel.errors import InputError
from tapmodel.sources import Source
from tapmodel.spec.designation import Designation, canonical, parse, read_class
from tapmodel.standards.families import FAMILIES
from tapmodel.standards.family_rules import FamilyRules, settled_pitch
from tapmodel.standards.limits import HoleLimits, HoleLimitsFound
from tapmodel.words import Certainty, Hand

CLASS_WHY = "the class meant when none is written"


@dataclass(frozen=True, slots=True)
class TappedHole:
    """Thread to be cut, with every number settled.

    Attributes:
        thread: its designation with pitch and class.
        text: shortest standard designation.
        diameter, pitch: nominal [mm].
        starts, hand: of the thread.
        rules: what the standards of its family give.
        found: limits with their origin.
        drill: diameter [mm].
    """

    thread: Designation
    text: str
    diameter: float
    pitch: float
    starts: int
    hand: Hand
    rules: FamilyRules
    found: HoleLimitsFound
    drill: float


def tapped_hole(designation: str, ledger: Ledger) -> TappedHole:
    """Read the designation, look up its limits, choose the drill.

    Raises:
        InputError: the designation cannot be read, or contradicts the job's hole class.

    Source: as the standards functions that it calls; drill by `nearest_drill`.
    """
    read = parse(designation)
    rules = FAMILIES[read.family]
    thread = _with_class(rules.settle(read), rules, ledger)
    pitch, found = settled_pitch(thread), rules.hole_limits(thread)
    return TappedHole(
        thread=thread,
        text=canonical(thread),
        diameter=thread.diameter,
        pitch=pitch,
        starts=thread.starts,
        hand=thread.hand,
        rules=rules,
        found=found,
        drill=_drill(thread.diameter, pitch, rules, found.limits, ledger),
    )


def _drill(
    diameter: float, pitch: float, rules: FamilyRules, limits: HoleLimits, ledger: Ledger
) -> float:
    less = "one pitch" if rules.drop_to_drill == 1 else f"{rules.drop_to_drill:g} pitches"
    why = (
        f"nominal diameter less {less}, on the next step of 0.1 mm (0.05 mm below pitch 1) inside "
        "the minor limits"
    )
    wanted = diameter - rules.drop_to_drill * pitch
    return ledger.number("hole.drill", nearest_drill(wanted, pitch, limits), Rule(why, OWN_RULE))


def _with_class(thread: Designation, rules: FamilyRules, ledger: Ledger) -> Designation:
    named = thread.hole_class
    if named is not None and not ledger.has("hole.class"):
        rule = Rule("as the designation says", Source("job", "designation", Certainty.READ), "")
        ledger.word("hole.class", named, rule)
        return thread
    if not thread.default_class and not ledger.has("hole.class"):
        return thread
    meant = Rule(CLASS_WHY, rules.default_class, "")
    chosen = read_class(thread.family, ledger.word("hole.class", thread.effective_class, meant))
    if named is not None and chosen != named:
        raise InputError(
            "hole.class together with designation",
            f"{chosen} and {thread.text}",
            "the same class in both; delete hole.class or take the class out of the designation",
        )
    return replace(thread, hole_class=chosen)


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
