"""Words for what sets a solid apart from the designed tap."""

import math
from typing import Any

from tapmodel.checks.causes.misplaced import INCH
from tapmodel.checks.causes.sizes_seen import SizeName
from tapmodel.report.units import in_words, signed_in_words
from tapmodel.words import Units


def causes_told(causes: dict[str, Any], units: Units = Units.MM) -> list[str]:
    """A clause for each cause that was established, none where none was.

    Args:
        causes: as `tapmodel.checks.causes.causes` finds them, in tables.
        units: of lengths.
    """
    place = causes["misplaced"]
    if place:
        return [*_shape(place), *_place(place, units)]
    told: list[str] = []
    for name, one, many in (("flutes", "flute", "flutes"), ("starts", "start", "starts")):
        seen, wanted = causes[name], causes[f"{name}_wanted"]
        if seen:
            told.append(f"it has {seen} {one if seen == 1 else many}, the design {wanted}")
    seen, wanted = causes["pitch_diameter"], causes["pitch_diameter_wanted"]
    if seen:
        told.append(
            f"its pitch diameter is {in_words(seen, '.4f', units)}, the design's "
            f"{in_words(wanted, '.4f', units)}"
        )
    return [*told, *(_size(size, units) for size in causes["sizes"])]


_SIZES = {
    SizeName.OVERALL_LENGTH: ("it is", "longer", "shorter"),
    SizeName.THREAD_LENGTH: ("its thread is", "longer", "shorter"),
    SizeName.MAJOR: ("its major diameter is", "larger", "smaller"),
    SizeName.CORE: ("its core is", "thicker", "thinner"),
}
"""What is otherwise, and what it is called where there is more or less of it."""


def _size(size: dict[str, Any], units: Units) -> str:
    """By how much a size is off; which cutter made the flutes can be told only about."""
    if size["name"] == SizeName.RAKE:
        edge, asked = (f"{size[which]:.2f}°" for which in ("seen", "wanted"))
        return f"its rake at the crest is {edge}, the design's {asked}"
    seen, wanted = (in_words(round(size[which], 3), "g", units) for which in ("seen", "wanted"))
    if size["name"] == SizeName.CUTTER:
        return f"its flutes are of a cutter of about {seen}, the design's of {wanted}"
    what, more, less = _SIZES[size["name"]]
    off = size["seen"] - size["wanted"]
    by = in_words(round(abs(off), 4), "g", units)
    return f"{what} {by} {more if off > 0 else less} ({seen}, the design's {wanted})"


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


def _place(place: dict[str, Any], units: Units) -> list[str]:
    (x, y, z), axis = place["shift"], place["axis"]
    told: list[str] = []
    if axis == "-z":
        told.append("the other way round: its front looks along Z, which must look to its rear")
    elif axis != "z":
        told.append(f"its axis lies along {axis[-1].upper()}; put it along Z, front at z = 0")
    if z:
        told.append(f"moved along its axis by {signed_in_words(z, units)}")
    if x or y:
        apart = (
            f" (x {signed_in_words(x, units)}, y {signed_in_words(y, units)})"
            if axis == "z"
            else ""
        )
        off = signed_in_words(math.hypot(x, y), units).replace("+", "")
        told.append(f"its axis stands {off} off{apart}")
    # a turn of an axis that lies down would depend on how it is put upright
    if place["turn"] and axis == "z":
        told.append(f"turned about its axis by {place['turn']:+.4g}°")
    return told
