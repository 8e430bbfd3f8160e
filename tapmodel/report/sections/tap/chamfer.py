"""The lead of the tap and how it shares out the cut."""

from tapmodel.report.sheet.blocks import Angle, Length, Row, Rows, Section, Words
from tapmodel.tap.design import TapDesign


def section(design: TapDesign) -> Section:
    """Cone of the chamfer."""
    chamfer = design.chamfer
    rows = (
        Row("angle to the axis", Angle(chamfer.angle), measured=True),
        Row("point diameter", Length(chamfer.point_diameter), measured=True),
        Row("length", Length(chamfer.length), measured=True),
        Row("length in pitches", Words(f"{chamfer.pitches:.2f}")),
        Row("teeth that cut, all lands", Words(str(chamfer.teeth))),
        Row("chip of each tooth", Length(chamfer.chip_thickness, 4)),
    )
    return Section("chamfer", "Chamfer", (Rows(rows),))
