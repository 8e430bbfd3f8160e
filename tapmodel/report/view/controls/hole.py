"""Controls of the hole that is tapped."""

from tapmodel.designing.record import TapDesign
from tapmodel.report.view.controls.entry import Entry, EntryGroup, Span, among, named, of_diameter
from tapmodel.report.view.controls.record import Kind
from tapmodel.report.view.controls.steps import Step
from tapmodel.standards.materials.work import PLAIN, work_materials

# Classes of the usual families; others may be typed.
_METRIC, _UNIFIED = ("4H", "5H", "6H", "7H", "6G"), ("1B", "2B", "3B")


def _classes(design: TapDesign) -> tuple[str, ...]:
    now = design.text("hole.class") or ""
    return next((row for row in (_METRIC, _UNIFIED) if now in row), ())


def _materials() -> tuple[str, ...]:
    return (*PLAIN, *(material.name for material in work_materials()))


def _drills() -> Span:
    def span(design: TapDesign) -> tuple[float, float]:
        pitch = design.tap.thread.pitch
        return design.hole.minor_min - 0.1 * pitch, design.hole.major_min - 0.4 * pitch

    return span


HOLE = EntryGroup(
    "hole",
    "Hole",
    (
        Entry("designation", "thread", Kind.TEXT),
        Entry(
            "hole.class",
            "class",
            Kind.TEXT,
            options=lambda design: named(*_classes(design))(design),
        ),
        Entry(
            "hole.material",
            "material tapped",
            Kind.TEXT,
            options=among(_materials),
        ),
        Entry("hole.kind", "hole is", Kind.WORDS, options=named("through", "blind")),
        Entry(
            "hole.depth",
            "depth of thread",
            step=Step.BAR,
            span=of_diameter(0.25, 3.0),
            follows=lambda design: design.work.depth,
        ),
        Entry(
            "hole.drill",
            "drill",
            step=Step.DOWN,
            span=_drills(),
            follows=lambda design: design.drill,
        ),
    ),
)
