"""What a tap is to cut, and of what it is made."""

from dataclasses import dataclass

from tapmodel.standards.materials.steels import TapSteel
from tapmodel.standards.materials.work import WorkMaterial

THROUGH, BLIND = "through", "blind"
"""Kinds of hole."""


@dataclass(frozen=True, slots=True)
class Work:
    """What the tap is to cut, and of what it is made.

    Attributes:
        material: that is tapped.
        assumed: whether the job names none.
        depth: of the thread [mm].
        kind: "through" or "blind".
        steel: of the tap, as hard as it is.
    """

    material: WorkMaterial
    assumed: bool
    depth: float
    kind: str
    steel: TapSteel

    @property
    def blind(self) -> bool:
        """Whether the hole has a bottom."""
        return self.kind == BLIND
