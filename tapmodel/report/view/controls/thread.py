"""Controls of the tap's own thread."""

from tapmodel.report.view.controls.entry import Entry, EntryGroup, always, named
from tapmodel.report.view.controls.record import Kind
from tapmodel.report.view.controls.steps import Step

THREAD = EntryGroup(
    "thread",
    "Thread",
    (
        Entry(
            "thread.tap_class", "class of the tap", Kind.TEXT, options=named("cut", "1", "2", "3")
        ),
        Entry("thread.aim", "aim in the zone, 0 to 1", step=Step.SHARE, span=always(0.0, 1.0)),
        Entry(
            "thread.major",
            "over the crests",
            step=Step.TURNED,
            span=lambda design: (
                design.limits.major_min,
                design.limits.major_min + 0.2 * design.tap.thread.pitch,
            ),
            follows=lambda design: design.tap.thread.major,
        ),
        Entry(
            "thread.root_flat",
            "nose flat of the tool",
            step=Step.DROP,
            span=lambda design: (
                design.tap.thread.pitch / 16,
                design.tap.thread.pitch / 2,
            ),
            shown=lambda design: not design.tap.thread.rounded_root,
        ),
        Entry(
            "thread.back_taper",
            "back taper, per 100 of length",
            step=Step.SHARE,
            span=always(0.0, 0.2),
            follows=lambda design: design.tap.thread.back_taper,
        ),
    ),
)
