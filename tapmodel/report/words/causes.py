"""Words for what sets a solid apart from the designed tap."""

import math
from typing import Any

from tapmodel.checks.causes.misplaced import INCH


def causes_told(causes: dict[str, Any]) -> list[str]:
    """A clause for each cause that was established, none where none was.

    Args:
        causes: as `tapmodel.checks.causes.causes` finds them, in tables.
    """
    place = causes["misplaced"]
    if place:
        return [*_shape(place), *_place(place)]
    seen, wanted = causes["flutes"], causes["flutes_wanted"]
    return [f"it has {seen} flutes, the design {wanted}"] if seen else []


def _shape(place: dict[str, Any]) -> list[str]:
    told = ["mirror image: the other hand"] if place["mirrored"] else []
    scale = place["scale"]
    if math.isclose(scale, 1 / INCH):
        told.append("25.4 times too small: inches read as mm")
    elif math.isclose(scale, INCH):
        told.append("25.4 times too large: mm read as inches")
    elif scale != 1:
        told.append(f"scaled by {scale:.6g}")
    return told


def _place(place: dict[str, Any]) -> list[str]:
    (x, y, z), axis = place["shift"], place["axis"]
    told: list[str] = []
    if axis == "-z":
        told.append("the other way round: its front looks along Z, which must look to its rear")
    elif axis != "z":
        told.append(f"its axis lies along {axis[-1].upper()}; put it along Z, front at z = 0")
    if z:
        told.append(f"moved along its axis by {_length(z)}")
    if x or y:
        apart = f" (x {_length(x)}, y {_length(y)})" if axis == "z" else ""
        told.append(f"its axis stands {_length(math.hypot(x, y)).lstrip('+')} off{apart}")
    # a turn of an axis that lies down would depend on how it is put upright
    if place["turn"] and axis == "z":
        told.append(f"turned about its axis by {place['turn']:+.4g}°")
    return told


def _length(mm: float) -> str:
    return f"{mm:+.4g} mm" if mm else "0"
