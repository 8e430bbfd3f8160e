"""A choice in words: its value with the unit, why it was made, and whose rule it is."""

from tapmodel.designing.choice import Choice, Reason
from tapmodel.report.blocks import small_length
from tapmodel.report.tools import cutter_of
from tapmodel.report.units import shown
from tapmodel.report.words.reasons import blank, chamfer, flutes, hole, relief, thread, work
from tapmodel.report.words.reasons.sentence import Sentence, told
from tapmodel.report.words.sentence import Writer
from tapmodel.spec.units import Unit
from tapmodel.words import Units

SENTENCES: dict[str, Sentence] = {
    **hole.SENTENCES,
    **work.SENTENCES,
    **thread.SENTENCES,
    **chamfer.SENTENCES,
    **flutes.SENTENCES,
    **relief.SENTENCES,
    **blank.SENTENCES,
}
"""What the design room's rules are called in words, by the code of the reason."""


def value_text(choice: Choice, units: Units = Units.MM) -> str:
    """The value with its unit: a number with all its digits, the numbers of a list in short.

    A length stays in mm, as a job has it, its inches behind it for whoever reads those, where
    cutters on a shelf go by their names.
    """
    value = choice.value
    if isinstance(value, tuple):
        text = ", ".join(word if isinstance(word, str) else f"{word:g}" for word in value)
    else:
        text = str(value)
    inches = _inches(choice) if units is not Units.MM and choice.unit is Unit.MM else ""
    return f"{text} {choice.unit}".rstrip() + inches


def _inches(choice: Choice) -> str:
    entries = choice.value if isinstance(choice.value, tuple) else (choice.value,)
    numbers = [entry for entry in entries if isinstance(entry, int | float)]
    named = choice.field == "shop.cutters"
    texts = [(named and _name(number)) or _decimals(number) for number in numbers]
    return f" ({', '.join(texts)} in)"


def _name(cutter: float) -> str:
    """What a cutter of inches is called; empty for another."""
    return next(iter(cutter_of(cutter).names), "")


def _decimals(number: float) -> str:
    return shown(small_length(number), Units.INCH)[0].removesuffix(" in")


def why(choice: Choice, units: Units = Units.MM) -> str:
    """The rule that chose the value, one sentence, its lengths in the reader's units."""
    return "as given" if choice.rule is None else sentence(choice.rule, units)


def sentence(reason: Reason, units: Units = Units.MM) -> str:
    """A reason in words.

    Raises:
        KeyError: no sentence for its code.
        TypeError: its values are not those that the sentence needs; likewise a KeyError.
    """
    return told(SENTENCES[reason.code], reason.values, Writer(units))


def source_text(choice: Choice) -> str:
    """Who published the rule and how sure that is, or that the job says so."""
    return "job" if choice.source is None else str(choice.source)
