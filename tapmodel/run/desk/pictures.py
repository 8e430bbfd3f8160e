"""The pictures of a run."""

from tapmodel.export.formats import Format
from tapmodel.geometry.triangles import Mesh
from tapmodel.report.pictures.catalogue import drawn_all, write_pictures
from tapmodel.run.wish import Order


def write(order: Order, mesh: Mesh) -> dict[str, bytes]:
    """Draw every picture, write them where they are wanted, and return them by name.

    Raises:
        InputError: when nothing can be written there.
    """
    drawn = drawn_all(order.design, mesh)
    if Format.PICTURES in order.wish.formats:
        write_pictures(order.design, drawn, order.folder)
    return drawn
