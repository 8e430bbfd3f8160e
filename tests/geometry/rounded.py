"""The small tap with rounded crests and roots, by the definitions."""

import math
from dataclasses import replace

from tapmodel.tap.tap import Tap

HALF_ANGLE = 27.5


def rounded(tap: Tap, crest: float = 0.137329, root: float = 0.12) -> Tap:
    """The tap with flanks of a 55-degree thread and arcs of so many pitches; 0 leaves a flat.

    An arc that touches both flanks ends `R (1 / sin a - 1)` short of where they would meet.
    """
    thread, lean = tap.thread, math.radians(HALF_ANGLE)
    pitch, sharp = thread.pitch, thread.pitch / 2 / math.tan(lean)
    short = 2 * (1 / math.sin(lean) - 1)
    flat = pitch / 8
    blunt = flat / math.tan(lean)
    profile = replace(
        thread,
        flank_angle=HALF_ANGLE,
        major=thread.pitch_diameter + sharp - (crest * pitch * short if crest else blunt),
        minor=thread.pitch_diameter - sharp + (root * pitch * short if root else blunt),
        rounded_crest=crest > 0.0,
        rounded_root=root > 0.0,
    )
    return replace(tap, thread=profile)
