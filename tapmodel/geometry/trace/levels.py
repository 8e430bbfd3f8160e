"""Planes square to the axis in which edges lie, and which of them a plane is."""

from dataclasses import dataclass
from enum import Enum, auto

from tapmodel.shape.form import Form


class Place(Enum):
    """Where along the tap such a plane lies, from the front to the rear."""

    FRONT = auto()
    JOINT = auto()
    """Between two lengths of a flute's wall, within the thread."""
    THREAD_END = auto()
    FULL_DEPTH = auto()
    """Where the ball of the cutter stops, behind the thread."""


@dataclass(frozen=True, slots=True)
class Level:
    """One of these planes, at the height `z` above the front [mm]."""

    place: Place
    z: float


FRONT = Level(Place.FRONT, 0.0)


def thread_end(form: Form) -> Level:
    """The plane that ends the thread."""
    return Level(Place.THREAD_END, form.thread_end)


def full_depth(form: Form) -> Level:
    """The plane in which the ball stops."""
    return Level(Place.FULL_DEPTH, form.full_depth)


def joints(form: Form) -> list[Level]:
    """The planes that divide the walls of the flutes, rising; few taps have any."""
    return [Level(Place.JOINT, z) for z in form.joints.tolist()]
