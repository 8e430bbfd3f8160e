"""What the rules need beside the design itself."""

from dataclasses import dataclass

from tapmodel.designing.choose.flutes import ChosenFlutes
from tapmodel.designing.choose.hole import TappedHole


@dataclass(frozen=True, slots=True)
class Context:
    """What led to the design.

    Attributes:
        hole: the hole with its limits' origin.
        flutes: the wishes, for the nearest legal value.
        shank_must_pass: the job wants the shank to pass the finished hole.
    """

    hole: TappedHole
    flutes: ChosenFlutes
    shank_must_pass: bool
