"""What may go wrong with a tap in its hole, each with its causes in order."""

from collections.abc import Callable, Iterable, Mapping

from tapmodel.designing.record import TapDesign
from tapmodel.prediction.prediction import Prediction
from tapmodel.shop.symptoms import causes
from tapmodel.shop.symptoms.record import Cause, Sign, Symptom

MOST = 4
"""Causes of a symptom that are told."""

CAUSES: Mapping[Sign, Callable[[TapDesign, Prediction], Iterable[Cause]]] = {
    Sign.BINDS: causes.binding,
    Sign.TEARS: causes.tearing,
    Sign.SQUEALS: causes.squealing,
    Sign.LARGE: causes.cutting_large,
    Sign.TAPERS: causes.tapering,
    Sign.SNAPS: causes.snapping,
}


def symptoms_of(design: TapDesign) -> tuple[Symptom, ...]:
    """Every symptom with the causes that the numbers allow; none for a tap without a prediction.

    Source: rule of this program; each cause is weighed by its number over its limit.
    """
    foreseen = design.prediction
    if foreseen is None:
        return ()
    return tuple(Symptom(sign, _ordered(found(design, foreseen))) for sign, found in CAUSES.items())


def _ordered(found: Iterable[Cause]) -> tuple[Cause, ...]:
    """Those that are listed, the weightiest first."""
    listed = [cause for cause in found if cause.weight >= causes.LISTED]
    return tuple(sorted(listed, key=lambda cause: -cause.weight)[:MOST])
