"""What a still shows, held against the definition of the solid, pixel by pixel.

The camera's geometry is derived here once more, and the solid is `checks.ideal`, which shares no
code with the meshes that are drawn.
"""

from dataclasses import replace
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from vtkmodules.util.numpy_support import vtk_to_numpy
from vtkmodules.vtkIOImage import vtkPNGReader

from tapmodel.checks.ideal.laws import inside
from tapmodel.designing.record import TapDesign
from tapmodel.geometry.triangles import Mesh
from tapmodel.report.pictures.catalogue import all_pictures
from tapmodel.report.pictures.look import lightness
from tapmodel.report.pictures.still import draw_views
from tapmodel.report.pictures.view import View, Window
from tapmodel.words import Hand

Floats = NDArray[np.float64]
Picture = NDArray[np.uint8]
Flags = NDArray[np.bool_]

INK = 60  # below this a pixel belongs to a line
PIXELS, STEPS = 800, 500  # rays looked along in a picture, points looked at on each
# What a right picture may show wrongly: share of rays (chords of the mesh, gaps between points),
# share of the front view (half-inked pixels), and degrees of a pitch (relief widens the crests).
LIMITS = {"three-quarter": 0.005, "end": 0.005, "chamfer": 0.005, "land": 0.005}
LIMITS |= {"front face": 0.02, "twist": 30.0}


def errors(design: TapDesign, mesh: Mesh, folder: Path) -> dict[str, float]:
    """Everything that pictures of `mesh` show otherwise than `design` says, 1 for the limit."""
    pictures = drawn(design, mesh, folder)
    found = {
        name: _ray_error(design, small(view), pictures[name], mesh.vertices)
        for name, view in all_pictures(design).items()
    }
    found["front face"] = _face_error(design, pictures["end"])
    found["twist"] = _twist_error(design, mesh, folder)
    return {name: error / LIMITS[name] for name, error in found.items()}


def small(view: View) -> View:
    """A quarter of the view's size, without its lines of reference."""
    return replace(view, size=(view.size[0] // 4, view.size[1] // 4), references=())


def read(path: Path) -> Picture:
    """A PNG as it looks in grey print, from its lowest row upwards."""
    reader = vtkPNGReader()
    reader.SetFileName(str(path))
    reader.Update()
    image = reader.GetOutput()
    assert image.GetNumberOfScalarComponents() == 3
    width, height, _ = image.GetDimensions()
    colours = vtk_to_numpy(image.GetPointData().GetScalars()) / 255
    grey = np.rint(255 * lightness(tuple(colours.T))).astype(np.uint8)
    return grey.reshape(height, width)


def drawn(design: TapDesign, mesh: Mesh, folder: Path) -> dict[str, Picture]:
    """Pictures of a mesh by the views of a design, small and without lines of reference."""
    views = {name: small(view) for name, view in all_pictures(design).items()}
    paths = [folder / f"{name}.png" for name in views]
    draw_views(mesh.vertices, mesh.triangles, list(zip(views.values(), paths, strict=True)))
    return {name: read(path) for name, path in zip(views, paths, strict=True)}


def _camera(view: View) -> Floats:
    """Unit vectors to the right, upwards and towards the camera, as rows."""
    towards = np.array(view.direction) / np.linalg.norm(view.direction)
    up = np.array(view.up) - np.dot(view.up, towards) * towards
    up /= np.linalg.norm(up)
    return np.stack([np.cross(up, towards), up, towards])


def _frame(view: View, vertices: Floats) -> tuple[Floats, float]:
    """Middle of the picture to the right and upwards, and its height [mm]."""
    if view.window:
        return _camera(view)[:2] @ np.array(view.window.centre), view.window.height
    seen = vertices @ _camera(view)[:2].T
    wide, tall = np.ptp(seen, axis=0)
    return (seen.min(axis=0) + seen.max(axis=0)) / 2, 1.04 * max(
        tall, wide * view.size[1] / view.size[0]
    )


def _solid_on(design: TapDesign, view: View, seen: Floats) -> Flags:
    """Whether the ideal solid lies on each ray into the picture; `seen` (n, 2) [mm]."""
    axes = _camera(view)
    radius = max(design.tap.thread.major, design.tap.blank.shank_diameter) / 2
    length = design.tap.blank.overall_length
    corners = np.array(
        [[x, y, z] for x in (-radius, radius) for y in (-radius, radius) for z in (0, length)]
    )
    if view.window:  # what is before and behind lies within the tap's own thickness
        middle = float(axes[2] @ np.array(view.window.centre))
        near, far = middle - 2 * radius, middle + 2 * radius
    else:
        near, far = (corners @ axes[2]).min(), (corners @ axes[2]).max()
    depth = np.linspace(near, far, STEPS)
    found = np.zeros(len(seen), dtype=np.bool_)
    for step in np.array_split(depth, 20):
        left = np.flatnonzero(~found)
        points = (seen[left] @ axes[:2])[:, None] + step[:, None] * axes[2]
        hit = inside(design.tap, points.reshape(-1, 3)).reshape(len(left), -1)
        found[left] = hit.any(axis=1)
    return found


def _unmixed(white: Flags) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """Rows and columns of pixels, spread at random, whose neighbours are all alike."""
    inner = white[1:-1, 1:-1]
    alike = np.ones_like(inner)
    height, width = white.shape
    for up in (0, 1, 2):
        for right in (0, 1, 2):
            alike &= white[up : height - 2 + up, right : width - 2 + right] == inner
    rows, columns = np.nonzero(alike)
    chosen = np.random.default_rng(4).choice(len(rows), PIXELS, replace=False)
    return rows[chosen] + 1, columns[chosen] + 1


def _ray_error(design: TapDesign, view: View, picture: Picture, vertices: Floats) -> float:
    """Share of pixels that are white on the solid, or not white beside it."""
    white = picture == 255
    rows, columns = _unmixed(white)
    centre, height = _frame(view, vertices)
    pixel = height / view.size[1]
    seen = np.stack([columns + 0.5 - view.size[0] / 2, rows + 0.5 - view.size[1] / 2], axis=1)
    return float(np.mean(_solid_on(design, view, centre + pixel * seen) == white[rows, columns]))


def _face_error(design: TapDesign, picture: Picture) -> float:
    """On the end picture: share of pixels wrongly of the front face's grey, or wrongly not."""
    view = small(all_pictures(design)["end"])
    widest = max(design.tap.thread.major, design.tap.blank.shank_diameter)
    rows, columns = np.nonzero(picture > INK)
    grey = picture[rows, columns]
    seen = np.stack([columns + 0.5, rows + 0.5], axis=1) - view.size[0] / 2
    points = seen * (1.04 * widest / view.size[0]) @ _camera(view)[:2]
    points[:, 2] = 1e-6  # on the face, not before it
    expected = inside(design.tap, points)
    face = np.argmax(np.bincount(grey[expected], minlength=256))
    return float(np.mean((grey == face) != expected))


def _first_land(design: TapDesign, height: float) -> tuple[float, float]:
    """Middle and width of a land of the ideal solid at the root of the thread [deg]."""
    theta = np.arange(0.0, 360.0, 0.5)
    turned, radius = np.radians(theta), 0.49 * design.tap.thread.minor
    ring = [radius * np.cos(turned), radius * np.sin(turned), np.full_like(theta, height)]
    solid = inside(design.tap, np.stack(ring, axis=1))
    start = np.flatnonzero(solid & ~np.roll(solid, 1))[0]
    width = 0.5 * float(np.argmin(np.roll(solid, -start)))
    return theta[start] + width / 2, width


def _phase(design: TapDesign, mesh: Mesh, theta: float, file: Path) -> float:
    """Where the threads stand at `theta`, in a picture taken from there: 360 deg for a pitch."""
    pitches, width, rows = 4, 400, 16
    height = (design.tap.chamfer_length + design.tap.blank.thread_length) / 2
    outwards = np.array([np.cos(np.radians(theta)), np.sin(np.radians(theta)), 0.0])
    centre = design.tap.thread.major / 2 * outwards + [0.0, 0.0, height]
    window = Window(tuple(centre), pitches * design.tap.thread.pitch * rows / width)
    view = View(tuple(outwards), tuple(np.cross([0, 0, 1], outwards)), (width, rows), window)
    draw_views(mesh.vertices, mesh.triangles, [(view, file)])
    along = np.exp(-2j * np.pi * pitches * np.arange(width) / width)  # z runs to the left
    return float(np.degrees(np.angle(np.sum(read(file) @ along))))


def _twist_error(design: TapDesign, mesh: Mesh, folder: Path) -> float:
    """By how much the threads climb otherwise, from one land to the next: 360 deg for a pitch."""
    middle, land = _first_land(design, design.tap.chamfer_length)
    places = (middle - land / 4, middle + land / 4 + 360 / design.tap.flutes.count)
    before, after = (_phase(design, mesh, theta, folder / "phase.png") for theta in places)
    hand = 1 if design.tap.thread.hand is Hand.RIGHT else -1
    climb = hand * design.tap.thread.lead / design.tap.thread.pitch * (places[1] - places[0])
    return abs((after - before - climb + 180) % 360 - 180)
