"""A finding in words: what is wrong, and what to set."""

from tapmodel.findings import Finding
from tapmodel.report.words.cures import advice
from tapmodel.report.words.rules import (
    blank,
    chamfer,
    flutes,
    hardening,
    load,
    relief,
    runout,
    thread,
)
from tapmodel.report.words.sentence import Sentences, Writer
from tapmodel.words import Units

SENTENCES: Sentences = {
    code: sentence
    for part in (thread, chamfer, flutes, runout, relief, blank, hardening, load)
    for code, sentence in part.SENTENCES.items()
}
"""Of every rule, by its code."""


def said(finding: Finding, units: Units = Units.MM) -> str:
    """What is wrong, one sentence for the machinist, its lengths and torques in `units`."""
    return SENTENCES[finding.code](finding, Writer(units))


def what(finding: Finding, units: Units = Units.MM) -> str:
    """The same, ending in what to change."""
    cures, sentence = advice(finding.cures, units), said(finding, units)
    return f"{sentence.removesuffix('.')}; {cures}." if cures else sentence
