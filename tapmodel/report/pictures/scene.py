"""One mesh before the renderer: its steel, its lines, its lamps, and pictures taken of it.

Import it inside a function: it loads the renderer, which `still` must first tell to do without
a screen.
"""

# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportMissingTypeStubs=false, reportMissingImports=false
# pyright: reportAttributeAccessIssue=false
# The renderer's binding carries no usable types; only its own names are let off.

from functools import cache

import numpy as np
import vtkmodules.vtkRenderingOpenGL2  # noqa: F401  # pyright: ignore[reportUnusedImport]
from vtkmodules.util.numpy_support import vtk_to_numpy
from vtkmodules.vtkIOImage import vtkPNGWriter
from vtkmodules.vtkRenderingCore import (
    vtkLight,
    vtkRenderer,
    vtkRenderWindow,
    vtkWindowToImageFilter,
)

from tapmodel.report.pictures.actors import dashed, edge_lines, mesh_data, steel
from tapmodel.report.pictures.creases import SHARP, creases
from tapmodel.report.pictures.look import PAPER
from tapmodel.report.pictures.tint import set_tones
from tapmodel.report.pictures.view import Fine, Floats, Integers, View

# Strength of each lamp, and where it stands: to the right, above, and before the picture.
_LAMPS = ((0.92, (-0.50, 0.60, 1.00)), (0.40, (0.75, -0.55, 0.75)))
_MARGIN = 1.04  # of a picture that holds the whole mesh, times its height
_EDGE, _REFERENCE = 1 / 600, 1 / 400  # width of lines, of the picture's height
_DASH = 1 / 45  # dash and gap together, of the picture's height
_UNSEEN = np.uint8(1)  # bit of each colour that no eye sees, and that makes a file larger
_SAMPLES = 4  # taken of each pixel; more cost time and cannot be told apart


class Scene:
    """A closed mesh, ready to be pictured from any side."""

    def __init__(self, vertices: Floats, triangles: Integers) -> None:
        """Of (n, 3) vertices [mm] and (m, 3) vertex numbers."""
        self._vertices = vertices
        mesh = mesh_data(vertices, triangles)
        self._ends = creases(vertices, triangles, SHARP)
        self._renderer = vtkRenderer()
        self._renderer.SetBackground(*PAPER)
        self._body = steel(mesh)
        self._renderer.AddActor(self._body)
        _light(self._renderer)
        self._window = _window()

    def png(self, view: View) -> bytes:
        """What `view` shows as a PNG."""
        self._take_window()
        set_tones(self._body.GetShaderProperty(), view.tones)
        self._window.SetSize(*view.size)
        height = self._aim(view)
        lines = dashed(view.references, _DASH * height)
        lines.GetProperty().SetLineWidth(view.size[1] * _REFERENCE)
        edges = edge_lines(self._vertices, self._drawn_ends(view.fine))
        edges.GetProperty().SetLineWidth(view.size[1] * _EDGE)
        self._renderer.AddActor(edges)
        self._renderer.AddActor(lines)
        self._renderer.ResetCameraClippingRange()
        self._window.Render()
        self._renderer.RemoveActor(lines)
        self._renderer.RemoveActor(edges)
        grab = vtkWindowToImageFilter()
        grab.SetInput(self._window)
        grab.ReadFrontBufferOff()
        grab.ShouldRerenderOff()
        grab.Update()
        picture = grab.GetOutput()
        pixels = vtk_to_numpy(picture.GetPointData().GetScalars())
        np.bitwise_or(pixels, _UNSEEN, out=pixels)
        writer = vtkPNGWriter()
        writer.WriteToMemoryOn()
        writer.SetInputData(picture)
        writer.Write()
        return bytes(memoryview(writer.GetResult()))

    def _take_window(self) -> None:
        if not self._window.HasRenderer(self._renderer):
            while other := self._window.GetRenderers().GetFirstRenderer():
                self._window.RemoveRenderer(other)
            self._window.AddRenderer(self._renderer)

    def _drawn_ends(self, fine: Fine | None) -> Integers:
        """Ends of the edges that are drawn: all but those with both ends in the fine part."""
        if fine is None:
            return self._ends
        x, y, z = self._vertices.T
        # The ends of the part keep their lines: its front, and the plane behind it.
        within = (z > fine.start) & (z < fine.end) & (np.hypot(x, y) > fine.radius)
        return self._ends[~within[self._ends].all(axis=1)]

    def _aim(self, view: View) -> float:
        """Point the camera; returns the height of the picture [mm]."""
        towards = np.array(view.direction) / np.linalg.norm(view.direction)
        right = np.cross(view.up, towards)
        right /= np.linalg.norm(right)
        up = np.cross(towards, right)
        if view.window:
            centre, height = np.array(view.window.centre), view.window.height
        else:
            low, high = _extent(self._vertices @ np.stack([right, up, towards], axis=1))
            centre = np.stack([right, up, towards], axis=1) @ ((low + high) / 2)
            wide, tall, _ = high - low
            height = _MARGIN * max(tall, wide * view.size[1] / view.size[0])
        camera = self._renderer.GetActiveCamera()
        camera.ParallelProjectionOn()
        camera.SetFocalPoint(*centre)
        camera.SetPosition(*(centre + towards * 2 * np.ptp(self._vertices)))
        camera.SetViewUp(*up)
        camera.SetParallelScale(height / 2)
        return float(height)


@cache
def _window() -> vtkRenderWindow:
    """The one of all scenes: what it compiles for the first is there for the next."""
    window = vtkRenderWindow()
    window.SetOffScreenRendering(1)
    window.SetMultiSamples(_SAMPLES)
    return window


def _extent(places: Floats) -> tuple[Floats, Floats]:
    return places.min(axis=0), places.max(axis=0)


def _light(renderer: vtkRenderer) -> None:
    """Lamps that go with the camera, so that every picture is lit from its upper left."""
    renderer.AutomaticLightCreationOff()
    for strength, place in _LAMPS:
        lamp = vtkLight()
        lamp.SetLightTypeToCameraLight()
        lamp.SetPosition(*place)
        lamp.SetFocalPoint(0.0, 0.0, 0.0)
        lamp.SetIntensity(strength)
        renderer.AddLight(lamp)
