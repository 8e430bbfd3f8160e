"""The pictures of a tap by name, and the files that they are written to."""

from pathlib import Path

from tapmodel.design.tap_design import TapDesign
from tapmodel.geometry.triangles import Mesh
from tapmodel.report.pictures.chamfer import chamfer_teeth
from tapmodel.report.pictures.land import land_from_heel
from tapmodel.report.pictures.whole import end_on, three_quarter
from tapmodel.report.still import View, draw_views


def all_pictures(design: TapDesign) -> dict[str, View]:
    """Every view of a tap by its name, in the order of the page."""
    return {
        "three-quarter": three_quarter(design),
        "end": end_on(design),
        "chamfer": chamfer_teeth(design),
        "land": land_from_heel(design),
    }


def picture_file(design: TapDesign, name: str) -> str:
    """Name of a picture's file; the three-quarter picture bears the tap's name alone."""
    return f"{design.name}.png" if name == "three-quarter" else f"{design.name}-{name}.png"


def draw_whole(design: TapDesign, mesh: Mesh, folder: Path) -> Path:
    """Write the three-quarter picture alone to `folder` and return its path."""
    path = folder / picture_file(design, "three-quarter")
    draw_views(mesh.vertices, mesh.triangles, [(three_quarter(design), path)])
    return path


def draw_all(design: TapDesign, mesh: Mesh, folder: Path) -> list[Path]:
    """Write every picture of a mesh of this tap to `folder` and return their paths."""
    views = all_pictures(design)
    paths = [folder / picture_file(design, name) for name in views]
    draw_views(mesh.vertices, mesh.triangles, list(zip(views.values(), paths, strict=True)))
    return paths
