"""What stood next to a rule's choice, and what it would have cost: the job designed again with it.

Only fields on which it hangs how the tap cuts and what it bears are weighed so.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from tapmodel.designing.choice import Choice, RunnerUp, Weight
from tapmodel.designing.choose.chamfer import FORMS, LONGEST, SHORTEST
from tapmodel.designing.choose.flutes import COUNTS
from tapmodel.designing.choose.shallow import SHALLOW_COUNTS
from tapmodel.designing.cures.trials import Trials
from tapmodel.designing.record import TapDesign
from tapmodel.prediction.rubbing.width import rubbing_width
from tapmodel.words import ReliefKind, ReliefPlace

THICKER, THINNER = 1.1, 0.9
"""Cores that are tried, in that which was chosen."""

DIGITS = 3
COUNT = "flutes.count"

LEADS = 2.0
"""By so many leads a chamfer is tried that is no usual form."""

Other = float | str


def with_runners_up(design: TapDesign, trials: Trials) -> TapDesign:
    """The design with a runner-up beside each choice of a rule that has one.

    Args:
        design: of the job; one that breaks a rule is left as it is, as it must change anyhow.
        trials: of the same job.

    Source: derived here.
    """
    if design.errors or design.part is not None:
        return design
    chosen = _Chosen(design, _weight(design), frozenset(f.code for f in design.findings))
    choices = tuple(_with_runner_up(choice, chosen, trials) for choice in design.choices)
    return replace(design, choices=choices)


@dataclass(frozen=True, slots=True)
class _Chosen:
    """The design that others are held against, its weight, and codes of what is found."""

    design: TapDesign
    weight: Weight
    codes: frozenset[str]


def _with_runner_up(choice: Choice, chosen: _Chosen, trials: Trials) -> Choice:
    others = OTHERS.get(choice.field)
    if choice.given or others is None or not isinstance(choice.value, int | float | str):
        return choice
    tried = [
        found for other in others(choice.value) if (found := _tried(choice, other, chosen, trials))
    ]
    return replace(choice, runner_up=min(tried, key=_rank)) if tried else choice


def _tried(choice: Choice, other: Other, chosen: _Chosen, trials: Trials) -> RunnerUp | None:
    """What becomes of the tap with the other value; None where that breaks a rule.

    The number of flutes stays: else it might follow the value, and hide what that alone does.
    """
    held = (COUNT, chosen.design.tap.flutes.count)
    values = (held, (choice.field, other)) if choice.field != COUNT else ((COUNT, other),)
    found = trials.outcome(values).design
    if found is None or found.errors:
        return None
    return RunnerUp(
        value=other,
        weight=_weight(found),
        chosen=chosen.weight,
        raised=tuple(f.code for f in found.findings if f.code not in chosen.codes),
    )


def _rank(one: RunnerUp) -> tuple[int, float]:
    """Least is best: nothing found against it, then what it takes of what it bears."""
    return len(one.raised), one.weight.torque / one.weight.bears


def _weight(design: TapDesign) -> Weight:
    foreseen, tap, figures = design.prediction, design.tap, design.figures
    assert foreseen is not None  # noqa: S101 - it has no errors
    width = rubbing_width(tap.relief.thread, tap.thread.major, figures.land_width)
    return Weight(
        torque=foreseen.torque.band.likely,
        bears=foreseen.strength.bears,
        rubs=width,
        chip=figures.chip_thickness,
        chips_held=foreseen.chips_held,
        chamfer_clears=foreseen.rubbing.chamfer.heel_clearance_um,
    )


def _counts(chosen: Other) -> Iterator[Other]:
    counts = COUNTS if chosen in COUNTS else SHALLOW_COUNTS
    at = counts.index(int(chosen))
    yield from (counts[near] for near in (at - 1, at + 1) if 0 <= near < len(counts))


def _cores(chosen: Other) -> Iterator[Other]:
    yield from (round(share * float(chosen), DIGITS) for share in (THINNER, THICKER))


def _forms(chosen: Other) -> Iterator[Other]:
    yield from (form for form in FORMS if form != chosen)


def _leads(chosen: Other) -> Iterator[Other]:
    near = (float(chosen) - LEADS, float(chosen) + LEADS)
    yield from (leads for leads in near if SHORTEST <= leads <= LONGEST)


def _kinds(chosen: Other) -> Iterator[Other]:
    yield from (kind.value for kind in ReliefKind if kind != chosen)


def _places(chosen: Other) -> Iterator[Other]:
    places = (ReliefPlace.CREST, ReliefPlace.THREAD)
    yield from (place.value for place in places if place != chosen)


OTHERS: dict[str, Callable[[Other], Iterator[Other]]] = {
    COUNT: _counts,
    "flutes.core_diameter": _cores,
    "chamfer.form": _forms,
    "chamfer.pitches": _leads,
    "relief.thread.applies_to": _places,
    "relief.chamfer.kind": _kinds,
}
"""Values that are tried beside the one chosen, by field."""
