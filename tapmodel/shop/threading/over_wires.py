"""What wires read over a thread that is not yet cut to its depth."""

from tapmodel.shape.profile import segments
from tapmodel.shop.wires.answer import WiresAnswer
from tapmodel.shop.wires.over_wires import (
    at_pitch_diameter,
    measurement,
    measurement_touching_at,
)


def after_pass(answer: WiresAnswer, left: float) -> float | None:
    """Measurement over the wire to use with so much infeed left to take, square to the axis [mm].

    Flanks stand apart by the same way as the tool goes in, so the pitch diameter is larger by twice
    what is left. None where the wires would rest on the corners of the crests.

    Source: as `measurement`; the pitch diameter derived here.
    """
    asked = answer.asked
    groove = at_pitch_diameter(asked.groove, asked.target - asked.lost + 2 * left)
    value = measurement(groove, answer.wire)
    if asked.thread is None:
        return value
    corner = segments(asked.thread)[1].start_radius - asked.lost / 2
    return value if value <= measurement_touching_at(groove, answer.wire, corner) else None
