"""Choosing the flutes: wishes, the cutters on hand, and the one that fits best."""

import math
from dataclasses import dataclass
from functools import lru_cache

from tapmodel.designing.choose.flute_solve import FluteWish, Unmet, offset_for, solve
from tapmodel.designing.choose.ledger import Ledger, Rule, by_rule
from tapmodel.designing.limits.flutes import (
    ToothRadii,
    impossible,
    land_width,
    misplaced,
    no_land,
    shortfall,
)
from tapmodel.designing.provenance import OWN_RULE, PRACTICE, PRACTICE_FROM_MEMORY
from tapmodel.errors import NoTapError
from tapmodel.findings import Finding
from tapmodel.shape.flute_section import FluteSection, rake
from tapmodel.tap.tap import TapThread

CUTTERS = (0.5, 0.8, 1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 16.0, 20.0)
MICRO_CUTTERS = (0.1, 0.2, 0.3, 0.4)
LARGEST_MICRO = 2.0
"""Thread diameter [mm] below which the rule counts on micro cutters too."""

MOST_OF_ROOT = 0.75
"""Largest share of the diameter over the roots that a rule makes the core."""

CORE_SHARES = {2: 0.35, 3: 0.40, 4: 0.45}
LAND_SHARE = 0.35
RAKE = 8.0

RAKE_RULE = by_rule("rake-for-steels", PRACTICE_FROM_MEMORY, rake=RAKE)
LAND_RULE = by_rule("land-third-of-spacing", PRACTICE)
CUTTER_LIST_RULE = by_rule("cutters-likely", PRACTICE)
MICRO_LIST_RULE = by_rule("cutters-likely-and-micro", PRACTICE)


@dataclass(frozen=True, slots=True)
class ChosenFlutes:
    """Outcome: the section, and the wish that could not be met, if any."""

    wish: FluteWish
    section: FluteSection
    unmet: Unmet | None


@dataclass(frozen=True, slots=True)
class _Candidate:
    section: FluteSection
    unmet: Unmet | None
    shortfall: float
    scrapes: bool
    land_miss: float


def choose_flutes(thread: TapThread, diameter: float, ledger: Ledger) -> ChosenFlutes:
    """Settle number, cutter, offset and depth for a thread of nominal `diameter` [mm].

    Of the cutters on hand that meet every limit and leave no tooth scraping at its root, the one
    whose land comes closest to the wanted width; where none does, the one that falls short least,
    and the rules then say what binds.

    Raises:
        NoTapError: no cutter leaves a tooth at all.

    Source: derived here; default numbers common practice.
    """
    count = ledger.whole("flutes.count", ruled_count(diameter), _count_rule(diameter))
    wish = _wish(thread, diameter, count, ledger)
    tooth = ToothRadii(thread.major / 2, thread.minor / 2)
    given = ledger.given("flutes.cutter_diameter")
    if given is None:
        on_hand = ledger.numbers("shop.cutters", *_ruled_cutters(diameter))
    else:
        on_hand = (given,)
    best, reasons = _best(wish, on_hand, tooth)
    if best is None:
        raise NoTapError(reasons[0])
    if land_width(best.section, count, tooth.crest) <= 0:
        raise NoTapError(no_land(best.section, count, tooth))
    if given is None:
        _note_cutter(best, wish, ledger)
    return ChosenFlutes(wish, best.section, best.unmet)


def _ruled_cutters(diameter: float) -> tuple[tuple[float, ...], Rule]:
    if diameter < LARGEST_MICRO:
        return MICRO_CUTTERS + CUTTERS, MICRO_LIST_RULE
    return CUTTERS, CUTTER_LIST_RULE


def _note_cutter(best: _Candidate, wish: FluteWish, ledger: Ledger) -> None:
    rule = by_rule("cutter-nearest-land", OWN_RULE, width=wish.land_width)
    if best.shortfall > 0 or best.unmet:
        rule = by_rule("cutter-least-short", OWN_RULE)
    ledger.number("flutes.cutter_diameter", 2 * best.section.ball_radius, rule)


def ruled_count(diameter: float) -> int:
    """Number of flutes by rule for a nominal `diameter` [mm].

    Source: common practice (from memory): M3 to M6 3, M8 to M14 3 or 4, M16 to M24 4, above 4 to 6.
    """
    if diameter < 12:
        return 3
    return 4 if diameter <= 36 else 6


def _count_rule(diameter: float) -> Rule:
    return by_rule("count-by-diameter", PRACTICE, diameter=diameter)


def _wish(thread: TapThread, diameter: float, count: int, ledger: Ledger) -> FluteWish:
    offset, rake = ledger.given("flutes.offset"), None
    if offset is None:
        rake = ledger.number("flutes.rake", RAKE, RAKE_RULE)
    depth, core = ledger.given("flutes.depth_from_top"), None
    if depth is None:
        core = _core(thread, diameter, count, ledger)
    share = ledger.number("flutes.land_share", LAND_SHARE, LAND_RULE)
    return FluteWish(count, rake, offset, core, depth, share * math.pi * thread.major / count)


def _core(thread: TapThread, diameter: float, count: int, ledger: Ledger) -> float:
    share = CORE_SHARES.get(count, 0.5)
    usual, most = round(share * diameter, 3), round(MOST_OF_ROOT * thread.minor, 3)
    rule = by_rule("core-of-diameter", PRACTICE_FROM_MEMORY, share=share, count=count)
    if usual > most:
        rule = by_rule("core-of-root", OWN_RULE, share=MOST_OF_ROOT)
    return ledger.number("flutes.core_diameter", min(usual, most), rule)


# Every trial of a cure that leaves the flutes alone asks for the same cutter again.
@lru_cache(maxsize=16)
def _best(
    wish: FluteWish, cutters: tuple[float, ...], tooth: ToothRadii
) -> tuple[_Candidate | None, tuple[Finding, ...]]:
    candidates: list[_Candidate] = []
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
        candidates.append(_candidate(wish, found.section, found.unmet, tooth))
    if not candidates:
        return None, tuple(reasons)
    return min(candidates, key=_rank), tuple(reasons)


def _rank(candidate: _Candidate) -> tuple[bool, float, bool, float]:
    """Least is best: wishes met, limits kept, a tooth that cuts down to its root, the land."""
    unmet = candidate.unmet is not None
    return unmet, candidate.shortfall, candidate.scrapes, candidate.land_miss


def _candidate(
    wish: FluteWish, section: FluteSection, unmet: Unmet | None, tooth: ToothRadii
) -> _Candidate:
    return _Candidate(
        section,
        unmet,
        shortfall(section, wish.count, tooth),
        # A root edge high on the ball's arc scrapes; wider lands are the lesser evil.
        float(rake(section, tooth.root)) < min(wish.rake or 0.0, 0.0),
        abs(land_width(section, wish.count, tooth.crest) - wish.land_width),
    )
