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


def what(finding: Finding) -> str:
    """One sentence for the machinist, ending in what to change."""
    said, cures = SENTENCES[finding.code](finding), advice(finding.cures)
    return f"{said.removesuffix('.')}; {cures}." if cures else said
