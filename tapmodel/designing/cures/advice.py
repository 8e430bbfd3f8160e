"""The cures of findings: each is the nearest legal value, found and proved by designing again.

A cure mends its finding and breaks no rule that the design keeps. One field is tried after the
other; where none will do alone, the rule that breaks next is mended in the same way, so that the
cure names the values that are needed together; where that fails too, given values go back to
those that the rules would choose.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from decimal import Decimal
from itertools import islice

from tapmodel.designing.codes import Code
from tapmodel.designing.cures.cutters import CUTTER
from tapmodel.designing.cures.legal_value import Ruler, nearest_legal, rulers, taken_back, unit_of
from tapmodel.designing.cures.trials import MOST_TRIALS, Outcome, Trials, Values
from tapmodel.designing.cures.worsened import worsened
from tapmodel.designing.judging import exactly
from tapmodel.designing.rules.load import CODES
from tapmodel.findings import Bound, Cure, Finding, Lever, Setting
from tapmodel.spec.job import field_names
from tapmodel.words import Severity

SOUGHT, OFFERED = 3, 2
"""Cures of a finding that are sought and named at most."""

DEEPEST = 3
"""Values that one cure sets at most."""

JOINED = {"chamfer", "relief.thread", "relief.chamfer"}
"""Sections whose values settle one another."""

LOAD_TRIALS = 110
"""Designs that the cure of a tap that is too weak may cost; each takes longer than others, and the
real cure, a set of taps, is none that a value could be."""

SILENCED: Mapping[str, str] = {Code.TAP_OVERLOADED: Code.TORQUE_NEAR}
"""The note that the nearest cure of a finding leaves, and a cure with a margin does not."""

UNTOUCHED = {
    *("designation", "name", "hole.class"),
    *("hole.material", "hole.depth", "hole.kind"),
    *(field for field in field_names() if field.startswith(("shop.", "tap.", "set."))),
}
"""Fields that say what is wanted, what is tapped and what is on hand; a cure leaves them alone."""


@dataclass(frozen=True, slots=True)
class _Aim:
    """What a cure must reach: `code` gone, and no error but those of `kept`, or any for None.

    Values that leave no tap reach nothing but that: what else they break is not known then. Where
    `warned`, no warning either: one mended by another is not mended. Nor the note `silent`.
    Beyond `until` trials no further field is tried.
    """

    code: str
    kept: frozenset[str] | None
    warned: bool = False
    until: int = MOST_TRIALS
    silent: str | None = None

    def allows(self, code: str) -> bool:
        """Whether a rule may stay, or become, broken."""
        return code != self.code and (self.kept is None or code in self.kept)

    def reached(self, after: Outcome) -> bool:
        """Whether a trial came out as wanted."""
        noted = self.silent is not None and self.silent in after.notes
        known = self.kept is None or after.design is not None
        return self.code not in after.troubles and known and not noted and not self.missed(after)

    def missed(self, after: Outcome) -> frozenset[str]:
        """The rules that may not stay broken as they are."""
        codes = frozenset(after.troubles) if self.warned else after.errors()
        return frozenset(code for code in codes if not self.allows(code))


@dataclass(frozen=True, slots=True)
class _Move:
    """A field moved to a new value."""

    lever: Lever
    setting: Setting


Moves = tuple[_Move, ...]


def advised(findings: tuple[Finding, ...], trials: Trials) -> tuple[Finding, ...]:
    """The findings with their cures.

    Cures that leave no rule broken come first, of these the ones that worsen nothing, and such a
    cure also stands where nothing better was found. A number that is asked back has none: only who
    typed it knows its unit.

    Source: rule of this program.
    """
    if any(finding.code == Code.OTHER_UNIT for finding in findings):
        return findings
    cured = [(finding, _offered(trials, finding)) for finding in findings]
    whole = [
        cure
        for finding, cures in cured
        for cure in cures
        if finding.severity is Severity.ERROR and _leaves(trials, cure) == 0
    ]
    return tuple(
        replace(
            found,
            cures=cures or (tuple(whole[:1]) if found.severity is Severity.ERROR else ()),
        )
        for found, cures in cured
    )


def _offered(trials: Trials, finding: Finding) -> tuple[Cure, ...]:
    if finding.severity is not Severity.ERROR and not finding.levers:
        return ()
    # A core that makes the lands rub, or a hole beyond its limits, mends no tap that is too weak.
    load = finding.code == Code.TAP_OVERLOADED
    warned, now = load or finding.severity is Severity.WARNING, trials.outcome(())
    kept = frozenset(now.troubles) if warned else now.errors()
    until = trials.made + LOAD_TRIALS if load else MOST_TRIALS
    aim = _Aim(finding.code, kept - {finding.code}, warned, until)
    cures = list(islice(_cures(trials, finding, aim), SOUGHT))
    fewest = min((_leaves(trials, cure) for cure in cures), default=0)
    told = [_told(trials, finding, cure) for cure in cures if _leaves(trials, cure) == fewest]
    least = min((len(cure.leaves) for cure in told), default=0)
    best = [cure for cure in told if len(cure.leaves) == least]
    offered = sorted(best, key=lambda cure: len(cure.worsens))[:OFFERED]
    return tuple(sorted(offered, key=_cost))


def _cost(cure: Cure) -> tuple[int, bool]:
    """What it worsens, then whether something must be bought for it."""
    return len(cure.worsens), not all(setting.at_hand for setting in cure.settings)


def _told(trials: Trials, finding: Finding, cure: Cure) -> Cure:
    """The cure with what it worsens and leaves; its design was made when it was found."""
    after = trials.outcome(_set(cure))
    note = after.notes.get(SILENCED.get(finding.code, ""))
    return replace(
        cure,
        worsens=worsened(finding, trials.outcome(()), after),
        leaves=() if note is None else (note,),
    )


def _leaves(trials: Trials, cure: Cure) -> int:
    """How many rules stay broken."""
    return len(trials.outcome(_set(cure)).errors())


def _set(cure: Cure) -> Values:
    return tuple((setting.field, setting.value) for setting in cure.settings)


def _cures(trials: Trials, finding: Finding, aim: _Aim) -> Iterator[Cure]:
    found: set[tuple[str, ...]] = set()
    for depth in range(1, DEEPEST + 1):
        costly: list[Moves] = []
        short = True
        for moves in _of_depth(trials, finding, aim, (), depth):
            # The nearest of several values of a field stands for all.
            fields = tuple(move.lever.field for move in moves)
            if fields not in found:
                found.add(fields)
                nearest = _needed(trials, aim, _settled(trials, aim, moves))
                short = short and not _strict(aim).reached(trials.outcome(_values(nearest)))
                yield _cure(nearest)
                if worsened(finding, trials.outcome(()), trials.outcome(_values(nearest))):
                    costly.append(nearest)
        if found:
            if len(costly) == len(found):
                yield from _eased(trials, finding, aim, costly[0])
            if short:
                yield from _spared(trials, finding, aim, depth + 1)
            return
    yield from _as_ruled(trials, aim)


def _spared(trials: Trials, finding: Finding, aim: _Aim, depth: int) -> Iterator[Cure]:
    """Cures of one value more that leave a margin, where those of fewer leave none."""
    strict = _strict(aim)
    if strict == aim or depth > DEEPEST:
        return
    strict = replace(strict, until=trials.made + LOAD_TRIALS)
    for moves in _of_depth(trials, finding, strict, (), depth):
        yield _cure(_tightened(trials, strict, moves))


def _strict(aim: _Aim) -> _Aim:
    """The aim with a margin, where its finding has a note of one."""
    return replace(aim, silent=SILENCED.get(aim.code))


def _cure(moves: Moves) -> Cure:
    return Cure(tuple(move.setting for move in moves))


def _eased(trials: Trials, finding: Finding, aim: _Aim, moves: Moves) -> Iterator[Cure]:
    """The moves with a word beside them that undoes what they worsen, where there is one.

    A word is one trial; numbers, which would be sought, are left.
    """
    before, costly = trials.outcome(()), trials.outcome(_values(moves))
    for lever in (each for worse in worsened(finding, before, costly) for each in worse.levers):
        if not isinstance(lever.near, str) or trials.spent or trials.made >= aim.until:
            continue
        replaces = trials.replaced(lever.field, lever.near)
        word = Setting(lever.field, lever.bound, lever.near, replaces=replaces)
        both = (*moves, _Move(lever, word))
        after = trials.outcome(_values(both))
        if aim.reached(after) and not worsened(finding, before, after):
            yield _cure(_settled(trials, aim, both))
            return


def _of_depth(
    trials: Trials, finding: Finding, aim: _Aim, held: Moves, depth: int
) -> Iterator[Moves]:
    """Moves of `depth` fields, beside those that are `held`, that reach the aim together."""
    taken = {move.lever.field for move in held}
    own = _Aim(finding.code, None, silent=aim.silent if finding.code == aim.code else None)
    for lever in _in_order(trials, finding.levers):
        if _contradicts(trials, lever.field, taken) or trials.made >= aim.until or trials.spent:
            continue
        if depth == 1:
            last = _moved(trials, lever, (own, aim, _sound(trials, aim)), held)
            if last is not None:
                yield (*held, last)
            continue
        first = _moved(trials, lever, (own,), held)
        if first is not None:
            now = (*held, first)
            for other in _broken_by(trials, aim, now)[:1]:
                yield from islice(_of_depth(trials, other, aim, now, depth - 1), 1)


def _contradicts(trials: Trials, field: str, taken: set[str]) -> bool:
    """Whether a field is one of those taken, or of it and one of them only one can be given."""
    replaced = {name for one in taken for name in trials.replaced(one)}
    return field in taken | replaced or not taken.isdisjoint(trials.replaced(field))


def _sound(trials: Trials, aim: _Aim) -> _Aim:
    """The aim with no rule left broken: more than must be.

    Of warnings new ones may not come, where none may, but those of the prediction, which is not
    made while a rule is broken. To a tap of a named material these would be errors.
    """
    if not aim.warned:
        return _Aim(aim.code, frozenset())
    now = trials.outcome(())
    allowed = frozenset(now.troubles) - now.errors()
    if now.errors() and "hole.material" not in trials.given:
        allowed |= CODES
    return _Aim(aim.code, allowed, warned=True)


def _broken_by(trials: Trials, aim: _Aim, moves: Moves) -> list[Finding]:
    """The rules that stand between these moves and the aim."""
    after = trials.outcome(_values(moves))
    missed = aim.missed(after)
    return [found for code, found in after.troubles.items() if found is not None and code in missed]


def _in_order(trials: Trials, levers: tuple[Lever, ...]) -> list[Lever]:
    """Fields that the job gives first, those that contradict given ones last."""

    def rank(lever: Lever) -> int:
        if trials.replaced(lever.field):
            return 2
        return 0 if lever.field in trials.given else 1

    return sorted(levers, key=rank)


def _moved(trials: Trials, lever: Lever, aims: tuple[_Aim, ...], held: Moves) -> _Move | None:
    """The field moved to the nearest value that reaches the aims, each stricter than the last.

    The third may be missed: it asks for more than must be.
    """
    values = _values(held)

    def reached(aim: _Aim, value: float | str) -> bool:
        return aim.reached(trials.outcome((*values, (lever.field, value))))

    if lever.bound is Bound.EXACTLY:
        if lever.near is None or not all(reached(aim, lever.near) for aim in aims[:2]):
            return None
        unit = unit_of(lever.field)
        replaces = trials.replaced(lever.field, lever.near)
        digits = 0 if isinstance(lever.near, str) else _fewest_decimals(lever.near)
        at_hand = isinstance(lever.near, str) or not _is_bought(trials, lever)
        setting = Setting(lever.field, lever.bound, lever.near, unit, digits, replaces, at_hand)
        return _Move(lever, setting)
    if lever.field == CUTTER:
        return _of_shelf(trials, lever, aims, held)
    for scale in rulers(lever):
        place: int | None = 0
        for number, aim in enumerate(aims):
            further = nearest_legal(
                lambda index, aim=aim, scale=scale: reached(aim, scale.value(index)), scale, place
            )
            if further is None and number > 1:
                break
            place = further
            if place is None:
                break
        if place is not None:
            replaces = trials.replaced(lever.field)
            return _Move(lever, replace(scale.setting(place), replaces=replaces))
    return None


def _of_shelf(trials: Trials, lever: Lever, aims: tuple[_Aim, ...], held: Moves) -> _Move | None:
    """The nearest cutter on hand that reaches the aims; of those to be bought where none does.

    A size between two that are sold is no help. The third aim is preferred, as ever.
    """
    for group in trials.shelf.beyond(lever):
        sizes = [exactly(CUTTER, cutter) for cutter in group]
        for sought in (aims, aims[:2]):
            for size in sizes:
                value = (*_values(held), (CUTTER, size.near or 0.0))
                if all(aim.reached(trials.outcome(value)) for aim in sought):
                    return _moved(trials, size, aims[:2], held)
    return None


def _is_bought(trials: Trials, lever: Lever) -> bool:
    return (
        lever.field == CUTTER
        and isinstance(lever.near, float)
        and not trials.shelf.at_hand(lever.near)
    )


def _settled(trials: Trials, aim: _Aim, moves: Moves) -> Moves:
    """The moves gone on to where they leave a margin, if they can, and no further than needed."""
    strict = _strict(aim)
    if strict == aim:
        return _tightened(trials, aim, moves)
    eased = _gone_on(trials, strict, moves)
    return _tightened(trials, aim if eased is None else strict, eased or moves)


def _gone_on(trials: Trials, aim: _Aim, moves: Moves) -> Moves | None:
    """One of the moves gone on to the nearest value that reaches a stricter aim; None for none."""
    if aim.reached(trials.outcome(_values(moves))):
        return moves
    for place in _on_scales(moves):
        one = _Alone(trials, aim, moves, place)
        further = nearest_legal(one.reached, one.scale, one.index)
        if further is not None:
            return one.at(further)
    return None


def _tightened(trials: Trials, aim: _Aim, moves: Moves) -> Moves:
    """Each of several moves taken back as far as the others let it."""
    if len(moves) == 1:
        return moves
    for place in _on_scales(moves):
        one = _Alone(trials, aim, moves, place)
        moves = one.at(taken_back(one.reached, one.index))
    return moves


def _needed(trials: Trials, aim: _Aim, moves: Moves) -> Moves:
    """The moves without those that the ones found after them made needless."""
    strict = _strict(aim)
    for move in moves:
        now = trials.outcome(_values(moves))
        wanted = strict if strict.reached(now) else aim
        fewer = tuple(other for other in moves if other is not move)
        without = trials.outcome(_values(fewer))
        if fewer and wanted.reached(without) and without.troubles.keys() <= now.troubles.keys():
            moves = fewer
    return moves


def _on_scales(moves: Moves) -> list[int]:
    """Places of the moves that may go further or be taken back."""
    return [n for n, move in enumerate(moves) if move.lever.bound is not Bound.EXACTLY]


@dataclass(frozen=True, slots=True)
class _Alone:
    """One of several moves along its scale, the others as they are."""

    trials: Trials
    aim: _Aim
    moves: Moves
    place: int

    @property
    def scale(self) -> Ruler:
        """Of its values."""
        move = self.moves[self.place]
        return Ruler(move.lever, move.setting.digits)

    @property
    def index(self) -> int:
        """Where it stands on the scale."""
        return self.scale.index(float(self.moves[self.place].setting.value))

    def at(self, index: int) -> Moves:
        """The moves with this one elsewhere on its scale."""
        move = self.moves[self.place]
        setting = replace(self.scale.setting(index), replaces=move.setting.replaces)
        return (
            *self.moves[: self.place],
            _Move(move.lever, setting),
            *self.moves[self.place + 1 :],
        )

    def reached(self, index: int) -> bool:
        """Whether the aim is reached then."""
        return self.aim.reached(self.trials.outcome(_values(self.at(index))))


def _values(moves: Moves) -> Values:
    return tuple((move.setting.field, move.setting.value) for move in moves)


def _as_ruled(trials: Trials, aim: _Aim) -> Iterator[Cure]:
    """The fewest given values that must go back to what the rules choose."""

    def reached(without: frozenset[str]) -> bool:
        return aim.reached(trials.outcome((), without))

    given = sorted(trials.given - UNTOUCHED)
    lone = next((frozenset({field}) for field in given if reached(frozenset({field}))), None)
    gone = lone or frozenset(given)
    if not reached(gone):
        return
    for field in given:
        if len(gone) > 1 and reached(gone - {field}):
            gone -= {field}
    # What the rules choose in place of a field may drive out another one that is given: the length
    # of a chamfer its angle.
    rivals = {r for one in _ruled(trials, gone) for r in trials.replaced(one.field, one.value)}
    for fields in (gone, gone | rivals):
        settings = _ruled(trials, fields)
        values = tuple((setting.field, setting.value) for setting in settings)
        if settings and aim.reached(trials.outcome(values)):
            yield Cure(settings)
            return


def _ruled(trials: Trials, gone: frozenset[str]) -> tuple[Setting, ...]:
    """What the rules choose for the fields that are `gone`, or for what takes their place."""
    design = trials.outcome((), gone).design
    sections = {field.rpartition(".")[0] for field in gone} & JOINED
    found: list[Setting] = []
    for choice in design.choices if design else ():
        replaced = tuple(name for name in trials.replaced(choice.field) if name in gone)
        joined = choice.field.rpartition(".")[0] in sections
        if choice.given or not (choice.field in gone or replaced or joined):
            continue
        if isinstance(choice.value, tuple):
            continue  # what stands on the shelf, which no cure sets
        digits = _decimals(choice.value) if isinstance(choice.value, float) else 0
        unit = unit_of(choice.field)
        found.append(Setting(choice.field, Bound.EXACTLY, choice.value, unit, digits, replaced))
    return _in_place(tuple(found), gone)


def _in_place(settings: tuple[Setting, ...], gone: frozenset[str]) -> tuple[Setting, ...]:
    """Settings that name every field of their sections that is `gone`: some give way to several."""
    left = gone - {name for one in settings for name in (one.field, *one.replaces)}
    named: list[Setting] = []
    for one in reversed(settings):
        section = one.field.rpartition(".")[0]
        own = sorted(name for name in left if name.rpartition(".")[0] == section)
        left -= set(own)
        named.append(replace(one, replaces=(*one.replaces, *own)))
    return tuple(reversed(named))


def _fewest_decimals(value: float) -> int:
    """The same without the zero that a whole number is written with."""
    return 0 if value == int(value) else _decimals(value)


def _decimals(value: float) -> int:
    """Decimals that tell a value in full."""
    return max(0, -int(Decimal(repr(value)).as_tuple().exponent))
