"""What a tap is to cut, and of what it is made."""

from dataclasses import dataclass

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
        steel: of the tap, as the job names it; None where it is left to a rule.
        hardness: of its teeth [HRC]; None likewise.
    """

    material: WorkMaterial
    assumed: bool
    depth: float
    kind: str
    steel: str | None
    hardness: float | None

    @property
    def blind(self) -> bool:
        """Whether the hole has a bottom."""
        return self.kind == BLIND
