"""How much metal stands between two neighbouring flutes."""

import math

from tapmodel.design.flute_section import FluteSection, face_angle, heel_angle

Point = complex
"""A point of the cross-section as u + t*i, in the frame of the first flute [mm]."""


def least_wall(section: FluteSection, count: int, radius: float) -> float:
    """Least distance between neighbouring flutes inside a circle; negative when they meet.

    A flute's void is everything within the ball's radius of a ray that starts at the ball's
    centre and runs outwards, so two voids are as far apart as their rays, less two radii. Where
    the nearest points lie outside the circle, the corners of the land on it decide.

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
    if gap <= 0:
        return gap
    along = (far - near) / abs(far - near)
    if max(abs(near + ball * along), abs(far - ball * along)) <= radius:
        return gap
    face = radius * _direction(face_angle(section, radius))
    heel = radius * _direction(heel_angle(section, radius)) * turn
    to_second = abs(face - _foot(face, start * turn, turn))
    to_first = abs(heel - _foot(heel, start, 1 + 0j))
    return min(to_first, to_second) - ball


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
