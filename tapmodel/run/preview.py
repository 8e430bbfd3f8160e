"""A quick look: mesh and still straight from the numbers, no kernel, nothing proved."""

# Numpy loads this at the first sorting, which somebody would wait for.
import numpy.ma  # noqa: F401  # pyright: ignore[reportUnusedImport]

from tapmodel.export.mesh.stl import write_stl
from tapmodel.geometry.preview.quick_mesh import preview_mesh
from tapmodel.report.pictures.catalogue import drawn_all, drawn_whole, write_pictures
from tapmodel.report.pictures.graphics import hindrance
from tapmodel.report.pictures.still import warm_up
from tapmodel.run.crew import Line
from tapmodel.stages import Stage


def draw(line: Line) -> None:
    """Write mesh and picture.

    Args:
        line: on which come the design, under the preview's name, and the folder to write to.

    Raises:
        InputError: when nothing can be written there.
    """
    warm_up()
    line.leave_out("picture", hindrance())
    design, folder = line.hear()
    line.stage(Stage.MESH)
    mesh = preview_mesh(design.tap)
    line.stage(Stage.MESH_FILES)
    write_stl(mesh, folder / f"{design.name}.stl")
    line.stage(Stage.PICTURES)
    write_pictures(design, drawn_whole(design, mesh), folder)


def draw_page(line: Line) -> None:
    """Write the page.

    Args:
        line: on which come the design, under the preview's name, the folder to write to, and how
            the reader wants the page.

    Raises:
        InputError: when nothing can be written there.
    """
    # Drawings and page take a third of a second to load.
    from tapmodel.report.drawings.catalogue import all_drawings  # noqa: PLC0415
    from tapmodel.report.page.solid import Model  # noqa: PLC0415
    from tapmodel.report.page.stills import stills  # noqa: PLC0415
    from tapmodel.report.page.templates import loaded  # noqa: PLC0415
    from tapmodel.report.page.write import PageContent, write_page  # noqa: PLC0415

    loaded()
    warm_up()
    line.leave_out("pictures", hindrance())
    design, folder, wanted = line.hear()
    line.stage(Stage.PAPERS)
    drawings = all_drawings(design, wanted.projection, wanted.units)
    line.stage(Stage.MESH)
    mesh = preview_mesh(design.tap)
    line.stage(Stage.PICTURES)
    pictures = stills(design, drawn_all(design, mesh))
    line.stage(Stage.PAGE)
    model = Model(mesh.vertices, mesh.triangles, "Preview, not verified")
    content = PageContent(drawings, model, pictures)
    write_page(folder / f"{design.name}.html", design, content, wanted.units)
