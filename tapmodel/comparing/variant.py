"""One of the taps that are compared: the values it was asked for, and what came of them."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from tapmodel.tap.tap import Tap

Cell = float | int | str | None

CHOSEN = (
    "hole.kind",
    "hole.drill",
    "flutes.count",
    "flutes.cutter_diameter",
    "flutes.core_diameter",
    "chamfer.pitches",
)
"""What rules choose from a few, or in steps, and figures of the tap hang on."""

UNUSABLE = "unusable"
"""Stands for a code where the values make no job."""


@dataclass(frozen=True, slots=True)
class Merit:
    """By what taps that break no rule are ranked.

    Attributes:
        binds: whether the chamfer stands proud of what its edge has cut.
        warnings: number of them.
        margin: safety factor of torque: what the tap is safe to take, over the most it takes.
        rubbing: along the helix, of flank and chamfer together [mm].
    """

    binds: bool
    warnings: int
    margin: float
    rubbing: float


@dataclass(frozen=True, slots=True)
class Variant:
    """One combination of values.

    Attributes:
        number: its place among the combinations, from 1.
        values: that were varied, by field; a length [mm].
        figures: of the tap by the names of `figures.UNITS`, all None where there is no tap.
        errors, warnings: codes of what the rules found, `UNUSABLE` for values that make no job.
        tap: that was settled, if any was.
        merit: None for one that breaks a rule, or is no tap.
        refusal: why the values make no job, else empty.
        chosen: numbers and words that rules settled for it, by field; none where there is no tap.
    """

    number: int
    values: Mapping[str, Cell]
    figures: Mapping[str, Cell]
    errors: tuple[str, ...]
    warnings: tuple[str, ...] = ()
    tap: Tap | None = None
    merit: Merit | None = None
    refusal: str = ""
    chosen: Mapping[str, Cell] = field(default_factory=dict[str, Cell])

    @property
    def row(self) -> dict[str, Cell]:
        """Everything of it by name, for a line of a table."""
        found = {"errors": " ".join(self.errors), "warnings": " ".join(self.warnings)}
        return {**self.values, **self.figures, **found}

    def number_of(self, figure: str) -> float:
        """A figure of a tap that breaks no rule.

        Raises:
            TypeError: there is none.
        """
        value = self.figures[figure]
        if not isinstance(value, float | int):
            raise TypeError(figure)
        return value
