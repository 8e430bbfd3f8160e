"""Faces of the skin as kernel faces: surface, wires in the right sense, parameter curves."""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportUnknownParameterType=false
# The kernel's binding carries no type stubs; only its own names are let off.

import numpy as np
from numpy.typing import NDArray
from OCP.Geom import Geom_Surface
from OCP.TopoDS import TopoDS_Edge, TopoDS_Face, TopoDS_Wire

from tapmodel.geometry.bezier import swept_area
from tapmodel.geometry.kernel.solid import shapes as kernel
from tapmodel.geometry.loops import nested
from tapmodel.geometry.surfaces.carriers import Carrier, Plane
from tapmodel.geometry.trace.keys import FaceKey
from tapmodel.geometry.trace.skin import Cycle, Skin

Floats = NDArray[np.float64]
KernelEdges = list[tuple[TopoDS_Edge, Floats]]


def kernel_edges(skin: Skin) -> KernelEdges:
    """Every edge of the skin with the knots of its parameter, corners shared."""
    corners = [kernel.vertex(corner) for corner in skin.corners]
    return [
        kernel.edge(piece, corners[start], corners[end])
        for piece, (start, end) in zip(skin.edges, skin.ends.tolist(), strict=True)
    ]


class FaceMaker:
    """Makes the faces of one skin; faces that lie on one carrier share its kernel surface."""

    def __init__(self, skin: Skin, edges: KernelEdges) -> None:
        """Take the samples of the edges from `skin` and their kernel edges from `edges`."""
        self.skin, self.edges = skin, edges
        self._surfaces: dict[FaceKey, Geom_Surface] = {}

    def faces(
        self, shared: FaceKey, carrier: Carrier, cycles: list[Cycle], holes: tuple[TopoDS_Wire, ...]
    ) -> list[TopoDS_Face]:
        """All faces between `cycles` on one carrier.

        Args:
            shared: key of the carrier, the same for all keys of faces that lie on it.
            carrier: the surface in numbers.
            cycles: closed cycles of edges on it.
            holes: further wires to put into the first face.
        """
        if shared not in self._surfaces:
            self._surfaces[shared] = kernel.surface(carrier)
        surface = self._surfaces[shared]
        polygons, areas = self._polygons(carrier, surface, cycles)
        made: list[TopoDS_Face] = []
        for outer, inner in nested(polygons):
            wires = [self._wire(cycles[outer], turn=areas[outer] < 0)]
            wires += [self._wire(cycles[n], turn=areas[n] > 0) for n in inner]
            made.append(kernel.face(surface, [*wires, *holes], outward=carrier.outward))
            holes = ()
        return made

    def _polygons(
        self, carrier: Carrier, surface: Geom_Surface, cycles: list[Cycle]
    ) -> tuple[list[Floats], list[float]]:
        """The cycles in the parameters of the carrier, and the area within each.

        Records there where each edge runs.
        """
        pieces = [self.skin.edges[number].samples for cycle in cycles for number, _ in cycle]
        flats = [piece.reshape(-1, 3) for piece in pieces]
        together = carrier.uv(np.concatenate(flats))
        runs = iter(np.split(together, np.cumsum([len(flat) for flat in flats[:-1]])))
        polygons: list[Floats] = []
        areas: list[float] = []
        for cycle in cycles:
            polygon: list[Floats] = []
            area = 0.0
            for number, forward in cycle:
                run = next(runs)
                spans = run.reshape(*self.skin.edges[number].samples.shape[:2], 2)
                # The kernel finds by itself where a curve runs in a plane.
                if not isinstance(carrier, Plane):
                    edge, knots = self.edges[number]
                    kernel.lay(edge, kernel.parameter_curve(knots, spans), surface)
                polygon.append(run if forward else run[::-1])
                area += swept_area(spans) * (1 if forward else -1)
            polygons.append(np.concatenate(polygon))
            areas.append(area)
        return polygons, areas

    def _wire(self, cycle: Cycle, *, turn: bool) -> TopoDS_Wire:
        run = [(self.edges[number][0], forward != turn) for number, forward in cycle]
        return kernel.wire(run[::-1] if turn else run)
