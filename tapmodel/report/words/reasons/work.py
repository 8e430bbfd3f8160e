"""Reasons for what is tapped, in words."""

from tapmodel.report.words.reasons.sentence import Sentence
from tapmodel.report.words.sentence import Writer


def _gentle(write: Writer, furnace: float) -> str:
    """By what a steel is chosen."""
    heat = write.temperature(furnace)
    reached = f", of those that a furnace of {heat} hardens" if furnace else ""
    return f"warps and cracks least{reached}"


def _in_stock(write: Writer, /, *, stock: tuple[str, ...], furnace: float) -> str:
    return f"of those in stock ({', '.join(stock)}) the one that {_gentle(write, furnace)}"


def _usual(write: Writer, /, *, furnace: float) -> str:
    return f"of the usual steels the one that {_gentle(write, furnace)}"


SENTENCES: dict[str, Sentence] = {
    "material-assumed": (
        "an assumption, as the job names none: torque and advice hold for this material alone"
    ),
    "depth-of-diameter": "{share:g} times the diameter, the usual depth of a thread",
    "depth-of-fine": "{pitches:g} pitches, as deep as so fine a thread is of use",
    "depth-of-guided": "{share:g} times the full thread that guides a large tap of so fine a pitch",
    "hole-through": "the usual hole, unless the chamfer asked for is a bottoming one",
    "steel-for-a-small-furnace": (
        "hardens in oil, hardly warps and is tempered in a kitchen oven; name yours"
    ),
    "steel-in-stock": _in_stock,
    "steel-for-the-furnace": _usual,
    "hardness-after-temper": "as tempered at {temper:g °C}",
    "hole-blind-for-bottoming": "so short a chamfer is asked for where a hole has a bottom",
}
