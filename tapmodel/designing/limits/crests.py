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


def most_major(design: TapDesign) -> float:
    """Largest major diameter to which the blank of a design is turned [mm].

    Above it the crests get sharp, and cut metal that no bolt needs; those of a tap that another of
    its set follows would take what that one is to cut. None is smaller than the design's own.

    Source: rule of this program.
    """
    thread = design.tap.thread
    if design.roughs:
        return thread.major
    widest = design.limits.major_min + TURNED_OVER * thread.pitch
    return max(thread.major, min(widest, sharpest(thread.flanks, rounded=thread.rounded_crest)))
