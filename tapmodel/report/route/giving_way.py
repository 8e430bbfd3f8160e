"""How far the blank gives way, and what helps it where that is much."""

from functools import partial

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Block, Paragraphs, Row, Rows, small_length
from tapmodel.report.units import in_words
from tapmodel.shop.springing import last_pass, milling_sag, threading_sag
from tapmodel.words import Units

CAPTION = "How far the blank gives way (a model, to a factor of two)"

MUCH_AT_THREAD, MUCH_AT_FLUTES = 0.005, 0.02
"""From which on it is told what helps [mm]: the one stands twice in the pitch diameter, the other
in the core alone. Rule of this program."""

_LATHE = (
    "The thread gets thick where the blank gives way: go over it again without feed until no chip "
    "comes, measure, and feed less; a follower behind the tool holds it."
)

_MILL = (
    "The flutes get shallow where the blank gives way: a jack under the thread, lighter steps, and "
    "the last one twice."
)


def at_thread(design: TapDesign) -> tuple[Block, ...]:
    """Under the threading tool."""
    label = partial(_pass, last_pass(design.tap.thread))
    return _told(label, threading_sag(design), MUCH_AT_THREAD, _LATHE)


def at_flutes(design: TapDesign) -> tuple[Block, ...]:
    """Under the cutter."""
    label = "pushed down in a step of a tenth of the cutter, the flutes nearly deep"
    return _told(label, milling_sag(design), MUCH_AT_FLUTES, _MILL)


def _told(label: str | partial[str], sag: float, much: float, helps: str) -> tuple[Block, ...]:
    rows = Rows((Row(label, small_length(sag)),), CAPTION)
    return (rows, Paragraphs((helps,))) if sag > much else (rows,)


def _pass(infeed: float, units: Units) -> str:
    return f"pushed from the tool by the force of a pass of {in_words(infeed, '.2g|.4f', units)}"
