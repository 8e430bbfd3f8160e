"""The drive square."""

import math

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Chapter, Length, Row, Rows
from tapmodel.report.chapters.general_limits import general_row, shank_row
from tapmodel.spec.measured.sizes import Size


def chapter(design: TapDesign) -> Chapter:
    """Flats, and how far each is taken down from the shank.

    Where the square begins, counted from the front, follows from its length and the tap's, and
    stands nowhere: a third number would contradict the limits of both.
    """
    blank = design.tap.blank
    across = blank.square_across_flats
    corners = min(across * math.sqrt(2), blank.shank_diameter)
    rows = (
        shank_row("across flats", across, "it12", of=Size.SQUARE),
        Row("depth of each flat below the shank", Length((blank.shank_diameter - across) / 2)),
        Row("across corners", Length(corners)),
        general_row("length, from the rear end", blank.square_length, of=Size.SQUARE_LENGTH),
    )
    return Chapter("square", "Mill the square", (Rows(rows),))
