"""Controls of the chamfer: two of length, angle and point settle the third."""

from tapmodel.designing.record import TapDesign
from tapmodel.report.view.controls.entry import Entry, EntryGroup, always, named
from tapmodel.report.view.controls.record import Kind
from tapmodel.report.view.controls.steps import Step


def _points(design: TapDesign) -> tuple[float, float]:
    thread = design.tap.thread
    return thread.minor - thread.pitch, thread.major - 0.2 * thread.pitch


CHAMFER = EntryGroup(
    "chamfer",
    "Chamfer",
    (
        Entry("chamfer.form", "form", Kind.WORDS, options=named("taper", "plug", "bottoming")),
        Entry(
            "chamfer.pitches",
            "length",
            step=Step.QUARTER,
            span=always(1.0, 12.0),
            follows=lambda design: design.figures.chamfer_leads,
            by="chamfer.form",
        ),
        Entry(
            "chamfer.angle",
            "angle to the axis",
            step=Step.HALF,
            span=always(1.0, 45.0),
            follows=lambda design: design.tap.chamfer.angle,
            by="chamfer.form",
        ),
        Entry(
            "chamfer.point_diameter",
            "point",
            step=Step.TURNED,
            span=_points,
            follows=lambda design: design.tap.chamfer.point_diameter,
        ),
    ),
)
