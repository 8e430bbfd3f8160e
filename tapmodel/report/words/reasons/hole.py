"""Reasons for the class of the hole and for its drill, in words."""

from tapmodel.report.words.reasons.sentence import Sentence
from tapmodel.standards.drill_sets import METRIC, inch_names, metric_drill


def _by_pitches(*, pitches: float, drill: float, drill_sets: tuple[str, ...], inside: bool) -> str:
    less = "one pitch" if pitches == 1 else f"{pitches:g} pitches"
    picked = _picked(drill, drill_sets, inside=inside)
    return f"nominal diameter less {less}, {picked}"


def _by_engagement(  # noqa: PLR0913  (as many numbers as the sentence has)
    *,
    wanted: float,
    engagement: float,
    beyond: bool,
    least: float,
    most: float,
    drill: float,
    drill_sets: tuple[str, ...],
    inside: bool,
) -> str:
    aim = f"{wanted:.3f} mm for {engagement:g} % of the basic depth of engagement"
    if beyond:
        aim += f", beyond the {least:.1f} to {most:.1f} % that the minor limits allow"
    return f"{aim}, {_picked(drill, drill_sets, inside=inside)}"


def _picked(drill: float, drill_sets: tuple[str, ...], *, inside: bool) -> str:
    """How the drill was picked out of the sets, as the end of a sentence."""
    if not inside:
        return "in steps of 0.01 mm inside the minor limits, where no drill on hand lies"
    if drill_sets == (METRIC,):
        return (
            "on the next step of 0.1 mm (0.05 mm below pitch 1, 0.01 mm below 1 mm) inside the "
            "minor limits"
        )
    name = " = ".join(inch_names(drill)) or metric_drill(drill).name
    return f"the nearest inside the minor limits of the {', '.join(drill_sets)} drills: {name}"


SENTENCES: dict[str, Sentence] = {
    "class-written": "as the designation says",
    "class-meant": "the class meant when none is written",
    "drill-by-pitches": _by_pitches,
    "drill-by-engagement": _by_engagement,
}
