"""What rubs: lands in the thread they have cut, worn edges, and chips when the tap turns back.

Each is a term of its own, with its assumptions as constants of least, likely and greatest value.
None of them was found in print for taps; all are from memory with low certainty (`CERTAINTY`). The
pressure on the lands is set so that they rub with 1 to 20 % of the cutting torque of a sharp tap.
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.prediction.rubbing.back_taper import back_taper_clearance
from tapmodel.prediction.rubbing.contact import length_below
from tapmodel.prediction.rubbing.record import Threshold
from tapmodel.prediction.torque.cutting import N_M
from tapmodel.shape.flute_section import land_angle, section_of
from tapmodel.shape.relief import drop
from tapmodel.standards.materials.work import WorkMaterial
from tapmodel.tap.tap import Tap
from tapmodel.words import Certainty, ReliefPlace

Floats = NDArray[np.float64]

BRINELL = 9.81
"""MPa of a Brinell hardness of 1: its unit is kgf/mm²."""

LAND_PRESSURE = np.array([0.0005, 0.002, 0.006])
"""Mean pressure of the sprung-back work on what rubs, in the hardness of the work."""

RUBBING_TURNS = 6.0
"""Turns behind the chamfer that are pressed on: those behind them run free in a thread that the
ones before have scraped after it had sprung back."""

WEAR_LAND = 0.1
"""Width of the wear land for which `wear` is told [mm]: a worn edge has so many of them."""

WEAR_DRAG = np.array([0.06, 0.2, 0.3])
"""Drag along a wear land, in the hardness of the work. The middle comes to the 4 to 5 % by which
the force on a lathe tool is known to rise for 0.1 mm of it at a chip of 0.3 mm."""

SHEAR_STRENGTH = 0.22
"""Shear strength of the work in its hardness: tensile strength is 3.4 MPa to a Brinell, shear
strength 0.65 of that (common practice, for steels)."""

CHIP_ROOT = np.array([0.0, 0.5, 2.0])
"""Section of the chips' roots to be sheared when the tap turns back, in the section of the chips as
they are cut: none where all have broken, more than one where they are upset and hold fast."""

CERTAINTY = Certainty.MEMORY
"""Of all constants of this file."""

_ANGLES = 25
# Places in the turns that are pressed on, at which they are looked at where they differ.
_TURNS = RUBBING_TURNS * (np.arange(24) + 0.5) / 24


@dataclass(frozen=True, slots=True)
class RubbingThread:
    """The full thread of a tap as something that rubs.

    Attributes:
        area: that touches, on all lands, for each millimetre along the axis [mm²/mm].
        radius: at which it does [mm].
        begins, ends: z between which it is pressed on; a chamfer, whose flanks grow from nothing,
            counts by half [mm].
    """

    area: float
    radius: float
    begins: float
    ends: float


def rubbing_thread(tap: Tap, drill: float) -> RubbingThread:
    """What of the full thread touches the thread in the work.

    A surface touches where it clears by less than the work springs back; flanks clear by the
    relief's drop times the sine of their angle, and not at all where the crest alone is relieved.
    To either a back taper adds what it gives by the end of a turn: the mean of the turns is taken.

    Source: derived here; by how much the work springs back as `rubbing.record.Threshold` says.
    """
    thread = tap.thread
    crest, wall = thread.major / 2, max(drill, thread.minor) / 2
    on_crest, on_flank = _touching(tap, _TURNS if thread.narrowing else np.zeros(1))
    lean = math.radians(thread.flank_angle)
    flank = max(crest - wall, 0.0) / math.cos(lean)
    middle = (crest + wall) / 2
    width = 2 * flank * on_flank * middle + thread.crest_flat * on_crest * crest
    length = tap.chamfer_length
    free = length + RUBBING_TURNS * thread.lead
    return RubbingThread(
        area=tap.flutes.count * width / thread.pitch,
        radius=middle,
        begins=length / 2,
        ends=min(free, tap.blank.thread_length),
    )


def _touching(tap: Tap, turns: Floats) -> tuple[float, float]:
    """Angles over which crest and flanks of a land touch [rad], the mean of places behind it.

    Args:
        tap: any.
        turns: the places, in turns behind the end of the chamfer, (n,).
    """
    relief, thread = tap.relief.thread, tap.thread
    land = max(0.0, land_angle(section_of(tap.flutes), tap.flutes.count, thread.major / 2))
    phi, level = np.linspace(0.0, land, _ANGLES), Threshold().clearance
    fallen = drop(relief, thread.major, phi)
    square = math.sin(math.radians(thread.flank_angle))
    whole = relief.applies_to is ReliefPlace.THREAD
    behind = turns * thread.lead
    on_crest = back_taper_clearance(2 * thread.narrowing, behind)
    crest = [length_below(phi, fallen, level - clear) for clear in on_crest.tolist()]
    if whole:
        flank = [length_below(phi, fallen * square, level - c * square) for c in on_crest.tolist()]
    else:
        # Flanks without relief touch over the whole land or nowhere.
        flank = [land if c * square < level else 0.0 for c in on_crest.tolist()]
    return math.radians(float(np.mean(crest))), math.radians(float(np.mean(flank)))


def land_friction(rubbing: RubbingThread, material: WorkMaterial, engaged: Floats) -> Floats:
    """Torque of lands of which so many millimetres along the axis are in the work [N·m].

    Args:
        rubbing: the tap's thread.
        material: of the work.
        engaged: length in the work, (n,) [mm].

    Returns:
        Least, likely and greatest, (3, n).

    Source: Coulomb; pressure `LAND_PRESSURE`, coefficient of the material's group, both from
    memory.
    """
    pressure = LAND_PRESSURE * BRINELL * material.hardness
    each = material.group.friction * pressure * rubbing.area * rubbing.radius / N_M
    return each[:, None] * engaged


def engaged_length(rubbing: RubbingThread, fronts: Floats, reach: float) -> Floats:
    """Length of the full thread that is in the work, for places of the front, (n,) [mm].

    Args:
        rubbing: the tap's thread.
        fronts: depth of the front below the face of the work, (n,) [mm].
        reach: thickness of the work, `inf` for a hole with a bottom [mm].

    Source: derived here; the work lies between z = front - reach and z = front of the tap.
    """
    last = np.minimum(fronts, rubbing.ends)
    first = np.maximum(fronts - reach, rubbing.begins)
    return np.maximum(last - first, 0.0)


def wear_torque(width_by_radius: float, material: WorkMaterial) -> Floats:
    """Torque that a wear land of `WEAR_LAND` adds, least, likely and greatest, (3,) [N·m].

    Args:
        width_by_radius: sum of width times radius of the chips cut together [mm²].
        material: of the work.

    Source: derived here from `WEAR_DRAG`, from memory.
    """
    return WEAR_DRAG * BRINELL * material.hardness * WEAR_LAND * width_by_radius / N_M


def chip_root_torque(area_by_radius: float, material: WorkMaterial) -> Floats:
    """Torque that shears the roots of the chips, least, likely and greatest, (3,) [N·m].

    Args:
        area_by_radius: sum of area times radius of the chips that the tap stopped in [mm³].
        material: of the work.

    Source: derived here; `SHEAR_STRENGTH` common practice, `CHIP_ROOT` an assumption.
    """
    strength = SHEAR_STRENGTH * BRINELL * material.hardness
    return CHIP_ROOT * strength * area_by_radius / N_M
