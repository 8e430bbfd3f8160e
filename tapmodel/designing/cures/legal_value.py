"""Seeking the nearest legal value of a field: in whole steps, so that it can be typed in."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from math import ceil, floor

from tapmodel.findings import Bound, Lever, Setting
from tapmodel.spec import job
from tapmodel.spec.units import Unit

Legal = Callable[[int], bool]
"""Whether a value is legal, by the number of its steps."""

DIGITS: dict[str, int] = {Unit.MM: 3, Unit.DEGREES: 2, Unit.PERCENT: 1, Unit.IN_100: 2}
"""Decimals that a value of each unit is rounded to."""

OWN_DIGITS = {
    "flutes.count": 0,
    "flutes.cutter_diameter": 2,
    "flutes.land_share": 2,
    "chamfer.pitches": 2,
    "thread.aim": 2,
}
"""Decimals of the fields that depart from it; threads and drops need a digit more, see below."""

FINE = ("thread.", "relief.thread.heel_drop", "relief.chamfer.heel_drop")

EXTREMES: dict[str, float] = {
    Unit.MM: 2000.0,
    Unit.DEGREES: 180.0,
    Unit.PERCENT: 100.0,
    Unit.IN_100: 0.5,
}
"""Beyond these no field takes a value; most end long before."""

SIGNED = ("flutes.offset", "flutes.rake")

FARTHEST = 8.0
"""Values are sought up to so many times the present one, or twice the expected one."""

SMALL = 200
"""Fewer steps than that from 0 the legal range may be narrower than a step."""

LOOKS = 16
"""Places looked at, evenly between the present value and the farthest, where steps that double
have found nothing."""


@dataclass(frozen=True, slots=True)
class Ruler:
    """The values of a field on one side of the present one, counted away from it.

    Attributes:
        lever: field, side and present value.
        digits: decimals of a step.
    """

    lever: Lever
    digits: int

    @property
    def sign(self) -> int:
        """Which way the values run."""
        return -1 if self.lever.bound is Bound.AT_MOST else 1

    @property
    def first(self) -> int:
        """The value nearest to the present one, in steps."""
        now = (self.lever.now or 0.0) * 10**self.digits
        return ceil(now - 1e-6) - 1 if self.sign < 0 else floor(now + 1e-6) + 1

    @property
    def length(self) -> int:
        """How many values there are."""
        signed, near = self.lever.field in SIGNED, self.lever.near
        near = abs(near) if isinstance(near, float | int) else 0.0
        far = max(FARTHEST * abs(self.lever.now or 0.0), 2 * near, 1.0)
        far = min(far, EXTREMES.get(unit_of(self.lever.field), 100.0)) * 10**self.digits
        end = 1 if self.sign < 0 and not signed else self.sign * int(far)
        return max(0, self.sign * (end - self.first) + 1)

    def value(self, index: int) -> float:
        """The value with that number; whole where the field takes whole numbers only."""
        if self.digits == 0:
            return self.first + self.sign * index
        return round((self.first + self.sign * index) / 10**self.digits, self.digits)

    def index(self, value: float) -> int:
        """Number of the first value that is not nearer than `value`."""
        steps = value * 10**self.digits
        step = floor(steps + 1e-6) if self.sign < 0 else ceil(steps - 1e-6)
        return max(0, self.sign * (step - self.first))

    def setting(self, index: int) -> Setting:
        """The value with that number, as part of a cure."""
        field = self.lever.field
        value = self.value(index)
        return Setting(field, self.lever.bound, value, unit_of(field), self.digits)


def rulers(lever: Lever) -> tuple[Ruler, ...]:
    """Values in the usual steps of the field; for a small one also in finer steps."""
    field = lever.field
    digits = OWN_DIGITS.get(field, DIGITS.get(unit_of(field), 3) + field.startswith(FINE))
    small = digits > 0 and abs(lever.now or 0.0) * 10**digits < SMALL
    return tuple(Ruler(lever, digits + finer) for finer in ((0, 1, 2) if small else (0,)))


def unit_of(field: str) -> str:
    """Unit of measure of a field of the job, "" for a count, a share or a word."""
    unit = job.unit_of(field)
    return unit if unit in DIGITS else ""


def nearest_legal(legal: Legal, ruler: Ruler, start: int = 0) -> int | None:
    """Number of the legal value nearest to the present one, not before `start`; None for none.

    Looked for about the place that a formula expects, then in steps that double, then evenly; what
    is found is taken back until its neighbour is not legal, and nothing that is looked at between
    it and the start.

    Source: rule of this program.
    """
    if start < ruler.length and legal(start):
        return start
    found = _about(legal, ruler, start)
    if found is None:
        places = [start + step for step in _doubling(ruler.length - start)]
        found = _first(legal, places[1:], start)
    if found is None:
        end = ruler.length if ruler.sign < 0 else min(ruler.length, 2 * abs(ruler.first) + 1)
        return _first(legal, _evenly(start, end), start)
    nearer = _first(legal, _evenly(start, found), start)
    return found if nearer is None else nearer


def taken_back(legal: Legal, place: int) -> int:
    """From a legal place towards the present value, as far as all are legal that are looked at."""
    step = 1
    while place - step >= 0:
        if not legal(place - step):
            return _halved(legal, place - step, place)
        place, step = place - step, 2 * step
    return _halved(legal, -1, place)


def _about(legal: Legal, ruler: Ruler, start: int) -> int | None:
    """A legal place where a formula expects it, or a little beyond; `start` is not legal."""
    near, length = ruler.lever.near, ruler.length
    if not isinstance(near, float | int) or length < 1:
        return None
    expected = min(ruler.index(near), length - 1)
    if expected <= start:
        return None
    if legal(expected):
        return taken_back(legal, expected)
    beyond = [expected + step for step in _doubling(64) if expected + step < length]
    return _first(legal, beyond, expected)


def _doubling(length: int) -> Iterator[int]:
    """0, 1, 3, 7, ... and the last below `length`."""
    step = 0
    while step < length - 1:
        yield step
        step = 2 * step + 1
    if length > 0:
        yield length - 1


def _evenly(start: int, end: int) -> list[int]:
    """Places that part the way from `start` to `end` evenly, none twice."""
    way = end - start
    return sorted({start + way * part // LOOKS for part in range(1, LOOKS)} - {start, end})


def _first(legal: Legal, places: list[int], below: int) -> int | None:
    """The first legal of `places`, brought back to where its neighbour is not; `below` is not."""
    for place in places:
        if legal(place):
            return _halved(legal, below, place)
        below = place
    return None


def _halved(legal: Legal, low: int, high: int) -> int:
    """The least legal place above `low`, which is not legal, where one border lies between."""
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (low, middle) if legal(middle) else (middle, high)
    return high
