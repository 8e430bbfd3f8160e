"""What each size of a tap is to be: as designed, and between which limits the sheet holds it."""

from collections.abc import Mapping
from dataclasses import dataclass

from tapmodel.designing.limits.crests import major_zone
from tapmodel.designing.record import TapDesign
from tapmodel.shop.core_zone import core_zone
from tapmodel.spec.measured.sizes import Size
from tapmodel.standards.general_tolerances import Zone, general_zone, shaft_zone

NO_ZONE = None, None


@dataclass(frozen=True, slots=True)
class Wanted:
    """What a size is to be; lengths [mm], angles [deg], hardness [HRC].

    Attributes:
        aim: as designed.
        low, high: limits, None where there is none.
    """

    aim: float
    low: float | None = None
    high: float | None = None


def wanted(design: TapDesign) -> Mapping[Size, Wanted]:
    """Of every size that the tap has; over wires is left to who knows the wires.

    Source: limits as the chapters of the sheet have them: ISO 286-1 and ISO 2768-1 (from memory);
    most major diameter by the rules on crests.
    """
    tap, figures, limits = design.tap, design.figures, design.limits
    thread, blank = tap.thread, tap.blank
    found = {
        Size.OVERALL_LENGTH: _shaft(blank.overall_length, "it16"),
        Size.SHANK: _shaft(blank.shank_diameter, "it9"),
        Size.MAJOR: Wanted(thread.major, *major_zone(design)),
        Size.THREAD_LENGTH: _zoned(blank.thread_length, general_zone(blank.thread_length)),
        Size.PITCH_DIAMETER: Wanted(thread.pitch_diameter, limits.pitch_min, limits.pitch_max),
        Size.MINOR: Wanted(thread.minor, None, design.hole.minor_min),
        Size.CHAMFER_ANGLE: Wanted(tap.chamfer.angle),
        Size.CHAMFER_LENGTH: Wanted(tap.chamfer_length),
        Size.POINT_DIAMETER: Wanted(tap.chamfer.point_diameter, None, design.smallest_hole),
        Size.SQUARE: _shaft(blank.square_across_flats, "it12"),
        Size.SQUARE_LENGTH: _zoned(blank.square_length, general_zone(blank.square_length)),
        Size.CORE: _zoned(figures.core_diameter, core_zone(figures.core_diameter)),
        Size.LAND: Wanted(figures.land_width),
        Size.HEEL_DROP: Wanted(figures.chamfer_relief.heel_drop),
        Size.THREAD_HEEL_DROP: Wanted(figures.thread_relief.heel_drop),
        Size.HARDNESS: Wanted(design.work.steel.hardness),
    }
    if blank.has_neck:
        found[Size.NECK] = _shaft(blank.neck_diameter, "it12")
    return found


def _shaft(size: float, grade: str) -> Wanted:
    return _zoned(size, shaft_zone(size, grade))


def _zoned(size: float, zone: Zone | None) -> Wanted:
    return Wanted(size, *(zone or NO_ZONE))
