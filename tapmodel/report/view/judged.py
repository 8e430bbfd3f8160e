"""One line on a part of a tap: what the rules found about it, else that it is fine."""

from collections.abc import Collection
from dataclasses import dataclass

from tapmodel.designing.record import TapDesign
from tapmodel.findings import gravest_first
from tapmodel.report.units import Units
from tapmodel.report.words.findings import said
from tapmodel.words import Severity

SIGNS = {Severity.ERROR: "✖", Severity.WARNING: "▲", Severity.NOTE: "•"}
"""That stand for a severity, for whoever sees no colour."""

GOOD = "✔"


@dataclass(frozen=True, slots=True)
class Judged:
    """What is to be thought of a tap, or of a part of it.

    Attributes:
        weight: "good", or the gravest severity of what was found.
        sign: that stands for it.
        text: one or more sentences.
    """

    weight: str
    sign: str
    text: str


def judged_by(design: TapDesign, codes: Collection[str], fine: str, units: Units) -> Judged:
    """What the rules of some codes found.

    Args:
        design: of the tap.
        codes: of these rules.
        fine: what is said where none of them found anything.
        units: of the text.
    """
    found = [one for one in gravest_first(design.findings) if one.code in codes]
    if not found:
        return judged_as(None, fine)
    return judged_as(found[0].severity, " ".join(said(one, units) for one in found))


def judged_as(severity: Severity | None, text: str) -> Judged:
    """What is as grave as that; None for what is fine."""
    if severity is None:
        return Judged("good", GOOD, text)
    return Judged(severity.value, SIGNS[severity], text)
