"""The axial profile of the thread: straight segments over one pitch, from crest to crest.

The axial offset w is measured from the middle of a crest towards the square; the profile repeats
every pitch.
"""

from dataclasses import dataclass
from typing import Literal

from tapmodel.design.tap_design import TapThread

Part = Literal["crest", "rear flank", "root", "front flank"]


@dataclass(frozen=True, slots=True)
class Segment:
    """A straight piece of the profile: from (`start`, `start_radius`) to (`end`, `end_radius`).

    `start` and `end` are axial offsets from the crest's middle [mm], radii in mm.
    """

    part: Part
    start: float
    end: float
    start_radius: float
    end_radius: float


def segments(thread: TapThread) -> tuple[Segment, ...]:
    """Crest, rear flank (falling towards the square), root, front flank, in order of w.

    Source: ISO 68-1 basic profile with the tap's own crest and root (derived here).
    """
    crest, root = thread.major / 2, thread.minor / 2
    crest_end = thread.crest_flat / 2
    root_start = (thread.pitch - thread.root_flat) / 2
    root_end = (thread.pitch + thread.root_flat) / 2
    return (
        Segment("crest", -crest_end, crest_end, crest, crest),
        Segment("rear flank", crest_end, root_start, crest, root),
        Segment("root", root_start, root_end, root, root),
        Segment("front flank", root_end, thread.pitch - crest_end, root, crest),
    )
