"""Reasons for the class of the hole and for its drill, in words."""

from tapmodel.report.words.reasons.sentence import Sentence
from tapmodel.report.words.sentence import Writer
from tapmodel.standards.drill_sets import (
    METRIC,
    METRIC_STEPS,
    inch_names,
    metric_drill,
    metric_step,
)
from tapmodel.words import Units

LEAST_BORED = 6.0
"""Thinner holes [mm] are reamed, not bored."""


def _by_pitches(
    write: Writer, /, *, pitches: float, drill: float, drill_sets: tuple[str, ...]
) -> str:
    less = "one pitch" if pitches == 1 else f"{pitches:g} pitches"
    return f"nominal diameter less {less}, {_picked(write, drill, drill_sets)}"


def _bore(write: Writer, /, *, low: float, high: float, wanted: float, engagement: float) -> str:
    """By pitches where no engagement, 0, is asked for."""
    way = "bore" if low >= LEAST_BORED else "ream"
    goal = f" for {engagement:g} % of the basic depth of engagement" if engagement else ""
    return (
        f"{way} to {write.span(low, high, '.3f')}: no drill on hand lies inside these minor limits "
        f"and near the {write(wanted, '.3f')} aimed at{goal}; in steps of {write(0.01, 'g|.1g')}"
    )


def _by_engagement(  # noqa: PLR0913  (as many numbers as the sentence has)
    write: Writer,
    /,
    *,
    wanted: float,
    engagement: float,
    beyond: bool,
    least: float,
    most: float,
    drill: float,
    drill_sets: tuple[str, ...],
) -> str:
    aim = f"{write(wanted, '.3f')} for {engagement:g} % of the basic depth of engagement"
    if beyond:
        aim += f", beyond the {least:.1f} to {most:.1f} % that the minor limits allow"
    return f"{aim}, {_picked(write, drill, drill_sets)}"


def _picked(write: Writer, drill: float, drill_sets: tuple[str, ...]) -> str:
    """How the drill was picked out of the sets, as the end of a sentence."""
    if drill_sets == (METRIC,):
        if write.units is Units.INCH:
            return "on the next size that metric drills come in, inside the minor limits"
        if drill > METRIC_STEPS[0][0]:
            return f"on the next step of {metric_step(drill):g} mm inside the minor limits"
        return (
            "on the next step of 0.1 mm (0.05 mm below pitch 1, 0.01 mm below 1 mm) inside the "
            "minor limits"
        )
    name = " = ".join(inch_names(drill)) or metric_drill(drill).name
    return f"the nearest inside the minor limits of the {', '.join(drill_sets)} drills: {name}"


def _tools(_write: Writer, /, *, family: str, inch: bool) -> str:
    return f"{'inch' if inch else 'metric'} drills, cutters and blanks for {family} threads"


def _drills(_write: Writer, /, *, tools: str) -> str:
    if tools == METRIC:
        return "metric drills, as shop.tools says"
    return (
        "drills of inch sizes, as shop.tools says, and a metric one only where none of them suits"
    )


SENTENCES: dict[str, Sentence] = {
    "class-written": "as the designation says",
    "class-meant": "the class meant when none is written",
    "drill-by-pitches": _by_pitches,
    "drill-by-engagement": _by_engagement,
    "bore-to-limits": _bore,
    "tools-of-size": _tools,
    "drills-likely": _drills,
}
