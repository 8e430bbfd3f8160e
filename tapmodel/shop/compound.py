"""Infeed with the compound slide swung from the direction square to the lathe's axis."""

import math

from tapmodel.errors import InputError


def along_compound(radial: float, angle: float) -> float:
    """How far to feed the compound slide for a depth [mm].

    Args:
        radial: depth towards the axis, half the change of diameter; negative backs out [mm].
        angle: of the slide, from square to the axis; 0 is the cross slide itself [deg].

    Raises:
        InputError: the slide would not approach the work.

    Source: derived here: depth/cos(angle).
    """
    if not 0 <= angle < 90:
        raise InputError("compound", angle, "0 or more, less than 90 deg")
    return radial / math.cos(math.radians(angle))


def compound_settings(flank_angle: float) -> tuple[float, ...]:
    """Usual settings of the compound: square, then 1, 1/2 and 0 degrees short of the flank [deg].

    For a flank angle of 30 degrees: 0, 29, 29.5 and 30.

    Source: common practice.
    """
    return (0.0, flank_angle - 1, flank_angle - 0.5, flank_angle)
