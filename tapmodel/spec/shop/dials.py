"""Graduations of the dials of slides: "0.02mm, 4mm a turn, on diameter", "0.001in, 100 divisions".

As lengths, a bare number is in mm.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from tapmodel.spec.lengths import exact_millimetres

SLIDE, CROSS_SLIDE, MILL = "dial of a slide", "dial of a cross slide", "dials of a mill"
"""What the JSON schema calls texts that are read here."""

_WAYS = (
    'a division and a turn of its dial as they read, such as "0.02mm, 4mm a turn" or '
    '"0.001in, 100 divisions", a unit with one of them: at least 2 divisions of 0.001 to 1 mm, '
    "a turn of 0.25 to 50 mm "
    "that is whole in divisions or ends in half a one"
)

HOW: Mapping[str, str] = {
    SLIDE: f"{_WAYS}; a swung slide is told by its own way, not on diameter",
    CROSS_SLIDE: f'{_WAYS}, and "on diameter" behind them where the dial counts diameter',
    MILL: f"{_WAYS}; for an axis with another dial a semicolon and its name before it, as in "
    '"0.02mm, 4mm a turn; down 0.02mm, 2mm a turn"; axes: sideways, down, along',
}
"""What a message says is allowed, by the kind of text."""

MOST_LETTERS = 200
"""Of such a text."""

_FINEST, _COARSEST = Fraction(1, 1000), Fraction(1)
_LEAST_TURN, _MOST_TURN = Fraction(1, 4), Fraction(50)

_DIVISION = re.compile(r"(?P<length>.+?)\s*(?:(?:a|per)\s+division|/\s*div)?", re.IGNORECASE)
_TURN = re.compile(r"(?P<length>.+?)\s*(?:(?:a|per)\s+turn|/\s*turn)?", re.IGNORECASE)
_COUNT = re.compile(
    r"(?P<count>[0-9]{1,4})\s*div(?:ision)?s?(?:\s+(?:a|per)\s+turn)?", re.IGNORECASE
)
_AXIS = re.compile(r"(?P<axis>sideways|down|along)\s+(?P<dial>.+)", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Dial:
    """The dial of a slide.

    Attributes:
        division: what a division counts, as the dial reads [mm].
        turn: what a turn counts, likewise [mm].
        on_diameter: whether it counts what comes off the diameter, twice the way of the slide.
        inch: whether it is graduated in inches.
    """

    division: Fraction
    turn: Fraction
    on_diameter: bool
    inch: bool


@dataclass(frozen=True, slots=True)
class MillDials:
    """The dials of a mill's axes, as one looks at the cutting end; None where nothing is known."""

    sideways: Dial | None
    down: Dial | None
    along: Dial | None


def dial_of(text: str, *, cross: bool = False) -> Dial | None:
    """The dial that a text describes; None where it describes none.

    Args:
        text: as typed.
        cross: whether it belongs to a cross slide, which alone may count diameter.
    """
    # "1,5" is one and a half to half of the world.
    if not re.search(r"[^0-9.,\s]", text):
        return None
    parts = [part.strip() for part in text.split(",")]
    on_diameter = False
    if len(parts) == 3:
        last = parts.pop().lower().removeprefix("on ").strip()
        if last not in {"diameter", "radius"}:
            return None
        on_diameter = last == "diameter"
    if len(parts) != 2 or (on_diameter and not cross):
        return None
    division = _length(_DIVISION, parts[0])
    turn = None if division is None else _turn(division, parts[1])
    if division is None or turn is None or not _makes_sense(division, turn):
        return None
    return Dial(division, turn, on_diameter, not _metric(parts[0]))


def mill_dials(text: str) -> MillDials | None:
    """The dials that a text describes: one for all axes, or others behind their names."""
    found: dict[str, Dial] = {}
    for part in text.split(";"):
        named = _AXIS.fullmatch(part.strip())
        axis = named["axis"].lower() if named else ""
        dial = dial_of(named["dial"] if named else part)
        if dial is None or axis in found:
            return None
        found[axis] = dial
    every = found.get("")
    return MillDials(*(found.get(axis, every) for axis in ("sideways", "down", "along")))


def checked(form: str, text: str) -> str:
    """A text that describes dials of this kind, as it is.

    Raises:
        ValueError: it describes none.
    """
    found = mill_dials(text) if form == MILL else dial_of(text, cross=form == CROSS_SLIDE)
    if found is None:
        raise ValueError(form)
    return text


def _turn(division: Fraction, text: str) -> Fraction | None:
    counted = _COUNT.fullmatch(text)
    return division * int(counted["count"]) if counted else _length(_TURN, text)


def _length(form: re.Pattern[str], text: str) -> Fraction | None:
    found = form.fullmatch(text)
    return exact_millimetres(found["length"]) if found else None


def _metric(text: str) -> bool:
    found = _DIVISION.fullmatch(text)
    return found is None or bool(re.search(r"(?:[0-9.]|mm\.?)\s*$", found["length"], re.IGNORECASE))


def _makes_sense(division: Fraction, turn: Fraction) -> bool:
    # Some screws of a 16th of an inch have 62 1/2 divisions.
    return (
        _FINEST <= division <= _COARSEST
        and _LEAST_TURN <= turn <= _MOST_TURN
        and turn >= 2 * division
        and (2 * turn / division).denominator == 1
    )
