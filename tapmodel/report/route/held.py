"""What holds the blank, by the centres that it has."""

from tapmodel.tap.tap import Tap


def front(tap: Tap) -> str:
    """What the front runs in."""
    if tap.blank.front_centre > 0:
        return "a centre in its front centre"
    return "its male point in a hollow centre"


def between(tap: Tap) -> str:
    """Front and rear while the thread end is worked on, driven at the shank."""
    if tap.blank.rear_centre > 0:
        return f"between centres, {front(tap)}, a dog on the shank (brass under its screw)"
    return f"the shank in a collet or four-jaw chuck set true, {front(tap)}"


def indexed(tap: Tap) -> str:
    """In the dividing head; the ball comes in from the front, beside what holds it there."""
    held = "the shank in the collet or chuck of the dividing head, the tailstock with"
    if tap.blank.front_centre > 0:
        return (
            f"{held} a centre that is turned down to the core, so that the ball can start beside "
            "it, in the front centre"
        )
    return f"{held} {front(tap)} that is no thicker than the core, so that the ball can start there"
