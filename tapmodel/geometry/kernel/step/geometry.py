"""The kernel's curves and surfaces as statements of a STEP file.

Curves in the parameters of the surfaces are left out: they would double the file. A reader fits
its own, cubic ones through some twenty points, more on curves of several spans. That is good to
0.1 nm on an edge without a jump of curvature that one span of degree 6 follows; an edge that bends
more (by 1.3 nm and up to 7 nm) is given more knots, and then is as good.
"""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportUnknownParameterType=false
# The kernel's binding carries no type stubs; only its own names are let off.

from collections.abc import Iterable
from itertools import pairwise

from OCP.Geom import (
    Geom_BSplineCurve,
    Geom_BSplineSurface,
    Geom_Circle,
    Geom_ConicalSurface,
    Geom_Curve,
    Geom_CylindricalSurface,
    Geom_Hyperbola,
    Geom_Line,
    Geom_Plane,
    Geom_SphericalSurface,
    Geom_Surface,
)
from OCP.gp import gp_Ax2, gp_Ax3

from tapmodel.errors import KernelError
from tapmodel.geometry.bezier import PARTS, PARTS_OF_EACH, STRAIGHT_DEGREE
from tapmodel.geometry.kernel.step.text import Statements, integers, real, reals, rows
from tapmodel.stages import Stage


def surface(to: Statements, item: Geom_Surface) -> str:
    """An untrimmed surface.

    Its natural normal is the kernel's, unless the surface `is_mirrored`.

    Raises:
        KernelError: when it is of a kind that no tap has.
    """
    if isinstance(item, Geom_BSplineSurface):
        return _spline_surface(to, item)
    # STEP's cones widen along their axis; the kernel's may narrow.
    narrows = isinstance(item, Geom_ConicalSurface) and bool(item.SemiAngle() < 0)
    frame = _frame(to, item.Position(), upside_down=narrows)
    match item:
        case Geom_Plane():
            return to.shared(f"PLANE('',{frame})")
        case Geom_CylindricalSurface():
            return to.shared(f"CYLINDRICAL_SURFACE('',{frame},{real(item.Radius())})")
        case Geom_ConicalSurface():
            size = f"{real(item.RefRadius())},{real(abs(item.SemiAngle()))}"
            return to.shared(f"CONICAL_SURFACE('',{frame},{size})")
        case Geom_SphericalSurface():
            return to.shared(f"SPHERICAL_SURFACE('',{frame},{real(item.Radius())})")
        case _:
            raise _unknown(item)


def is_mirrored(item: Geom_Surface) -> bool:
    """Whether the kernel's frame is left-handed; in STEP u then runs the other way round."""
    return not (isinstance(item, Geom_BSplineSurface) or bool(item.Position().Direct()))


def curve(to: Statements, item: Geom_Curve, *, seam: bool = False) -> str:
    """An untrimmed curve; a seam's line is placed as finely as the surface that it closes.

    Raises:
        KernelError: when it is of a kind that no tap has.
    """
    match item:
        case Geom_BSplineCurve():
            return _spline_curve(to, _eased(item))
        case Geom_Line():
            at, way = item.Position().Location().Coord(), item.Position().Direction().Coord()
            vector = to.shared(f"VECTOR('',{to.direction(way)},1.)")
            return to.shared(f"LINE('',{to.point(at, fine=seam)},{vector})")
        case Geom_Circle():
            return to.shared(f"CIRCLE('',{_frame(to, item.Position())},{real(item.Radius())})")
        case Geom_Hyperbola():
            axes = f"{real(item.MajorRadius())},{real(item.MinorRadius())}"
            return to.shared(f"HYPERBOLA('',{_frame(to, item.Position())},{axes})")
        case _:
            raise _unknown(item)


def _unknown(item: object) -> KernelError:
    return KernelError(Stage.STEP, f"a {type(item).__name__} is not known here")


def _frame(to: Statements, axes: gp_Ax2 | gp_Ax3, *, upside_down: bool = False) -> str:
    z = axes.Direction().Reversed() if upside_down else axes.Direction()
    origin = to.point(axes.Location().Coord())
    directions = f"{to.direction(z.Coord())},{to.direction(axes.XDirection().Coord())}"
    return to.shared(f"AXIS2_PLACEMENT_3D('',{origin},{directions})")


def _eased(item: Geom_BSplineCurve) -> Geom_BSplineCurve:
    """The same curve with more knots where it bends much."""
    knots = [item.Knot(n) for n in range(1, item.NbKnots() + 1)]
    if len(knots) == 2 and item.Degree() <= STRAIGHT_DEGREE:
        return item
    eased: Geom_BSplineCurve = item.Copy()
    parts = PARTS if len(knots) == 2 else PARTS_OF_EACH
    for a, b in pairwise(knots):
        for n in range(1, parts):
            eased.InsertKnot(a + (b - a) * n / parts)
    return eased


def _spline_curve(to: Statements, item: Geom_BSplineCurve) -> str:
    if item.IsRational() or item.IsPeriodic():
        raise _unknown(item)
    poles = ",".join(to.point(item.Pole(n).Coord()) for n in range(1, item.NbPoles() + 1))
    numbers = range(1, item.NbKnots() + 1)
    times, knots = integers(map(item.Multiplicity, numbers)), _knots(map(item.Knot, numbers))
    shape = f"{item.Degree()},({poles}),.UNSPECIFIED.,.F.,.F.,({times}),({knots}),.UNSPECIFIED."
    return to.shared(f"B_SPLINE_CURVE_WITH_KNOTS('',{shape})")


def _knots(places: Iterable[float]) -> str:
    """From 0 to 1: no shape depends on where they begin, and in most splines there are no more."""
    first, *_, last = found = list(places)
    return reals((place - first) / (last - first) for place in found)


def _spline_surface(to: Statements, item: Geom_BSplineSurface) -> str:
    if item.IsUPeriodic() or item.IsVPeriodic():
        raise _unknown(item)
    across = range(1, item.NbVPoles() + 1)
    along = range(1, item.NbUPoles() + 1)
    poles = rows([to.point(item.Pole(n, k).Coord()) for k in across] for n in along)
    u, v = range(1, item.NbUKnots() + 1), range(1, item.NbVKnots() + 1)
    times = f"({integers(map(item.UMultiplicity, u))}),({integers(map(item.VMultiplicity, v))})"
    knots = f"({_knots(map(item.UKnot, u))}),({_knots(map(item.VKnot, v))})"
    net = f"{item.UDegree()},{item.VDegree()},({poles}),.UNSPECIFIED.,.F.,.F.,.F."
    if not (item.IsURational() or item.IsVRational()):
        shape = f"{net},{times},{knots},.UNSPECIFIED."
        return to.shared(f"B_SPLINE_SURFACE_WITH_KNOTS('',{shape})")
    weights = rows([real(item.Weight(n, k)) for k in across] for n in along)
    return to.shared(
        f"(BOUNDED_SURFACE()B_SPLINE_SURFACE({net})"
        f"B_SPLINE_SURFACE_WITH_KNOTS({times},{knots},.UNSPECIFIED.)"
        f"GEOMETRIC_REPRESENTATION_ITEM()RATIONAL_B_SPLINE_SURFACE(({weights}))"
        "REPRESENTATION_ITEM('')SURFACE())"
    )
