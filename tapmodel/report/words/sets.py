"""Whether one tap is enough, and how a set shares its work, in words."""

from tapmodel.designing.record import TapDesign
from tapmodel.designing.sets.need import Reason, Set
from tapmodel.designing.sets.sharing import Way
from tapmodel.report.units import torque_in_words
from tapmodel.words import Units

NUMBERS = {1: "one", 2: "two", 3: "three"}

_CURE = (
    "drill larger inside the minor limits (hole.drill), leave a larger core "
    "(flutes.core_diameter), or tap a softer material"
)

_WAYS = {
    Way.USUAL: (
        "The usual shares: the last tap is left little to cut, so that it cuts clean and to size, "
        "and lasts."
    ),
    Way.EQUAL_TORQUE: (
        "Shares of about equal torque: by the usual ones one of them would take more than is "
        "safe, or all would be pressed harder."
    ),
}


def need(design: TapDesign, found: Set, units: Units = Units.MM) -> str:
    """Whether a set is needed and why, torques in `units`; `design` has its prediction."""
    if found.reason is Reason.ONE_DOES:
        return f"One tap is enough: {_load(design, units)}."
    if found.reason is Reason.TOO_MUCH_FOR_THREE:
        return f"Not even a set of three is enough: one tap {_pressed(design, units)}; {_CURE}."
    return f"One tap is not enough: {_load(design, units)}. A set of {NUMBERS[found.taps]} is."


def _load(design: TapDesign, units: Units) -> str:
    return f"it {_pressed(design, units)}"


def _pressed(design: TapDesign, units: Units) -> str:
    foreseen, work = design.prediction, design.work
    if foreseen is None:
        return "breaks a rule"
    material = f"{work.material.told}, assumed" if work.assumed else work.material.told
    likely, stop = (
        torque_in_words(torque, units) for torque in (foreseen.torque.band.likely, foreseen.stop_at)
    )
    return f"likely takes {likely} in {material}, and is to be stopped at {stop}"


def tap_for(design: TapDesign) -> str:
    """What a paper is of: "Tap for M10", "Tap 2 of a set of 3 for M10"."""
    part = design.part
    tap = f"Tap {part.number} of a set of {part.taps}" if part else "Tap"
    return f"{tap} for {design.designation}"


def way(shared: Way) -> str:
    """Why the work is shared as it is."""
    return _WAYS[shared]
