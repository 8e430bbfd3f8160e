"""How fast a tap is turned."""

import math


def revolutions(surface_speed: float, diameter: float) -> float:
    """Turns in a minute at a surface speed [m/min] on a diameter [mm].

    Source: the definition.
    """
    return 1e3 * surface_speed / (math.pi * diameter)
