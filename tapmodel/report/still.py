"""A still picture of a mesh, drawn off-screen: shaded, with its sharp edges as dark lines."""

# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportMissingTypeStubs=false, reportMissingImports=false
# The renderer's binding carries no usable types; only its own names are let off.

import os
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Integers = NDArray[np.int64]

# Angle between neighbouring facets above which their common side is drawn as an edge [deg].
_SHARP = 25.0
_STEEL = (0.80, 0.83, 0.86)
_INK = (0.10, 0.11, 0.13)


@dataclass(frozen=True, slots=True)
class View:
    """Where the camera stands.

    Attributes:
        direction: from the tap towards the camera.
        up: what points upwards in the picture.
        size: width and height [px].
    """

    direction: tuple[float, float, float] = (0.80, 0.50, -0.62)
    up: tuple[float, float, float] = (-0.42, 0.90, 0.18)
    size: tuple[int, int] = (1600, 800)


def draw(vertices: Floats, triangles: Integers, path: Path, view: View | None = None) -> None:
    """Write a PNG of a closed mesh.

    Args:
        vertices: (n, 3) [mm].
        triangles: (m, 3) vertex numbers.
        path: file to write.
        view: camera; three-quarter from the cutting end by default.
    """
    # Set before the renderer loads, or it looks for a screen first and complains.
    os.environ.setdefault("VTK_DEFAULT_OPENGL_WINDOW", "vtkEGLRenderWindow")
    # Loading the renderer takes most of a second; only stills pay for it.
    import vtk  # noqa: PLC0415

    view = view or View()
    mesh = _poly_data(vtk, vertices, triangles)
    renderer = vtk.vtkRenderer()
    renderer.SetBackground(1.0, 1.0, 1.0)
    renderer.AddActor(_shaded(vtk, mesh))
    renderer.AddActor(_lines(vtk, mesh))
    window = vtk.vtkRenderWindow()
    window.SetOffScreenRendering(1)
    window.SetMultiSamples(8)
    window.SetSize(*view.size)
    window.AddRenderer(renderer)
    _aim(renderer, vertices, view)
    window.Render()
    grab = vtk.vtkWindowToImageFilter()
    grab.SetInput(window)
    grab.ReadFrontBufferOff()
    writer = vtk.vtkPNGWriter()
    writer.SetFileName(str(path))
    writer.SetInputConnection(grab.GetOutputPort())
    writer.Write()


def _poly_data(vtk: Any, vertices: Floats, triangles: Integers) -> Any:  # noqa: ANN401
    from vtk.util.numpy_support import (  # noqa: PLC0415
        numpy_to_vtk,
        numpy_to_vtkIdTypeArray,
    )

    points = vtk.vtkPoints()
    points.SetData(numpy_to_vtk(np.ascontiguousarray(vertices), deep=True))
    cells = vtk.vtkCellArray()
    offsets = np.arange(0, 3 * len(triangles) + 1, 3, dtype=np.int64)
    cells.SetData(
        numpy_to_vtkIdTypeArray(offsets, deep=True),
        numpy_to_vtkIdTypeArray(np.ascontiguousarray(triangles, np.int64).ravel(), deep=True),
    )
    data = vtk.vtkPolyData()
    data.SetPoints(points)
    data.SetPolys(cells)
    return data


def _shaded(vtk: Any, mesh: Any) -> Any:  # noqa: ANN401
    normals = vtk.vtkPolyDataNormals()
    normals.SetInputData(mesh)
    normals.SetFeatureAngle(_SHARP)
    mapper = vtk.vtkPolyDataMapper()
    mapper.SetInputConnection(normals.GetOutputPort())
    mapper.SetResolveCoincidentTopologyToPolygonOffset()
    actor = vtk.vtkActor()
    actor.SetMapper(mapper)
    steel = actor.GetProperty()
    steel.SetColor(*_STEEL)
    steel.SetAmbient(0.18)
    steel.SetDiffuse(0.75)
    steel.SetSpecular(0.25)
    steel.SetSpecularPower(25)
    return actor


def _lines(vtk: Any, mesh: Any) -> Any:  # noqa: ANN401
    edges = vtk.vtkFeatureEdges()
    edges.SetInputData(mesh)
    edges.SetFeatureAngle(_SHARP)
    edges.BoundaryEdgesOff()
    edges.NonManifoldEdgesOff()
    edges.ColoringOff()
    mapper = vtk.vtkPolyDataMapper()
    mapper.SetInputConnection(edges.GetOutputPort())
    mapper.ScalarVisibilityOff()
    actor = vtk.vtkActor()
    actor.SetMapper(mapper)
    actor.GetProperty().SetColor(*_INK)
    actor.GetProperty().SetLineWidth(1.3)
    return actor


def _aim(renderer: Any, vertices: Floats, view: View) -> None:  # noqa: ANN401
    """Parallel projection that just holds every vertex."""
    towards = np.array(view.direction) / np.linalg.norm(view.direction)
    right = np.cross(view.up, towards)
    right /= np.linalg.norm(right)
    up = np.cross(towards, right)
    across, upwards = vertices @ right, vertices @ up
    centre = (
        right * (across.min() + across.max()) / 2
        + up * (upwards.min() + upwards.max()) / 2
        + towards * float(np.mean(vertices @ towards))
    )
    width, height = view.size
    half = max(np.ptp(upwards) / 2, np.ptp(across) / 2 * height / width)
    camera = renderer.GetActiveCamera()
    camera.ParallelProjectionOn()
    camera.SetFocalPoint(*centre)
    camera.SetPosition(*(centre + towards * 10 * np.ptp(vertices)))
    camera.SetViewUp(*up)
    camera.SetParallelScale(1.04 * half)
    renderer.ResetCameraClippingRange()
