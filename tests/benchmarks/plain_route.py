"""The plain way to a tap's thread and flutes: a closed threaded rod, and the flutes cut from it.

The rod has neither relief nor chamfer, neck, shank or square. Its flanks, crests and roots are
ruled between helices, one face for each turn and land (longer faces take longer to cut and to
write). Both its ends follow the helix, so that no cut is spent on them.

    python tests/benchmarks/plain_route.py

makes those of the reference, holds them to their formula, and prints by how much they miss it.
"""

import math
from itertools import pairwise

import cadquery as cq
import numpy as np
from OCP.BRepBuilderAPI import BRepBuilderAPI_Sewing
from OCP.TopoDS import TopoDS
from reference import TURNS, reference

from tapmodel.geometry.kernel.measure.solid import is_valid, volume
from tapmodel.shape.profile import segments
from tapmodel.shape.walls import FACE, HEEL, Walls
from tapmodel.tap.tap import Tap

# Spans of a helix over one land: the curve is then within 0.1 µm of it, and more would take longer.
SPANS = 12
# The sides of a face are made anew for its neighbour; they meet to rounding.
SEWN = 1e-6


class PlainRod:
    """The threaded rod of a tap with a number of turns, and its flutes."""

    def __init__(self, tap: Tap, turns: int) -> None:
        """Take thread and flutes from `tap`."""
        self.thread, self.flutes, self.turns = tap.thread, tap.flutes, turns
        self.parts = segments(tap.thread)

    def fluted(self) -> cq.Solid:
        """The rod with its flutes cut, all at once: one by one takes twice as long."""
        (solid,) = self.rod().cut(*map(self._cutter, self.flutes.angles)).Solids()
        return solid

    def rod(self) -> cq.Solid:
        """The threaded rod before any flute is cut."""
        sewing = BRepBuilderAPI_Sewing(SEWN)
        for face in [*self._thread_faces(), *self._end_faces(0), *self._end_faces(self.turns)]:
            sewing.Add(face.wrapped)
        sewing.Perform()
        solid = cq.Solid.makeSolid(cq.Shell(TopoDS.Shell_s(sewing.SewedShape())))
        return solid if volume(solid) > 0 else cq.Solid(solid.wrapped.Reversed())

    def rod_volume(self) -> float:
        """Pi times the integral of the squared radius over all turns, whatever the ends [mm³]."""
        per_turn = sum(
            (part.end - part.start)
            * (part.start_radius**2 + part.start_radius * part.end_radius + part.end_radius**2)
            for part in self.parts
        )
        return math.pi / 3 * self.turns * per_turn

    def fluted_volume(self) -> float:
        """Over the radius: its circumference outside the flutes times its axial length [mm³].

        The axial length of one turn that is thicker than r falls from the pitch at the root to
        the crest flat; it does not depend on the angle, nor do the flutes on the height.
        """
        thread, flutes = self.thread, self.flutes
        walls = Walls(flutes.centre_radius, flutes.offset, np.asarray(flutes.cutter_diameter / 2))
        kinks = [flutes.core_diameter / 2, *(float(walls.turn_radius(s)) for s in (FACE, HEEL))]
        root, crest = thread.minor / 2, thread.major / 2
        borders = sorted({0.0, root, crest, *(k for k in kinks if k < crest)})
        nodes, weights = np.polynomial.legendre.leggauss(60)
        total = 0.0
        for low, high in pairwise(borders):
            # The flute's width starts as a root; in the turned variable it is smooth.
            turned = (1 + nodes) * math.pi / 2
            r = low + (high - low) * (1 - np.cos(turned)) / 2
            void = np.where(r < kinks[0], 0.0, walls.angle(FACE, r) - walls.angle(HEEL, r))
            share = np.clip((r - root) / (crest - root), 0.0, 1.0)
            length = np.where(
                r < root, thread.pitch, thread.pitch - thread.root_flat - share * self._taper()
            )
            density = (2 * math.pi - flutes.count * void) * length * r
            total += float(weights @ (density * np.sin(turned))) * (high - low) / 2 * math.pi / 2
        return total * self.turns

    def _taper(self) -> float:
        """Axial length that the two flanks of one turn take together [mm]."""
        return self.thread.pitch - self.thread.root_flat - self.thread.crest_flat

    def _thread_faces(self) -> list[cq.Face]:
        return [
            self._ruled(turn, land, (part.start, part.start_radius), (part.end, part.end_radius))
            for turn in range(self.turns)
            for land in range(self.flutes.count)
            for part in self.parts
        ]

    def _end_faces(self, turn: int) -> list[cq.Face]:
        """The ramp from the axis to a crest's edge, and the step at its seam."""
        start, radius = self.parts[0].start, self.parts[0].start_radius
        ramp = [
            self._ruled(turn, land, (start, 0.0), (start, radius))
            for land in range(self.flutes.count)
        ]
        outline = [(start, 0.0), *((part.start, part.start_radius) for part in self.parts)]
        outline += [(start + self.thread.pitch, radius)]
        axis = np.linspace(start + self.thread.pitch, start, self.flutes.count, endpoint=False)
        outline += [(float(w), 0.0) for w in axis]
        places = [self._point(turn, 0.0, place) for place in outline]
        step = cq.Face.makeFromWires(cq.Wire.makePolygon(places, close=True))
        return [*ramp, step]

    def _ruled(
        self, turn: int, land: int, one: tuple[float, float], other: tuple[float, float]
    ) -> cq.Face:
        return cq.Face.makeRuledSurface(
            self._helix(turn, land, one), self._helix(turn, land, other)
        )

    def _helix(self, turn: int, land: int, place: tuple[float, float]) -> cq.Edge:
        spacing = 2 * math.pi / self.flutes.count
        angles = np.linspace(land * spacing, (land + 1) * spacing, SPANS + 1)
        points = [self._point(turn, angle, place) for angle in angles.tolist()]
        if place[1] == 0.0:
            return cq.Edge.makeLine(points[0], points[-1])
        return cq.Edge.makeSpline(points)

    def _point(self, turn: int, angle: float, place: tuple[float, float]) -> cq.Vector:
        w, radius = place
        rise = self.thread.lead * angle / (2 * math.pi)
        z = self.thread.first_z + w + turn * self.thread.pitch + rise
        return cq.Vector(radius * math.cos(angle), radius * math.sin(angle), z)

    def _cutter(self, angle: float) -> cq.Shape:
        """What the mill takes away over the whole length: a half disc with straight sides."""
        c, e, b = self.flutes.centre_radius, self.flutes.offset, self.flutes.cutter_diameter / 2
        out = self.thread.major
        below, height = -2 * self.thread.pitch, (self.turns + 5) * self.thread.pitch
        outline = (
            cq.Workplane(origin=(0, 0, below))
            .moveTo(c, e - b)
            .lineTo(out, e - b)
            .lineTo(out, e + b)
            .lineTo(c, e + b)
            .threePointArc((c - b, e), (c, e - b))
            .close()
        )
        return outline.extrude(height).val().rotate(cq.Vector(), cq.Vector(0, 0, 1), angle)


def main() -> None:
    """Make the reference's thread and flutes and check them."""
    rod = PlainRod(reference().tap, TURNS)
    solid = rod.fluted()
    off = volume(solid) / rod.fluted_volume() - 1
    if not is_valid(solid) or abs(off) > 1e-6:
        raise ValueError(f"the plain route is not valid, or off by {off:.1e} of its volume")
    print(f"volume off by {off:+.1e} of the formula's")


if __name__ == "__main__":
    main()
