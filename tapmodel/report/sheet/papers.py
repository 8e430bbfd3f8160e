"""The papers of a tap, which need no model: its sheet, its drawings, its outlines."""

from collections.abc import Collection, Mapping
from pathlib import Path

from tapmodel.designing.record import TapDesign
from tapmodel.export.atomic import make_folder, write_whole
from tapmodel.export.dxf.write import write_profile_dxf, write_section_dxf
from tapmodel.export.formats import PAPER_FORMATS, Format
from tapmodel.report.drawings.catalogue import all_drawings
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.units import Look

DRAWINGS_FOLDER = "drawings"


def write_papers(
    design: TapDesign, folder: Path, formats: Collection[Format], look: Look
) -> dict[str, Drawing]:
    """Write the papers among the files that are wanted.

    Args:
        design: every number of the tap.
        folder: one that exists.
        formats: section and profile as DXF, the sheet as PDF, every drawing as SVG and DXF in a
            folder of its own; others are left to others.
        look: how the reader wants them.

    Returns:
        The drawings by name, none where no file holds any.

    Raises:
        InputError: when nothing can be written there.
    """
    if Format.DXF in formats:
        write_section_dxf(design, folder / f"{design.name}-section.dxf")
        write_profile_dxf(design, folder / f"{design.name}-profile.dxf")
    if (PAPER_FORMATS - {Format.DXF}).isdisjoint(formats):
        return {}
    drawings = all_drawings(design, look.projection, look.units)
    if Format.SHEET in formats:
        # The typesetter is loaded only for it.
        from tapmodel.report.sheet.write import write_sheet  # noqa: PLC0415

        write_sheet(folder / f"{design.name}-sheet.pdf", design, drawings, look)
    if Format.DRAWINGS in formats:
        _write_drawings(design, drawings, folder / DRAWINGS_FOLDER)
    return drawings


def _write_drawings(design: TapDesign, drawings: Mapping[str, Drawing], folder: Path) -> None:
    make_folder(folder)
    for name, drawing in drawings.items():
        picture = folder / f"{design.name}-{name}.svg"
        write_whole(picture, drawing.svg().encode())
        drawing.write_dxf(picture.with_suffix(".dxf"))
