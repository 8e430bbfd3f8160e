"""The outline of a section on a B-spline surface, by Gauss quadrature.

It is an explicit function of u there, because z runs one way in v: the surface is ruled along v,
or an arc of less than half a turn across u.
"""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportUnknownParameterType=false
# The kernel's binding carries no type stubs; only its own names are let off.

from itertools import pairwise

import numpy as np
from OCP.BRep import BRep_Tool
from OCP.BRepAdaptor import BRepAdaptor_Surface
from OCP.Geom import Geom_BSplineSurface
from OCP.gp import gp_Pnt, gp_Vec
from OCP.TopoDS import TopoDS_Face

from tapmodel.errors import KernelError
from tapmodel.geometry.kernel.topology import is_forward
from tapmodel.stages import Stage

_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(12)
# Rounds of Newton's method for v; on a ruled surface the first one is exact.
_ROUNDS = 8
_LEVEL = 1e-13


class RuledOutline:
    """The outline on a B-spline surface over whose v the height runs one way: v by u.

    Attributes:
        way: +1 where the body lies at the left when u grows, else -1.
    """

    def __init__(self, face: TopoDS_Face, surface: BRepAdaptor_Surface, z: float) -> None:
        """Read the surface of `face` for the plane at `z` [mm].

        Raises:
            KernelError: when it is neither a line nor one arc in v.
        """
        spline = BRep_Tool.Surface_s(face)
        if not isinstance(spline, Geom_BSplineSurface) or spline.NbVPoles() > 3:
            raise KernelError(
                Stage.SECTION, "an outline on a surface of many spans in v is not known"
            )
        self._surface, self._z = surface, z
        self._knots = [spline.UKnot(n) for n in range(1, spline.NbUKnots() + 1)]
        _, _, self._v_low, self._v_high = spline.Bounds()
        self._u_low = self._knots[0]
        rise = self._height(self._u_low, self._v_high) - self._height(self._u_low, self._v_low)
        # Along the outline du has the sign of dz/dv where the natural normal points outwards,
        # because e_z x (S_u x S_v) = S_u dz/dv - S_v dz/du.
        self.way = 1.0 if (rise > 0) == is_forward(face) else -1.0

    def _height(self, u: float, v: float) -> float:
        return float(self._surface.Value(u, v).Z())

    def integral(self, start: float, stop: float) -> float:
        """Integral of x dy - y dx from u = `start` to `stop`, knot by knot."""
        low, high = sorted((start, stop))
        marks = [low, *(knot for knot in self._knots if low < knot < high), high]
        total = 0.0
        for a, b in pairwise(marks):
            half = (b - a) / 2
            rates = [self._rate(a + half * (1 + node)) for node in _NODES.tolist()]
            total += half * float(_WEIGHTS @ np.array(rates))
        return total if stop >= start else -total

    def _start(self, u: float) -> float:
        """The v at which z would be reached if it grew evenly."""
        low, high = self._height(u, self._v_low), self._height(u, self._v_high)
        return self._v_low + (self._z - low) / (high - low) * (self._v_high - self._v_low)

    def _rate(self, u: float) -> float:
        """(x dy - y dx) / du on the outline."""
        point, along, across = gp_Pnt(), gp_Vec(), gp_Vec()
        v = self._start(u)
        for _ in range(_ROUNDS):
            self._surface.D1(u, v, point, along, across)
            if abs(self._z - point.Z()) < _LEVEL:
                break
            v += (self._z - point.Z()) / across.Z()
        slope = -along.Z() / across.Z()
        dx, dy = along.X() + slope * across.X(), along.Y() + slope * across.Y()
        return float(point.X() * dy - point.Y() * dx)
