"""Choosing the flutes: wishes, the cutters on hand, and the one that fits best."""

import math
from dataclasses import dataclass, replace

from tapmodel.designing.choose.cutters import (
    CUTTERS,
    INCH_CUTTERS,
    INCH_LARGE_CUTTERS,
    LARGE_CUTTERS,
    LARGEST_MICRO,
    LEAST_LARGE,
    cutters_likely,
)
from tapmodel.designing.choose.fitting import Candidate, FlutedTap, best_cutter
from tapmodel.designing.choose.flute_solve import FluteWish, Unmet
from tapmodel.designing.choose.hole import TappedHole
from tapmodel.designing.choose.ledger import Ledger, Rule, by_rule
from tapmodel.designing.choose.shallow import (
    LARGEST_CUTTERS,
    SHALLOW_COUNTS,
    SPARE,
    shallow_for,
)
from tapmodel.designing.limits.chips import chip_range
from tapmodel.designing.limits.flutes import land_width, no_land
from tapmodel.designing.limits.lands import most_rubbing
from tapmodel.designing.limits.turns import large_and_fine
from tapmodel.designing.provenance import OWN_RULE, PRACTICE, PRACTICE_FROM_MEMORY
from tapmodel.errors import NoTapError
from tapmodel.findings import Finding
from tapmodel.shape.flute_section import FluteSection
from tapmodel.standards.materials.groups import RAKE, WorkGroup
from tapmodel.tap.tap import TapThread
from tapmodel.words import ToolSizes

COUNTS = (3, 4, 6, 8)
"""Numbers of flutes that the rule goes through; all but the first can be measured across."""

MOST_OF_ROOT = 0.75
"""Largest share of the diameter over the roots that a rule makes the core."""

CORE_SHARES = {2: 0.35, 3: 0.40, 4: 0.45}
LAND_SHARE = 0.35
STEELS = 8.0
"""Rake that lies inside the usual range of every steel [deg]."""

LEAST_KEPT = 0.25
"""Share of the rake at the crest that the edge has to keep down to the hole's wall, or a rule takes
more flutes: their cutters are smaller, and their faces straight further down."""

FOUR_IN_INCHES = 6.35
"""Nominal diameter [mm] from which on hand taps of inch sizes are usual with four flutes, where
metric ones have three (common practice): those a rule may give one more for the rake's sake."""

CORE_OR_DEPTH = ("flutes.core_diameter", "flutes.depth_from_top")

LAND_RULE = by_rule("land-third-of-spacing", PRACTICE)


@dataclass(frozen=True, slots=True)
class ChosenFlutes:
    """Outcome: the section, and the wish that could not be met, if any."""

    wish: FluteWish
    section: FluteSection
    unmet: Unmet | None


@dataclass(frozen=True, slots=True)
class _Settled:
    wish: FluteWish
    best: Candidate | None
    reasons: tuple[Finding, ...]


def choose_flutes(
    thread: TapThread, hole: TappedHole, group: WorkGroup, ledger: Ledger
) -> ChosenFlutes:
    """Settle number, cutter, offset and depth.

    Of the cutters on hand that meet every limit, leave no tooth scraping at the wall of the
    drilled hole, none taller than its foot is thick and no land so wide that it rubs, the one whose
    land comes closest to the wanted width; where none does, the one that falls short least, and the
    rules then say what binds.

    Args:
        thread: of the tap.
        hole: of which the nominal diameter counts, the sizes of tools, and the drill: the tap's
            root lies deeper and cuts nothing.
        group: of the material to be tapped.
        ledger: of the design.

    Raises:
        NoTapError: no cutter leaves a tooth at all.

    Source: derived here; default numbers common practice.
    """
    wall = min(max(hole.drill, thread.minor), thread.major) / 2
    tap = FlutedTap(thread, hole.diameter, wall, group, hole.tools)
    if large_and_fine(hole.diameter, thread.pitch) and not any(map(ledger.settles, CORE_OR_DEPTH)):
        # The rule's own share stands in every file that `new` writes; nobody wished for it.
        narrow = ledger.peek("flutes.land_share") in (None, LAND_SHARE)
        least_chip = chip_range(group, thread.pitch).least
        shallow = shallow_for(thread, hole, wall, least_chip)
        tap = replace(tap, shallow=shallow, narrow=narrow)
        tap, usual, rule = _shallow(tap, shallow.most, ledger)
    else:
        usual, rule = _ruled_count(tap, ledger)
    count = ledger.whole("flutes.count", usual, rule)
    settled = _settled(tap, count, ledger)
    best = settled.best
    if best is None:
        raise NoTapError(settled.reasons[0])
    if land_width(best.section, count, tap.tooth.crest) <= 0:
        raise NoTapError(no_land(best.section, count, tap.tooth))
    if not ledger.has("flutes.cutter_diameter"):
        _note_cutter(best, settled.wish, ledger)
    wish = settled.wish if tap.shallow is None else _noted_core(best, settled.wish, ledger)
    return ChosenFlutes(wish, best.section, best.unmet)


def _shallow(tap: FlutedTap, most: int, ledger: Ledger) -> tuple[FlutedTap, int, Rule]:
    """Number of shallow flutes, at `most` so many, and the tap with the largest cutter they need.

    The smallest of the largest cutters with which some number of flutes leaves nothing wrong, and
    of these numbers the least. What the shop has and what is given is not chosen from again.
    """
    usual = ruled_count(tap.diameter)
    counts = tuple(n for n in SHALLOW_COUNTS if usual <= n <= most) or (usual,)
    if ledger.has("flutes.cutter_diameter") or ledger.has("flutes.count"):
        counts = (int(ledger.peek("flutes.count") or usual),)
    on_hand = ledger.has("flutes.cutter_diameter") or ledger.has("shop.cutters")
    tried = [
        (replace(tap, largest=largest), count)
        for largest in ((math.inf,) if on_hand else LARGEST_CUTTERS)
        for count in counts
    ]
    found = (one for one in tried if _is_good(_settled(*one, ledger.draft()).best))
    chosen, count = next(found, tried[-1])
    if count == usual:
        return chosen, count, _by_diameter(tap)
    return chosen, count, by_rule("count-of-shallow", OWN_RULE, usual=usual)


def _noted_core(best: Candidate, wish: FluteWish, ledger: Ledger) -> FluteWish:
    """The wish with the core that shallow flutes leave, which is noted."""
    rule = by_rule("core-of-shallow", OWN_RULE, spare=SPARE)
    core = round(best.section.core_diameter, 6)
    return replace(wish, core_diameter=ledger.number("flutes.core_diameter", core, rule))


def _settled(tap: FlutedTap, count: int, ledger: Ledger) -> _Settled:
    """The best cutter for that number of flutes."""
    wish = _wish(tap, count, ledger)
    given, listed = ledger.given("flutes.cutter_diameter"), ledger.given_numbers("shop.cutters")
    on_hand = (given,) if given else listed
    if on_hand:
        return _Settled(wish, *best_cutter(wish, on_hand, tap))
    likely, rule = _ruled_cutters(tap, tap.tools)
    found = best_cutter(wish, likely, tap)
    if tap.tools is ToolSizes.INCH and not _is_good(found[0]):
        # Inch sizes leave wider gaps; who has none that suits buys a metric one.
        both = (*likely, *_ruled_cutters(tap, ToolSizes.METRIC)[0])
        metric = best_cutter(wish, both, tap)
        if _is_good(metric[0]):
            likely, rule, found = both, by_rule("cutters-inch-and-metric", PRACTICE), metric
    ledger.numbers("shop.cutters", likely, rule)
    return _Settled(wish, *found)


def _is_good(best: Candidate | None) -> bool:
    return best is not None and best.good


def _ruled_cutters(tap: FlutedTap, tools: ToolSizes) -> tuple[tuple[float, ...], Rule]:
    inch = tools is ToolSizes.INCH
    if tap.shallow is not None:
        stocked = {*INCH_CUTTERS, *INCH_LARGE_CUTTERS} if inch else {*CUTTERS, *LARGE_CUTTERS}
        cutters = tuple(sorted(size for size in stocked if size <= tap.largest))
        values = {"tools": tools.value, "most": cutters[-1]}
        return cutters, by_rule("cutters-likely-and-small", OWN_RULE, **values)
    rule = by_rule("cutters-likely", PRACTICE, tools=tools.value)
    if tap.diameter < LARGEST_MICRO:
        rule = by_rule("cutters-likely-and-micro", PRACTICE, tools=tools.value)
    elif tap.diameter > LEAST_LARGE:
        rule = by_rule("cutters-likely-and-large", PRACTICE, tools=tools.value)
    return cutters_likely(tap.diameter, tools), rule


def _note_cutter(best: Candidate, wish: FluteWish, ledger: Ledger) -> None:
    rule = by_rule("cutter-nearest-land", OWN_RULE, width=wish.land_width)
    if best.shortfall > 0 or best.unmet:
        rule = by_rule("cutter-least-short", OWN_RULE)
    ledger.number("flutes.cutter_diameter", 2 * best.section.ball_radius, rule)


def _ruled_count(tap: FlutedTap, ledger: Ledger) -> tuple[int, Rule]:
    """The number by diameter, or the next where that mends lands that rub or an edge too blunt.

    A cutter that is given leaves what it leaves: its lands do not ask for more flutes.
    """
    usual = ruled_count(tap.diameter)
    by_diameter = usual, _by_diameter(tap)
    if ledger.has("flutes.count") or ledger.has("flutes.cutter_diameter") or usual == COUNTS[-1]:
        return by_diameter
    first = _settled(tap, usual, ledger.draft())
    best, least = first.best, LEAST_KEPT * (first.wish.rake or 0.0)
    may = tap.tools is ToolSizes.INCH and tap.diameter >= FOUR_IN_INCHES
    if best is None or not (best.wide or (may and best.at_wall < least)):
        return by_diameter
    more = COUNTS[COUNTS.index(usual) + 1]
    second = _settled(tap, more, ledger.draft()).best
    if second is None or not second.good:
        return by_diameter
    if best.wide:
        width = land_width(best.section, usual, tap.tooth.crest)
        spacing = math.pi * tap.thread.major / usual
        shares = {"share": width / spacing, "most": most_rubbing(tap.thread.major, usual) / spacing}
        return more, by_rule("count-against-wide-lands", OWN_RULE, usual=usual, **shares)
    if second.at_wall < least:
        return by_diameter
    values = {"usual": usual, "rake": best.at_wall}
    return more, by_rule("count-against-blunt-edge", OWN_RULE, **values)


def _by_diameter(tap: FlutedTap) -> Rule:
    return by_rule("count-by-diameter", PRACTICE, diameter=tap.diameter)


def ruled_count(diameter: float) -> int:
    """Number of flutes by rule for a nominal `diameter` [mm].

    Source: common practice (from memory): M3 to M6 3, M8 to M14 3 or 4, M16 to M24 4, above 4 to 6;
    more above 100 mm is a rule of this program.
    """
    if diameter < 12:
        return 3
    if diameter <= 36:
        return 4
    return 6 if diameter <= 100 else 8


def _wish(tap: FlutedTap, count: int, ledger: Ledger) -> FluteWish:
    offset, rake = ledger.given("flutes.offset"), None
    if offset is None:
        rake = ledger.number("flutes.rake", *_ruled_rake(tap.group))
    depth, core = ledger.given("flutes.depth_from_top"), None
    if depth is None and tap.shallow is not None:
        core = _usual_core(tap, count)[0]
    elif depth is None:
        core = _core(tap, count, ledger)
    share = ledger.number("flutes.land_share", LAND_SHARE, LAND_RULE)
    return FluteWish(count, rake, offset, core, depth, share * math.pi * tap.thread.major / count)


def _ruled_rake(group: WorkGroup) -> tuple[float, Rule]:
    """The one for steels where it suits [deg], or the middle of what does.

    Source: the group's range; that all steels are tapped with one rake is a rule of this program.
    """
    low, high = group.rake
    rake = STEELS if low <= STEELS <= high else (low + high) / 2
    return rake, by_rule("rake-for-group", RAKE, rake=rake, low=low, high=high, group=group.name)


def _core(tap: FlutedTap, count: int, ledger: Ledger) -> float:
    return ledger.number("flutes.core_diameter", *_usual_core(tap, count))


def _usual_core(tap: FlutedTap, count: int) -> tuple[float, Rule]:
    share = CORE_SHARES.get(count, 0.5)
    usual, most = round(share * tap.diameter, 3), round(MOST_OF_ROOT * tap.thread.minor, 3)
    rule = by_rule("core-of-diameter", PRACTICE_FROM_MEMORY, share=share, count=count)
    if usual > most:
        rule = by_rule("core-of-root", OWN_RULE, share=MOST_OF_ROOT)
    return min(usual, most), rule
