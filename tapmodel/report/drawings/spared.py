"""Lines of many points without those that nobody would miss."""

import math
from collections.abc import Sequence

from tapmodel.shape.outlines.outline import Point


def spared(points: Sequence[Point], allowed: float) -> list[Point]:
    """Points of a line from which no other lies farther off than is allowed.

    From each point that stays, a funnel of directions passes all that follow near enough; the last
    point before one outside it stays next.

    Args:
        points: of a line, in their order [mm].
        allowed: distance from the line of those that are left out [mm].

    Returns:
        The first, the last, and what is wanted between them.
    """
    if len(points) < 3:
        return list(points)
    kept = [points[0]]
    low, high, reached = -math.pi, math.pi, 0.0
    ahead, before = 0.0, points[0]
    for point in points[1:]:
        (x, y), (from_x, from_y) = point, kept[-1]
        distance = math.hypot(x - from_x, y - from_y)
        if distance <= allowed and not reached:
            before = point
            continue
        angle = math.atan2(y - from_y, x - from_x)
        turned = math.remainder(angle - ahead, math.tau)
        if reached and (distance < reached or not low <= turned <= high):
            kept.append(before)
            from_x, from_y = before
            distance = math.hypot(x - from_x, y - from_y)
            angle, reached = math.atan2(y - from_y, x - from_x), 0.0
        if not reached:
            ahead, turned, low, high = angle, 0.0, -math.pi, math.pi
        wide = math.asin(min(allowed / distance, 1.0)) if distance else math.pi
        low, high = max(low, turned - wide), min(high, turned + wide)
        reached, before = distance, point
    return [*kept, points[-1]]
