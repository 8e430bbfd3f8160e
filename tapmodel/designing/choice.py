"""A value that was settled, and by what rule: codes and numbers, which the report room words."""

from dataclasses import dataclass

from tapmodel.sources import Source
from tapmodel.spec.units import Unit
from tapmodel.values import NO_VALUES, Values

Settled = float | int | str | tuple[float, ...] | tuple[str, ...]
"""What a field of the job may be settled to, never rounded for reading."""


@dataclass(frozen=True, slots=True)
class Reason:
    """Why a rule chose what it chose.

    Attributes:
        code: stable short name of the rule, e.g. "point-under-drill".
        values: what its sentence needs, by name: lengths [mm], angles [deg], shares, words.
    """

    code: str
    values: Values = NO_VALUES


@dataclass(frozen=True, slots=True)
class Weight:
    """What a design is weighed by.

    Attributes:
        torque, bears: likely, and what the tap bears [N·m].
        rubs: width of a land whose flanks have no clearance, along the crests [mm].
        chip: of a tooth in the chamfer [mm].
        chips_held: length of thread whose chips the flutes hold [mm].
        chamfer_clears: heel of the chamfer stands clear by so much; negative binds [µm].
    """

    torque: float
    bears: float
    rubs: float
    chip: float
    chips_held: float
    chamfer_clears: float


@dataclass(frozen=True, slots=True)
class RunnerUp:
    """The best of the values that stood next to the one chosen, and what it would have cost.

    Attributes:
        value: in the unit of the field.
        weight: of the design with it.
        chosen: weight of the design as it is.
        raised: codes of what would be found against it and is not against the design.
    """

    value: float | str
    weight: Weight
    chosen: Weight
    raised: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Choice:
    """One value that was settled: which field, to what, and by which rule of whom.

    Attributes:
        field: dotted name as in the job file, e.g. "flutes.offset".
        value: in the unit of the field.
        rule: that chose it; None when the user gave it.
        source: who published the rule; None when the user gave the value.
        runner_up: to a value that a rule chose; None where nothing stood next to it.
    """

    field: str
    value: Settled
    rule: Reason | None = None
    source: Source | None = None
    runner_up: RunnerUp | None = None

    @property
    def given(self) -> bool:
        """Whether the user gave the value."""
        return self.rule is None

    @property
    def unit(self) -> Unit:
        """Unit of the value, `Unit.NONE` for a count, a plain share or a word."""
        # Processes that only draw a design load no job, which takes them a tenth of a second.
        from tapmodel.spec.job import unit_of  # noqa: PLC0415

        return unit_of(self.field)
