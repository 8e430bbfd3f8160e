"""The turned profile of the tap in an axial plane: what the lathe leaves, flutes not yet cut."""

import math
from dataclasses import dataclass

from tapmodel.shape.back_taper import narrowed, narrowed_at_end
from tapmodel.shape.outlines.outline import Line
from tapmodel.shape.outlines.section import CENTRE_SLOPE
from tapmodel.shape.turned import turned_lengths
from tapmodel.tap.tap import Tap

Corner = tuple[float, float]
"""Radius and z of a corner of the profile [mm]."""


@dataclass(frozen=True, slots=True)
class BlankProfile:
    """Upper half of the blank; radius and z of each corner [mm].

    Attributes:
        corners: from the axis at the front, over the crests of the thread, to the axis at the
            rear, centres included.
        root: of the thread, from where it comes out of the chamfer to the thread's end.
    """

    corners: tuple[Corner, ...]
    root: tuple[Corner, Corner]

    @property
    def volume(self) -> float:
        """Of the body of revolution over the crests [mm³]."""
        ring = zip(self.corners, self.corners[1:], strict=False)
        return math.pi * sum(
            (z1 - z0) * (r0 * r0 + r0 * r1 + r1 * r1) / 3 for (r0, z0), (r1, z1) in ring
        )

    def lines(self) -> tuple[Line, ...]:
        """Outline over the crests with z along x and the radius along y, axis not drawn [mm]."""
        return tuple(
            Line((z0, r0), (z1, r1))
            for (r0, z0), (r1, z1) in zip(self.corners, self.corners[1:], strict=False)
        )


def blank_profile(tap: Tap) -> BlankProfile:
    """Profile with chamfer, thread (major and minor), neck, shoulder, shank, ends and centres.

    Source: derived here from the definition of the blank; the chamfer as it is at the edge.
    """
    blank, chamfer, thread = tap.blank, tap.chamfer, tap.thread
    crest, shank, rear = thread.major / 2, blank.shank_diameter / 2, blank.overall_length
    corners: list[Corner] = [
        *_front_centre(blank.front_centre),
        (chamfer.point_diameter / 2, 0.0),
        (crest, tap.chamfer_length),
        (crest - narrowed_at_end(tap), blank.thread_length),
    ]
    for length in turned_lengths(blank, thread.major)[1:]:
        corners += [(length.start_radius, length.start), (length.end_radius, length.end)]
    corners[-1] = (shank, rear - blank.rear_chamfer)
    corners.append((shank - blank.rear_chamfer, rear))
    corners += [(r, rear - z) for r, z in reversed(_front_centre(blank.rear_centre))]
    return BlankProfile(_distinct(corners), _root(tap))


def _front_centre(rim: float) -> list[Corner]:
    """From the tip of a centre to its rim, or the middle of a face without one."""
    if rim == 0:
        return [(0.0, 0.0)]
    return [(0.0, rim / 2 / CENTRE_SLOPE), (rim / 2, 0.0)]


def _root(tap: Tap) -> tuple[Corner, Corner]:
    root, chamfer = tap.thread.minor / 2, tap.chamfer
    above = root - chamfer.point_diameter / 2
    start = max(0.0, above / math.tan(math.radians(chamfer.angle)))
    if tap.thread.narrowing:
        start = max(0.0, _meeting(tap, above))
    end = tap.blank.thread_length
    return (root - narrowed(tap, start), start), (root - narrowed_at_end(tap), end)


def _meeting(tap: Tap, above: float) -> float:
    """Where the cone meets a root that narrows and lies `above` its point where stated [mm]."""
    slope = math.tan(math.radians(tap.chamfer.angle)) + tap.thread.narrowing
    return (above - narrowed(tap, 0.0)) / slope


def _distinct(corners: list[Corner]) -> tuple[Corner, ...]:
    kept = corners[:1]
    for corner in corners[1:]:
        if math.dist(corner, kept[-1]) > 1e-9:
            kept.append(corner)
    return tuple(kept)
