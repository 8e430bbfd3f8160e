"""A quick look: mesh and still straight from the numbers, no kernel, nothing proved.

Its files bear names of their own, so that they are never taken for a verified model.
"""

from dataclasses import replace
from pathlib import Path

from tapmodel.crew import Line
from tapmodel.design.tap_design import TapDesign
from tapmodel.export.stl import write_stl
from tapmodel.geometry.preview import preview_mesh
from tapmodel.report.pictures.catalogue import drawn_all, drawn_whole, write_pictures
from tapmodel.report.still import renderer
from tapmodel.report.units import Look
from tapmodel.stages import Stage


def look(line: Line) -> list[Path]:
    """Write mesh and picture of `<name>-preview`.

    Args:
        line: on which come the design and the folder to write to.

    Returns:
        Paths of the files.

    Raises:
        InputError: when nothing can be written there.
    """
    renderer()
    design, folder = line.hear()
    named = _named(design)
    line.stage(Stage.MESH)
    mesh = preview_mesh(design)
    line.stage(Stage.MESH_FILES)
    stl = folder / f"{named.name}.stl"
    write_stl(mesh, stl)
    line.stage(Stage.PICTURES)
    picture = {"three-quarter": drawn_whole(named, mesh)}
    return [stl, *write_pictures(named, picture, folder)]


def look_closely(line: Line, wanted: Look) -> list[Path]:
    """Write the page of `<name>-preview`.

    Args:
        line: on which come the design and the folder to write to.
        wanted: how the reader wants the page.

    Returns:
        The path of the page.

    Raises:
        InputError: when nothing can be written there.
    """
    # Drawings and page take a third of a second to load.
    from tapmodel.report.drawings.catalogue import all_drawings  # noqa: PLC0415
    from tapmodel.report.page.solid import Model  # noqa: PLC0415
    from tapmodel.report.page.write import PageContent, write_page  # noqa: PLC0415
    from tapmodel.report.papers import stills  # noqa: PLC0415

    renderer()
    design, folder = line.hear()
    named = _named(design)
    line.stage(Stage.PAPERS)
    drawings = all_drawings(named, wanted.projection)
    line.stage(Stage.MESH)
    mesh = preview_mesh(design)
    line.stage(Stage.PICTURES)
    pictures = stills(named, drawn_all(named, mesh))
    line.stage(Stage.PAGE)
    model = Model(mesh.vertices, mesh.triangles, "Preview, not proved")
    page = folder / f"{named.name}.html"
    write_page(page, named, PageContent(drawings, model, pictures), wanted.units)
    return [page]


def _named(design: TapDesign) -> TapDesign:
    return replace(design, name=f"{design.name}-preview")
