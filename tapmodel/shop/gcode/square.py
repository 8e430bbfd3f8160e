"""The program of the driving square, by the end of an end mill.

The work lies along X with its rear end to the right: X0 is the rear face, the tap lies on the side
of -X. Y0 and Z0 are its axis, +Z points to the spindle.
"""

import math
from collections.abc import Iterator

from tapmodel.designing.record import TapDesign
from tapmodel.shop.end_mill import end_mill
from tapmodel.shop.gcode.program import ABOVE, Program, depths, sized, speed_of, turned_by
from tapmodel.words import Units

STEP_OVER = 0.6
"""Way from one pass to the next beside it, in diameters of the end mill; common practice."""

BESIDE = 1.0
"""Air beside the shank where a cut begins and ends [mm]."""


def square_program(
    design: TapDesign,
    units: Units = Units.MM,
    *,
    cutter: float | None = None,
    by_hand: bool = False,
) -> str:
    """The four flats, cut across the shank, so that they end in a straight shoulder.

    Args:
        design: every number of the tap.
        units: of the program's numbers; both is mm.
        cutter: diameter of the end mill [mm]; that of the route where none is told.
        by_hand: as for the flutes.

    Source: derived here.
    """
    cutter = cutter or end_mill(design)
    blank, radius = design.tap.blank, design.tap.blank.shank_diameter / 2
    flat, length = blank.square_across_flats / 2, blank.square_length
    clear = radius + ABOVE
    half = beside(radius, flat, cutter)
    sizes = f"square {sized(blank.square_across_flats, units)}, {sized(length, units)} long"
    notes = (
        f"{sizes}, shank {sized(blank.shank_diameter, units)}; end mill {sized(cutter, units)}",
        "X0 rear face, tap on the side of -X; Y0 Z0 axis of the tap, +Z to the spindle",
        f"Z is the end of the mill; {turned_by(by_hand=by_hand)}",
    )
    program = Program(f"Square of {design.name}", notes, speed_of(cutter, design), units)
    program.rapid(Z=clear)
    program.spin()
    for number in range(4):
        program.comment(f"flat {number + 1} of 4")
        program.index(90.0 * number, by_hand=by_hand)
        for height in depths(radius, flat, cutter):
            for along in lines(length, cutter):
                program.rapid(X=along, Y=-half)
                program.rapid(Z=height)
                program.cut(Y=half)
                program.rapid(Z=clear)
    return program.ended()


def beside(radius: float, flat: float, cutter: float) -> float:
    """How far from the axis a cut across the shank begins and ends, the mill in the air [mm].

    Source: definition; half the width of the flat in the shank, the mill and `BESIDE`.
    """
    return math.sqrt(max(radius**2 - flat**2, 0.0)) + cutter / 2 + BESIDE


def lines(length: float, cutter: float) -> Iterator[float]:
    """Places of the mill's axis along X, the last with its edge on the shoulder [mm].

    The first reaches over the rear face; none stays in front of it, where there is no work.
    """
    last = cutter / 2 - length
    count = max(math.ceil((length - cutter / 2) / (STEP_OVER * cutter)), 0) + 1
    first = last + (count - 1) * STEP_OVER * cutter
    for number in range(count):
        along = first - number * STEP_OVER * cutter
        if along < cutter / 2:
            yield along
