"""The pieces of a section's outline on one face, and the area they sweep about the axis.

Lines and circles are integrated in closed form, ruled surfaces by `section_ruled`.
"""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportUnknownParameterType=false
# pyright: reportUnknownLambdaType=false
# The kernel's binding carries no type stubs; only its own names are let off.

from math import atan2, hypot, tau

from OCP.BRep import BRep_Tool
from OCP.BRepAdaptor import BRepAdaptor_Surface
from OCP.GeomAbs import GeomAbs_SurfaceType
from OCP.gp import gp_Ax3
from OCP.TopoDS import TopoDS_Edge, TopoDS_Face

from tapmodel.errors import KernelError
from tapmodel.geometry.kernel.measure.crossings import Crossing
from tapmodel.geometry.kernel.measure.section_ruled import RuledOutline
from tapmodel.geometry.kernel.topology import is_forward
from tapmodel.stages import Stage

Place = tuple[Crossing, TopoDS_Edge]
Ends = tuple[list[Place], list[Place]]

# An end may lie before its start by this much, where a piece shrinks to a corner.
_TOUCH = 1e-6
# Sine of the angle below which an axis counts as upright or level.
_STRAIGHT = 1e-12


def swept(face: TopoDS_Face, z: float, ends: Ends) -> float:
    """Half the integral of x dy - y dx over the outline on one face [mm²].

    Args:
        face: with its orientation in the solid.
        z: height of the plane [mm].
        ends: where the pieces start and end, body at their left.

    Raises:
        KernelError: for a surface that gives neither lines, circles nor explicit functions.
    """
    surface = BRepAdaptor_Surface(face, False)
    kind = surface.GetType()
    if kind == GeomAbs_SurfaceType.GeomAbs_BSplineSurface:
        return _on_ruled(face, surface, z, ends)
    if kind == GeomAbs_SurfaceType.GeomAbs_Plane:
        normal = surface.Plane().Axis().Direction()
        return _on_lines(-normal.Y(), normal.X(), ends)
    if kind == GeomAbs_SurfaceType.GeomAbs_Sphere:
        return _on_circle(face, surface.Sphere().Position(), ends)
    if kind == GeomAbs_SurfaceType.GeomAbs_Cone and _upright(surface.Cone().Position()):
        return _on_circle(face, surface.Cone().Position(), ends)
    if kind == GeomAbs_SurfaceType.GeomAbs_Cylinder:
        axes = surface.Cylinder().Position()
        if _upright(axes):
            return _on_circle(face, axes, ends)
        way = axes.Direction()
        if abs(way.Z()) < _STRAIGHT:
            return _on_lines(way.X(), way.Y(), ends)
    raise KernelError(Stage.SECTION, f"an outline on a surface of kind {kind.name} is not known")


def _upright(axes: gp_Ax3) -> bool:
    way = axes.Direction()
    return hypot(way.X(), way.Y()) < _STRAIGHT


def _on_lines(x: float, y: float, ends: Ends) -> float:
    """Pieces of lines in the direction (x, y).

    On a line at distance h from the axis a piece sweeps h (s_end - s_start) / 2, so every end
    counts by itself and nothing needs to be paired.
    """
    length = hypot(x, y)
    x, y = x / length, y / length

    def moment(place: Place) -> float:
        at = place[0]
        return (at.x * y - at.y * x) * (at.x * x + at.y * y)

    starts, stops = ends
    return (sum(map(moment, stops)) - sum(map(moment, starts))) / 2


def _on_circle(face: TopoDS_Face, axes: gp_Ax3, ends: Ends) -> float:
    """Arcs about a centre: R² times the angle, and the triangles from the axis to the centre.

    The natural normal of the kernel's round surfaces points away from their axis when its frame
    is right-handed; an outline whose normal points away runs counter-clockwise.
    """
    sense = 1.0 if is_forward(face) == bool(axes.Direct()) else -1.0
    centre = axes.Location()
    cx, cy = float(centre.X()), float(centre.Y())
    total = 0.0
    turned = 0.0
    for (start, edge), (end, other) in _paired_round(ends, sense, (cx, cy)):
        angle = sense * (_angle(end, cx, cy) - _angle(start, cx, cy))
        # An outline that ends on the very seam where it starts has gone all the way round.
        all_round = edge.IsSame(other) and abs(start.parameter - end.parameter) < _TOUCH
        angle = tau if all_round else (angle + _TOUCH) % tau - _TOUCH
        radius = hypot(start.x - cx, start.y - cy)
        total += radius**2 * sense * angle + cx * (end.y - start.y) - cy * (end.x - start.x)
        turned += angle
    if turned > tau + _TOUCH:
        raise KernelError(Stage.SECTION, "arcs of an outline overlap")
    return total / 2


def _angle(at: Crossing, cx: float, cy: float) -> float:
    return atan2(at.y - cy, at.x - cx)


def _paired_round(
    ends: Ends, sense: float, centre: tuple[float, float]
) -> list[tuple[Place, Place]]:
    """Each start with the end that follows it on the way round."""
    starts, stops = (
        sorted(places, key=lambda place: sense * _angle(place[0], *centre)) for places in ends
    )
    first = sense * _angle(starts[0][0], *centre)
    gaps = [(sense * _angle(stop[0], *centre) - first + _TOUCH) % tau for stop in stops]
    # A seam is both start and end: as an end it comes last.
    seam = [stop[1].IsSame(starts[0][1]) and len(stops) > 1 for stop in stops]
    nearest = min(range(len(stops)), key=lambda n: gaps[n] + tau * seam[n])
    return list(zip(starts, stops[nearest:] + stops[:nearest], strict=True))


def _on_ruled(face: TopoDS_Face, surface: BRepAdaptor_Surface, z: float, ends: Ends) -> float:
    """Explicit pieces: at each u, z is linear in v."""
    ruled = RuledOutline(face, surface, z)
    starts, stops = (sorted(_u(face, place) for place in places) for places in ends)
    total = 0.0
    for start, stop in zip(starts, stops, strict=True):
        if ruled.way * (stop - start) < -_TOUCH:
            raise KernelError(Stage.SECTION, "an outline ends before it starts")
        total += ruled.integral(start, stop)
    return total / 2


def _u(face: TopoDS_Face, place: Place) -> float:
    crossing, edge = place
    curve = BRep_Tool.CurveOnSurface_s(edge, face, 0.0, 0.0)
    return float(curve.Value(crossing.parameter).X())
