"""Directions at a place of the tap, as its hand has them."""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.designing.record import TapDesign
from tapmodel.report.pictures.view import Vector
from tapmodel.shape.flute_section import crest_edge_angle
from tapmodel.words import Hand

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Axes:
    """Unit vectors at an angle of the right-hand tap, mirrored as the record's hand says.

    Attributes:
        outwards: along the radius.
        backwards: along the land, from its cutting edge towards its heel.
    """

    outwards: Floats
    backwards: Floats

    def at(self, outwards: float, backwards: float, z: float) -> Vector:
        """The vector of these parts [mm]."""
        x, y, _ = self.outwards * outwards + self.backwards * backwards
        return float(x), float(y), z


def axes(design: TapDesign, angle: float) -> Axes:
    """At `angle` of the right-hand tap [deg]."""
    x, y = math.cos(math.radians(angle)), math.sin(math.radians(angle))
    side = hand_sign(design)
    return Axes(np.array([x, side * y, 0.0]), np.array([-y, side * x, 0.0]))


def hand_sign(design: TapDesign) -> float:
    """By which y of the right-hand tap is multiplied."""
    return -1.0 if design.tap.thread.hand is Hand.LEFT else 1.0


def first_edge(design: TapDesign) -> float:
    """Polar angle of the crest edge of the first flute's land, on the right-hand tap [deg]."""
    return design.tap.flutes.angles[0] + crest_edge_angle(
        design.tap.flutes, design.tap.thread.major
    )


def lift(radius: float, rise: float, least: float, most: float) -> float:
    """How far a camera stands above the tangent for a round top to rise `rise` to its horizon.

    Args:
        radius: of the top [mm].
        rise: in the picture, from where the tangent touches to the horizon [mm].
        least: lower limit of the result [deg].
        most: upper limit of the result [deg].
    """
    wanted = math.degrees(math.acos(max(1.0 - rise / radius, -1.0)))
    return min(max(wanted, least), most)
