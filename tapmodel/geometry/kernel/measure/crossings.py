"""Where the edges of a solid pass through a plane square to its axis."""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportUnknownParameterType=false
# The kernel's binding carries no type stubs; only its own names are let off.

from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

import numpy as np
from OCP.Bnd import Bnd_Box
from OCP.BRep import BRep_Tool
from OCP.BRepAdaptor import BRepAdaptor_Curve
from OCP.BRepBndLib import BRepBndLib
from OCP.GeomAbs import GeomAbs_CurveType
from OCP.TopExp import TopExp
from OCP.TopoDS import TopoDS_Edge

from tapmodel.numerics import border, lowest

_SAMPLES_PER_SPAN = 16


@dataclass(frozen=True, slots=True)
class Crossing:
    """One passage of an edge through the plane.

    Attributes:
        edge: number of the edge.
        parameter: its own parameter there.
        x, y: the point [mm].
        rising: whether z grows there with the parameter.
    """

    edge: int
    parameter: float
    x: float
    y: float
    rising: bool


class EdgeHeights:
    """The height z along one edge, ready to be solved for many planes."""

    def __init__(self, number: int, edge: TopoDS_Edge) -> None:
        """Box the `edge`, which is given its `number`."""
        self.number = number
        self._edge = edge
        self._curve = BRepAdaptor_Curve(edge)
        box = Bnd_Box()
        BRepBndLib.Add_s(edge, box, False)
        self._range = (box.CornerMin().Z(), box.CornerMax().Z())

    @cached_property
    def _marks(self) -> list[tuple[float, float]]:
        """Parameters and heights of samples; the ends have those of the corners."""
        first, last = self._curve.FirstParameter(), self._curve.LastParameter()
        inner = np.linspace(first, last, self._samples()).tolist()[1:-1]
        ends = TopExp.FirstVertex_s(self._edge), TopExp.LastVertex_s(self._edge)
        low, high = (float(BRep_Tool.Pnt_s(vertex).Z()) for vertex in ends)
        return [(first, low), *((t, self._height(t)) for t in inner), (last, high)]

    def _samples(self) -> int:
        kind = self._curve.GetType()
        if kind == GeomAbs_CurveType.GeomAbs_Line:
            return 2
        spans = 1
        if kind == GeomAbs_CurveType.GeomAbs_BSplineCurve:
            spans = int(self._curve.NbKnots()) - 1
        return _SAMPLES_PER_SPAN * max(spans, 2) + 1

    def _height(self, t: float) -> float:
        return float(self._curve.Value(t).Z())

    def crossings(self, z: float) -> list[Crossing]:
        """Passages through the plane at `z` [mm], in the order of the parameter."""
        if not self._range[0] <= z <= self._range[1]:
            return []
        samples = self._marks
        turns = [turn for n in range(1, len(samples) - 1) for turn in self._turn(n, z)]
        marks = sorted([*samples, *turns])
        return [
            self._root(z, (low, high), rising=after >= z)
            for (low, before), (high, after) in pairwise(marks)
            if (before >= z) != (after >= z)
        ]

    def _turn(self, n: int, z: float) -> list[tuple[float, float]]:
        """The highest or lowest point about sample `n`, where only it may reach the plane."""
        marks = self._marks[n - 1 : n + 2]
        before, here, after = (height - z for _, height in marks)
        sign = 1.0 if here >= 0 else -1.0
        if not 0 <= sign * here <= min(sign * before, sign * after):
            return []
        t = lowest(lambda at: sign * self._height(at), marks[0][0], marks[2][0])
        return [(t, self._height(t))]

    def _root(self, z: float, bracket: tuple[float, float], *, rising: bool) -> Crossing:
        low, high = border(lambda at: (self._height(at) >= z) != rising, *bracket)
        t = (low + high) / 2
        point = self._curve.Value(t)
        return Crossing(self.number, t, float(point.X()), float(point.Y()), rising)
