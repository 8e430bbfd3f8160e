"""Reasons for what is tapped, in words."""

from tapmodel.report.words.reasons.sentence import Sentence

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
    "hardness-after-temper": "as tempered at {temper:g °C}",
    "hole-blind-for-bottoming": "so short a chamfer is asked for where a hole has a bottom",
}
