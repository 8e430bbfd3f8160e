"""The controls of the page: every field that it lets be changed, as it stands and by whose rule."""

from dataclasses import dataclass
from functools import cache

from tapmodel.designing.choice import Choice
from tapmodel.designing.record import TapDesign
from tapmodel.report.units import MM_PER_INCH, Units
from tapmodel.report.view.controls.entry import Entry
from tapmodel.report.view.controls.flutes import FLUTES, flute_ways
from tapmodel.report.view.controls.groups import ENTRIES, GROUPS
from tapmodel.report.view.controls.on_page import on_page
from tapmodel.report.view.controls.record import (
    Control,
    Group,
    Kind,
    Option,
    Slider,
    State,
)
from tapmodel.report.view.controls.steps import step_of
from tapmodel.report.words.choices import source_text, why
from tapmodel.spec.job import field_descriptions, unit_of
from tapmodel.spec.units import Unit

_DIGITS = {Unit.MM: 4, Unit.DEGREES: 2, Unit.CELSIUS: 0}
_INCH_DIGITS = 5
_OTHER_DIGITS = 3


def fields_of(design: TapDesign, units: Units) -> tuple[Group, ...]:
    """All groups of controls as they stand for a design.

    Args:
        design: every number of the tap.
        units: of the boxes: inches for who reads those alone, else mm.
    """
    found = Reader(design, units)
    return tuple(
        Group(
            group.key,
            group.title,
            tuple(found.control(entry) for entry in group.entries if entry.shown(design)),
            flute_ways(design) if group is FLUTES else (),
        )
        for group in GROUPS
    )


@dataclass(frozen=True, slots=True)
class Reader:
    """Reads controls from a design, for a reader of these units."""

    design: TapDesign
    units: Units

    def control(self, entry: Entry) -> Control:
        """An entry as it stands."""
        choice = self.design.choice(entry.field)
        number = self._number(entry, choice) if entry.kind is Kind.NUMBER else None
        value = _word(choice) if number is None else self._written(entry.field, number)
        if entry.field == "designation":
            value = self.design.designation
        return Control(
            entry.field,
            entry.label,
            entry.kind,
            unit_beside(entry.field, self.units) if entry.kind in {Kind.NUMBER, Kind.TEXT} else "",
            value,
            _state(entry, choice, value),
            on_page(self._why(entry, choice)),
            self._slider(entry),
            self._options(entry),
            on_page(_descriptions()[entry.field]),
            entry.beside(self.design, self.units),
        )

    @property
    def _inch(self) -> bool:
        return self.units is Units.INCH

    def _number(self, entry: Entry, choice: Choice | None) -> float | None:
        if choice is not None and isinstance(choice.value, int | float):
            return float(choice.value)
        return entry.follows(self.design) if entry.follows else None

    def _written(self, field: str, value: float) -> str:
        """Without needless digits; a length in the unit of its box."""
        if _is_length(field) and self._inch:
            return _short(value / MM_PER_INCH, _INCH_DIGITS)
        return _short(value, _DIGITS.get(unit_of(field), _OTHER_DIGITS))

    def _slider(self, entry: Entry) -> Slider | None:
        if entry.span is None:
            return None
        inch = self._inch and _is_length(entry.field)
        step = step_of(entry.step, self.design, inch=inch)
        low, high = (
            round(round(end / (MM_PER_INCH if inch else 1) / step) * step, 6)
            for end in entry.span(self.design)
        )
        return Slider(low, max(high, low + step), step)

    def _options(self, entry: Entry) -> tuple[Option, ...]:
        """Sizes at hand as the box has them, words as they are."""
        found = entry.options(self.design)
        if entry.kind is not Kind.NUMBER:
            return tuple(found)
        sizes = (self._written(entry.field, float(option.value)) for option in found)
        return tuple(Option(size, size) for size in sizes)

    def _why(self, entry: Entry, choice: Choice | None) -> str:
        """Of a value that a rule chose, or that follows from another, which it names."""
        if choice is not None:
            return self._reason(choice)
        leader = self.design.choice(entry.by) if entry.by else None
        if leader is None:
            return "follows from the other values" if entry.follows else ""
        behind = self._reason(leader)
        return f"follows from {ENTRIES[entry.by].label}, {self._told(leader)}" + (
            f": {behind}" if behind else ""
        )

    def _told(self, choice: Choice) -> str:
        """The value of a choice that has a control, as its box shows it."""
        if not isinstance(choice.value, int | float):
            return _word(choice)
        return with_unit(
            self._written(choice.field, choice.value), unit_beside(choice.field, self.units)
        )

    def _reason(self, choice: Choice) -> str:
        """Without the value that some reasons begin with: it stands in the box."""
        if choice.given:
            return ""
        value = f"{_word(choice)} {choice.unit}".rstrip()
        reason = why(choice, self.units)
        for end in (";", ",", ":"):
            reason = reason.removeprefix(f"{value}{end} ")
        return f"{reason} ({source_text(choice)})"


def with_unit(value: str, unit: str) -> str:
    """What a box shows, and the unit beside it, as one text."""
    return f"{value}{unit}" if unit == "°" else f"{value} {unit}".rstrip()


def unit_beside(field: str, units: Units) -> str:
    """The unit beside a box for a number of a field; a bare number that is typed there has it."""
    unit = unit_of(field)
    if unit is Unit.MM:
        return "in" if units is Units.INCH and field not in _PITCHES else "mm"
    return {
        Unit.DEGREES: "°",
        Unit.PITCHES: "pitches",
        Unit.OF_SPACING: "",
        Unit.IN_100: "",
    }.get(unit, unit.value)


_PITCHES = frozenset({"shop.leadscrew"})
"""Lengths that who reads inches has as threads per inch: a bare number is mm for everybody."""


def _is_length(field: str) -> bool:
    return unit_of(field) is Unit.MM and ENTRIES[field].kind is Kind.NUMBER


@cache
def _descriptions() -> dict[str, str]:
    return field_descriptions()


def _state(entry: Entry, choice: Choice | None, value: str) -> State:
    if entry.field == "designation" or (choice is not None and choice.given):
        return State.GIVEN
    if choice is not None:
        return State.RULE
    return State.FOLLOWS if value else State.NONE


def _word(choice: Choice | None) -> str:
    if choice is None:
        return ""
    value = choice.value
    if isinstance(value, tuple):
        return ", ".join(word if isinstance(word, str) else f"{word:g}" for word in value)
    return f"{value:g}" if isinstance(value, float) else str(value)


def _short(value: float, digits: int) -> str:
    text = f"{round(value, digits) + 0.0:.{digits}f}"
    return text.rstrip("0").rstrip(".")
