"""Which of many taps are drawn: the best, and others spread over the whole range."""

from tapmodel.comparing.ranking import Verdict
from tapmodel.comparing.variant import Variant

MOST_DRAWN = 6
"""Outlines over each other; more cannot be told apart without colour."""


def spread(verdict: Verdict, most: int = MOST_DRAWN) -> tuple[Variant, ...]:
    """Up to `most` variants whose cross-sections differ, in their order, the best among them.

    Those that break a rule are left out: they may have no land, or no core.
    """
    best = verdict.best
    if best is None:
        return ()
    shapes = {_shape(best): best}
    for variant in sorted(verdict.ranked, key=lambda one: one.number):
        if variant.merit:
            shapes.setdefault(_shape(variant), variant)
    others = sorted(shapes.values(), key=lambda one: one.number)
    others.remove(best)
    wanted = min(most - 1, len(others))
    step = (len(others) - 1) / max(wanted - 1, 1)
    chosen = [best, *(others[round(step * place)] for place in range(wanted))]
    return tuple(sorted(chosen, key=lambda one: one.number))


def _shape(variant: Variant) -> tuple[object, ...]:
    """What a section through the full thread shows of a tap."""
    tap = variant.tap
    return (tap.thread, tap.flutes, tap.relief.thread) if tap else ()
