"""How much metal stands between two neighbouring flutes."""

import math

from tapmodel.shape.flute_section import FluteSection, face_angle, heel_angle, land_angle

Point = complex
"""A point of the cross-section as u + t*i, in the frame of the first flute [mm]."""


def least_wall(section: FluteSection, count: int, radius: float) -> float:
    """Least distance between neighbouring flutes inside a circle; negative when they meet.

    A flute's void is everything within the ball's radius of a ray that starts at the ball's
    centre and runs outwards, so two voids are as far apart as their rays, less two radii. Where
    the nearest points lie outside the circle, the corners of the land on it decide:
    the chord between them, or from one of them square to the other wall.

    Args:
        section: the flute.
        count: number of flutes.
        radius: of the circle, the largest that the flutes cut through [mm].

    Returns:
        Distance [mm].

    Source: derived here.
    """
    start = complex(section.centre_radius, section.offset)
    turn = _direction(360 / count)
    ball = section.ball_radius
    near, far = _nearest(start, turn)
    gap = abs(far - near) - 2 * ball
    if gap <= 0 and abs(near + far) / 2 <= radius:
        return gap
    if gap > 0:
        along = (far - near) / abs(far - near)
        if max(abs(near + ball * along), abs(far - ball * along)) <= radius:
            return gap
    return _between_corners(section, count, radius)


def _between_corners(section: FluteSection, count: int, radius: float) -> float:
    """Least distance from the corners of the land on the circle to the other side of the land."""
    turn, ball = _direction(360 / count), section.ball_radius
    start = complex(section.centre_radius, section.offset)
    face = radius * _direction(face_angle(section, radius))
    heel = radius * _direction(heel_angle(section, radius)) * turn
    if land_angle(section, count, radius) <= 0:
        return -abs(heel - face)
    reaches = [abs(heel - face)]
    for corner, foot in (
        (face, _foot(face, start * turn, turn)),
        (heel, _foot(heel, start, 1 + 0j)),
    ):
        beside = foot + ball * (corner - foot) / abs(corner - foot)
        if abs(beside) <= radius:
            reaches.append(abs(corner - beside))
    return min(reaches)


def _direction(angle: float) -> Point:
    return complex(math.cos(math.radians(angle)), math.sin(math.radians(angle)))


def _nearest(start: Point, turn: Point) -> tuple[Point, Point]:
    """Nearest points of the ray from `start` along u and of the same ray turned."""
    other = start * turn
    crossing = _crossing(start, other, turn)
    if crossing is not None:
        return crossing, crossing
    to_other = start, _foot(start, other, turn)
    to_first = _foot(other, start, 1 + 0j), other
    return min(to_other, to_first, key=lambda pair: abs(pair[1] - pair[0]))


def _crossing(start: Point, other: Point, turn: Point) -> Point | None:
    """Where the ray from `start` along u meets the ray from `other` along `turn`."""
    if abs(turn.imag) < 1e-12:  # parallel rays point apart: two flutes
        return None
    along_other = (start.imag - other.imag) / turn.imag
    point = other + along_other * turn
    return point if along_other >= 0 and point.real >= start.real else None


def _foot(point: Point, start: Point, direction: Point) -> Point:
    """Point of the ray from `start` along the unit `direction` that is nearest to `point`."""
    along = ((point - start) * direction.conjugate()).real
    return start + max(along, 0.0) * direction
