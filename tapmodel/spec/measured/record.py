"""What was measured of one tap: each size with what was typed, and when."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import datetime

from tapmodel.errors import InputError, shown
from tapmodel.spec.lengths import millimetres_of
from tapmodel.spec.measured.sizes import EXCLUSIVE, LENGTH, LENGTHS, Range, Size, range_of

Typed = float | str
"""A number, or a text that holds one with its unit."""

_MOST_BITS = 64
"""Of a whole number that a size can be; longer ones cannot even be written out."""


@dataclass(frozen=True, slots=True)
class Found:
    """One size as it was measured.

    Attributes:
        typed: as it was typed.
        number: what that is, a length in mm, an angle in degrees, a hardness in Rockwell C.
        on: when it was handed over; None where nobody says.
        wire: over which it was measured, of a value over wires; None where nobody says [mm].
        wire_typed: the same as it was typed.
        field: for a message: its option, or its place in the file.
    """

    typed: Typed
    number: float
    on: datetime | None = None
    wire: float | None = None
    wire_typed: Typed | None = None
    field: str = ""

    @property
    def wire_field(self) -> str:
        """The wire for a message."""
        return "--wire" if self.field.startswith("--") else f"{self.field}: wire"


@dataclass(frozen=True, slots=True)
class Earlier:
    """A reading that another has replaced, or that was taken back.

    Attributes:
        size: its name as it stands in the file.
        typed: as it was typed.
        on: when it was measured; None where nobody says.
    """

    size: str
    typed: str
    on: datetime | None


@dataclass(frozen=True, slots=True)
class Measured:
    """Everything that was measured of one tap.

    Attributes:
        pairs: sizes and their readings, in the order of the work.
        earlier: readings that count no more, the oldest first.
        strange: keys of the file that almost name a size, and which.
    """

    pairs: tuple[tuple[Size, Found], ...] = ()
    earlier: tuple[Earlier, ...] = ()
    strange: tuple[str, ...] = ()

    def __iter__(self) -> Iterator[Size]:
        """The sizes that were measured."""
        return (size for size, _ in self.pairs)

    def get(self, size: Size) -> Found | None:
        """The reading of a size; None where there is none."""
        return dict(self.pairs).get(size)

    def number(self, size: Size) -> float | None:
        """The number of a size; None where there is none."""
        found = self.get(size)
        return None if found is None else found.number


def measured_of(found: Mapping[Size, Found]) -> Measured:
    """Readings in the order of the work.

    Raises:
        InputError: two of them settle the same.
    """
    for row in EXCLUSIVE:
        both = sorted(row & found.keys(), key=[*Size].index)
        if len(both) > 1:
            one, other = (found[size] for size in both)
            raise InputError(
                f"{one.field} together with {both[1] if other.field[:2] != '--' else other.field}",
                f"{one.typed} and {other.typed}",
                "one of them, as both settle the same",
            )
    return Measured(tuple((size, found[size]) for size in Size if size in found))


def found_of(size: Size, typed: object, field: str, wire: object = None) -> Found:
    """A reading out of what was typed.

    Args:
        size: that was measured.
        typed: a number, or a text that holds one.
        field: for a message.
        wire: over which, likewise.

    Raises:
        InputError: it is none, or out of all reason.
    """
    number = number_of(typed, range_of(size), field, unit=size in LENGTHS)
    found = Found(_plain(typed), number, field=field)
    if wire is None:
        return found
    at = found.wire_field
    if size is not Size.OVER_WIRES:
        raise InputError(at, wire, f"nothing beside {size}: a wire belongs to over_wires")
    thick = number_of(wire, LENGTH, at, unit=True)
    return replace(found, wire=thick, wire_typed=_plain(wire))


def number_of(typed: object, allowed: Range, field: str, *, unit: bool) -> float:
    """The number that was typed, in mm where it may have a unit.

    Raises:
        InputError: naming the field, what was typed and what is allowed.
    """
    number = _number(typed, unit=unit)
    if number is None or not allowed.holds(number):
        raise InputError(field, shown(typed), allowed.told)
    return number


def _number(typed: object, *, unit: bool) -> float | None:
    """None for what is no number, or has a unit where none may stand."""
    if isinstance(typed, bool):
        return None
    if isinstance(typed, int):
        return float(typed) if typed.bit_length() <= _MOST_BITS else None
    if isinstance(typed, float):
        return typed
    if not isinstance(typed, str):
        return None
    return millimetres_of(typed) if unit else _bare(typed)


def _bare(text: str) -> float | None:
    plain = text.strip()
    return millimetres_of(plain) if plain[-1:].isdigit() and "/" not in plain else None


def _plain(typed: object) -> Typed:
    """A text that is a plain number is written as one."""
    if isinstance(typed, str):
        bare = _bare(typed)
        return typed.strip() if bare is None else bare
    return typed if isinstance(typed, int | float) else str(typed)
