"""Where along a tap that gets thinner towards the shank its wires lie, and what they show there."""

from dataclasses import dataclass

from tapmodel.shape.back_taper import narrowed
from tapmodel.tap.tap import Tap


@dataclass(frozen=True, slots=True)
class Place:
    """A place for the wires on a thread with a back taper.

    Attributes:
        z: of the middle of the wires, from the front: the one wire lies there, the two opposite
            half a pitch before and behind [mm].
        lost: by how much the diameters are less there than as stated [mm].
        each_turn: by how much a reading falls from there on with each turn [mm].
    """

    z: float
    lost: float
    each_turn: float


def place_of(tap: Tap) -> Place | None:
    """One turn behind the chamfer, or in the middle of a shorter thread; None without back taper.

    A reading is the sum of two radii, and each falls evenly with the height of its wire: so it is
    that of a thread without back taper as thick as this one in the middle of the wires. The wires
    lean by the taper, which adds less than a millionth.

    Source: derived here.
    """
    thread = tap.thread
    if not thread.back_taper:
        return None
    full = tap.blank.thread_length - tap.chamfer_length
    z = tap.chamfer_length + min(thread.lead, full / 2)
    return Place(z, 2 * narrowed(tap, z), 2 * thread.narrowing * thread.lead)
