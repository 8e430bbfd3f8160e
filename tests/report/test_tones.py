"""Steel, straw and ground faces lie where the tap has them, and a grey print tells them apart."""

import math
from pathlib import Path

import numpy as np
import pytest
from vtkmodules.util.numpy_support import vtk_to_numpy
from vtkmodules.vtkIOImage import vtkPNGReader

from tapmodel.designing.design import settled_tap
from tapmodel.designing.record import TapDesign
from tapmodel.geometry.preview.quick_mesh import preview_mesh
from tapmodel.report.pictures.look import GROUND, STEEL, STRAW, lightness
from tapmodel.report.pictures.still import draw_views
from tapmodel.report.pictures.toned import tones
from tapmodel.report.pictures.view import Vector, View, Window
from tapmodel.spec.job_file import job_for
from tapmodel.words import Hand

TAPS = ("M10", "M10-LH", "M18x0.75", "Tr16x8(P4)", "3/8-16")


def test_a_grey_print_tells_the_tones_apart() -> None:
    steel, straw, ground = map(lightness, (STEEL, STRAW, GROUND))
    assert straw - steel > 0.05
    assert ground - straw > 0.05


@pytest.mark.parametrize("text", TAPS)
def test_straw_lies_at_the_cutting_edge_and_fades_over_the_land(text: str, tmp_path: Path) -> None:
    design = settled_tap(job_for(text, []))
    edge, land = tones(design).edge, design.figures.land_angle
    # on top of a tooth at the front, where all are cut by the cone alone
    near, far = (_on_land(design, edge + share * land) for share in (0.06, 0.9))
    first, last = _looked_at(design, (near, far), tmp_path)
    assert _warmth(first) > 0.25
    assert _warmth(last) < 0.0


@pytest.mark.parametrize("text", TAPS)
def test_flutes_are_ground_and_the_shank_is_steel(text: str, tmp_path: Path) -> None:
    design = settled_tap(job_for(text, []))
    flutes, blank = design.tap.flutes, design.tap.blank
    floor = _turned(design, flutes.centre_radius - flutes.cutter_diameter / 2, flutes.offset)
    height = flutes.full_depth_length / 2
    middle = (max(blank.thread_length, design.figures.runout_end) + blank.square_start) / 2
    side = (floor[0], floor[1], 0.0)
    places = (
        ((floor[0], floor[1], height), side),
        ((blank.shank_diameter / 2, 0.0, middle), (1.0, 0.0, 0.0)),
    )
    ground, steel = _looked_at(design, places, tmp_path)
    assert abs(_warmth(ground)) < 0.03
    assert -0.15 < _warmth(steel) < -0.04


def _turned(design: TapDesign, u: float, t: float) -> tuple[float, float]:
    """A point of the first flute's frame in that of the tap."""
    return u, -t if design.tap.thread.hand is Hand.LEFT else t


def _on_land(design: TapDesign, angle: float) -> tuple[Vector, Vector]:
    """A point on the cone near the front, at an angle of the right-hand tap [deg], and outwards."""
    side = -1.0 if design.tap.thread.hand is Hand.LEFT else 1.0
    turned = math.radians(angle)
    outwards = (math.cos(turned), side * math.sin(turned), 0.0)
    thread, pitch = design.tap.thread, design.tap.thread.pitch
    # the middle of the first whole crest behind the front
    z = (thread.first_z + thread.lead * angle / 360) % pitch + pitch
    radius = design.tap.chamfer.point_diameter / 2
    return (radius * outwards[0], radius * outwards[1], z), outwards


def _looked_at(
    design: TapDesign, places: tuple[tuple[Vector, Vector], ...], folder: Path
) -> list[np.ndarray]:
    """Colour in the middle of a picture of each place, from where it faces."""
    mesh = preview_mesh(design.tap)
    views = [
        View(facing, (0.0, 0.0, 1.0), (16, 16), Window(place, 0.02), tones=tones(design))
        for place, facing in places
    ]
    paths = [folder / f"{number}.png" for number in range(len(views))]
    draw_views(mesh.vertices, mesh.triangles, list(zip(views, paths, strict=True)))
    return [_middle(path) for path in paths]


def _middle(path: Path) -> np.ndarray:
    reader = vtkPNGReader()
    reader.SetFileName(str(path))
    reader.Update()
    colours = vtk_to_numpy(reader.GetOutput().GetPointData().GetScalars()).reshape(16, 16, 3)
    return colours[8, 8] / 255


def _warmth(colour: np.ndarray) -> float:
    """How much redder than blue it is, of what light there is."""
    return float((colour[0] - colour[2]) / colour.max())
