"""A finding in words: what is wrong, and what to set."""

from tapmodel.findings import Finding
from tapmodel.report.words.cures import advice
from tapmodel.report.words.rules import blank, chamfer, flutes, relief, runout, thread
from tapmodel.report.words.sentence import Sentences

SENTENCES: Sentences = {
    code: sentence
    for part in (thread, chamfer, flutes, runout, relief, blank)
    for code, sentence in part.SENTENCES.items()
}
"""Of every rule, by its code."""


def said(finding: Finding) -> str:
    """What is wrong, one sentence for the machinist."""
    return SENTENCES[finding.code](finding)


def what(finding: Finding) -> str:
    """The same, ending in what to change."""
    cures = advice(finding.cures)
    return f"{said(finding).removesuffix('.')}; {cures}." if cures else said(finding)
