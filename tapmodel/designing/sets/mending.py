"""What lets a set bear its work where not even the most taps do: tried, each with its sets."""

from collections.abc import Iterator
from dataclasses import replace

from tapmodel.designing.codes import Code
from tapmodel.designing.cures.legal_value import unit_of
from tapmodel.designing.cures.trials import Trials, Values
from tapmodel.designing.record import TapDesign
from tapmodel.designing.sets.sharing import COUNTS, SPARED, sharing_of
from tapmodel.findings import Bound, Cure, Setting
from tapmodel.spec.job import Job

CORE, FLUTES, DRILL = "flutes.core_diameter", "flutes.count", "hole.drill"

_GROWTH = 1.02
"""From one core that is tried to the next; strength grows by 6 % with it."""

_BELOW = 0.93

_CORES = 20
_DRILLS = 6
_NUMBERS = (2, 3, 4, 6)

_RELIEVED = (("relief.thread.applies_to", "thread"),)
"""What spares wider lands from rubbing, beside a value that leaves them wider."""


def cures_of_set(job: Job, design: TapDesign) -> tuple[Cure, ...]:
    """Values of the one tap with which a set of the most taps bears its work; none where none do.

    A stouter core, another number of flutes and a larger drill inside the minor limits are tried,
    of each the nearest; alone, then with the flanks relieved. None brings an error or a warning.
    One with which they just bear it is named only where none spares them as much as any set.

    Args:
        job: for the one tap.
        design: of it.

    Source: rule of this program.
    """
    sharing = sharing_of(design, COUNTS[-1])
    if sharing is None:
        return ()
    trials = Trials(job, spared=frozenset({Code.TAP_OVERLOADED}))
    drills = list(_drills(design))
    if not drills or _worst(trials, ((DRILL, drills[-1].value),)) > 1:
        drills = []  # none smaller does what the largest does not
    ways = list(_cores(design, sharing.worst)), list(_counts(design)), drills
    found = [one for one in (_first(trials, settings) for settings in ways) if one is not None]
    sparing = [one for one in found if one[1] <= SPARED]
    return tuple(cure for cure, _ in sparing or found)


def _first(trials: Trials, settings: list[Setting]) -> tuple[Cure, float] | None:
    """The first with which a set spares its taps, else the first with which it bears; its load."""
    bearing: tuple[Cure, float] | None = None
    for beside in ((), _RELIEVED):
        for setting in settings:
            alone = ((setting.field, setting.value),)
            if beside and _keeps_rules(trials, alone):
                continue  # a relief makes no tap stronger
            worst = _worst(trials, (*alone, *beside))
            if worst > 1 or (worst > SPARED and bearing is not None):
                continue
            cure = Cure((_laid(trials, setting), *_words(trials, beside)))
            if worst <= SPARED:
                return cure, worst
            bearing = cure, worst
    return bearing


def _keeps_rules(trials: Trials, values: Values) -> bool:
    """Whether there is a tap and nothing else is found of it than without the values."""
    after = trials.outcome(values)
    return after.design is not None and (
        after.troubles.keys() <= trials.outcome(()).troubles.keys()
    )


def _worst(trials: Trials, values: Values) -> float:
    """The load of the hardest pressed tap; infinite where another rule is broken by the values."""
    design = trials.outcome(values).design
    if design is None or not _keeps_rules(trials, values):
        return float("inf")
    sharing = sharing_of(design, COUNTS[-1])
    return float("inf") if sharing is None else sharing.worst


def _laid(trials: Trials, setting: Setting) -> Setting:
    return replace(setting, replaces=trials.replaced(setting.field, setting.value))


def _words(trials: Trials, beside: Values) -> Iterator[Setting]:
    for field, word in beside:
        yield Setting(field, Bound.EXACTLY, word, replaces=trials.replaced(field, word))


def _cores(design: TapDesign, worst: float) -> Iterator[Setting]:
    """From somewhat below where strength, which grows with the cube, would be enough."""
    core = design.tap.flutes.core_diameter
    core *= max(1.0, _BELOW * worst ** (1 / 3))
    for _ in range(_CORES):
        core *= _GROWTH
        if core >= design.tap.thread.minor:
            return
        yield Setting(CORE, Bound.AT_LEAST, round(core, 2), unit_of(CORE), 2)


def _counts(design: TapDesign) -> Iterator[Setting]:
    """Fewer first: they leave more of the section."""
    now = design.tap.flutes.count
    fewer = sorted((number for number in _NUMBERS if number < now), reverse=True)
    for number in (*fewer, *(number for number in _NUMBERS if number > now)):
        yield Setting(FLUTES, Bound.EXACTLY, number)


def _drills(design: TapDesign) -> Iterator[Setting]:
    """Evenly up to the largest that the minor limits admit."""
    drill, largest = design.drill, design.hole.minor_max
    for part in range(1, _DRILLS + 1) if drill < largest else ():
        size = drill + (largest - drill) * part / _DRILLS
        yield Setting(DRILL, Bound.AT_LEAST, int(size * 100) / 100, unit_of(DRILL), 2)
