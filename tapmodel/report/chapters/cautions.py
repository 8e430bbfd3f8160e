"""What can hurt, at the machine and after it. Common practice, not a substitute for training."""

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Chapter, Paragraphs

SLENDER = 6.0
"""Longer than so many of its thinnest diameters, a blank bends under the cut; common practice."""

EYES = "Eye protection at every step; no gloves, rings or loose sleeves near turning parts."

CUTTER = (
    "Cutter breakage: a ball-nose at full flute depth is heavily loaded. Take the depth "
    "in steps, clear the chips, stand out of the line of the cutter, no hand near a "
    "running cutter."
)

GRINDING = (
    "Grinding: check wheel and guard, dress the wheel, keep clear of its plane when "
    "starting, catch the dust; heat that colours the edge has softened it."
)

HARDENING = (
    "Hardening: red-hot steel and hot oil burn and can catch fire. Face shield, dry "
    "tongs, lid for the oil, extinguisher, fresh air; no water near hot oil or salt. "
    "Temper at once: a tap left hard can burst."
)

HARD_TAP = "A hard tap splinters when it jams: drive it straight, with a wrench of the right size."

RULES = (
    "Local rules and the training that they ask for come before this sheet; where work "
    "is kept to licensed trades, leave it to them."
)
"""This and `HARDENING` stand beside answers on heat, too."""

CALCULATED = (
    "The numbers were calculated, not measured on your part. Check each before the next cut."
)

CAUTIONS = (CUTTER, GRINDING, HARDENING, HARD_TAP, RULES, CALCULATED)


def chapter(design: TapDesign) -> Chapter:
    """The same for every tap but for how its blank is held."""
    return Chapter("cautions", "Cautions", (Paragraphs((EYES, loose(design), *CAUTIONS)),))


def loose(design: TapDesign) -> str:
    """How the blank is held, and the mill locked."""
    blank = design.tap.blank
    necks = [blank.neck_diameter] if blank.has_neck else []
    thinnest = min(design.tap.thread.major, blank.shank_diameter, *necks)
    slender = "the blank is slender. " if blank.overall_length > SLENDER * thinnest else ""
    hold = "Hold" if slender else "hold"
    centre = "centre" if blank.front_centre > 0 else "hollow centre, by its male point"
    return (
        f"Loose work: {slender}{hold} it in chuck and {centre}, clamp the dividing head and lock "
        "the spindle before each cut, stop the machine before measuring."
    )
