"""Hardening and tempering the finished tap, by its steel."""

from collections.abc import Iterator

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Chapter, Length, Paragraphs, Row, Rows, Temperature, Words
from tapmodel.standards.materials.steels import TapSteel

SUPPLIER = (
    "The supplier's data of this very steel come before these numbers, and say how long to soak. "
    "Quench point first, straight down; temper at once (common practice)."
)
"""Whose numbers hold, and what keeps a tap straight and whole."""


def chapter(design: TapDesign) -> Chapter:
    """From which heat it is quenched, in what, and what tempering leaves."""
    steel = design.work.steel
    blocks = (Rows(tuple(_rows(steel))), Paragraphs((_sources(design), SUPPLIER)))
    return Chapter("hardening", "Harden and temper", blocks)


def _rows(steel: TapSteel) -> Iterator[Row]:
    if steel.case_depth:
        yield Row("carburise first, depth of the case", Length(steel.case_depth, 1))
    yield Row(f"{steel.told}, quench from", Temperature((steel.harden_low, steel.harden_high)))
    yield Row("quench in", Words(steel.quench))
    heat = Temperature((steel.temper,)) if steel.temper else Words("as the supplier says")
    yield Row("temper at", heat)
    yield Row("hardness after that", Words(f"{steel.hardness:.3g} HRC"))


def _sources(design: TapDesign) -> str:
    steel, chosen = design.work.steel, design.choice("tap.hardness")
    hardness = "as the job has it" if chosen is not None and chosen.given else str(steel.source)
    return f"Quench: {steel.harden_source}. Hardness: {hardness}."
