"""In which order the tap is made, told once before the chapters that follow it."""

from collections.abc import Iterator

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Chapter, Paragraphs
from tapmodel.shop.male_point import male_point
from tapmodel.words import ReliefKind


def chapter(design: TapDesign) -> Chapter:
    """One sentence of steps, and what may stand elsewhere."""
    steps = "; ".join(f"{number} {step}" for number, step in enumerate(_steps(design), start=1))
    texts = (f"{steps}.", *((_GROUND,) if _relieved(design) else ()))
    return Chapter("order", "Order of the work", (Paragraphs(texts),))


_GROUND = "A relief that is ground may wait until after tempering; a filed one cannot."
"""Common practice."""


def _steps(design: TapDesign) -> Iterator[str]:
    """Common practice; what is measured between the steps stands in their chapters."""
    yield "turn the blank"
    yield "cut the thread and measure it"
    yield "turn the chamfer"
    yield "mill the square"
    yield "mill the flutes"
    if relieved := _relieved(design):
        yield f"relieve the {' and the '.join(relieved)}"
    yield "stamp the size on the shank"
    yield "harden"
    yield "temper"
    yield "hone the cutting faces"
    if male_point(design.tap) is not None:
        yield "take off the male point"


def _relieved(design: TapDesign) -> list[str]:
    """What is relieved at all."""
    reliefs = [relief for relief, _ in design.reliefs]
    return [r.applies_to.value for r in reliefs if r.kind is not ReliefKind.CONCENTRIC]
