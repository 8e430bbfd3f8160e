"""A quick look: mesh and still straight from the numbers, no kernel, nothing proved.

Its files bear names of their own, so that they are never taken for a verified model.
"""

from dataclasses import replace
from pathlib import Path

from tapmodel.design.tap_design import TapDesign
from tapmodel.export.stl import write_stl
from tapmodel.geometry.preview import preview_mesh
from tapmodel.report.drawings.catalogue import all_drawings
from tapmodel.report.page.solid import Model
from tapmodel.report.papers import Shown, write_page_of
from tapmodel.report.pictures.catalogue import draw_all
from tapmodel.report.units import Look
from tapmodel.workshop import staging


def look(design: TapDesign, out: Path, wanted: Look | None = None) -> list[Path]:
    """Write mesh, pictures and page of `<name>-preview` to `out/<name>` and return their paths.

    Args:
        design: every number of the tap.
        out: folder for results.
        wanted: how the reader wants the page.

    Raises:
        InputError: when `out` cannot be written.
    """
    wanted = wanted or Look()
    mesh, named = preview_mesh(design), replace(design, name=f"{design.name}-preview")
    final = out / design.name
    with staging(out, design.name) as staged:
        stl, page = (staged / f"{named.name}.{ending}" for ending in ("stl", "html"))
        write_stl(mesh, stl)
        pictures = draw_all(named, mesh, staged)
        model = Model(mesh.vertices, mesh.triangles, "Preview, not proved")
        drawings = all_drawings(named, wanted.projection)
        write_page_of(named, page, drawings, Shown(model, tuple(pictures)), wanted)
        final.mkdir(exist_ok=True)
        return [path.replace(final / path.name) for path in (stl, page, *pictures)]
