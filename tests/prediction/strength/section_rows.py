"""Sections that exact values or another program are known for."""

import math

from tapmodel.prediction.strength.edge import edge_of
from tapmodel.prediction.strength.outlines import fluted_sector
from tapmodel.prediction.strength.torsion import Torsion, peak_of, torsion_of
from tapmodel.shape.flute_section import FluteSection
from tapmodel.shape.outlines.outline import Arc, Line, Loop

FLUTED = {
    # name: root radius, flutes, ball radius, centre, offset
    "M3": (1.19112, 3, 0.75, 1.23827, -0.53776),
    "M6": (2.37384, 3, 1.5, 2.47563, -1.07761),
    "M10": (4.05386, 3, 3.0, 4.44070, -2.29787),
    "M20": (8.41210, 4, 5.0, 8.79179, -3.59922),
    "Tr16x4": (5.90519, 4, 3.0, 6.33813, -1.84069),
    "round numbers": (4.0, 4, 2.0, 3.6, -1.0),
}


def fluted_sector_of(name: str) -> Loop:
    radius, count, ball, centre, offset = FLUTED[name]
    return fluted_sector(FluteSection(ball, offset, centre), count, radius)


def fluted(name: str) -> Torsion:
    return torsion_of(edge_of(fluted_sector_of(name), FLUTED[name][1]))


def land_shear(name: str, torsion: Torsion) -> float:
    """Greatest shear on the circle of the lands [1/mm³]."""
    radius = FLUTED[name][0]
    on_land = abs(abs(torsion.places) - radius) < 1e-6
    return peak_of(torsion.places[on_land], torsion.shear[on_land])[0]


def grooved_sector(groove: float, count: int) -> Loop:
    """A circle of radius 1 with semicircular grooves centred on it, the first at angle 0."""
    half = 2 * math.asin(groove / 2)
    wall = math.degrees(math.atan2(math.sin(half), math.cos(half) - 1))
    land = Arc((0.0, 0.0), 1.0, math.degrees(half), 360 / count - math.degrees(half))
    return Arc((1.0, 0.0), groove, 360 - wall, wall), land


def grooved(groove: float, count: int) -> Torsion:
    return torsion_of(edge_of(grooved_sector(groove, count), count))


def square(side: float) -> Torsion:
    half = side / 2
    return torsion_of(edge_of((Line((half, -half), (half, half)),), 4))
