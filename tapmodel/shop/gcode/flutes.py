"""The program of the flutes, by the tip of the ball.

The work lies along X, its cutting end to the right: X0 is the front face and the shank lies on the
side of -X, in the head. Y0 and Z0 are its axis, +Z points to the spindle. So a place x, y, z of the
model's frame, as `tapmodel.shop.cam` has it, is Z, Y and -X here while the cutter of that flute
stands upright.
"""

from tapmodel.designing.record import TapDesign
from tapmodel.shop.cam import ball_paths, thickest
from tapmodel.shop.gcode.program import ABOVE, Program, depths, sized, speed_of, turned_by
from tapmodel.words import Units


def flutes_program(design: TapDesign, units: Units = Units.MM, *, by_hand: bool = False) -> str:
    """All flutes, pass by pass, each from the front to where its full depth ends.

    Args:
        design: every number of the tap.
        units: of the program's numbers; both is mm.
        by_hand: whether it stops for the work to be turned by a dividing head; else an A axis does.

    Source: derived here; heights by `depths`.
    """
    tap = design.tap
    paths, ball = ball_paths(tap), tap.flutes.cutter_diameter / 2
    # Every flute stands as the first one does, once the work is turned to it.
    out, across, stop = paths[0].last
    begin = paths[0].front[2]
    tips = depths(tap.thread.major / 2, out - ball, tap.flutes.cutter_diameter)
    top = thickest(tap)
    speed = speed_of(tap.flutes.cutter_diameter, design)
    program = Program(
        f"Flutes of {design.name}", _notes(design, len(tips), units, by_hand=by_hand), speed, units
    )
    program.rapid(Z=top + ABOVE)
    program.spin()
    for number, path in enumerate(paths, start=1):
        program.comment(f"flute {number} of {tap.flutes.count}")
        program.index(path.turned, by_hand=by_hand)
        for tip in tips:
            program.rapid(X=-begin, Y=across)
            program.rapid(Z=tip)
            program.cut(X=-stop)
            program.cut(Z=top)
            program.rapid(Z=top + ABOVE)
    return program.ended()


def _notes(design: TapDesign, passes: int, units: Units, *, by_hand: bool) -> tuple[str, ...]:
    """How the mill is set up for it."""
    flutes, centre = design.tap.flutes, design.tap.blank.front_centre > 0
    cutter = sized(flutes.cutter_diameter, units)
    held = (
        "in front a centre that is turned down to the core: the ball starts beside it"
        if centre
        else "in front the stub with its male point, in a hollow centre: the ball starts beside it"
    )
    return (
        f"{flutes.count} flutes, ball-nose cutter {cutter}, {passes} passes",
        "X0 front face, shank on the side of -X; Y0 Z0 axis of the tap, +Z to the spindle",
        f"Z is the tip of the ball; {turned_by(by_hand=by_hand)}, any direction for equal flutes",
        held,
        "the blank is turned and its thread cut; coolant, speed and feed to your cutter's data",
    )
