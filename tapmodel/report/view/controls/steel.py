"""Controls of the steel of the tap."""

from tapmodel.designing.record import TapDesign
from tapmodel.report.view.controls.entry import Entry, EntryGroup, among
from tapmodel.report.view.controls.record import Kind
from tapmodel.report.view.controls.steps import Step
from tapmodel.standards.materials.steels import steel_names, temper_rows


def _tempers(design: TapDesign) -> tuple[float, float]:
    rows = temper_rows(design.work.steel.name)
    return rows[0].temper, rows[-1].temper


STEEL = EntryGroup(
    "steel",
    "Steel of the tap",
    (
        Entry(
            "tap.material",
            "steel",
            Kind.TEXT,
            options=among(steel_names),
        ),
        Entry(
            "tap.temper",
            "tempered at",
            step=Step.HEAT,
            span=_tempers,
            follows=lambda design: design.work.steel.temper,
            by="tap.hardness",
            shown=lambda design: design.work.steel.temper > 0,
        ),
        Entry(
            "tap.hardness",
            "hardness",
            step=Step.HALF,
            follows=lambda design: design.work.steel.hardness,
            by="tap.temper",
        ),
    ),
)
