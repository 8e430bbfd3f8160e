"""A closed mesh of the whole tap for looking at, straight from the design, without the kernel.

The tap without flutes is two bodies made by arithmetic, threaded length and rear; the flutes are
taken off by a robust boolean of meshes. Corners of the mesh lie on the tap's surfaces, or where
flutes cross them within the chords of the round parts. Nothing is left out: chamfer, reliefs,
neck, square, both centres and the run-outs of the flutes are all there.
"""

# pyright: reportUnknownMemberType=false, reportUnknownArgumentType=false
# The binding of the mesh booleans leaves the shapes of its arrays open.

import manifold3d
import numpy as np
from numpy.typing import NDArray

from tapmodel.errors import KernelError
from tapmodel.geometry.preview.rear import rear_mesh
from tapmodel.geometry.preview.thread import thread_mesh
from tapmodel.geometry.triangles import Mesh
from tapmodel.shape.form import Form
from tapmodel.stages import Stage
from tapmodel.tap.tap import Tap
from tapmodel.words import Hand

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]

# Chords round the half circle of a flute's floor, and of its run-out from floor to end.
_FLOOR_CHORDS, _END_CHORDS = 48, 12


def preview_mesh(tap: Tap) -> Mesh:
    """Closed triangle mesh of a tap.

    Args:
        tap: every number of the tap; must have passed the design rules.

    Returns:
        The mesh; its faces are 0 for the threaded length, 1 for the rear, 2 for the flutes.

    Raises:
        KernelError: when a part of the mesh does not close.
    """
    form = Form(tap)
    parts = [_body(*thread_mesh(form)), _body(*rear_mesh(form)), _cutter(form)]
    numbers = {part.original_id(): number for number, part in enumerate(parts)}
    flutes = [parts[2].rotate((0.0, 0.0, angle)) for angle in tap.flutes.angles]
    void = manifold3d.Manifold.batch_boolean(flutes, manifold3d.OpType.Add)
    mesh = _record(parts[0] + parts[1] - void, numbers)
    if tap.thread.hand is Hand.LEFT:
        mirrored = mesh.vertices * np.array([1.0, -1.0, 1.0])
        return Mesh(mirrored, mesh.triangles[:, ::-1], mesh.face_of_triangle)
    return mesh


def _body(vertices: Floats, triangles: Indices) -> manifold3d.Manifold:
    body = manifold3d.Manifold(
        manifold3d.Mesh64(
            vert_properties=np.ascontiguousarray(vertices),
            tri_verts=np.ascontiguousarray(triangles, dtype=np.uint64),
        )
    )
    if body.status() is not manifold3d.Error.NoError:
        raise KernelError(
            Stage.PREVIEW, f"a part of the mesh does not close ({body.status().name})"
        )
    return body.as_original()


def _cutter(form: Form) -> manifold3d.Manifold:
    """The void of the flute at angle 0: convex, so the hull of points on its surface."""
    walls, blank = form.walls, form.tap.blank
    top = 1.1 * max(form.crest_radius, blank.shank_diameter / 2, blank.neck_diameter / 2)
    # The floor from wall to wall, and both walls up to beyond the blank.
    turn = np.linspace(-np.pi / 2, np.pi / 2, _FLOOR_CHORDS + 1)
    u = np.concatenate([[top], walls.c - walls.b * np.cos(turn), [top]])
    across = np.concatenate([[-walls.b], walls.b * np.sin(turn), [walls.b]])
    below = np.concatenate([[0.0], walls.b * np.cos(turn), [0.0]])
    rise = np.linspace(0.0, np.pi / 2, _END_CHORDS + 1)[:, None]
    narrow = np.cos(rise)
    sections = np.stack(
        np.broadcast_arrays(
            np.where(below > 0, walls.c - below * narrow, u),
            walls.e + across * narrow,
            form.full_depth + walls.b * np.sin(rise),
        ),
        axis=-1,
    )
    front = sections[0] * [1.0, 1.0, 0.0] - [0.0, 0.0, form.pitch]
    return manifold3d.Manifold.hull_points(np.concatenate([front, *sections])).as_original()


def _record(body: manifold3d.Manifold, numbers: dict[int, int]) -> Mesh:
    raw = body.to_mesh64()
    vertices = np.asarray(raw.vert_properties, dtype=np.float64)[:, :3]
    triangles = np.asarray(raw.tri_verts, dtype=np.intp)
    if body.status() is not manifold3d.Error.NoError or body.is_empty():
        raise KernelError(Stage.PREVIEW, f"the flutes could not be cut ({body.status().name})")
    runs = np.diff(np.asarray(raw.run_index, dtype=np.intp)) // 3
    faces = np.repeat([numbers[int(run)] for run in raw.run_original_id], runs)
    return Mesh(vertices, triangles, faces.astype(np.intp))
