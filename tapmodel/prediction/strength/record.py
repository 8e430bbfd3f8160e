"""What a tap bears: the shear in its sections, and the torques at which it yields and breaks."""

from dataclasses import dataclass
from enum import StrEnum

from tapmodel.prediction.band import Band
from tapmodel.standards.materials.steels import TapSteel


class Place(StrEnum):
    """Which part of the tap a section lies in."""

    ROOT = "root"
    THREAD_END = "thread end"
    NECK = "neck"
    RUN_OUT = "run-out"
    SHANK = "shank"
    SQUARE = "square"


class Spot(StrEnum):
    """Where on a section's edge, or under it, the stress decides."""

    FLOOR = "flute floor"
    LAND = "land"
    THREAD_ROOT = "thread root"
    FLAT = "flat"
    ROUND = "round"
    CORE = "core under the case"
    WHOLE = "whole section"


class RadiusHeld(StrEnum):
    """What made the radius of a thread's root the one that is reckoned with."""

    THREAD = "thread"
    TOOL = "tool"
    MATERIAL = "material"
    ROOM = "room"


@dataclass(frozen=True, slots=True)
class Section:
    """A section of the tap in torsion.

    Attributes:
        place: which part of the tap it lies in.
        z: its height above the front [mm].
        stiffness: the torsion constant J [mm⁴].
        modulus: torque by peak shear [mm³].
        shear: the peak in a torque of 1 N·m [MPa].
        spot: where on its edge the peak stands.
        at: x and y of it, for one of the equal flutes, the first's axis along x [mm].
    """

    place: Place
    z: float
    stiffness: float
    modulus: float
    shear: float
    spot: Spot
    at: tuple[float, float]


@dataclass(frozen=True, slots=True)
class Notch:
    """The grooves of a thread in torsion.

    Attributes:
        factor: Kts, greatest shear in the groove by `16 T/(pi d1**3)` of a plain shaft.
        radius: at the root's corner (or of the whole root) that was reckoned with [mm].
        held: what made it that radius.
        effective_diameter: of the plain shaft that twists as the threaded one does [mm].
    """

    factor: float
    radius: float
    held: RadiusHeld
    effective_diameter: float


@dataclass(frozen=True, slots=True)
class Breaking:
    """Where a tap breaks, and at which torque.

    Attributes:
        place: which part of the tap.
        z: height of the section [mm].
        spot: where on it.
        torque: at which it does, by the likely strength [N·m].
    """

    place: Place
    z: float
    spot: Spot
    torque: float


@dataclass(frozen=True, slots=True)
class Strength:
    """What a tap of some steel bears.

    Attributes:
        steel: of which it is made.
        sections: from the front to the square.
        notch: of its thread.
        land_shear: the peak on the lands of the root section in 1 N·m, before the notch [MPa].
        yields: torque at which the steel first yields in any section, the notch apart [N·m].
        yields_at: where that is.
        floor: torque at which the flute's floor would break, in the weakest fluted section [N·m].
        thread_root: torque at which the root of the thread would break, on a land [N·m].
        plastic: torque at which all of the weakest section yields, which no steel passes; of a
            cased steel as if there were no case but on a section that is case throughout [N·m].
        breaks: torque at which the tap breaks: the least of all sections and of the notch, and
            never more than the plastic one [N·m].
        governs: where that is.
        bears: torque that it bears with a reserve [N·m].
    """

    steel: TapSteel
    sections: tuple[Section, ...]
    notch: Notch
    land_shear: float
    yields: Band
    yields_at: Breaking
    floor: Band
    thread_root: Band
    plastic: Band
    breaks: Band
    governs: Breaking
    bears: float
