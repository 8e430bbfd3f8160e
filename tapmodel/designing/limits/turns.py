"""How much thread is to a purpose where the pitch is fine for the diameter."""

MOST_TURNS = 100
"""Pitches of full thread that a rule gives a tap at most where it can choose: more guide no better,
and every further turn is work for the tool and a turn that rubs."""


def threaded(diameter: float, pitch: float) -> float:
    """Diameter to which lengths of thread are held [mm]: that of 100 pitches where it is smaller.

    Args:
        diameter: nominal [mm].
        pitch: of the thread [mm].

    Source: rule of this program; coarser threads, all that standards list, keep their diameter.
    """
    return min(diameter, MOST_TURNS * pitch)
