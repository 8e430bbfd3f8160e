"""Faces so narrow that the chord of a mesh would let their two sides cross."""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportUnknownParameterType=false
# The kernel's binding carries no type stubs; only its own names are let off.

import numpy as np
from numpy.typing import NDArray
from OCP.BRepAdaptor import BRepAdaptor_Curve
from OCP.BRepGProp import BRepGProp
from OCP.GProp import GProp_GProps
from OCP.TopoDS import TopoDS, TopoDS_Face, TopoDS_Shape

from tapmodel.geometry.kernel.topology import EDGE, distinct, edge_uses, is_forward

Floats = NDArray[np.float64]

# A face is a sliver when it is narrower than so many chords; it is then meshed with this share of
# its width as chord. That is at most half of the chord of the others: where both are nearly alike,
# the mesher may divide a common border twice.
_NARROW = 2.0
_SHARE = 0.25
_SAMPLES = 13


def slivers(
    shape: TopoDS_Shape, among: list[TopoDS_Face], chord: float, finest: float
) -> tuple[list[TopoDS_Face], float]:
    """Narrow faces, and the chord that keeps the sides of the narrowest apart [mm].

    The width of a narrow face is twice its area over the length of its border.

    Args:
        shape: what the faces belong to.
        among: faces that are looked at.
        chord: of the mesh [mm].
        finest: chord that is not gone below [mm].
    """
    borders = _Borders(shape)
    # The border alone tells cheaply which faces may be narrow; a bent one only seems so.
    likely = [face for face in among if borders.width(face) < _NARROW * chord]
    widths = [_width(face) for face in likely]
    narrow = [f for f, width in zip(likely, widths, strict=True) if width < _NARROW * chord]
    return narrow, max(_SHARE * min(widths, default=chord), finest)


def _width(face: TopoDS_Face) -> float:
    area, border = GProp_GProps(), GProp_GProps()
    BRepGProp.SurfaceProperties_s(face, area)
    BRepGProp.LinearProperties_s(face, border)
    return 2 * abs(float(area.Mass())) / float(border.Mass())


class _Borders:
    """What each edge adds to the area that a border spans, and to its length."""

    def __init__(self, shape: TopoDS_Shape) -> None:
        self._numbers = distinct(shape, EDGE)
        points = np.array(
            [_along(self._numbers.FindKey(n)) for n in range(1, self._numbers.Extent() + 1)]
        )
        self._spanned = np.cross(points[:, :-1], points[:, 1:]).sum(axis=1) / 2
        self._length = np.linalg.norm(np.diff(points, axis=1), axis=2).sum(axis=1)

    def width(self, face: TopoDS_Face) -> float:
        """Of a plane face with this border; of a bent one less than its width."""
        spanned, length = np.zeros(3), 0.0
        for edge in edge_uses(face):
            number = self._numbers.FindIndex(edge) - 1
            spanned += self._spanned[number] * (1 if is_forward(edge) else -1)
            length += float(self._length[number])
        return 2 * float(np.linalg.norm(spanned)) / length


def _along(edge: TopoDS_Shape) -> list[tuple[float, float, float]]:
    curve = BRepAdaptor_Curve(TopoDS.Edge_s(edge))
    steps = np.linspace(curve.FirstParameter(), curve.LastParameter(), _SAMPLES).tolist()
    return [curve.Value(t).Coord() for t in steps]
