"""How much thread is to a purpose where the pitch is fine for the diameter."""

MOST_TURNS = 100
"""Pitches of full thread that a rule gives a tap at most where it can choose: more guide no better,
and every further turn is work for the tool and a turn that rubs."""

FINE_FROM = 30
"""Pitches in the diameter above which the thread of a large tap is fine; so many of them guide."""

LARGE_FROM = 30.0
"""Nominal diameter [mm] above which a tap is large: of smaller ones the usual blank and flutes cost
little, whatever the pitch."""

GUIDE = 0.5
"""Diameters of full thread that a large tap of fine pitch has at least: on less it would tilt."""


def large_and_fine(diameter: float, pitch: float) -> bool:
    """Whether blank and flutes that suit the coarse thread of that diameter are too much.

    Args:
        diameter: nominal [mm].
        pitch: of the thread [mm].

    Source: rule of this program; that special taps of fine pitch are short is common practice.
    """
    return diameter > LARGE_FROM and diameter > FINE_FROM * pitch


def threaded(diameter: float, pitch: float) -> float:
    """Full thread that is to a purpose [mm]: a diameter of it, less where the pitch is fine.

    Of large taps of fine pitch 30 pitches or half a diameter, whichever is more, and of all taps
    100 pitches at most. At the border of what is fine the 30 pitches are the diameter.

    Args:
        diameter: nominal [mm].
        pitch: of the thread [mm].

    Source: rule of this program; coarser threads keep their diameter.
    """
    guided = diameter
    if large_and_fine(diameter, pitch):
        guided = max(FINE_FROM * pitch, GUIDE * diameter)
    return min(guided, MOST_TURNS * pitch)
