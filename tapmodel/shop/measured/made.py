"""The tap as it is: its definition with the sizes that were measured in place of the designed."""

import math
from collections.abc import Mapping
from dataclasses import replace

from tapmodel.designing.record import Lacking
from tapmodel.shape.flute_section import land_angle, section_of
from tapmodel.shape.relief import con_eccentric, concentric, eccentric_by_drop
from tapmodel.spec.measured.sizes import Size
from tapmodel.tap.tap import Chamfer, Flutes, Relief, Reliefs, Tap, TapThread
from tapmodel.words import ReliefKind

Sizes = Mapping[Size, float]
"""Numbers that were measured: lengths [mm], angles [deg], hardness [HRC]."""

_BLANK: Mapping[Size, str] = {
    Size.OVERALL_LENGTH: "overall_length",
    Size.THREAD_LENGTH: "thread_length",
    Size.NECK: "neck_diameter",
    Size.SHANK: "shank_diameter",
    Size.SQUARE: "square_across_flats",
    Size.SQUARE_LENGTH: "square_length",
}


class NoTapError(ValueError):
    """The sizes leave none."""

    def __init__(self, why: Lacking) -> None:
        """For want of what `why` names."""
        self.why = why


def tap_of(designed: Tap, sizes: Sizes) -> Tap:
    """The definition with what was measured.

    Raises:
        NoTapError: the sizes leave no tap.
        ValueError: a face does not reach the crest.

    Source: derived here.
    """
    thread = _thread(designed.thread, sizes)
    chamfer = _chamfer(designed.chamfer, thread, sizes)
    flutes = _flutes(designed.flutes, sizes)
    lengths = {name: sizes[size] for size, name in _BLANK.items() if size in sizes}
    land = _land(flutes, thread)
    reliefs = Reliefs(
        thread=_relief(
            designed.relief.thread, thread.major, land, sizes.get(Size.THREAD_HEEL_DROP)
        ),
        chamfer=_relief(designed.relief.chamfer, thread.major, land, sizes.get(Size.HEEL_DROP)),
    )
    blank = replace(designed.blank, **lengths)  # pyright: ignore[reportArgumentType]  (all are lengths)
    return Tap(thread, chamfer, flutes, reliefs, blank)


def _thread(designed: TapThread, sizes: Sizes) -> TapThread:
    pitch_diameter = sizes.get(Size.PITCH_DIAMETER, designed.pitch_diameter)
    followed = designed.minor + (pitch_diameter - designed.pitch_diameter)
    minor = sizes.get(Size.MINOR, followed)
    major = sizes.get(Size.MAJOR, designed.major)
    if not 0 < minor < pitch_diameter < major:
        raise NoTapError(Lacking.ORDER)
    thread = replace(designed, major=major, pitch_diameter=pitch_diameter, minor=minor)
    if max(thread.crest_flat, thread.crest_radius) <= 0:
        raise NoTapError(Lacking.CREST)
    if max(thread.root_flat, thread.root_radius) <= 0:
        raise NoTapError(Lacking.ROOT)
    return thread


def _chamfer(designed: Chamfer, thread: TapThread, sizes: Sizes) -> Chamfer:
    point = sizes.get(Size.POINT_DIAMETER, designed.point_diameter)
    if point >= thread.major:
        raise NoTapError(Lacking.CHAMFER)
    angle = sizes.get(Size.CHAMFER_ANGLE, designed.angle)
    if Size.CHAMFER_LENGTH in sizes:
        rise = (thread.major - point) / 2
        angle = math.degrees(math.atan2(rise, sizes[Size.CHAMFER_LENGTH]))
    return Chamfer(angle, point)


def _flutes(designed: Flutes, sizes: Sizes) -> Flutes:
    if Size.CORE not in sizes:
        return designed
    radius = centre_radius(designed, sizes[Size.CORE])
    if radius is None:
        raise NoTapError(Lacking.CORE)
    return replace(designed, centre_radius=radius)


def centre_radius(flutes: Flutes, core: float) -> float | None:
    """How far from the axis the ball's centre stands, along the cutter, for a core [mm].

    None where the cutter stands further aside than that.

    Source: `Flutes.core_diameter`, solved for it.
    """
    distance = (core + flutes.cutter_diameter) / 2
    if distance <= abs(flutes.offset):
        return None
    return math.sqrt(distance**2 - flutes.offset**2)


def _land(flutes: Flutes, thread: TapThread) -> float:
    return land_angle(section_of(flutes), flutes.count, thread.major / 2)


def _relief(designed: Relief, major: float, land: float, drop: float | None) -> Relief:
    """The relief that reaches the drop at the heel, of the kind that it was designed as."""
    if drop is None:
        return designed
    if not 0 <= drop < major / 4:
        raise NoTapError(Lacking.DROP)
    if drop == 0:
        return concentric(designed.applies_to)
    if land <= designed.margin_angle:
        raise NoTapError(Lacking.LAND)
    if designed.kind is ReliefKind.CON_ECCENTRIC:
        return con_eccentric(designed.applies_to, major, land, designed.margin_angle, drop)
    try:
        return eccentric_by_drop(designed.applies_to, major, land, drop)
    except ValueError:  # no arc reaches that far
        raise NoTapError(Lacking.DROP) from None
