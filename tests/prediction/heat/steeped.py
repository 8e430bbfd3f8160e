"""Threads of a plain form for tests of carburising."""

import math

from tapmodel.tap.tap import TapThread
from tapmodel.words import Hand


def thread_of(pitch: float, depth: float = 0.65, crest: float = 0.125) -> TapThread:
    """A thread of 60 degrees on 20 pitches: depth and width of its crest in pitches."""
    pitch_diameter = 20 * pitch
    major = pitch_diameter + (0.5 - crest) * pitch / math.tan(math.radians(30))
    return TapThread(
        pitch=pitch,
        starts=1,
        hand=Hand.RIGHT,
        flank_angle=30.0,
        major=major,
        pitch_diameter=pitch_diameter,
        minor=major - 2 * depth * pitch,
        rounded_crest=False,
        rounded_root=False,
        first_z=0.0,
    )
