"""Hardening and tempering the finished tap, by its steel."""

from collections.abc import Iterator

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import (
    Chapter,
    Length,
    Paragraphs,
    Row,
    Rows,
    Telling,
    Temperature,
    Told,
    Words,
)
from tapmodel.report.words.hardening import SUPPLIER, hard_through, not_known, soft_inside
from tapmodel.shop.heat.through import HardenedThrough, Where, of_design
from tapmodel.spec.measured.sizes import Size
from tapmodel.standards.materials.hardening import Of
from tapmodel.standards.materials.steels import TapSteel


def chapter(design: TapDesign) -> Chapter:
    """From which heat it is quenched, in what, and what tempering leaves."""
    judged = of_design(design)
    rows = (*hardening_rows(judged), *_furnace(design), *tempering_rows(design.work.steel))
    texts = (*told_of_sections(judged), *_carbon(design), _sources(design, judged), SUPPLIER)
    return Chapter("hardening", "Harden and temper", (Rows(rows), Paragraphs(texts)))


def hardening_rows(judged: HardenedThrough) -> Iterator[Row]:
    """Case, heat, time at it, quench, and the section that hardens through."""
    hardening, known = judged.hardening, judged.known
    steel = hardening.steel
    if steel.case_depth:
        yield Row("carburise first, depth of the case", Length(steel.case_depth, 1))
    yield Row(f"{steel.told}, quench from", Temperature((steel.harden_low, steel.harden_high)))
    soak = hardening.fact(Of.SOAK)
    # In few rows: most sheets would have a page more.
    held = f", after {soak.low:g} to {soak.high:g} min at heat" if soak else ""
    yield Row("quench in", Words(f"{steel.quench}{held}"))
    if known:
        yield Row(_sections(judged), Told(lambda units: hard_through(judged, units)))


def _sections(judged: HardenedThrough) -> str:
    behind = any(section.where is Where.BEHIND for section in judged.sections)
    return "shank, behind the flutes, between them" if behind else "shank, core between flutes"


def _furnace(design: TapDesign) -> Iterator[Row]:
    """What the furnace reaches; nothing where nobody said."""
    reached = design.number("shop.furnace")
    if reached is not None:
        yield Row("the furnace reaches", Temperature((reached,)))


def tempering_rows(steel: TapSteel) -> Iterator[Row]:
    """Temper, and what it leaves."""
    heat = Temperature((steel.temper,)) if steel.temper else Words("as the supplier says")
    yield Row("temper at", heat)
    yield Row("hardness after that", Words(f"{steel.hardness:.3g} HRC"), size=Size.HARDNESS)


def told_of_sections(judged: HardenedThrough) -> tuple[str | Telling, ...]:
    """What is to be said of sections that stay soft inside, or of which nothing is known."""
    if judged.too_thick:
        return (lambda units: soft_inside(judged, units),)
    unknown = not_known(judged)
    return (unknown,) if unknown else ()


def _carbon(design: TapDesign) -> Iterator[str]:
    """Where the carbon of a case is computed: it takes libraries that no design waits for."""
    if design.work.steel.case_depth:
        asked = f"tapmodel heat --carburise --hours 0.5 {design.designation}"
        yield f"How far the carbon goes into these teeth tells: {asked}"


def _sources(design: TapDesign, judged: HardenedThrough) -> str:
    steel, chosen = design.work.steel, design.choice("tap.hardness")
    hardness = "as the job has it" if chosen is not None and chosen.given else str(steel.source)
    through = f" Section: {judged.known.source.certainty.value}." if judged.known else ""
    return f"Quench: {steel.harden_source}. Hardness: {hardness}.{through}"
