"""The cutting edge of a tooth in the plane that a turn along the helix does not change.

The plane is (w, r): r the distance from the axis, w the axial distance from the middle of the
thread that the tooth cuts, each point of the edge brought there along the helix. All teeth of a
thread draw their edges in that one plane. A point of the face at radius r lies `phi(r)` behind the
crest edge; so a tooth whose crest stands at height z has there

* the finished thread:  `|w| < half(r)`, the profile read at `r + drop of the thread`;
* its cone:  `w > cone(r) - z`.

The finished thread of all teeth is one and the same; their cones follow each other along it.
"""

import math
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from tapmodel.numerics import bracketed_roots
from tapmodel.prediction.chips.ridge import crest_and_root, half_width
from tapmodel.shape.flute_section import section_of, wall_angles
from tapmodel.shape.profile import segments
from tapmodel.shape.relief import drop, drop_rate
from tapmodel.tap.tap import Relief, Tap, TapThread
from tapmodel.words import ReliefKind, ReliefPlace

Floats = NDArray[np.float64]

# Newton's steps for the radius at which the edge has a height of the profile: relief and rake
# change it by a few hundredths, and each step squares what is left.
_STEPS = 3
_FACE = 1
# Least cosine of a rake, squared, that is told from none.
_UPRIGHT = 1e-12
# Places at which the face is looked at for the end of a margin: its angle bends at most once.
_LOOKS = 9


class CuttingEdge:
    """The edge of a tap, whose lands are all alike; or the thread that the tap before it has left.

    Attributes:
        tap: whose edge it is.
        parts: of the profile.
        top, bottom: radii of crest and root of the edge [mm].
        crest_start, root_end: radii where the flank's edge meets those of crest and root [mm].
        advance: of the helix [mm/rad].
    """

    def __init__(self, tap: Tap, before: TapThread | None = None) -> None:
        """Take every length and angle from `tap`.

        Args:
            tap: whose edge it is.
            before: a thread inside that of the tap, as another of like flutes and relief has left
                it: it takes the place of the profile, while cones and faces stay those of `tap`.
        """
        self.tap = tap
        self._major = tap.thread.major
        self._section = section_of(tap.flutes)
        self.parts = segments(before or tap.thread)
        self.advance = tap.thread.lead / (2 * math.pi)
        self._crest_edge = float(wall_angles(self._section, np.array([self._major / 2]), _FACE)[0])
        self._thread = _of_flanks(tap.relief.thread)
        self._chamfer = tap.relief.chamfer
        self._point = tap.chamfer.point_diameter / 2
        slope = math.tan(math.radians(tap.chamfer.angle))
        self._cotangent = 1 / slope if slope else 0.0
        # Relief of the tap before begins at its own edge, which lies behind this one's.
        self._begun = 0.0
        if before is not None:
            self._begun = float(self._dropped(np.array(before.major / 2)))
        top, bottom = crest_and_root(self.parts)
        levels = np.array([top, self.parts[0].start_radius, self.parts[2].start_radius, bottom])
        self.top, self.crest_start, self.root_end, self.bottom = self.radius_at(levels).tolist()

    @property
    def crest_edge(self) -> float:
        """Polar angle of the crest edge from the axis of the cutter [deg]."""
        return self._crest_edge

    @property
    def flanks_relieved(self) -> bool:
        """Whether relief moves the flanks."""
        return self._thread.kind is not ReliefKind.CONCENTRIC

    def phi(self, radii: Floats) -> Floats:
        """Angle of the face behind the crest edge at `radii` [deg]."""
        return wall_angles(self._section, radii, _FACE) - self._crest_edge

    def turning(self, radii: Floats) -> Floats:
        """How that angle changes with the radius: by the tangent of the rake [rad/mm].

        Source: derived here.
        """
        section = self._section
        b, m = section.ball_radius, section.centre_distance
        wall = section.offset + b
        straight = radii >= math.hypot(section.centre_radius, wall)
        sine = np.where(straight, wall / radii, (radii**2 + b**2 - m**2) / (2 * radii * b))
        return -sine / (radii * np.sqrt(np.maximum(1 - sine**2, _UPRIGHT)))

    def thread_drop(self, radii: Floats) -> Floats:
        """By how much relief of the whole thread lowers the edge at `radii` [mm].

        A crest relieved alone drops from the major diameter on, and lies above the edge wherever
        that lies further in; so it leaves the edge as it is.
        """
        if not self.flanks_relieved:
            return np.zeros_like(radii)
        return self._dropped(radii) - self._begun

    def _dropped(self, radii: Floats) -> Floats:
        return drop(self._thread, self._major, self.phi(radii))

    def half(self, radii: Floats) -> Floats:
        """Half the width of the finished thread at `radii` [mm]."""
        return half_width(self.parts, radii + self.thread_drop(radii))

    def cone(self, radii: Floats) -> tuple[Floats, Floats]:
        """Where the cone's edge lies on a tooth whose crest stands at z = 0, and how it leans.

        In front of the tap's front there is no edge: that bounds a point as thick as the hole.

        Returns:
            Axial places at `radii` [mm], and their derivative: the cotangent of the angle of the
            edge to the axis.

        Source: derived here.
        """
        phi, turning = self.phi(radii), self.turning(radii)
        rise = radii - self._point + drop(self._chamfer, self._major, phi)
        rate = 1 + drop_rate(self._chamfer, self._major, phi) * turning
        place = np.maximum(rise, 0.0) * self._cotangent - self.advance * np.radians(phi)
        lean = np.where(rise < 0, 0.0, rate * self._cotangent) - self.advance * turning
        return place, lean

    def radius_at(self, levels: Floats) -> Floats:
        """Radii at which the edge of the thread has the radii `levels` of the profile [mm]."""
        return self._undropped(self._thread, levels + self._begun)

    def _undropped(self, relief: Relief, levels: Floats) -> Floats:
        """Radii r with `r + drop(phi(r)) = level` [mm]."""
        if relief.kind is ReliefKind.CONCENTRIC:
            return levels
        radii = levels
        for _ in range(_STEPS):
            phi = self.phi(radii)
            lack = radii + drop(relief, self._major, phi) - levels
            rate = drop_rate(relief, self._major, phi) * self.turning(radii)
            radii = radii - lack / (1 + rate)
        return radii

    def joints(self, low: float, high: float) -> list[float]:
        """Radii between two others where a law of the edge changes, in rising order [mm]."""
        section = self._section
        found = [math.hypot(section.centre_radius, section.offset + section.ball_radius)]
        found += [self.crest_start, self.root_end, self.bottom]
        if low < self._point:
            found += self._undropped(self._chamfer, np.array([self._point])).tolist()
        for relief in (self._thread, self._chamfer):
            if relief.kind is ReliefKind.CON_ECCENTRIC:
                found += self._at_angle(relief.margin_angle, low, high)
        return sorted(radius for radius in found if low < radius < high)

    def _at_angle(self, angle: float, low: float, high: float) -> list[float]:
        """Where the face lies `angle` [deg] behind the crest edge, if it does."""
        radii = np.linspace(low, high, _LOOKS)
        over = self.phi(radii) - angle
        found: list[float] = []
        for first in np.nonzero(np.sign(over[:-1]) * np.sign(over[1:]) < 0)[0].tolist():
            ends = radii[first : first + 1], radii[first + 1 : first + 2]
            found += bracketed_roots(lambda r: self.phi(r) - angle, *ends).tolist()
        return found


def _of_flanks(relief: Relief) -> Relief:
    """The relief as far as it moves the flanks."""
    moves = relief.applies_to is ReliefPlace.THREAD
    return relief if moves else replace(relief, kind=ReliefKind.CONCENTRIC)
