"""The internal thread that the tap is to cut, and its drill."""

from tapmodel.design.tap_design import TapDesign
from tapmodel.report.blocks import Length, Row, Rows, Section, Words


def section(design: TapDesign) -> Section:
    """Limits of the hole."""
    hole = design.hole
    rows = (
        Row("drill", Length(design.drill, 2), measured=True),
        Row("major diameter", Words("–"), low=Length(hole.major_min)),
        Row("pitch diameter", Words("–"), Length(hole.pitch_min), Length(hole.pitch_max)),
        Row("minor diameter", Words("–"), Length(hole.minor_min), Length(hole.minor_max), True),
    )
    return Section("hole", "Hole", (Rows(rows),))
