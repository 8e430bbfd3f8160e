"""The hole that the tap is for: thread, class, limits, drill."""

from dataclasses import dataclass, replace

from tapmodel.designing.choose.drill import (
    drill_for,
    drills_suiting,
    nearest_drill,
    thread_percentage,
)
from tapmodel.designing.choose.ledger import Ledger, by_rule
from tapmodel.designing.choose.tools import tool_sizes
from tapmodel.designing.provenance import OWN_RULE, PRACTICE
from tapmodel.errors import InputError
from tapmodel.sources import Source
from tapmodel.spec.designation import Designation, canonical, parse, read_class
from tapmodel.standards.drill_sets import DRILL_SETS, INCH_SETS, METRIC
from tapmodel.standards.families import FAMILIES
from tapmodel.standards.family_rules import FamilyRules, settled_pitch
from tapmodel.standards.limits import HoleLimits, HoleLimitsFound
from tapmodel.words import Certainty, Hand, ToolSizes

WRITTEN_RULE = by_rule("class-written", Source("job", "designation", Certainty.READ))


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
        tools: sizes of drills and cutters that the rules count on.
        drill_sets: sets of drills on hand.
        ruled_sets: those that the rule counts on.
        drill: diameter [mm].
        ruled_drill: the one that the rule takes [mm], where another is given, too.
    """

    thread: Designation
    text: str
    diameter: float
    pitch: float
    starts: int
    hand: Hand
    rules: FamilyRules
    found: HoleLimitsFound
    tools: ToolSizes
    drill_sets: tuple[str, ...]
    ruled_sets: tuple[str, ...]
    drill: float
    ruled_drill: float


def tapped_hole(designation: str, ledger: Ledger) -> TappedHole:
    """Read the designation, look up its limits, choose the drill.

    Raises:
        InputError: the designation cannot be read, or contradicts the job's hole class;
            or the drill contradicts the engagement wanted.

    Source: as the standards functions that it calls; drill by `nearest_drill`.
    """
    read = parse(designation)
    rules = FAMILIES[read.family]
    try:
        thread = _with_class(rules.settle(read), rules, ledger)
        pitch, found = settled_pitch(thread), rules.hole_limits(thread)
    except InputError as error:
        if error.field not in ("pitch", "diameter"):
            raise
        # Whoever reads the message typed the pair, and looks for what he typed.
        field = f"designation {designation}: {error.field}"
        raise InputError(field, error.value, error.allowed) from None
    tools = tool_sizes(thread.family, ledger)
    ruled_sets = (METRIC,) if tools is ToolSizes.METRIC else DRILL_SETS
    rule = by_rule("drills-likely", PRACTICE, tools=tools.value)
    named = ledger.words("shop.drills", ruled_sets, rule)
    drill_sets = tuple(name for name in DRILL_SETS if name in named)
    drill, ruled = _drill(thread, rules, found.limits, drill_sets, ledger)
    return TappedHole(
        thread=thread,
        text=canonical(thread),
        diameter=thread.diameter,
        pitch=pitch,
        starts=thread.starts,
        hand=thread.hand,
        rules=rules,
        found=found,
        tools=tools,
        drill_sets=drill_sets,
        ruled_sets=ruled_sets,
        drill=drill,
        ruled_drill=ruled,
    )


def _drill(
    thread: Designation,
    rules: FamilyRules,
    limits: HoleLimits,
    drill_sets: tuple[str, ...],
    ledger: Ledger,
) -> tuple[float, float]:
    """The drill, and the one that the rule takes [mm]."""
    pitch, engagement = settled_pitch(thread), ledger.given("hole.engagement")
    if engagement is None:
        wanted = thread.diameter - rules.drop_to_drill * pitch
    else:
        wanted = drill_for(engagement, thread.diameter, pitch, rules.form)
    # Who buys inch sizes takes a metric drill only where none of his own suits.
    if drill_sets == DRILL_SETS and drills_suiting(wanted, pitch, limits, INCH_SETS):
        drill_sets = INCH_SETS
    ruled = nearest_drill(wanted, pitch, limits, drill_sets)
    picked = {"drill": ruled, "drill_sets": drill_sets}
    least, most = engagement_allowed(thread, rules, limits)
    if not drills_suiting(wanted, pitch, limits, drill_sets):
        low, high = limits.minor_min, limits.minor_max
        aim = {"wanted": wanted, "engagement": engagement or 0.0}
        rule = by_rule("bore-to-limits", OWN_RULE, low=low, high=high, **aim)
    elif engagement is None:
        rule = by_rule("drill-by-pitches", OWN_RULE, pitches=rules.drop_to_drill, **picked)
    else:
        rule = by_rule(
            "drill-by-engagement",
            OWN_RULE,
            wanted=wanted,
            engagement=engagement,
            beyond=not limits.minor_min <= wanted <= limits.minor_max,
            least=least,
            most=most,
            **picked,
        )
    drill = ledger.number("hole.drill", ruled, rule)
    if engagement is not None and abs(drill - ruled) > 1e-6:
        raise InputError(
            "hole.drill together with hole.engagement",
            f"{drill:g} and {engagement:g}",
            f"one of the two ({engagement:g} % asks for a drill of {ruled:g} mm here); delete "
            "hole.drill or hole.engagement",
        )
    return drill, ruled


def engagement_allowed(
    thread: Designation, rules: FamilyRules, limits: HoleLimits
) -> tuple[float, float]:
    """Least and most engagement [%] that the minor limits allow.

    Source: as `thread_percentage`.
    """
    pitch = settled_pitch(thread)
    least, most = (
        thread_percentage(thread.diameter, end, pitch, rules.form).of_engagement
        for end in (limits.minor_max, limits.minor_min)
    )
    return least, most


def _with_class(thread: Designation, rules: FamilyRules, ledger: Ledger) -> Designation:
    named = thread.hole_class
    if named is not None and not ledger.has("hole.class"):
        ledger.word("hole.class", named, WRITTEN_RULE)
        return thread
    if not thread.default_class and not ledger.has("hole.class"):
        return thread
    meant = by_rule("class-meant", rules.default_class)
    chosen = read_class(thread.family, ledger.word("hole.class", thread.effective_class, meant))
    if named is not None and chosen != named:
        raise InputError(
            "hole.class together with designation",
            f"{chosen} and {thread.text}",
            "the same class in both; delete hole.class or take the class out of the designation",
        )
    return replace(thread, hole_class=chosen)
