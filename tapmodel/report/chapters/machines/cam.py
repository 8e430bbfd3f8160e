"""The flutes for a mill that is programmed: the model's frame, the ball's path, a fourth axis."""

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import (
    Angle,
    Chapter,
    Length,
    Paragraphs,
    Quantity,
    Row,
    Rows,
    Table,
    Words,
)
from tapmodel.shop.cam import BallPath, CutterReach, ball_paths, cutter_reach
from tapmodel.tap.tap import Tap
from tapmodel.words import Hand

LIFT = (
    "One pass at full depth, straight along Z, then straight up along the cutter's axis: the ball "
    "itself leaves the run-out, an arc of its own radius about its last centre. Below the holder "
    "the cutter's shank is no thicker than its ball."
)
"""How the model's flutes come about."""

FOURTH_AXIS = (
    "Turn the tap by the last column to mill each flute where flute 1 was, or lay the cutter over "
    "by the first. Angles count counter-clockwise seen from the square: from X to Y. Check on the "
    "machine which way its own axis counts."
)
"""What the signs of the angles mean."""

CENTRES = ("flute 1", "X", "Y", "Z")
FLUTES = ("flute", "cutter's axis lies at", "X of the ball's centre", "Y", "or turn the tap by")


def chapter(design: TapDesign) -> Chapter:
    """Frame of the STEP file, ball's centres, angles of the flutes, and the holder."""
    tap = design.tap
    paths = ball_paths(tap, design.figures.runout_end)
    blocks = (
        Paragraphs((_frame(tap), LIFT)),
        Table(CENTRES, _centres(paths[0])),
        Rows(_sizes(tap, cutter_reach(tap))),
        Table(FLUTES, tuple(_flute(number, path) for number, path in enumerate(paths, start=1))),
        Paragraphs((FOURTH_AXIS,)),
    )
    return Chapter("cam", "Program the flutes (CAM)", blocks)


def _frame(tap: Tap) -> str:
    hand = tap.thread.hand
    side = "+Y" if hand is Hand.RIGHT else "-Y"
    return (
        "The STEP model is in mm whatever unit this is told in. Z is the tap's axis: Z = 0 is the "
        "front face of the cutting end, +Z runs towards the square. The cutter of flute 1 stands "
        f"along X with its tip towards the axis, and cuts the cutting face on its {side} side: a "
        f"{hand.value}-hand tap."
    )


def _centres(path: BallPath) -> tuple[tuple[Quantity, ...], ...]:
    """The ball's centre on its way, then the arc that it leaves."""
    named = (
        ("ball's centre, clear in front", path.clear),
        ("ball's centre over the front face", path.front),
        ("ball's centre at the end: lift here", path.last),
        ("run-out begins, on the core", path.runout_begin),
        ("run-out ends, on the blank", path.runout_end),
    )
    return tuple((Words(name), *map(Length, at)) for name, at in named if at is not None)


def _sizes(tap: Tap, reach: CutterReach) -> tuple[Row, ...]:
    radius = Row("radius of the ball, and of the run-out", Length(tap.flutes.cutter_diameter / 2))
    label = "cutter free below its holder, to pass over the thread, at least"
    rows = (radius, Row(label, Length(reach.over_thread)))
    if reach.over_all == reach.over_thread:
        return rows
    return (*rows, Row("to pass over shank and square as well", Length(reach.over_all)))


def _flute(number: int, path: BallPath) -> tuple[Quantity, ...]:
    x, y, _ = path.front
    return (Words(str(number)), Angle(path.turned), Length(x), Length(y), Angle(-path.turned))
