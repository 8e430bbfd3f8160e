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
class Choice:
    """One value that was settled: which field, to what, and by which rule of whom.

    Attributes:
        field: dotted name as in the job file, e.g. "flutes.offset".
        value: in the unit of the field.
        rule: that chose it; None when the user gave it.
        source: who published the rule; None when the user gave the value.
    """

    field: str
    value: Settled
    rule: Reason | None = None
    source: Source | None = None

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
