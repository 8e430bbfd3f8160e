"""How sharp the crests of a tap may be, and how far they may reach."""

from tapmodel.designing.record import TapDesign
from tapmodel.tap.flanks import Flanks

LEAST_RULED_CREST = 1 / 16
"""A rule never leaves a flat crest narrower than this, in pitches."""

LEAST_RULED_RADIUS = 1 / 20
"""Nor a rounded one sharper than this, in pitches."""

MOST_OVER = 0.25
"""Over the least major diameter of the tap, in pitches: crests of 60 degrees are sharp at H/4, 0.22
pitches, over the basic one, so none can be meant to go further; blunter ones could, and would cut
metal that no bolt needs."""

TURNED_OVER = 0.1
"""Where the blank is turned to at the most, likewise: five times what the rule aims over it."""


def sharpest(flanks: Flanks, *, rounded: bool) -> float:
    """Major diameter at which the crest is as narrow as a rule leaves it [mm].

    Source: rule of this program, `LEAST_RULED_CREST` and `LEAST_RULED_RADIUS`.
    """
    if rounded:
        return flanks.diameter + flanks.arc_height(flanks.pitch * LEAST_RULED_RADIUS)
    return flanks.diameter + flanks.height(flanks.pitch * LEAST_RULED_CREST)


def major_zone(design: TapDesign) -> tuple[float, float]:
    """Least and largest major diameter to which the blank of a design is turned [mm].

    Below the one the thread is too shallow. Above the other the crests get sharp, and cut metal
    that no bolt needs; those of a tap that another of its set follows would take what that one is
    to cut. It is never smaller than the design's own.

    Source: the least as `TapLimits.major_min`, the largest a rule of this program.
    """
    thread, least = design.tap.thread, design.limits.major_min
    if design.roughs:
        return least, thread.major
    widest = least + TURNED_OVER * thread.pitch
    most = min(widest, sharpest(thread.flanks, rounded=thread.rounded_crest))
    return least, max(thread.major, most)
