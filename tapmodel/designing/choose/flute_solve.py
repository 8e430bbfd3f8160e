"""From wishes to settings: where a cutter must stand for a rake or offset and a core or depth."""

import math
from dataclasses import dataclass

from tapmodel.shape.flute_section import FluteSection, on_ball, rake


@dataclass(frozen=True, slots=True)
class FluteWish:
    """What is wanted of the flutes: one of the first pair and one of the second.

    Attributes:
        count: number of flutes.
        rake: at the crest edge [deg], or None when `offset` [mm] is set instead.
        core_diameter: of the web, or None when `depth_from_top` is set instead [mm].
        land_width: at the major diameter [mm].
    """

    count: int
    rake: float | None
    offset: float | None
    core_diameter: float | None
    depth_from_top: float | None
    land_width: float


@dataclass(frozen=True, slots=True)
class Unmet:
    """A wish that cannot be met.

    Attributes:
        limit: what binds.
        near: fields whose values would meet it, up to these or from these on.
    """

    limit: str
    near: tuple[tuple[str, float], ...]


@dataclass(frozen=True, slots=True)
class Solution:
    """The section that comes closest to the wish, None when there is none, and what binds."""

    section: FluteSection | None
    unmet: Unmet | None


def solve(wish: FluteWish, cutter_diameter: float, major: float) -> Solution:
    """Place a cutter of `cutter_diameter` [mm] on a tap of `major` diameter [mm].

    On the straight wall `sin(rake) = (offset + b)/R`; on the ball's arc
    `sin(rake) = (R**2 + b**2 - m**2)/(2*R*b)` with m the distance of the ball's centre from the
    axis, which the core alone settles: `core = 2*(m - b)`.

    Source: derived here from the definition of the section.
    """
    b, R = cutter_diameter / 2, major / 2
    if wish.depth_from_top is not None:
        return _at_depth(wish, b, R, R - wish.depth_from_top + b)
    core = wish.core_diameter or 0.0
    offset = offset_for(wish, b, R)
    m = core / 2 + b
    if abs(offset) >= m:
        near = (("flutes.offset", math.copysign(m, offset)), ("flutes.core_diameter", 2 * offset))
        return Solution(None, Unmet("core", near))
    section = FluteSection(b, offset, math.sqrt(m**2 - offset**2))
    if wish.rake is not None and on_ball(section, R):
        return Solution(section, _ball_exit_by_core(wish, b, R, core))
    return Solution(section, None)


def offset_for(wish: FluteWish, b: float, R: float) -> float:
    """Offset wished for, or that gives the wished rake on the straight wall; ball and tap [mm].

    Source: derived here.
    """
    return R * _sine(wish) - b if wish.offset is None else wish.offset


def _at_depth(wish: FluteWish, b: float, R: float, centre: float) -> Solution:
    if wish.offset is not None:
        return Solution(FluteSection(b, wish.offset, centre), None)
    on_wall = FluteSection(b, R * _sine(wish) - b, centre)
    if not on_ball(on_wall, R):
        return Solution(on_wall, None)
    # On the arc the rake asks for a distance m of the ball's centre; the depth has set the rest.
    square = R**2 + b**2 - 2 * R * b * _sine(wish) - centre**2
    if square >= 0:
        offset = math.copysign(math.sqrt(square), on_wall.offset)
        for side in (offset, -offset):
            on_arc = FluteSection(b, side, centre)
            if on_ball(on_arc, R) and _has_rake(on_arc, R, wish):
                return Solution(on_arc, None)
    deepest = R + b - R * math.sqrt(1 - _sine(wish) ** 2)
    return Solution(on_wall, Unmet("ball exit", (("flutes.depth_from_top", deepest),)))


def _ball_exit_by_core(wish: FluteWish, b: float, R: float, core: float) -> Unmet:
    sine = _sine(wish)
    widest_core = 2 * (math.sqrt(R**2 + b**2 - 2 * R * b * sine) - b)
    near = [("flutes.core_diameter", widest_core)]
    slope = core + 2 * R * sine
    if slope > 0 and core / 2 < R:
        near.append(("flutes.cutter_diameter", 2 * (R**2 - core**2 / 4) / slope))
    return Unmet("ball exit", tuple(near))


def _sine(wish: FluteWish) -> float:
    return math.sin(math.radians(wish.rake or 0.0))


def _has_rake(section: FluteSection, R: float, wish: FluteWish) -> bool:
    try:
        return abs(rake(section, R) - (wish.rake or 0.0)) < 1e-9
    except ValueError:  # the arc does not reach the crest at all
        return False
