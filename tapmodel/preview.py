"""A quick look: mesh and still straight from the numbers, no kernel, nothing proved.

It stands in a folder of its own, `<name>-preview`, and so do its files' names and its record say
that it is a preview: a look at another tap never takes the place of a verified model.
"""

from dataclasses import replace
from pathlib import Path
from typing import Any

from tapmodel.delivery.place import deliver
from tapmodel.delivery.staging import staging
from tapmodel.design.tap_design import TapDesign
from tapmodel.export.stl import write_stl
from tapmodel.geometry.preview import preview_mesh
from tapmodel.record import design_record
from tapmodel.report.drawings.catalogue import all_drawings
from tapmodel.report.page.solid import Model
from tapmodel.report.page.write import PageContent, write_page
from tapmodel.report.papers import stills
from tapmodel.report.pictures.catalogue import draw_all, draw_whole
from tapmodel.report.units import Look


def look(design: TapDesign, out: Path) -> dict[str, Any]:
    """Deliver mesh and picture to `out/<name>-preview` and return the record.

    Args:
        design: every number of the tap.
        out: folder for results.

    Raises:
        InputError: when `out` cannot be written.
    """
    mesh, named = preview_mesh(design), _named(design)
    with staging(out, named.name) as staged:
        write_stl(mesh, staged / f"{named.name}.stl")
        draw_whole(named, mesh, staged)
        return _delivered(staged, named, out)


def look_closely(design: TapDesign, out: Path, wanted: Look) -> dict[str, Any]:
    """Deliver the page to `out/<name>-preview` and return the record.

    Args:
        design: every number of the tap.
        out: folder for results.
        wanted: how the reader wants the page.

    Raises:
        InputError: when `out` cannot be written.
    """
    mesh, named = preview_mesh(design), _named(design)
    with staging(out, named.name) as staged:
        pictures = draw_all(named, mesh, staged)
        model = Model(mesh.vertices, mesh.triangles, "Preview, not proved")
        drawings = all_drawings(named, wanted.projection)
        content = PageContent(drawings, model, stills(named, pictures))
        for picture in pictures:
            picture.unlink()  # the page holds them
        write_page(staged / f"{named.name}.html", named, content, wanted.units)
        return _delivered(staged, named, out)


def _named(design: TapDesign) -> TapDesign:
    return replace(design, name=f"{design.name}-preview")


def _delivered(staged: Path, named: TapDesign, out: Path) -> dict[str, Any]:
    return deliver(staged, out / named.name, design_record(named) | {"preview": "not proved"})
