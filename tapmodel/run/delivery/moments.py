"""Named moments of a delivery between which it may be killed.

Tests put a function of their own in the place of `passed` that ends the process at one of them.
"""

MOMENTS = ("staged", "carried", "whole", "exchanged", "away", "placed", "settled", "cleared")
"""`exchanged` where the system swaps two names at once, else `away` and `placed`."""


def passed(moment: str) -> None:
    """A moment of `MOMENTS` is reached, the step before it done and the next not begun."""
