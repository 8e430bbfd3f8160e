"""Choosing the flutes: wishes, the cutters on hand, and the one that fits best."""

import math
from dataclasses import dataclass
from functools import lru_cache

from tapmodel.designing.choose.cutters import LARGEST_MICRO, LEAST_LARGE, cutters_likely
from tapmodel.designing.choose.flute_solve import FluteWish, Unmet, offset_for, solve
from tapmodel.designing.choose.hole import TappedHole
from tapmodel.designing.choose.ledger import Ledger, Rule, by_rule
from tapmodel.designing.limits.flutes import (
    ToothRadii,
    impossible,
    land_width,
    misplaced,
    no_land,
    shortfall,
    stands,
)
from tapmodel.designing.limits.lands import most_rubbing
from tapmodel.designing.provenance import OWN_RULE, PRACTICE, PRACTICE_FROM_MEMORY
from tapmodel.errors import NoTapError
from tapmodel.findings import Finding
from tapmodel.shape.flute_section import FluteSection, rake
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

LAND_RULE = by_rule("land-third-of-spacing", PRACTICE)


@dataclass(frozen=True, slots=True)
class ChosenFlutes:
    """Outcome: the section, and the wish that could not be met, if any."""

    wish: FluteWish
    section: FluteSection
    unmet: Unmet | None


@dataclass(frozen=True, slots=True)
class _Tap:
    """What the flutes are cut into.

    Attributes:
        thread: of the tap.
        diameter: nominal [mm].
        wall: radius where the wall of the drilled hole begins, the innermost that cuts [mm].
        group: of the material to be tapped.
        tools: sizes of cutters that the rule counts on.
    """

    thread: TapThread
    diameter: float
    wall: float
    group: WorkGroup
    tools: ToolSizes

    @property
    def tooth(self) -> ToothRadii:
        """From crest to root."""
        return ToothRadii(self.thread.major / 2, self.thread.minor / 2)


@dataclass(frozen=True, slots=True)
class _Candidate:
    section: FluteSection
    unmet: Unmet | None
    shortfall: float
    scrapes: bool
    weak: bool
    wide: bool
    land_miss: float

    @property
    def good(self) -> bool:
        """Whether nothing is wrong with it."""
        faults = self.scrapes or self.weak or self.wide
        return not (self.unmet or self.shortfall > 0 or faults)


@dataclass(frozen=True, slots=True)
class _Settled:
    wish: FluteWish
    best: _Candidate | None
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
    tap = _Tap(thread, hole.diameter, wall, group, hole.tools)
    count = ledger.whole("flutes.count", *_ruled_count(tap, ledger))
    settled = _settled(tap, count, ledger)
    best = settled.best
    if best is None:
        raise NoTapError(settled.reasons[0])
    if land_width(best.section, count, tap.tooth.crest) <= 0:
        raise NoTapError(no_land(best.section, count, tap.tooth))
    if not ledger.has("flutes.cutter_diameter"):
        _note_cutter(best, settled.wish, ledger)
    return ChosenFlutes(settled.wish, best.section, best.unmet)


def _settled(tap: _Tap, count: int, ledger: Ledger) -> _Settled:
    """The best cutter for that number of flutes."""
    wish = _wish(tap, count, ledger)
    given, listed = ledger.given("flutes.cutter_diameter"), ledger.given_numbers("shop.cutters")
    on_hand = (given,) if given else listed
    if on_hand:
        return _Settled(wish, *_best(wish, on_hand, tap))
    likely, rule = _ruled_cutters(tap, tap.tools)
    found = _best(wish, likely, tap)
    if tap.tools is ToolSizes.INCH and not _is_good(found[0]):
        # Inch sizes leave wider gaps; who has none that suits buys a metric one.
        both = (*likely, *_ruled_cutters(tap, ToolSizes.METRIC)[0])
        metric = _best(wish, both, tap)
        if _is_good(metric[0]):
            likely, rule, found = both, by_rule("cutters-inch-and-metric", PRACTICE), metric
    ledger.numbers("shop.cutters", likely, rule)
    return _Settled(wish, *found)


def _is_good(best: _Candidate | None) -> bool:
    return best is not None and best.good


def _ruled_cutters(tap: _Tap, tools: ToolSizes) -> tuple[tuple[float, ...], Rule]:
    code = "cutters-likely"
    if tap.diameter < LARGEST_MICRO:
        code = "cutters-likely-and-micro"
    elif tap.diameter > LEAST_LARGE:
        code = "cutters-likely-and-large"
    return cutters_likely(tap.diameter, tools), by_rule(code, PRACTICE, tools=tools.value)


def _note_cutter(best: _Candidate, wish: FluteWish, ledger: Ledger) -> None:
    rule = by_rule("cutter-nearest-land", OWN_RULE, width=wish.land_width)
    if best.shortfall > 0 or best.unmet:
        rule = by_rule("cutter-least-short", OWN_RULE)
    ledger.number("flutes.cutter_diameter", 2 * best.section.ball_radius, rule)


def _ruled_count(tap: _Tap, ledger: Ledger) -> tuple[int, Rule]:
    """The number by diameter, or the next where that leaves lands so wide that they rub.

    A cutter that is given leaves what it leaves: its lands do not ask for more flutes.
    """
    usual = ruled_count(tap.diameter)
    by_diameter = usual, by_rule("count-by-diameter", PRACTICE, diameter=tap.diameter)
    if ledger.has("flutes.count") or ledger.has("flutes.cutter_diameter") or usual == COUNTS[-1]:
        return by_diameter
    first = _settled(tap, usual, ledger.draft()).best
    if first is None or not first.wide:
        return by_diameter
    more = COUNTS[COUNTS.index(usual) + 1]
    second = _settled(tap, more, ledger.draft()).best
    if second is None or not second.good:
        return by_diameter
    share = land_width(first.section, usual, tap.tooth.crest) * usual / (math.pi * tap.thread.major)
    return more, by_rule("count-against-wide-lands", OWN_RULE, usual=usual, share=share)


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


def _wish(tap: _Tap, count: int, ledger: Ledger) -> FluteWish:
    offset, rake = ledger.given("flutes.offset"), None
    if offset is None:
        rake = ledger.number("flutes.rake", *_ruled_rake(tap.group))
    depth, core = ledger.given("flutes.depth_from_top"), None
    if depth is None:
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


def _core(tap: _Tap, count: int, ledger: Ledger) -> float:
    share = CORE_SHARES.get(count, 0.5)
    usual, most = round(share * tap.diameter, 3), round(MOST_OF_ROOT * tap.thread.minor, 3)
    rule = by_rule("core-of-diameter", PRACTICE_FROM_MEMORY, share=share, count=count)
    if usual > most:
        rule = by_rule("core-of-root", OWN_RULE, share=MOST_OF_ROOT)
    return ledger.number("flutes.core_diameter", min(usual, most), rule)


# Every trial of a cure that leaves the flutes alone asks for the same cutter again.
@lru_cache(maxsize=16)
def _best(
    wish: FluteWish, cutters: tuple[float, ...], tap: _Tap
) -> tuple[_Candidate | None, tuple[Finding, ...]]:
    tooth = tap.tooth
    possible: list[tuple[FluteSection, Unmet | None]] = []
    reasons: list[Finding] = []
    for diameter in cutters:
        found = solve(wish, diameter, 2 * tooth.crest)
        if found.section is None:
            offset = offset_for(wish, diameter / 2, tooth.crest)
            reasons.append(misplaced(offset, wish.core_diameter or 0.0, diameter / 2))
            continue
        reason = impossible(found.section, tooth)
        if reason is not None:
            reasons.append(reason)
            continue
        possible.append((found.section, found.unmet))
    # Most cutters cannot give the rake at all; they are looked at only where none can.
    met = [(section, unmet) for section, unmet in possible if unmet is None] or possible
    if not met:
        return None, tuple(reasons)
    return min((_candidate(wish, *found, tap) for found in met), key=_rank), tuple(reasons)


def _rank(candidate: _Candidate) -> tuple[bool, float, bool, bool, bool, float]:
    """Least is best: wishes met, limits kept, then what is wrong with the land, its width last."""
    unmet, short = candidate.unmet is not None, candidate.shortfall
    faults = candidate.scrapes, candidate.weak, candidate.wide
    return unmet, short, *faults, candidate.land_miss


def _candidate(
    wish: FluteWish, section: FluteSection, unmet: Unmet | None, tap: _Tap
) -> _Candidate:
    tooth = tap.tooth
    width = land_width(section, wish.count, tooth.crest)
    # Who wants a wide land gets it.
    widest = most_rubbing(tap.thread.major, wish.count)
    wide = wish.land_width <= widest < width
    return _Candidate(
        section,
        unmet,
        shortfall(section, wish.count, tooth),
        # An edge high on the ball's arc scrapes where the hole's wall begins.
        float(rake(section, tap.wall)) < min(wish.rake or 0.0, 0.0),
        not stands(section, wish.count, tooth),
        wide,
        abs(width - wish.land_width),
    )
