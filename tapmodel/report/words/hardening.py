"""Sentences on hardening: sections that stay soft inside, and what is not known."""

from tapmodel.report.units import in_words
from tapmodel.shop.heat.through import DEEPER, HardenedThrough, Thick, Where
from tapmodel.standards.materials.hardening import Fact
from tapmodel.words import Units

SUPPLIER = (
    "The supplier's data of this very steel come before these numbers, and say how long to soak. "
    "Quench point first, straight down; temper at once (common practice)."
)
"""Whose numbers hold, and what keeps a tap straight and whole."""


def up_to(judged: HardenedThrough, known: Fact, units: Units) -> str:
    """The section that hardens through, and those that are judged by it."""
    sections = ", ".join(
        f"{s.where.value} {in_words(s.diameter, '.1f', units)}" for s in judged.sections
    )
    return f"to some {in_words(known.high, '.0f', units)} round ({sections})"


def hard_through(judged: HardenedThrough, units: Units) -> str:
    """The sections, and whether they harden through."""
    sizes = ", ".join(in_words(s.diameter, ".1f", units) for s in judged.sections)
    return f"{sizes}: {'not hard through' if judged.too_thick else 'harden through'}"


def soft_inside(judged: HardenedThrough, units: Units) -> str:
    """Which sections do not harden through, what that means and what helps."""
    steel, known = judged.hardening.steel, judged.known
    if known is None or not judged.too_thick:
        return ""
    which = " and the ".join(_section(thick, units) for thick in judged.too_thick)
    limit = in_words(known.high, ".0f", units)
    verb = "do" if len(judged.too_thick) > 1 else "does"
    better = judged.deeper and steel.quench != "air"
    helps = [f"take {DEEPER}, which hardens deeper"] if better else []
    drill = "hollow it by a hole along the axis"
    cures = ", ".join([*helps, drill])
    return (
        f"The {which} {verb} not harden through: {steel.name} does so up to some {limit} in "
        f"{steel.quench}. The core stays softer and tougher; how deep the hard case goes is not "
        f"known. Where it must be hard right through, {cures}, or ask the steel's supplier."
    )


def not_known(judged: HardenedThrough) -> str:
    """Says so where nobody told up to what section the steel hardens through."""
    steel = judged.hardening.steel
    if judged.known is not None or steel.case_depth:
        return ""
    return (
        f"Up to what section {steel.name} hardens through is not known here: the supplier's data "
        "say it."
    )


def _section(thick: Thick, units: Units) -> str:
    size = in_words(thick.diameter, ".1f", units)
    round_bar = "" if thick.where is Where.FLUTED else " round"
    return f"{thick.where.value} of {size}{round_bar}"
