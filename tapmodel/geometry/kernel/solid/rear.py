"""The rear of the tap behind the flutes: turned, squared, centred; by the kernel's booleans.

It is a small solid that begins at a circle inside the turned length in which the run-out ends.
The face round that circle is then replaced by one that reaches down to the flutes.
"""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportUnknownParameterType=false
# The kernel's binding carries no type stubs; only its own names are let off.

from collections.abc import Sequence
from math import cos, pi, sin

import numpy as np
from OCP.BRepAlgoAPI import BRepAlgoAPI_Cut
from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeFace, BRepBuilderAPI_MakePolygon
from OCP.BRepPrimAPI import BRepPrimAPI_MakeBox, BRepPrimAPI_MakeCone, BRepPrimAPI_MakeRevol
from OCP.gp import gp_Ax1, gp_Ax2, gp_Dir, gp_Pnt
from OCP.TopoDS import TopoDS_Shape
from OCP.TopTools import TopTools_ListOfShape

from tapmodel.errors import KernelError
from tapmodel.geometry.kernel.measure.solid import volume
from tapmodel.geometry.kernel.topology import Solid, solids
from tapmodel.shape.form import Form
from tapmodel.stages import Stage

# Booleans must change the volume by at least this much to be believed [mm³].
_CHANGE = 1e-9
_UP = gp_Dir(0, 0, 1)


def rear_solid(form: Form, start: float, seam_angle: float) -> Solid:
    """Solid from z = `start` to the rear face, its seam at `seam_angle` [rad].

    Raises:
        KernelError: when an operation did not change the volume as it must.
    """
    blank = form.tap.blank
    shank, end = form.turned[-1].end_radius, blank.overall_length
    inner = [(piece.end_radius, piece.end) for piece in form.turned[:-1] if piece.end > start]
    bevel = blank.rear_chamfer
    outline = [(0.0, start), (float(form.body_radius(np.asarray(start))), start), *inner]
    outline += [(shank, end - bevel), (shank - bevel, end)] if bevel > 0 else [(shank, end)]
    outline += [(0.0, end)]
    body = _cut(_turned(outline, seam_angle), _around_square(form), Stage.SQUARE)
    if blank.rear_centre > 0:
        rim = blank.rear_centre / 2
        depth = rim / float(np.tan(np.radians(30.0)))
        axes = gp_Ax2(gp_Pnt(0, 0, end - depth), _UP)
        body = _cut(body, [BRepPrimAPI_MakeCone(axes, 0, rim, depth).Shape()], Stage.REAR_CENTRE)
    return body


def _turned(outline: Sequence[tuple[float, float]], seam_angle: float) -> Solid:
    """The body whose radii and heights are given, the first and last on the axis."""
    polygon = BRepBuilderAPI_MakePolygon()
    for r, z in outline:
        polygon.Add(gp_Pnt(r * cos(seam_angle), r * sin(seam_angle), z))
    polygon.Close()
    face = BRepBuilderAPI_MakeFace(polygon.Wire()).Face()
    axis = gp_Ax1(gp_Pnt(0, 0, 0), _UP)
    return _one_solid(BRepPrimAPI_MakeRevol(face, axis, 2 * pi).Shape())


def _around_square(form: Form) -> list[TopoDS_Shape]:
    """Four blocks that leave the square."""
    blank = form.tap.blank
    half, reach = blank.square_across_flats / 2, blank.shank_diameter
    height = blank.overall_length - blank.square_start + 1.0
    blocks: list[TopoDS_Shape] = []
    for x, y in ((1, 0), (0, 1), (-1, 0), (0, -1)):
        corner = gp_Pnt(half * x + reach * y, half * y - reach * x, blank.square_start)
        axes = gp_Ax2(corner, _UP, gp_Dir(x, y, 0))
        blocks.append(BRepPrimAPI_MakeBox(axes, reach, 2 * reach, height).Shape())
    return blocks


def _cut(body: Solid, tools: Sequence[TopoDS_Shape], stage: Stage) -> Solid:
    whole, off = TopTools_ListOfShape(), TopTools_ListOfShape()
    whole.Append(body.wrapped)
    for tool in tools:
        off.Append(tool)
    cut = BRepAlgoAPI_Cut()
    cut.SetArguments(whole)
    cut.SetTools(off)
    cut.Build()
    result = _one_solid(cut.Shape())
    if not volume(body) - volume(result) > _CHANGE:
        raise KernelError(stage, "the cut removed nothing")
    return result


def _one_solid(shape: TopoDS_Shape) -> Solid:
    found = solids(shape)
    if len(found) != 1:
        raise KernelError(Stage.REAR, f"expected one solid, got {len(found)}")
    return found[0]
