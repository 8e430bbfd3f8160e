"""Faces of the skin as kernel faces: surface, wires in the right sense, parameter curves."""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportUnknownParameterType=false
# The kernel's binding carries no type stubs; only its own names are let off.

import numpy as np
from numpy.typing import NDArray
from OCP.Geom import Geom_Surface
from OCP.TopoDS import TopoDS_Edge, TopoDS_Face, TopoDS_Wire

from tapmodel.geometry import kernel
from tapmodel.geometry.loops import nested, signed_area
from tapmodel.geometry.sheets import Plane, Sheet
from tapmodel.geometry.skin import Cycle, Skin

Floats = NDArray[np.float64]
KernelEdges = list[tuple[TopoDS_Edge, Floats]]


def kernel_edges(skin: Skin) -> KernelEdges:
    """Every edge of the skin with the knots of its parameter, corners shared."""
    corners = [kernel.vertex(corner) for corner in skin.corners]
    return [
        kernel.edge(piece, corners[start], corners[end])
        for piece, (start, end) in zip(skin.edges, skin.ends.tolist(), strict=True)
    ]


def faces(
    sheet: Sheet,
    surface: Geom_Surface,
    cycles: list[Cycle],
    skin: Skin,
    edges: KernelEdges,
    holes: tuple[TopoDS_Wire, ...] = (),
) -> list[TopoDS_Face]:
    """All faces that lie on one sheet.

    Args:
        sheet: the surface in numbers.
        surface: the same in the kernel.
        cycles: closed cycles of edges on it.
        skin: samples of the edges.
        edges: their kernel edges.
        holes: further wires to put into the first face.
    """
    flat = isinstance(sheet, Plane)
    mine = [number for cycle in cycles for number, _ in cycle]
    flats = [skin.edges[number].samples.reshape(-1, 3) for number in mine]
    together = sheet.uv(np.concatenate(flats))
    runs = iter(np.split(together, np.cumsum([len(flat) for flat in flats[:-1]])))
    polygons: list[Floats] = []
    for cycle in cycles:
        polygon: list[Floats] = []
        for number, forward in cycle:
            run = next(runs)
            if not flat:
                shape = skin.edges[number].samples.shape[:2]
                _lay(edges[number], run.reshape(*shape, 2), surface)
            polygon.append(run if forward else run[::-1])
        polygons.append(np.concatenate(polygon))
    made: list[TopoDS_Face] = []
    for outer, inner in nested(polygons):
        wires = [_wire(cycles[outer], edges, turn=signed_area(polygons[outer]) < 0)]
        wires += [_wire(cycles[n], edges, turn=signed_area(polygons[n]) > 0) for n in inner]
        made.append(kernel.face(surface, [*wires, *holes], outward=sheet.outward))
        holes = ()
    return made


def _lay(edge: tuple[TopoDS_Edge, Floats], uv: Floats, surface: Geom_Surface) -> None:
    made, knots = edge
    kernel.lay(made, kernel.parameter_curve(knots, uv), surface)


def _wire(cycle: Cycle, edges: KernelEdges, *, turn: bool) -> TopoDS_Wire:
    run = [(edges[number][0], forward != turn) for number, forward in cycle]
    return kernel.wire(run[::-1] if turn else run)
