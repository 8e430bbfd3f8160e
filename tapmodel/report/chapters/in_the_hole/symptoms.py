"""What each symptom means in this tap's numbers, and what to change."""

from collections.abc import Sequence
from functools import partial

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Block, Chapter, Paragraphs
from tapmodel.report.chapters.in_the_hole.turning_it import MOST_UNDER_POWER
from tapmodel.report.words.symptoms import NAMES, TITLES, at_the_bench, cause_text
from tapmodel.shop.symptoms.record import Symptom, Why
from tapmodel.shop.symptoms.symptoms import symptoms_of
from tapmodel.words import Units

INTRODUCTION = (
    "Causes stand in the order in which the numbers of this tap speak for them (a rule of this "
    "program); what they rule out is not named. Behind each is what to set in the job of the next "
    "tap; look at its findings, for all but the cures of findings are not tried on it."
)


def chapter(design: TapDesign) -> Chapter:
    """Symptom by symptom; nothing for a tap of which nothing is foreseen."""
    found = symptoms_of(design)
    texts = tuple(partial(_told, symptom, design, _before(found, symptom)) for symptom in found)
    blocks: tuple[Block, ...] = (Paragraphs((INTRODUCTION, *texts)),) if texts else ()
    return Chapter("symptoms", "When it goes wrong", blocks)


def _before(found: Sequence[Symptom], symptom: Symptom) -> frozenset[Why]:
    """Causes that were told of the symptoms before one."""
    earlier = found[: found.index(symptom)]
    return frozenset(cause.why for one in earlier for cause in one.causes)


def _told(symptom: Symptom, design: TapDesign, before: frozenset[Why], units: Units) -> str:
    """A symptom with its numbered causes, and those of the bench behind them."""
    causes = [
        f"{NAMES[cause.why]}, as above" if cause.why in before else cause_text(cause, units)
        for cause in symptom.causes
    ]
    numbered = " ".join(f"({number}) {text}." for number, text in enumerate(causes, start=1))
    by_machine = design.tap.thread.lead <= MOST_UNDER_POWER
    always = at_the_bench(symptom.sign, design, by_machine=by_machine)
    begun = f"{TITLES[symptom.sign]}: {numbered}".rstrip()
    return f"{begun} In any tap: {always}."
