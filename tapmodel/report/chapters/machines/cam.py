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

WAY = (
    "The last pass of each flute, by the ball's centre: along Z, then straight out along the "
    "cutter's axis, so that the run-out is the ball's own arc. The passes before it lie further "
    "out along that axis. The ball begins in front of the blank: what holds it there must be no "
    "thicker than the core."
)
"""How the model's flutes come about."""

FOURTH_AXIS = (
    "Angles: counter-clockwise seen from the square, from X to Y; check which way your axis counts."
)
"""What the signs of the angles mean."""

CENTRES = ("flute 1, ball's centre", "X", "Y", "Z")
FLUTES = ("flute", "cutter at", "ball's X", "ball's Y", "or turn by")


def chapter(design: TapDesign) -> Chapter:
    """Frame of the STEP file, ball's centres, angles of the flutes, and the holder."""
    tap = design.tap
    paths = ball_paths(tap)
    blocks = (
        Paragraphs((_frame(tap), WAY)),
        Table(CENTRES, _centres(paths[0])),
        Rows(_sizes(cutter_reach(tap))),
        Table(FLUTES, tuple(_flute(number, path) for number, path in enumerate(paths, start=1))),
        Paragraphs((FOURTH_AXIS,)),
    )
    return Chapter("cam", "Program the flutes (CAM)", blocks)


def _frame(tap: Tap) -> str:
    hand = tap.thread.hand
    side = "+Y" if hand is Hand.RIGHT else "-Y"
    return (
        "The STEP model, always in mm: Z is the axis, Z = 0 the front face of the cutting end, +Z "
        "runs towards the square. The cutter of flute 1 stands along X, the cutting face on its "
        f"{side} side: a {hand.value}-hand tap."
    )


def _centres(path: BallPath) -> tuple[tuple[Quantity, ...], ...]:
    named = (
        ("starts in front", path.front),
        ("stops at full depth", path.last),
        ("lifted clear", path.lifted),
    )
    return tuple((Words(name), *map(Length, at)) for name, at in named)


def _sizes(reach: CutterReach) -> tuple[Row, ...]:
    """How far its holder must be away at the least; all of that no thicker than the ball."""
    label = "cutter free below its holder, over the thread"
    rows = (Row(label, Length(reach.over_thread)),)
    if reach.over_all == reach.over_thread:
        return rows
    return (*rows, Row("over shank and square as well", Length(reach.over_all)))


def _flute(number: int, path: BallPath) -> tuple[Quantity, ...]:
    x, y, _ = path.front
    return (Words(str(number)), Angle(path.turned), Length(x), Length(y), Angle(-path.turned))
