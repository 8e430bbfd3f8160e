"""Controls of the blank behind the thread, and of the square."""

from tapmodel.designing.record import TapDesign
from tapmodel.report.view.controls.entry import Entry, EntryGroup, of_diameter
from tapmodel.report.view.controls.record import Kind
from tapmodel.report.view.controls.steps import Step


def _threaded(design: TapDesign) -> tuple[float, float]:
    tap = design.tap
    return tap.chamfer_length + tap.thread.pitch, 4 * tap.thread.major


BLANK = EntryGroup(
    "blank",
    "Blank",
    (
        Entry(
            "blank.overall_length",
            "length over all",
            step=Step.BAR,
            span=of_diameter(2.0, 20.0),
            follows=lambda design: design.tap.blank.overall_length,
        ),
        Entry(
            "blank.thread_length",
            "length of thread",
            step=Step.BAR,
            span=_threaded,
            follows=lambda design: design.tap.blank.thread_length,
        ),
        Entry(
            "blank.neck_diameter",
            "neck, 0 for none",
            step=Step.TURNED,
            span=lambda design: (0.0, design.tap.thread.minor),
            follows=lambda design: design.tap.blank.neck_diameter,
        ),
        Entry(
            "blank.neck_length",
            "length of neck",
            step=Step.BAR,
            span=of_diameter(0.0, 4.0),
            follows=lambda design: design.tap.blank.neck_length,
        ),
        Entry(
            "blank.shank_diameter",
            "shank",
            step=Step.TURNED,
            span=of_diameter(0.4, 1.5),
            follows=lambda design: design.tap.blank.shank_diameter,
        ),
        Entry(
            "blank.square_across_flats",
            "square across flats",
            step=Step.DOWN,
            span=lambda design: (
                0.4 * design.tap.blank.shank_diameter,
                design.tap.blank.shank_diameter,
            ),
            follows=lambda design: design.tap.blank.square_across_flats,
        ),
        Entry(
            "blank.square_length",
            "length of the square",
            step=Step.BAR,
            span=lambda design: (
                0.25 * design.tap.blank.shank_diameter,
                2.5 * design.tap.blank.shank_diameter,
            ),
            follows=lambda design: design.tap.blank.square_length,
        ),
        Entry(
            "blank.front_centre",
            "centre in front, 0 for none",
            step=Step.BAR,
            span=of_diameter(0.0, 0.5),
            follows=lambda design: design.tap.blank.front_centre,
        ),
        Entry(
            "blank.rear_centre",
            "centre at the rear, 0 for none",
            step=Step.BAR,
            span=of_diameter(0.0, 0.5),
            follows=lambda design: design.tap.blank.rear_centre,
        ),
        Entry("blank.shank_must_pass", "shank passes the hole", Kind.FLAG),
    ),
)
