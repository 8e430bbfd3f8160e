"""What goes wrong with a tap in its hole, and the causes that its own numbers allow."""

from dataclasses import dataclass
from enum import StrEnum

from tapmodel.findings import Cure
from tapmodel.values import NO_VALUES, Values


class Sign(StrEnum):
    """What is noticed."""

    BINDS = "binds"
    TEARS = "tears"
    SQUEALS = "squeals"
    LARGE = "cuts large"
    TAPERS = "tapers"
    SNAPS = "snaps at the square"


class Why(StrEnum):
    """A cause that a number of the tap speaks for."""

    CHAMFER_PROUD = "chamfer-proud"
    LANDS_RUB = "lands-rub"
    CRESTS_RUB = "crests-rub"
    CHIPS_JAM = "chips-jam"
    HOLE_TIGHT = "hole-tight"
    NEAR_STOP = "near-stop"
    RAKE_LOW = "rake-low"
    RAKE_HIGH = "rake-high"
    CHIP_THIN = "chip-thin"
    CHIP_THICK = "chip-thick"
    HIGH_IN_ZONE = "high-in-zone"
    HOLE_WIDE = "hole-wide"
    NO_MARGIN = "no-margin"
    POINT_SLACK = "point-slack"
    SHORT_CHAMFER = "short-chamfer"
    SHORT_GUIDE = "short-guide"
    PRESSED = "pressed"
    SQUARE_WEAK = "square-weak"
    HARD = "hard"


@dataclass(frozen=True, slots=True)
class Cause:
    """One cause.

    Attributes:
        why: it is one.
        weight: the number that speaks for it, in its limit: above 1 beyond it.
        values: what its sentence needs: lengths [mm], angles [deg], torques [N·m], shares.
        cures: what to change in the job; none where something is to be done instead.
        tried: whether the cures were tried on the design, as those of its findings are.
    """

    why: Why
    weight: float
    values: Values = NO_VALUES
    cures: tuple[Cure, ...] = ()
    tried: bool = False


@dataclass(frozen=True, slots=True)
class Symptom:
    """What is noticed, and why.

    Attributes:
        sign: that is noticed.
        causes: that the tap's numbers allow, the likeliest first.
    """

    sign: Sign
    causes: tuple[Cause, ...]
