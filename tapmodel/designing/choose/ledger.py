"""The ledger of a design: every value that is settled, given or by rule, with its reason."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from tapmodel.designing.choice import Choice, Reason, Settled
from tapmodel.designing.fields import fields_of_job
from tapmodel.sources import Source
from tapmodel.values import Value, Values


@dataclass(frozen=True, slots=True)
class Rule:
    """How a value is chosen when the user gives none.

    Attributes:
        reason: the rule, and what it looked at.
        source: who published it.
    """

    reason: Reason
    source: Source


def by_rule(code: str, source: Source, **values: Value) -> Rule:
    """The rule of that code and source, with what its sentence needs."""
    return Rule(Reason(code, Values(**values)), source)


Advice = Mapping[str, tuple[float, Rule]]
"""Numbers that go before those of the usual rules, by field, each with a rule of its own."""

NO_ADVICE: Advice = {}


class Ledger:
    """Settles one field after the other and keeps the choices in that order."""

    def __init__(self, given: Mapping[str, object], advice: Advice = NO_ADVICE) -> None:
        """Start with the values that the user gave, by dotted name, and with advice on others."""
        self._given = given
        self._advice = advice
        self._choices: list[Choice] = []

    def draft(self) -> "Ledger":
        """A ledger over the same given values for what may yet be rejected; it keeps nothing."""
        return Ledger(self._given, self._advice)

    def without(self, fields: Iterable[str]) -> "Ledger":
        """The same over what is given beside `fields`."""
        gone = frozenset(fields)
        left = {name: value for name, value in self._given.items() if name not in gone}
        return Ledger(left, self._advice)

    @property
    def choices(self) -> tuple[Choice, ...]:
        """Everything settled so far."""
        return tuple(self._choices)

    def has(self, field: str) -> bool:
        """Whether the user gave `field`."""
        if field not in fields_of_job():
            raise KeyError(field)
        return field in self._given

    def settles(self, field: str) -> bool:
        """Whether `field` is given or advised, so that no rule decides."""
        return self.has(field) or field in self._advice

    def peek(self, field: str) -> float | None:
        """The number given for `field`, if any; notes nothing."""
        value = self._given[field] if self.has(field) else None
        return value if isinstance(value, int | float) else None

    def given(self, field: str) -> float | None:
        """The number given for `field`, noted; None, and nothing noted, when there is none."""
        value = self.peek(field)
        if value is not None:
            self._note(field, value)
        return value

    def given_word(self, field: str) -> str | None:
        """The text given for `field`, noted; None, and nothing noted, when there is none."""
        value = self._given[field] if self.has(field) else None
        if not isinstance(value, str):
            return None
        self._note(field, value)
        return value

    def number(self, field: str, ruled: float, rule: Rule) -> float:
        """The number given for `field`, else one advised, else `ruled`, noted with the reason."""
        given = self.given(field)
        if given is not None:
            return given
        number, by = self._advice.get(field, (ruled, rule))
        self._note(field, number, by)
        return number

    def whole(self, field: str, ruled: int, rule: Rule) -> int:
        """The same for a whole number."""
        return int(self.number(field, ruled, rule))

    def word(self, field: str, ruled: str, rule: Rule) -> str:
        """The same for a text."""
        return str(self.word_or_number(field, ruled, rule))

    def word_or_number(self, field: str, ruled: str | int, rule: Rule) -> str | int:
        """The same for what standards name by a word or number by their own count."""
        if self.has(field):
            value = self._given[field]
            chosen = value if isinstance(value, int) else str(value)
            self._note(field, chosen)
            return chosen
        self._note(field, ruled, rule)
        return ruled

    def words(self, field: str, ruled: tuple[str, ...], rule: Rule) -> tuple[str, ...]:
        """The same as `number` for a list of words."""
        value = self._given[field] if self.has(field) else None
        if not isinstance(value, list):
            self._note(field, ruled, rule)
            return ruled
        chosen = tuple(str(entry) for entry in value)  # pyright: ignore[reportUnknownVariableType, reportUnknownArgumentType]
        self._note(field, chosen)
        return chosen

    def numbers(self, field: str, ruled: tuple[float, ...], rule: Rule) -> tuple[float, ...]:
        """The same as `number` for a list of numbers."""
        chosen = self.given_numbers(field)
        if chosen:
            return chosen
        self._note(field, ruled, rule)
        return ruled

    def given_words(self, field: str) -> tuple[str, ...]:
        """The words given for `field`, noted; empty, and nothing noted, without any."""
        value = self._given[field] if self.has(field) else None
        if not isinstance(value, list):
            return ()
        chosen = tuple(str(entry) for entry in value)  # pyright: ignore[reportUnknownVariableType, reportUnknownArgumentType]
        self._note(field, chosen)
        return chosen

    def given_numbers(self, field: str) -> tuple[float, ...]:
        """The list of numbers given for `field`, noted; empty, and nothing noted, without one."""
        value = self._given[field] if self.has(field) else None
        if not isinstance(value, list):
            return ()
        chosen = tuple(float(str(entry)) for entry in value)  # pyright: ignore[reportUnknownVariableType, reportUnknownArgumentType]
        self._note(field, chosen)
        return chosen

    def _note(self, field: str, value: Settled, rule: Rule | None = None) -> None:
        """Keep a choice; one without a rule was given."""
        if rule is None:
            self._choices.append(Choice(field, value))
        else:
            self._choices.append(Choice(field, value, rule.reason, rule.source))
