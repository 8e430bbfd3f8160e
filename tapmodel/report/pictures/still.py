"""Still pictures of a mesh, drawn off-screen: shaded steel, sharp edges as dark lines, all grey.

Several views of one mesh share one scene, so that its edges and normals are found once.
"""

import os
import sys
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from importlib import import_module
from pathlib import Path
from types import ModuleType

import numpy as np
from numpy.typing import NDArray

from tapmodel.errors import MissingError
from tapmodel.export.atomic import write_whole
from tapmodel.report.pictures.graphics import ask, hindrance

Floats = NDArray[np.float64]
Integers = NDArray[np.int64]
Vector = tuple[float, float, float]


@dataclass(frozen=True, slots=True)
class Window:
    """What a close-up shows: the point in its middle, and the height of the picture [mm]."""

    centre: Vector
    height: float


@dataclass(frozen=True, slots=True)
class Fine:
    """A part of the tap whose edges lie too close in a picture to be told apart, as lines.

    Attributes:
        start, end: along the axis [mm].
        radius: least one [mm].
    """

    start: float
    end: float
    radius: float


@dataclass(frozen=True, slots=True, eq=False)
class View:
    """Where the camera stands, in parallel projection.

    Attributes:
        direction: from the tap towards the camera.
        up: what points upwards in the picture.
        size: width and height [px].
        window: what is shown; None for the whole mesh.
        fine: part that is shaded only, its edges not drawn; None for no such part.
        references: lines drawn dashed where the solid does not hide them, each (n, 3) [mm].
        title, alt: words for a page: a heading, and what is to be seen.
    """

    direction: Vector = (0.80, 0.50, -0.62)
    up: Vector = (-0.42, 0.90, 0.18)
    size: tuple[int, int] = (1600, 800)
    window: Window | None = None
    fine: Fine | None = None
    references: tuple[Floats, ...] = ()
    title: str = ""
    alt: str = ""


def draw(vertices: Floats, triangles: Integers, path: Path, view: View | None = None) -> None:
    """Write a PNG of a closed mesh; arguments as `draw_views`, from the cutting end by default."""
    draw_views(vertices, triangles, [(view or View(), path)])


def draw_views(
    vertices: Floats, triangles: Integers, pictures: Sequence[tuple[View, Path]]
) -> None:
    """Write one grey PNG of a closed mesh for every view.

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
    """A grey PNG of a closed mesh for every view; arguments as `draw_views`.

    Raises:
        MissingError: the machine cannot draw.
    """
    scene = renderer().Scene(vertices, triangles)
    return [scene.png(view) for view in views]


def renderer() -> ModuleType:
    """The module that draws: it takes a third of a second to load, and only stills pay for it.

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
    return import_module("tapmodel.report.pictures.scene")


def warm_up() -> None:
    """Load the renderer, where the machine can draw, before there is a mesh to be drawn."""
    ask()
    # The part of it that needs no graphics loads while the answer is awaited.
    import_module("vtkmodules.vtkRenderingCore")
    if hindrance() is None:
        renderer()
