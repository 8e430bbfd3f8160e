"""What the tap takes in the hole, what it bears, and how it is turned."""

import math
from collections.abc import Iterator
from functools import partial

from tapmodel.designing.record import TapDesign
from tapmodel.prediction.band import Band
from tapmodel.prediction.chips.record import Chips
from tapmodel.prediction.prediction import WORN, Prediction
from tapmodel.prediction.strength.record import Breaking, Spot
from tapmodel.prediction.strength.strength import STOP_SHARE
from tapmodel.prediction.strength.wrench import HAND_FORCE, INCH_WRENCH, WRENCH, pull, wrench_length
from tapmodel.prediction.torque.friction import WEAR_LAND
from tapmodel.report.blocks import (
    Block,
    Chapter,
    Force,
    Length,
    Paragraphs,
    Row,
    Rows,
    Told,
    Torque,
    Words,
    hole_depth,
)
from tapmodel.report.units import MM_PER_INCH, as_text, force_in_words, in_words
from tapmodel.shop.tapping_speed import revolutions
from tapmodel.standards.materials.steels import TapSteel
from tapmodel.words import Units

MODEL = (
    "Torque and strength come from a model, not from a measurement. A band runs from the least to "
    "the greatest of its estimates: cutting force tooth by tooth with friction, printed formulas "
    "where they hold, the strength of the steel."
)
MOST_UNDER_POWER = 4.0
"""Longest lead [mm] for which a speed under power is told: a longer one runs in faster than anybody
stops it. Rule of this program."""

IN_A_MACHINE = "speed in a machine, not by hand"
"""By hand no speed is kept: half a turn on and a quarter back, as the chip feels."""

REACHED = 0.95
"""A band that comes so near to the torque to stop at reaches it: no torque is known better."""

AT_RISK = "The band reaches the torque to stop at: one hole may take all that is safe."


def _feel(design: TapDesign, _units: Units) -> str:
    """What multiplies the torque; without oil only where the material asks for some."""
    dry_too = design.work.material.group.lubricant.startswith("dry")
    causes = "Edges duller than that" if dry_too else "Edges duller than that, or a hole left dry,"
    return f"{causes} take two to four times as much torque. Feel decides."


def _why_there(foreseen: Prediction, units: Units) -> str:
    """Which of the two sets the torque to stop at."""
    bears = foreseen.strength.bears
    if foreseen.stop_at >= bears:
        share = f"{100 * STOP_SHARE:g} %"
        return f"Stop at what is safe: {share} of the least at which the tap yields or breaks."
    told_as = as_text(Torque((bears,)), units)
    return (
        f"Stop at {WORN:g} times the greatest torque of a sharp tap, when edges are gone or chips "
        f"jam; the tap itself is safe up to {told_as}."
    )


def likely_told(foreseen: Prediction) -> str:
    """What the likely torque is the mean of."""
    formulas = len(foreseen.torque.likely_by) - 1
    if formulas:
        read = (
            "the two formulas that were read" if formulas > 1 else "the one formula printed for it"
        )
        return f"Likely is the geometric mean of the teeth and of {read}."
    return (
        "No printed formula holds here: likely is what the teeth alone tell, not the middle of the "
        "band, which reaches as far below and above that as formulas were found from teeth on V "
        "threads."
    )


def _risks(foreseen: Prediction) -> list[str]:
    """Nothing where the band ends clear of the torque to stop at, or a finding says worse."""
    band, stop = foreseen.torque.band, foreseen.stop_at
    return [AT_RISK] if band.likely < stop <= band.high / REACHED else []


def chapter(design: TapDesign) -> Chapter:
    """Torque, where to stop, the wrench, room for chips."""
    foreseen = design.prediction
    if foreseen is None:
        return Chapter("torque", "Tap the hole", (Paragraphs((_NONE,)),) if design.errors else ())
    blocks = (
        Rows(tuple(work_rows(design))),
        Paragraphs((f"{MODEL} {likely_told(foreseen)}",)),
        Rows(tuple(_load(foreseen)), "Torque"),
        Paragraphs((partial(_why_there, foreseen), *_risks(foreseen), partial(_feel, design))),
        Rows(tuple(_chips(design, foreseen)), "Chips"),
        *clearing(design, foreseen),
    )
    return Chapter("torque", "Tap the hole", blocks)


def clearing(design: TapDesign, foreseen: Prediction) -> list[Block]:
    """What to do with chips that the flutes do not hold; common practice."""
    if foreseen.chips_held >= design.work.depth:
        return []
    if foreseen.chips_held < design.tap.thread.lead:
        return [Paragraphs((_EVERY_HALF_TURN,))]
    through = "" if design.work.blind else " Through a hole part of them fall out in front."
    return [Paragraphs((f"{_BACK_OUT}{through}",))]


_BACK_OUT = "Each time so much thread is cut back the tap out and clear the chips."

_EVERY_HALF_TURN = "Back the tap right out and clear the chips at every half turn."

_NONE = "Nothing is told of a tap that breaks a rule."


def torque_rows(design: TapDesign) -> Iterator[Row]:
    """The two that are looked for first; none for a tap that breaks a rule."""
    foreseen = design.prediction
    if foreseen is not None:
        yield Row(
            f"likely torque (a model) in {_material(design)}",
            Torque((foreseen.torque.band.likely,)),
        )
        yield Row("stop turning at", Torque((foreseen.stop_at,)))


def _material(design: TapDesign) -> str:
    name = design.work.material.told
    return f"{name}, assumed" if design.work.assumed else name


def hardness_told(steel: TapSteel) -> str:
    """How hard the finished tap is, as every paper words it."""
    return f"{steel.hardness:.3g} HRC after temper"


def work_rows(design: TapDesign) -> Iterator[Row]:
    """What is tapped, how deep, with which oil and how fast."""
    work = design.work
    major = design.tap.thread.major
    slow, fast = (float(f"{revolutions(speed, major):.2g}") for speed in work.material.group.speed)
    yield Row("material of the work", Words(_material(design)))
    depth = design.choice("hole.depth")
    assumed = "" if depth is None or depth.given else ", assumed"
    yield Row(f"{work.kind} hole, depth of thread{assumed}", hole_depth(work.depth))
    yield Row("oil", Words(work.material.group.lubricant))
    if design.tap.thread.lead <= MOST_UNDER_POWER:
        yield Row(IN_A_MACHINE, Words(f"{slow:g} to {fast:g} turns a minute"))
    else:
        yield Row("speed", Words("by hand, so long is the lead"))


def _load(foreseen: Prediction) -> Iterator[Row]:
    torque, strength = foreseen.torque, foreseen.strength
    governs = strength.governs
    yield Row("likely torque", Torque((torque.band.likely,)))
    yield Row("band of torque", Torque((torque.band.low, torque.band.high)))
    yield Row("of it, friction of the lands", _banded(torque.friction))
    yield Row(_worn, Torque((torque.wear.likely,)))
    yield Row("turning back", _banded(torque.back))
    part = foreseen.task.part
    guided = Words("none, the thread before draws it in")
    force = guided if part and part.before else Force(torque.axial_force.likely)
    yield Row("force to start it", force)
    yield Row("stop turning at", Torque((foreseen.stop_at,)))
    yield from wrench_rows(foreseen)
    yield Row("steel yields at", Torque((strength.yields.low, strength.yields.high)))
    breaks = strength.breaks
    yield Row("breaks at", Torque((breaks.low, breaks.high)))
    yield Row("breaks first", Words(place_of(governs)))


def wrench_rows(foreseen: Prediction) -> Iterator[Row]:
    """What the torque to stop at is in the hands."""
    yield Row("pull of each hand reckoned with", Force(HAND_FORCE))
    yield Row("wrench over both hands, at most", _wrench(foreseen))
    yield Row(_pull_label, Told(partial(_pull, foreseen.stop_at)))


def _pull_label(units: Units) -> str:
    # a round number of the one unit that is read needs no decimals
    inches = f"{INCH_WRENCH / MM_PER_INCH:.0f} in"
    told = inches if units is Units.INCH else in_words(WRENCH, ".0f", units)
    return f"at a wrench of {told} that is for each hand"


def _usual_wrench(units: Units) -> float:
    """A round length in the one unit that is read [mm]."""
    return INCH_WRENCH if units is Units.INCH else WRENCH


def _pull(torque: float, units: Units) -> str:
    return force_in_words(pull(torque, _usual_wrench(units)), units)


def _worn(units: Units) -> str:
    return f"edges worn {in_words(WEAR_LAND, '.2f', units)} wide add"


def place_of(governs: Breaking) -> str:
    """Section and spot; the thread's root is a place of its own."""
    at_root = governs.spot is Spot.THREAD_ROOT
    return governs.spot.value if at_root else f"{governs.place}, {governs.spot}"


def _wrench(foreseen: Prediction) -> Length:
    """As long as two figures tell, for the torque is known no better; rounded down."""
    longest = wrench_length(foreseen.stop_at)
    step = 10.0 ** (math.floor(math.log10(longest)) - 1)
    return Length(math.floor(longest / step) * step, 0)


def _banded(band: Band) -> Torque:
    return Torque((band.low, band.high))


def _chips(design: TapDesign, foreseen: Prediction) -> Iterator[Row]:
    chips = foreseen.chips
    yield Row("teeth that take a chip, be it in part", Words(str(len(chips.teeth))))
    yield Row("thickest chip, as the raked face cuts it", Length(chips.thickness_max, 4))
    yield Row(f"thinnest chip{_of_an_end(chips)}", Length(chips.thickness_min, 4))
    yield chip_room_row(design, foreseen)


def _of_an_end(chips: Chips) -> str:
    """Whose it is: as a rule of the first or the last to cut, which takes what little is left."""
    for tooth, which in zip(chips.teeth[:1] + chips.teeth[-1:], ("first", "last"), strict=False):
        if tooth.thickness == chips.thickness_min:
            return f", that of the {which} tooth"
    return ""


def chip_room_row(design: TapDesign, foreseen: Prediction) -> Row:
    """How much thread is cut before the flutes are full."""
    held = foreseen.chips_held
    told = hole_depth(held)
    if held >= design.work.depth:
        told = Words("all of this hole")
    elif held < design.tap.thread.lead:
        told = Words("less than of one turn")
    return Row("thread whose chips the flutes hold", told)
