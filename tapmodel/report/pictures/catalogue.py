"""The pictures of a tap by name, and the files that they are written to."""

from collections.abc import Mapping
from pathlib import Path

from tapmodel.designing.record import TapDesign
from tapmodel.export.atomic import write_whole
from tapmodel.geometry.triangles import Mesh
from tapmodel.report.pictures.chamfer import chamfer_teeth
from tapmodel.report.pictures.graphics import hindrance
from tapmodel.report.pictures.land import land_from_heel
from tapmodel.report.pictures.still import drawn_views
from tapmodel.report.pictures.view import View
from tapmodel.report.pictures.whole import end_on, three_quarter


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


def drawn_all(design: TapDesign, mesh: Mesh) -> dict[str, bytes]:
    """Every picture of a mesh of this tap by its name, as PNG; none where a `hindrance` is."""
    if hindrance():
        return {}
    views = all_pictures(design)
    return dict(zip(views, drawn_views(mesh.vertices, mesh.triangles, views.values()), strict=True))


def write_pictures(design: TapDesign, pictures: Mapping[str, bytes], folder: Path) -> list[Path]:
    """Write pictures by name to `folder` and return their paths.

    Raises:
        InputError: when nothing can be written there.
    """
    paths = [folder / picture_file(design, name) for name in pictures]
    for path, png in zip(paths, pictures.values(), strict=True):
        write_whole(path, png)
    return paths
