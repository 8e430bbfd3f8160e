"""The papers of a run, which need no model."""

from tapmodel.export.dxf.write import write_profile_dxf, write_section_dxf
from tapmodel.export.formats import PAPER_FORMATS, Format
from tapmodel.report.drawings.catalogue import all_drawings
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.sheet.papers import write_drawings
from tapmodel.run.wish import Order


def write(order: Order) -> dict[str, Drawing]:
    """Write the papers wanted and return the drawings on them by name.

    Raises:
        InputError: when nothing can be written there.
    """
    design, folder, wish = order.design, order.folder, order.wish
    if Format.DXF in wish.formats:
        write_section_dxf(design, order.file("-section.dxf"))
        write_profile_dxf(design, order.file("-profile.dxf"))
    if not wish.any_of(PAPER_FORMATS - {Format.DXF}):
        return {}
    drawings = all_drawings(design, wish.look.projection)
    if Format.SHEET in wish.formats:
        # The typesetter is loaded only for it.
        from tapmodel.report.sheet.write import write_sheet  # noqa: PLC0415

        write_sheet(order.file("-sheet.pdf"), design, drawings, wish.look)
    if Format.DRAWINGS in wish.formats:
        write_drawings(design, drawings, folder)
    return drawings
