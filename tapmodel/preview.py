"""A quick look: mesh and still straight from the numbers, no kernel, nothing proved.

Its files bear names of their own, so that they are never taken for a verified model.
"""

from collections.abc import Iterable
from dataclasses import replace
from pathlib import Path

from tapmodel.delivery.staging import staging
from tapmodel.design.tap_design import TapDesign
from tapmodel.export.stl import write_stl
from tapmodel.geometry.preview import preview_mesh
from tapmodel.report.drawings.catalogue import all_drawings
from tapmodel.report.page.solid import Model
from tapmodel.report.page.write import PageContent, write_page
from tapmodel.report.papers import stills
from tapmodel.report.pictures.catalogue import draw_all, draw_whole
from tapmodel.report.units import Look


def look(design: TapDesign, out: Path) -> list[Path]:
    """Write mesh and picture of `<name>-preview` to `out/<name>` and return their paths.

    Args:
        design: every number of the tap.
        out: folder for results.

    Raises:
        InputError: when `out` cannot be written.
    """
    mesh, named = preview_mesh(design), _named(design)
    with staging(out, design.name) as staged:
        stl = staged / f"{named.name}.stl"
        write_stl(mesh, stl)
        picture = draw_whole(named, mesh, staged)
        return _delivered((stl, picture), out / design.name)


def look_closely(design: TapDesign, out: Path, wanted: Look) -> list[Path]:
    """Write the page of `<name>-preview` to `out/<name>` and return its path.

    Args:
        design: every number of the tap.
        out: folder for results.
        wanted: how the reader wants the page.

    Raises:
        InputError: when `out` cannot be written.
    """
    mesh, named = preview_mesh(design), _named(design)
    with staging(out, design.name) as staged:
        page = staged / f"{named.name}.html"
        pictures = draw_all(named, mesh, staged)
        model = Model(mesh.vertices, mesh.triangles, "Preview, not proved")
        drawings = all_drawings(named, wanted.projection)
        content = PageContent(drawings, model, stills(named, pictures))
        write_page(page, named, content, wanted.units)
        return _delivered((page,), out / design.name)


def _named(design: TapDesign) -> TapDesign:
    return replace(design, name=f"{design.name}-preview")


def _delivered(files: Iterable[Path], final: Path) -> list[Path]:
    final.mkdir(exist_ok=True)
    return [path.replace(final / path.name) for path in files]
