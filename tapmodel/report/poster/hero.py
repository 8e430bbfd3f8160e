"""The large picture of a poster: the whole tap, from a mesh that nothing was proved of."""

from dataclasses import dataclass

from tapmodel.designing.record import TapDesign
from tapmodel.errors import KernelError
from tapmodel.geometry.preview.quick_mesh import preview_mesh
from tapmodel.report.pictures.graphics import hindrance
from tapmodel.report.pictures.still import drawn_views
from tapmodel.report.pictures.whole import three_quarter
from tapmodel.words import Severity

_SIZE = (2600, 1300)  # of the picture [px], some 250 to an inch of paper


@dataclass(frozen=True, slots=True)
class Hero:
    """The picture, or why there is none.

    Attributes:
        png: of the tap; empty where none could be drawn.
        told: what it is, or why it is not there.
        size: of the picture [px].
    """

    png: bytes
    told: str
    size: tuple[int, int] = _SIZE


def hero(design: TapDesign) -> Hero:
    """Of a tap; without a picture where it breaks a rule, or where this machine draws none."""
    if any(finding.severity is Severity.ERROR for finding in design.findings):
        return Hero(b"", "No picture: a rule is broken.")
    reason = hindrance()
    if reason:
        return Hero(b"", f"No picture can be drawn here: {reason}.")
    try:
        mesh = preview_mesh(design.tap)
    except KernelError:
        return Hero(b"", "No picture: its model does not close.")
    (png,) = drawn_views(mesh.vertices, mesh.triangles, [three_quarter(design, _SIZE)])
    return Hero(png, "Preview model, not verified.")
