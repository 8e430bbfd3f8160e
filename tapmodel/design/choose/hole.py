"""The hole that the tap is for: thread, class, limits, drill."""

from dataclasses import dataclass, replace

from tapmodel.design.choose.drill import drill_for, drills_inside, nearest_drill, thread_percentage
from tapmodel.design.choose.ledger import Ledger, Rule
from tapmodel.design.provenance import OWN_RULE
from tapmodel.errors import InputError
from tapmodel.sources import Source
from tapmodel.spec.designation import Designation, canonical, parse, read_class
from tapmodel.standards.drill_sets import DRILL_SETS, METRIC, inch_names, metric_drill
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
        drill_sets: sets of drills on hand.
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
    drill_sets: tuple[str, ...]
    drill: float


def tapped_hole(designation: str, ledger: Ledger) -> TappedHole:
    """Read the designation, look up its limits, choose the drill.

    Raises:
        InputError: the designation cannot be read, or contradicts the job's hole class;
            or the drill contradicts the engagement wanted.

    Source: as the standards functions that it calls; drill by `nearest_drill`.
    """
    read = parse(designation)
    rules = FAMILIES[read.family]
    thread = _with_class(rules.settle(read), rules, ledger)
    pitch, found = settled_pitch(thread), rules.hole_limits(thread)
    drill_sets = _drill_sets(ledger)
    return TappedHole(
        thread=thread,
        text=canonical(thread),
        diameter=thread.diameter,
        pitch=pitch,
        starts=thread.starts,
        hand=thread.hand,
        rules=rules,
        found=found,
        drill_sets=drill_sets,
        drill=_drill(thread, rules, found.limits, drill_sets, ledger),
    )


def _drill_sets(ledger: Ledger) -> tuple[str, ...]:
    """The sets that the job names, else metric drills alone."""
    named = ledger.words("shop.drills") or (METRIC,)
    return tuple(name for name in DRILL_SETS if name in named)


def _drill(
    thread: Designation,
    rules: FamilyRules,
    limits: HoleLimits,
    drill_sets: tuple[str, ...],
    ledger: Ledger,
) -> float:
    pitch, engagement = settled_pitch(thread), ledger.given("hole.engagement", "%")
    if engagement is None:
        wanted = thread.diameter - rules.drop_to_drill * pitch
        less = "one pitch" if rules.drop_to_drill == 1 else f"{rules.drop_to_drill:g} pitches"
        aim = f"nominal diameter less {less}"
    else:
        wanted = drill_for(engagement, thread.diameter, pitch, rules.form)
        aim = f"{wanted:.3f} mm for {engagement:g} % of the basic depth of engagement"
        if not limits.minor_min <= wanted <= limits.minor_max:
            ends = (limits.minor_max, limits.minor_min)
            least, most = (
                thread_percentage(thread.diameter, end, pitch, rules.form).of_engagement
                for end in ends
            )
            aim += f", beyond the {least:.1f} to {most:.1f} % that the minor limits allow"
    ruled = nearest_drill(wanted, pitch, limits, drill_sets)
    inside = bool(drills_inside(wanted, pitch, limits, drill_sets))
    rule = Rule(f"{aim}, {_picked(ruled, drill_sets, inside=inside)}", OWN_RULE)
    drill = ledger.number("hole.drill", ruled, rule)
    if engagement is not None and abs(drill - ruled) > 1e-6:
        raise InputError(
            "hole.drill together with hole.engagement",
            f"{drill:g} and {engagement:g}",
            f"one of the two ({engagement:g} % asks for a drill of {ruled:g} mm here); delete "
            "hole.drill or hole.engagement",
        )
    return drill


def _picked(drill: float, drill_sets: tuple[str, ...], *, inside: bool) -> str:
    """How the drill was picked, as the end of a sentence."""
    if not inside:
        return "in steps of 0.01 mm inside the minor limits, where no drill on hand lies"
    if drill_sets == (METRIC,):
        return (
            "on the next step of 0.1 mm (0.05 mm below pitch 1, 0.01 mm below 1 mm) inside the "
            "minor limits"
        )
    name = " = ".join(inch_names(drill)) or metric_drill(drill).name
    return f"the nearest inside the minor limits of the {', '.join(drill_sets)} drills: {name}"


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
