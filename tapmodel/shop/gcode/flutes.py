"""The program of the flutes, by the tip of the ball.

The work lies along X, its cutting end to the right: X0 is the front face and the shank lies on the
side of -X, in the head. Y0 and Z0 are its axis, +Z points to the spindle. So a place x, y, z of the
model's frame, as `tapmodel.shop.cam` has it, is Z, Y and -X here while the cutter of that flute
stands upright.
"""

import math
from collections.abc import Iterator

from tapmodel.designing.record import TapDesign
from tapmodel.shop.cam import ball_paths
from tapmodel.shop.cutting_speed import STEP_SHARE
from tapmodel.shop.gcode.program import Program, speed_of
from tapmodel.tap.tap import Tap
from tapmodel.words import Units

ABOVE = 10.0
"""Air above the thickest part when the cutter goes from one place to another [mm]."""


def flutes_program(design: TapDesign, units: Units = Units.MM, *, by_hand: bool = False) -> str:
    """All flutes, pass by pass, each from the front to where its full depth ends.

    Args:
        design: every number of the tap.
        units: of the program's numbers; both is mm.
        by_hand: whether it stops for the work to be turned by a dividing head; else an A axis does.

    Source: derived here; depths by `STEP_SHARE`.
    """
    tap = design.tap
    ball, tips = tap.flutes.cutter_diameter / 2, tuple(_tips(tap))
    clear = max(tap.thread.major, tap.blank.shank_diameter) / 2 + ABOVE
    speed = speed_of(tap.flutes.cutter_diameter, design)
    program = Program(f"Flutes of {design.name}", _notes(design, len(tips)), speed, units)
    program.rapid(Z=clear)
    program.spin()
    for number, path in enumerate(ball_paths(tap), start=1):
        program.comment(f"flute {number} of {tap.flutes.count}")
        _, across, stop = _upright(path.last, path.turned)
        program.index(path.turned, by_hand=by_hand)
        for tip in tips:
            program.rapid(X=ball, Y=across)
            program.rapid(Z=tip)
            program.cut(X=-stop)
            program.cut(Z=clear - ABOVE)
            program.rapid(Z=clear)
    return program.ended()


def _tips(tap: Tap) -> Iterator[float]:
    """Heights of the ball's tip over the axis, pass by pass [mm]."""
    last, top = tap.flutes.centre_radius - tap.flutes.cutter_diameter / 2, tap.thread.major / 2
    passes = max(math.ceil((top - last) / (STEP_SHARE * tap.flutes.cutter_diameter)), 1)
    for number in range(1, passes + 1):
        yield top + (last - top) * number / passes


def _upright(point: tuple[float, float, float], turned: float) -> tuple[float, float, float]:
    """A place of the model after a turn about z by so much back [mm, deg]."""
    back, (x, y, z) = -math.radians(turned), point
    return (
        x * math.cos(back) - y * math.sin(back),
        x * math.sin(back) + y * math.cos(back),
        z,
    )


def _notes(design: TapDesign, passes: int) -> tuple[str, ...]:
    """How the mill is set up for it."""
    flutes, centre = design.tap.flutes, design.tap.blank.front_centre > 0
    held = (
        "in front a centre that is turned down to the core: the ball starts beside it"
        if centre
        else "in front the stub with its male point, in a hollow centre: the ball starts beside it"
    )
    return (
        f"{flutes.count} flutes, ball-nose cutter {flutes.cutter_diameter:.4g} mm, {passes} passes",
        "X0 front face, shank on the side of -X; Y0 Z0 axis of the tap, +Z to the spindle",
        "Z is the tip of the ball; A turns the work, any direction does for equal flutes",
        held,
        "the blank is turned and its thread cut; coolant, speed and feed to your cutter's data",
    )
