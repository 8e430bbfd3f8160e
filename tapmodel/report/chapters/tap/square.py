"""The drive square."""

import math

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Chapter, Length, Row, Rows


def chapter(design: TapDesign) -> Chapter:
    """Flats, and how far each is taken down from the shank."""
    blank = design.tap.blank
    across = blank.square_across_flats
    corners = min(across * math.sqrt(2), blank.shank_diameter)
    rows = (
        Row("across flats", Length(across), measured=True),
        Row("depth of each flat below the shank", Length((blank.shank_diameter - across) / 2)),
        Row("across corners", Length(corners)),
        Row("length", Length(blank.square_length, 2), measured=True),
        Row("start, from the front", Length(blank.square_start, 2)),
    )
    return Chapter("square", "Mill the square", (Rows(rows),))
