"""Still pictures of a mesh, drawn off-screen: tempered steel, sharp edges as dark lines.

Several views of one mesh share one scene, so that its edges and normals are found once.
"""

import os
import sys
from collections.abc import Iterable, Sequence
from importlib import import_module
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from tapmodel.errors import MissingError
from tapmodel.export.atomic import write_whole
from tapmodel.report.pictures.graphics import ask, hindrance
from tapmodel.report.pictures.view import Floats, Integers, View

if TYPE_CHECKING:
    from tapmodel.report.pictures.scene import Scene

_REHEARSED = (16, 8)
"""Size of the picture that is thrown away [px]: a large one costs more than it prepares."""


def draw(vertices: Floats, triangles: Integers, path: Path, view: View | None = None) -> None:
    """Write a PNG of a closed mesh; arguments as `draw_views`, from the cutting end by default."""
    draw_views(vertices, triangles, [(view or View(), path)])


def draw_views(
    vertices: Floats, triangles: Integers, pictures: Sequence[tuple[View, Path]]
) -> None:
    """Write one PNG of a closed mesh for every view.

    Args:
        vertices: (n, 3) [mm].
        triangles: (m, 3) vertex numbers.
        pictures: camera and file to write.

    Raises:
        InputError: when nothing can be written there.
        MissingError: the machine cannot draw.
    """
    drawn = drawn_views(vertices, triangles, [view for view, _ in pictures])
    for (_, path), png in zip(pictures, drawn, strict=True):
        write_whole(path, png)


def drawn_views(vertices: Floats, triangles: Integers, views: Iterable[View]) -> list[bytes]:
    """A PNG of a closed mesh for every view; arguments as `draw_views`.

    Raises:
        MissingError: the machine cannot draw.
    """
    scene = renderer()(vertices, triangles)
    return [scene.png(view) for view in views]


def renderer() -> "type[Scene]":
    """What draws: it takes a third of a second to load, and only stills pay for it.

    Raises:
        MissingError: the machine cannot draw.
    """
    reason = hindrance()
    if reason:
        raise MissingError(f"no picture can be drawn: {reason}")
    # Set before the renderer loads, or it looks for a screen first and complains. Other systems
    # have windows of their own kind that need no screen.
    if sys.platform == "linux":
        os.environ.setdefault("VTK_DEFAULT_OPENGL_WINDOW", "vtkEGLRenderWindow")
    from tapmodel.report.pictures.scene import Scene  # noqa: PLC0415

    return Scene


def warm_up() -> None:
    """Load the renderer, where the machine can draw, before there is a mesh to be drawn."""
    ask()
    # The part of it that needs no graphics loads while the answer is awaited.
    import_module("vtkmodules.vtkRenderingCore")
    if hindrance() is None:
        renderer()


def rehearse() -> None:
    """Draw a small body and throw the picture away.

    What the renderer prepares at its first drawing is then there for the next, which takes two
    thirds of the time.
    """
    triangles = np.array([[0, 2, 1], [0, 1, 3], [0, 3, 2], [1, 2, 3]])
    renderer()(np.eye(4, 3, k=-1), triangles).png(View(size=_REHEARSED))
