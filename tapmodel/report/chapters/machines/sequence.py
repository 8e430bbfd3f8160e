"""In which order the tap is made, told once before the chapters that follow it."""

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Chapter, Paragraphs
from tapmodel.shop.order_of_work import Step, order_of_work, relieved
from tapmodel.shop.relief.on_hand import way_of
from tapmodel.tap.tap import Tap
from tapmodel.words import ReliefWay

GROUND = "A relief that is ground may wait until after tempering; a filed one cannot."
"""Common practice."""

FILED = "A relief that is filed is made before hardening."
"""Beside one that is ground; common practice."""

_STEPS = {
    Step.SAW: "saw",
    Step.CENTRE: "centre",
    Step.SHANK: "turn the shank",
    Step.BODY: "the thread part",
    Step.NECK: "the neck",
    Step.THREAD: "cut the thread and measure it",
    Step.CHAMFER: "the chamfer",
    Step.SQUARE: "mill the square",
    Step.FLUTES: "the flutes",
    Step.DEBURR: "deburr",
    Step.MARK: "stamp the size",
    Step.CARBURISE: "carburise in a box",
    Step.HARDEN: "harden",
    Step.TEMPER: "temper",
    Step.CLEAN: "clean",
    Step.HONE: "hone the faces",
    Step.STUB: "take off the male point",
    Step.PROVE: "try it in scrap",
}
"""What is measured between the steps stands in their chapters."""


def chapter(design: TapDesign) -> Chapter:
    """One sentence of steps, and what may stand elsewhere."""
    order = order_of_work(design)
    steps = "; ".join(
        f"{number} {told_step(step, design.tap)}" for number, step in enumerate(order, start=1)
    )
    otherwise = (elsewhere(design),) if Step.RELIEVE in order else ()
    return Chapter("order", "Order of the work", (Paragraphs((f"{steps}.", *otherwise)),))


def elsewhere(design: TapDesign) -> str:
    """Where a relief stands in a shop that makes it another way."""
    return GROUND if way_of(design) is ReliefWay.FILE else FILED


def told_step(step: Step, tap: Tap) -> str:
    """A step in a few words."""
    if step is Step.RELIEVE:
        return f"relieve the {' and the '.join(relieved(tap))}"
    return _STEPS[step]
