"""Sentences on carburising: what to heed, how it was computed, what can hurt."""

from tapmodel.prediction.heat.diffusivity import AGREN
from tapmodel.prediction.heat.martensite import HARDNESS, RETAINED
from tapmodel.prediction.heat.record import CASE, Carburised
from tapmodel.report.units import in_words
from tapmodel.shop.heat.carburised import Heed
from tapmodel.words import Units

REHEAT = "cool it in the box and harden it by one reheat to 760 to 800 °C (1400 to 1472 °F)"
"""The old remedy, from memory: austenite holds only some 0.8 to 0.9 % carbon there."""

CAUTION = (
    "A carburising box gives off carbon monoxide: work where the air is drawn off, let it cool "
    "before it is opened, and keep breath and eyes from the dust of charcoal and carbonate."
)
CAUSTIC = "Caustic soda, which takes off baked oil, burns skin and eyes: gloves and face shield."

COMPUTED = (
    "Computed: the section in the middle of a land, across the flanks, with the surface at its "
    "carbon from the first moment at full heat. Cutting edges take up carbon from the flute "
    f"too, and are richer. Carbon by {AGREN}; hardness by {HARDNESS}, of martensite alone; "
    f"austenite by {RETAINED}, an order of size."
)
"""What the numbers are of, and by whose laws."""


def heeded(heed: Heed, found: Carburised, units: Units) -> str:
    """The sentence of a thing to heed."""
    match heed:
        case Heed.GLASS:
            return _glass(found, units)
        case Heed.NO_CASE:
            return (
                f"Carbon falls to {CASE:g} % nowhere under the root: the whole core becomes hard "
                "and brittle. Shorten the time."
            )
        case Heed.AUSTENITE:
            share = found.flat.places[0].retained
            return (
                f"Quenched straight from the box, some {share:.0%} of the surface stays austenite, "
                f"which is soft: {REHEAT}, from memory."
            )
        case Heed.SATURATED:
            return (
                f"Austenite holds some {found.saturation:.2f} % carbon at "
                f"{found.asked.celsius:.0f} °C (from memory, low certainty): what is more becomes "
                "carbide at the surface."
            )
        case Heed.THIN:
            return _thin(found, units)


def _glass(found: Carburised, units: Units) -> str:
    tooth = found.tooth
    if tooth is None:
        return ""
    carbon, pitch = tooth.middle.carbon, in_words(tooth.pitch, "g", units)
    return (
        f"The teeth of pitch {pitch} have {carbon:.2f} % carbon in their middle: they become "
        f"glass hard right through, with no tough core. Take a shorter time, {REHEAT}, or make the "
        "tap of a steel that hardens through, tempered as its table says."
    )


def _thin(found: Carburised, units: Units) -> str:
    under, flat = (in_words(case or 0.0, ".2f", units) for case in (found.case, found.flat.case))
    return (
        f"The case is {under} under the root and {flat} under a flat surface: the root takes up "
        "carbon from half a plane only. A test piece with a flat shows more than the tap has."
    )
