"""The papers of a tap that need no model, and the stills for its page."""

from collections.abc import Mapping
from pathlib import Path

from tapmodel.designing.record import TapDesign
from tapmodel.export.atomic import make_folder, write_whole
from tapmodel.report.drawings.catalogue import all_drawings
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.page.write import Picture
from tapmodel.report.pictures.catalogue import all_pictures
from tapmodel.report.sheet.write import write_sheet
from tapmodel.report.units import Look

DRAWINGS_FOLDER = "drawings"


def write_papers(
    design: TapDesign, folder: Path, look: Look | None = None
) -> tuple[list[Path], dict[str, Drawing]]:
    """Write the sheet as PDF, and every drawing as SVG and DXF into a folder of its own.

    Args:
        design: every number of the tap.
        folder: one that exists.
        look: how the reader wants them.

    Returns:
        Paths of all files, the sheet first, and the drawings by name.

    Raises:
        InputError: when nothing can be written there.
    """
    look = look or Look()
    drawings = all_drawings(design, look.projection)
    sheet = folder / sheet_file(design)
    write_sheet(sheet, design, drawings, look)
    return [sheet, *write_drawings(design, drawings, folder)], drawings


def sheet_file(design: TapDesign) -> str:
    """Name of the sheet's file."""
    return f"{design.name}-sheet.pdf"


def write_drawings(design: TapDesign, drawings: Mapping[str, Drawing], folder: Path) -> list[Path]:
    """Write every drawing as SVG and DXF into a folder of their own within `folder`.

    Raises:
        InputError: when nothing can be written there.
    """
    folder = folder / DRAWINGS_FOLDER
    make_folder(folder)
    written: list[Path] = []
    for name, drawing in drawings.items():
        picture = folder / f"{design.name}-{name}.svg"
        write_whole(picture, drawing.svg().encode())
        plan = picture.with_suffix(".dxf")
        drawing.write_dxf(plan)
        written += [picture, plan]
    return written


def stills(design: TapDesign, pictures: Mapping[str, bytes]) -> tuple[Picture, ...]:
    """The pictures of a tap as its page shows them.

    Args:
        design: every number of the tap.
        pictures: PNG by the names of `all_pictures`.
    """
    views = all_pictures(design)
    return tuple(Picture(views[name].title, views[name].alt, png) for name, png in pictures.items())
