"""The compound (top slide) in words: what its angle is measured from, and which way it is swung."""

from tapmodel.words import Hand

REFERENCE = "from square to the lathe's axis"
"""What every angle of the compound in this program is measured from."""

ON_THE_SLIDE = "read with the slide's zero along the bed"
"""What the same setting reads on a lathe whose slide counts from the other direction."""

HALFWAY = 45.0
"""From here on the same setting is the smaller angle on the other kind of slide [deg]; no thread
is cut beyond."""

SWING = {
    Hand.RIGHT: (
        "For the right hand, swing the compound so that feeding it in moves the tool towards the "
        "headstock; cut from the tailstock towards the headstock, spindle forward, beginning "
        "clear of the thread, in a neck or groove where the blank goes on."
    ),
    Hand.LEFT: (
        "For the left hand, swing the compound so that feeding it in moves the tool towards the "
        "tailstock; cut from the headstock towards the tailstock, spindle forward, beginning "
        "clear of the thread, in a neck or groove where the blank goes on."
    ),
}
"""Direction of swing and of feed by the hand of the thread; common practice."""


NEXT_START = (
    "A top slide that is swung for the infeed cannot make the shift to the next start: set it "
    "parallel to the axis and feed with the cross slide, or leave it and turn the work, in the "
    "driver plate or between the change gears."
)
"""From one start to the next; common practice."""


def from_bed(angle: float) -> float:
    """The same setting as read on a slide whose zero lies along the bed [deg].

    Args:
        angle: from square to the axis [deg].
    """
    return 90.0 - angle


def setting(angle: float) -> str:
    """An angle of the compound with its reference, and as the other kind of slide reads it."""
    return f"{angle:g}° {REFERENCE} ({from_bed(angle):g}° {ON_THE_SLIDE})"
