"""The lead of the tap and how it shares out the cut."""

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Angle, Chapter, Length, Row, Rows, Words


def chapter(design: TapDesign) -> Chapter:
    """Cone of the chamfer."""
    chamfer, several = design.tap.chamfer, design.tap.thread.starts > 1
    point = Length(chamfer.point_diameter)
    enters = Length(design.smallest_hole)
    in_leads = Row(
        "length in leads, turns of the tap, as chamfer.pitches counts several starts",
        _leads(design),
    )
    rows = (
        Row("angle to the axis", Angle(chamfer.angle), measured=True),
        Row("point diameter", point, high=enters, measured=True),
        Row("length, follows from these", Length(design.tap.chamfer_length)),
        Row("length in pitches", Words(f"{design.figures.chamfer_pitches:.2f}")),
        *((in_leads,) if several else ()),
        Row(
            "teeth with their crests in the chamfer",
            Words(str(design.figures.chamfer_teeth)),
        ),
        Row("chip of each, square to the cone", Length(design.figures.chip_thickness, 4)),
    )
    return Chapter("chamfer", "Chamfer", (Rows(rows),))


def _leads(design: TapDesign) -> Words:
    return Words(f"{design.figures.chamfer_leads:.2f}")
