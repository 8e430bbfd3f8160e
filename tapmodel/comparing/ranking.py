"""Which of several taps is the best, and by what.

A rule of this program: no broken rule; a chamfer that does not bind; the fewest warnings; then the
greatest safety factor of torque, and where that is the same, the least rubbing.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from tapmodel.comparing.variant import UNUSABLE, Merit, Variant

_DIGITS = 9
"""Significant digits in which factors or lengths must agree to be the same: beyond is noise."""


@dataclass(frozen=True, slots=True)
class Verdict:
    """How variants rank.

    Attributes:
        ranked: all of them, the best first; those that break rules behind, no taps last.
        sieved: how many are left once those have gone that break a rule, that bind though others do
            not, that have more warnings, a lower safety factor, more rubbing than others: each of
            the ones left by the sieve before.
    """

    ranked: tuple[Variant, ...]
    sieved: tuple[int, int, int, int, int]

    @property
    def best(self) -> Variant | None:
        """None where each breaks a rule."""
        return self.ranked[0] if self.sieved[0] else None

    @property
    def runner_up(self) -> Variant | None:
        """The next that breaks no rule."""
        return self.ranked[1] if self.sieved[0] > 1 else None


def verdict_on(variants: Sequence[Variant]) -> Verdict:
    """Rank variants; those that are alike stay in their order.

    Source: a rule of this program.
    """
    ranked = tuple(sorted(variants, key=_rank))
    sound = [variant.merit for variant in ranked if variant.merit]
    sieved = [len(sound)]
    for of in _SIEVES:
        sound = [merit for merit in sound if of(merit) == of(sound[0])]
        sieved.append(len(sound))
    unbroken, clear, fewest, greatest, least = sieved
    return Verdict(ranked, (unbroken, clear, fewest, greatest, least))


_SIEVES: tuple[Callable[[Merit], float], ...] = (
    lambda merit: merit.binds,
    lambda merit: merit.warnings,
    lambda merit: -_rounded(merit.margin),
    lambda merit: _rounded(merit.rubbing),
)
"""The less the better, each where those before are the same."""


def _rank(variant: Variant) -> tuple[float, ...]:
    if variant.merit:
        return (0, *(of(variant.merit) for of in _SIEVES))
    kind = 1 if variant.tap else 3 if UNUSABLE in variant.errors else 2
    return (kind, len(variant.errors))


def _rounded(value: float) -> float:
    return float(f"{value:.{_DIGITS}g}")
