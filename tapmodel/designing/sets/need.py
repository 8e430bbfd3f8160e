"""Whether one tap is enough for a hole, in numbers."""

from dataclasses import dataclass
from enum import StrEnum

from tapmodel.designing.codes import Code
from tapmodel.designing.record import TapDesign
from tapmodel.designing.sets.sharing import COUNTS, sharing_of


class Reason(StrEnum):
    """Why a set is needed, or is not.

    Attributes:
        ONE_DOES: one tap likely takes less than the torque to stop at.
        TOO_MUCH: it takes more, and so many taps as are told do not.
        TOO_MUCH_FOR_THREE: even one of three does.
        OF_A_SET: the tap is one of a set already.
        UNKNOWN: the tap breaks another rule, so that nothing was foreseen.
    """

    ONE_DOES = "one-does"
    TOO_MUCH = "too-much-for-one"
    TOO_MUCH_FOR_THREE = "too-much-for-three"
    OF_A_SET = "one-of-a-set"
    UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True)
class Set:
    """Whether the work is to be shared.

    Attributes:
        needed: whether more than one tap is.
        reason: why.
        taps: among which the work is shared, 1 where none but this is needed.
    """

    needed: bool
    reason: Reason
    taps: int


def set_of(design: TapDesign) -> Set:
    """Whether one tap is enough, and else among how many its work is shared.

    Source: as `tapmodel.designing.sets.sharing.sharing_of`.
    """
    if design.part is not None:
        return Set(True, Reason.OF_A_SET, design.part.taps)
    if design.prediction is None:
        return Set(False, Reason.UNKNOWN, 1)
    if not design.finds(Code.TAP_OVERLOADED):
        return Set(False, Reason.ONE_DOES, 1)
    sharing = sharing_of(design)
    if sharing is None or not sharing.bears:
        return Set(True, Reason.TOO_MUCH_FOR_THREE, COUNTS[-1])
    return Set(True, Reason.TOO_MUCH, len(sharing.taps))
