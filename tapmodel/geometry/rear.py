"""The rear of the tap behind the flutes: turned, squared, centred; by the kernel's booleans.

It is a small solid that begins at a circle inside the turned length in which the run-out ends.
The face round that circle is then replaced by one that reaches down to the flutes.
"""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportUnknownParameterType=false
# The kernel's binding carries no type stubs; only its own names are let off.

from collections.abc import Sequence

import cadquery as cq
import numpy as np

from tapmodel.errors import KernelError
from tapmodel.geometry.form import Form

# Booleans must change the volume by at least this much to be believed [mm³].
_CHANGE = 1e-9


def rear_solid(form: Form, start: float, seam_angle: float) -> cq.Solid:
    """Solid from z = `start` to the rear face, its seam at `seam_angle` [rad].

    Raises:
        KernelError: when an operation did not change the volume as it must.
    """
    blank = form.design.blank
    shank, end = form.turned[-1].end_radius, blank.overall_length
    inner = [(piece.end_radius, piece.end) for piece in form.turned[:-1] if piece.end > start]
    bevel = blank.rear_chamfer
    outline = [(0.0, start), (float(form.body_radius(np.asarray(start))), start), *inner]
    outline += [(shank, end - bevel), (shank - bevel, end)] if bevel > 0 else [(shank, end)]
    outline += [(0.0, end)]
    turned = cq.Workplane("XZ").polyline(outline).close().revolve(360, (0, 0), (0, 1))
    body = _one_solid(turned.val())
    body = body.rotate(cq.Vector(0, 0, 0), cq.Vector(0, 0, 1), float(np.degrees(seam_angle)))
    body = _cut(_one_solid(body), _around_square(form), "square")
    if blank.rear_centre > 0:
        rim = blank.rear_centre / 2
        depth = rim / float(np.tan(np.radians(30.0)))
        pit = cq.Solid.makeCone(0, rim, depth, cq.Vector(0, 0, end - depth), cq.Vector(0, 0, 1))
        body = _cut(body, [pit], "rear centre")
    return body


def _around_square(form: Form) -> list[cq.Shape]:
    """Four blocks that leave the square."""
    blank = form.design.blank
    half, reach = blank.square_across_flats / 2, blank.shank_diameter
    height = blank.overall_length - blank.square_start + 1.0
    block = cq.Solid.makeBox(reach, 2 * reach, height, cq.Vector(half, -reach, blank.square_start))
    axis = (cq.Vector(0, 0, 0), cq.Vector(0, 0, 1))
    return [block.rotate(*axis, 90.0 * side) for side in range(4)]


def _cut(body: cq.Solid, tools: Sequence[cq.Shape], stage: str) -> cq.Solid:
    before = body.Volume()
    result = _one_solid(body.cut(*tools))
    if not before - result.Volume() > _CHANGE:
        raise KernelError(stage, "the cut removed nothing")
    return result


def _one_solid(shape: object) -> cq.Solid:
    if isinstance(shape, cq.Solid):
        return shape
    solids = shape.Solids() if isinstance(shape, cq.Shape) else []
    if len(solids) != 1:
        raise KernelError("rear", f"expected one solid, got {len(solids)}")
    return solids[0]
