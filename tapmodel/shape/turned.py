"""Radius of the turned blank along the axis, and where the flute cutter leaves it."""

import math
from dataclasses import dataclass

from tapmodel.shape.flute_section import FluteSection
from tapmodel.tap.tap import Blank


@dataclass(frozen=True, slots=True)
class Turned:
    """A turned length of the blank: a cylinder or a cone, along z [mm]."""

    start: float
    end: float
    start_radius: float
    end_radius: float

    @property
    def is_cone(self) -> bool:
        """Whether its ends were given two radii; a cylinder's are one and the same number."""
        return self.start_radius != self.end_radius


def turned_lengths(blank: Blank, major: float) -> tuple[Turned, ...]:
    """The blank from the front to the rear: thread (as a cylinder of `major`), neck, cone, shank.

    Source: derived here from the definition of the blank.
    """
    thread_end, shank = blank.thread_length, blank.shank_diameter / 2
    lengths = [Turned(0.0, thread_end, major / 2, major / 2)]
    behind = thread_end
    if blank.has_neck:
        neck = blank.neck_diameter / 2
        neck_end = thread_end + blank.neck_length
        behind = neck_end + cone_length(blank)
        lengths.append(Turned(thread_end, neck_end, neck, neck))
        if behind > neck_end:
            lengths.append(Turned(neck_end, behind, neck, shank))
    lengths.append(Turned(behind, max(blank.overall_length, behind), shank, shank))
    return tuple(lengths)


def cone_length(blank: Blank) -> float:
    """Axial length of the cone between neck and shank, 0 without a neck [mm].

    Source: derived here.
    """
    if not blank.has_neck:
        return 0.0
    step = abs(blank.shank_diameter - blank.neck_diameter) / 2
    return step / math.tan(math.radians(blank.shoulder_angle))


def reach(blank: Blank, major: float, bore: float) -> float:
    """How far the front gets into a hole of the least diameter `bore` before it stops [mm].

    What is thicker than the hole behind the thread stops it: neck, cone or shank; where all of
    them pass, the wrench on the square.

    Source: derived here.
    """
    for length in turned_lengths(blank, major)[1:]:
        if length.start_radius > bore / 2:
            return length.start
        if length.end_radius > bore / 2:
            share = (bore / 2 - length.start_radius) / (length.end_radius - length.start_radius)
            return length.start + share * (length.end - length.start)
    return blank.square_start


def runout_end(section: FluteSection, full_depth: float, lengths: tuple[Turned, ...]) -> float:
    """Largest z where the cutter still meets the blank [mm].

    Beyond its centre at z = `full_depth` the cutter's section is the flute's with the ball's
    radius reduced to sqrt(b**2 - dz**2), and its nearest point to the axis lies at
    m - sqrt(b**2 - dz**2), m the distance of the ball's centre from the axis. It meets the blank
    where that is less than the blank's radius.

    Source: derived here; on a cone the crossing is the larger root of a quadratic.
    """
    for length in reversed(lengths):
        meets = _last_meeting(section, full_depth, length)
        if meets is not None:
            return meets
    return full_depth


def _last_meeting(section: FluteSection, full_depth: float, length: Turned) -> float | None:
    start = max(length.start, full_depth)
    end = min(length.end, full_depth + section.ball_radius)
    if start >= end:
        return _inside(section, full_depth, length)
    if _meets(section, full_depth, length, end):
        return end
    slope = (length.end_radius - length.start_radius) / (length.end - length.start)
    # sqrt(b² - x²) = m - radius(full_depth) - slope*x with x = z - full_depth
    lack = section.centre_distance - length.start_radius - slope * (full_depth - length.start)
    square = 1 + slope**2
    root = section.ball_radius**2 * square - lack**2
    if root < 0:
        return None
    z = full_depth + (slope * lack + math.sqrt(root)) / square
    return z if start <= z <= end else None


def _meets(section: FluteSection, full_depth: float, length: Turned, z: float) -> bool:
    ball = math.sqrt(max(0.0, section.ball_radius**2 - (z - full_depth) ** 2))
    return section.centre_distance - ball < _radius_at(length, z)


def _inside(section: FluteSection, full_depth: float, length: Turned) -> float | None:
    """End of a length that lies wholly in front of the ball's stop, if the flute cuts it."""
    cut = section.core_diameter / 2 < max(length.start_radius, length.end_radius)
    return length.end if length.end <= full_depth and cut else None


def largest_radius_cut(lengths: tuple[Turned, ...], upto: float) -> float:
    """Largest radius of the blank in front of z = `upto` [mm].

    Source: derived here.
    """
    return max(
        max(length.start_radius, _radius_at(length, min(upto, length.end)))
        for length in lengths
        if length.start < upto
    )


def thickest_behind(lengths: tuple[Turned, ...], z: float) -> float:
    """Diameter of the thickest place of the turned blank from `z` on [mm].

    Source: derived here.
    """
    return 2 * max(
        max(_radius_at(length, max(z, length.start)), length.end_radius)
        for length in lengths
        if length.end > z
    )


def _radius_at(length: Turned, z: float) -> float:
    if length.end == length.start:  # a blank too short for its shank, which a rule refuses
        return length.start_radius
    share = (z - length.start) / (length.end - length.start)
    return length.start_radius + share * (length.end_radius - length.start_radius)


def second_cut(section: FluteSection, full_depth: float, lengths: tuple[Turned, ...]) -> bool:
    """Whether the cutter leaves the blank where it runs out and meets it again further on.

    Beyond the full depth the depth of the cut is concave along every turned length, so between
    two cuts there is always an end of a length that it misses.

    Source: derived here.
    """
    last = runout_end(section, full_depth, lengths)
    return any(
        full_depth < length.start < last and not _meets(section, full_depth, length, length.start)
        for length in lengths[2:]
    )


def smallest_radius_cut(lengths: tuple[Turned, ...], upto: float) -> float:
    """Smallest radius of the blank behind the thread in front of z = `upto` [mm].

    Source: derived here.
    """
    behind = [length for length in lengths[1:] if length.start < upto]
    return min(
        (min(length.start_radius, _radius_at(length, min(upto, length.end))) for length in behind),
        default=lengths[0].start_radius,
    )
