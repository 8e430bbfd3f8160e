"""The ledger of a design: every value that is settled, given or by rule, with its reason."""

from collections.abc import Mapping
from dataclasses import dataclass

from tapmodel.design.record import Choice
from tapmodel.sources import Source
from tapmodel.spec.job import field_names

FIELDS = frozenset(field_names())


@dataclass(frozen=True, slots=True)
class Rule:
    """How a value is chosen when the user gives none.

    Attributes:
        why: the rule, one sentence.
        source: who published it.
        unit: of the value, written behind it.
    """

    why: str
    source: Source
    unit: str = "mm"


class Ledger:
    """Settles one field after the other and keeps the choices in that order.

    Values are written with all their digits, so that they can be read back unchanged.
    """

    def __init__(self, given: Mapping[str, object]) -> None:
        """Start with the values that the user gave, by dotted name."""
        self._given = given
        self._choices: list[Choice] = []

    @property
    def choices(self) -> tuple[Choice, ...]:
        """Everything settled so far."""
        return tuple(self._choices)

    def has(self, field: str) -> bool:
        """Whether the user gave `field`."""
        if field not in FIELDS:
            raise KeyError(field)
        return field in self._given

    def peek(self, field: str) -> float | None:
        """The number given for `field`, if any; notes nothing."""
        value = self._given[field] if self.has(field) else None
        return value if isinstance(value, int | float) else None

    def given(self, field: str, unit: str = "mm") -> float | None:
        """The number given for `field`, noted; None, and nothing noted, when there is none."""
        value = self.peek(field)
        if value is not None:
            text = f"{value!r} {unit}".rstrip()
            self._choices.append(Choice(field, text, True, "as given", "job"))
        return value

    def number(self, field: str, ruled: float, rule: Rule) -> float:
        """The number given for `field`, else `ruled`, noted with the reason."""
        given = self.given(field, rule.unit)
        if given is not None:
            return given
        self._note(field, f"{ruled!r} {rule.unit}".rstrip(), rule)
        return ruled

    def whole(self, field: str, ruled: int, rule: Rule) -> int:
        """The same for a whole number."""
        return int(self.number(field, ruled, rule))

    def word(self, field: str, ruled: str, rule: Rule) -> str:
        """The same for a text."""
        if self.has(field):
            value = str(self._given[field])
            self._choices.append(Choice(field, value, True, "as given", "job"))
            return value
        self._note(field, ruled, rule)
        return ruled

    def words(self, field: str) -> tuple[str, ...]:
        """The list of words given for `field`, noted; empty, and nothing noted, without one."""
        value = self._given[field] if self.has(field) else None
        if not isinstance(value, list):
            return ()
        chosen = tuple(str(entry) for entry in value)  # pyright: ignore[reportUnknownVariableType, reportUnknownArgumentType]
        self._choices.append(Choice(field, ", ".join(chosen), True, "as given", "job"))
        return chosen

    def numbers(self, field: str, ruled: tuple[float, ...], rule: Rule) -> tuple[float, ...]:
        """The same for a list of numbers."""
        value = self._given[field] if self.has(field) else None
        if isinstance(value, list):
            chosen = tuple(float(str(entry)) for entry in value)  # pyright: ignore[reportUnknownVariableType, reportUnknownArgumentType]
            self._choices.append(Choice(field, _listed(chosen, rule), True, "as given", "job"))
            return chosen
        self._note(field, _listed(ruled, rule), rule)
        return ruled

    def _note(self, field: str, value: str, rule: Rule) -> None:
        self._choices.append(Choice(field, value, False, rule.why, str(rule.source)))


def _listed(values: tuple[float, ...], rule: Rule) -> str:
    return ", ".join(f"{value:g}" for value in values) + f" {rule.unit}"
