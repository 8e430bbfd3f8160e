"""What a still picture is made of: the steel body, its sharp edges, dashed lines of reference."""

# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportMissingTypeStubs=false, reportMissingImports=false
# pyright: reportAttributeAccessIssue=false
# The renderer's binding carries no usable types; only its own names are let off.

from collections.abc import Iterator, Sequence
from typing import Any

import numpy as np
from numpy.typing import NDArray
from vtkmodules.util.numpy_support import numpy_to_vtk, numpy_to_vtkIdTypeArray
from vtkmodules.vtkCommonCore import vtkPoints
from vtkmodules.vtkCommonDataModel import vtkCellArray, vtkPolyData
from vtkmodules.vtkFiltersCore import vtkPolyDataNormals
from vtkmodules.vtkRenderingCore import vtkActor, vtkPolyDataMapper

from tapmodel.report.pictures.creases import SHARP
from tapmodel.report.pictures.look import AMBIENT, DIFFUSE, INK, SHININESS, SPECULAR
from tapmodel.report.pictures.tint import painted
from tapmodel.report.pictures.view import Floats, Integers

_SHARE = 0.6  # of a dash in dash and gap


def mesh_data(vertices: Floats, triangles: Integers) -> vtkPolyData:
    """The renderer's record of (n, 3) vertices [mm] and (m, 3) vertex numbers."""
    data = vtkPolyData()
    data.SetPoints(_points(vertices))
    data.SetPolys(_cells(np.arange(0, 3 * len(triangles) + 1, 3), triangles.ravel()))
    return data


def steel(mesh: vtkPolyData) -> vtkActor:
    """The body, smooth but at its sharp edges."""
    normals = vtkPolyDataNormals()
    normals.SetInputData(mesh)
    normals.SetFeatureAngle(SHARP)
    mapper = vtkPolyDataMapper()
    mapper.SetInputConnection(normals.GetOutputPort())
    mapper.SetResolveCoincidentTopologyToPolygonOffset()
    actor = vtkActor()
    actor.SetMapper(mapper)
    look = actor.GetProperty()
    look.SetAmbient(AMBIENT)
    look.SetDiffuse(DIFFUSE)
    look.SetSpecular(SPECULAR)
    look.SetSpecularPower(SHININESS)
    look.BackfaceCullingOn()
    painted(actor, mapper)
    return actor


def edge_lines(vertices: Floats, ends: Integers) -> vtkActor:
    """Sharp edges as lines, from (n, 3) vertices [mm] and (k, 2) numbers of the edges' ends."""
    data = vtkPolyData()
    data.SetPoints(_points(vertices))
    data.SetLines(_cells(np.arange(0, 2 * len(ends) + 1, 2), ends.ravel()))
    return _drawn(data)


def dashed(lines: Sequence[Floats], period: float) -> vtkActor:
    """Polylines, each (n, 3) [mm], in dashes; `period` is a dash and a gap [mm]."""
    data = vtkPolyData()
    dashes = [dash for line in lines for dash in _dashes(line, period)]
    if dashes:
        ends = np.cumsum([0, *(len(dash) for dash in dashes)])
        data.SetPoints(_points(np.concatenate(dashes)))
        data.SetLines(_cells(ends, np.arange(ends[-1])))
    return _drawn(data)


def _drawn(data: vtkPolyData) -> vtkActor:
    """Lines in ink."""
    mapper = vtkPolyDataMapper()
    mapper.SetInputData(data)
    mapper.ScalarVisibilityOff()
    actor = vtkActor()
    actor.SetMapper(mapper)
    actor.GetProperty().SetColor(*INK)
    actor.GetProperty().LightingOff()
    return actor


def _dashes(line: Floats, period: float) -> Iterator[Floats]:
    """Pieces of a polyline, _SHARE of each `period` of its length [mm]."""
    steps = np.linalg.norm(np.diff(line, axis=0), axis=1)
    along = np.concatenate([[0.0], np.cumsum(steps)])
    for start in np.arange(0.0, along[-1], period):
        end = min(start + _SHARE * period, along[-1])
        at = np.array([start, *along[(along > start) & (along < end)], end])
        yield np.stack([np.interp(at, along, axis) for axis in line.T], axis=1)


def _points(places: Floats) -> vtkPoints:
    points = vtkPoints()
    points.SetData(numpy_to_vtk(np.ascontiguousarray(places), deep=True))
    return points


def _cells(offsets: NDArray[Any], corners: NDArray[Any]) -> vtkCellArray:
    cells = vtkCellArray()
    numbers = (np.ascontiguousarray(part, np.int64) for part in (offsets, corners))
    cells.SetData(*(numpy_to_vtkIdTypeArray(part, deep=True) for part in numbers))
    return cells
