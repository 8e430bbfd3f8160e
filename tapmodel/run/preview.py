"""A quick look: mesh and still straight from the numbers, no kernel, nothing proved."""

from concurrent.futures import Future, ThreadPoolExecutor

# Numpy loads this at the first sorting, which somebody would wait for.
import numpy.ma  # noqa: F401  # pyright: ignore[reportUnusedImport]

from tapmodel.export.atomic import write_whole
from tapmodel.export.mesh.stl import write_stl
from tapmodel.geometry.preview.quick_mesh import preview_mesh
from tapmodel.geometry.triangles import Mesh
from tapmodel.report.pictures.graphics import hindrance
from tapmodel.report.pictures.still import drawn_views, rehearse, warm_up
from tapmodel.run.crew import Line
from tapmodel.run.glance import Glance
from tapmodel.stages import Stage


def draw(line: Line) -> None:
    """Write mesh and picture.

    The renderer gets ready while the design is awaited and the mesh made and written: it lets go of
    Python where it takes long. It stays in the main thread, where alone
    some systems have windows.

    Args:
        line: on which comes a `Glance`.

    Raises:
        InputError: when nothing can be written there.
    """
    with ThreadPoolExecutor(1) as beside:
        made = beside.submit(_mesh, line)
        written = beside.submit(_write, made)
        warm_up()
        line.leave_out("picture", hindrance())
        if hindrance() is None:
            rehearse()
        glance, mesh = made.result()
        line.stage(Stage.PICTURES)
        if hindrance() is None:
            (png,) = drawn_views(mesh.vertices, mesh.triangles, [glance.view])
            write_whole(glance.file(".png"), png)
        written.result()


def _mesh(line: Line) -> tuple[Glance, Mesh]:
    glance: Glance = line.hear()
    line.stage(Stage.MESH)
    return glance, preview_mesh(glance.tap)


def _write(made: Future[tuple[Glance, Mesh]]) -> None:
    # Tells no stage: with the mesh made the line is the main thread's.
    glance, mesh = made.result()
    write_stl(mesh, glance.file(".stl"))


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
    from tapmodel.report.pictures.catalogue import drawn_all  # noqa: PLC0415

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
