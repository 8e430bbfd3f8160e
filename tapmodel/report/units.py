"""Numbers as text in the reader's units. Limits are rounded into their zone, never out of it."""

import math
import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from enum import StrEnum

from tapmodel.checks.proof.length_told import LEAST, length_told
from tapmodel.report.blocks import (
    Angle,
    Area,
    Force,
    Growth,
    Length,
    Pitch,
    Quantity,
    Row,
    Telling,
    Temperature,
    Told,
    Tool,
    Torque,
    Words,
)
from tapmodel.words import Units

MM_PER_INCH = 25.4
"""Exact by definition (international yard and pound agreement, 1959)."""

N_PER_LBF = 4.4482216152605
"""Exact by definition: a pound of 0.45359237 kg at 9.80665 m/s²."""

LBF_IN_PER_NM = 1e3 / N_PER_LBF / MM_PER_INCH
"""Torque in pounds of force at an inch, for one of a newton metre."""

PSI_PER_MPA = MM_PER_INCH**2 / N_PER_LBF
"""Stress in pounds of force on a square inch, for one of a newton on a square millimetre."""

_UNIT = re.compile(r"(?<=[\d.]) (?=(?:mm²?|in²?|µm|N·m|lbf·in|N|lbf|°[CF]|HRC|MPa|P|H)\b)")
_LAST_DIGIT_NOISE = 1e-6
"""Share of the last digit by which a limit may lie off a printed value and still be that value."""


class Paper(StrEnum):
    """Size of the sheet."""

    A4 = "A4"
    LETTER = "Letter"


class Projection(StrEnum):
    """Where the views of a drawing stand to each other: ISO 5456-2, first or third angle."""

    FIRST = "first"
    THIRD = "third"


@dataclass(frozen=True, slots=True)
class Look:
    """How a reader wants the papers: size, units of the text, and how views stand."""

    paper: Paper = Paper.A4
    units: Units = Units.MM
    projection: Projection = Projection.FIRST


def shown(quantity: Quantity, units: Units = Units.MM) -> tuple[str, ...]:
    """The text of a quantity, one for each unit that is wanted: mm first."""
    match quantity:
        case Length():
            return _lengths(quantity, units, round)
        case Angle():
            return (f"{_plain(quantity.degrees, quantity.digits)}°",)
        case Area() | Pitch() | Growth() | Temperature():
            return _in_each(units, lambda: _metric(quantity), lambda: _imperial(quantity))
        case Torque() | Force():
            return _in_each(units, lambda: _in_newtons(quantity), lambda: _in_pounds(quantity))
        case Tool():
            return _tool(quantity, units)
        case Words() | Told():
            return (told(quantity.text, units),)


def as_text(quantity: Quantity, units: Units = Units.MM) -> str:
    """The same on one line: "8.50 mm = 0.3346 in"."""
    return " = ".join(shown(quantity, units))


LIKE = 1e-9
"""Lengths that differ by less are one [mm]."""

SAME = 1e-6
"""Share by which threads per inch may miss a quarter and still be it: noise of binary numbers."""


HOLE_DEPTH = ".1f|.3f"
"""Form of how deep a hole is, as `hole_depth` tells it in a row."""


def _in_each(
    units: Units, in_mm: Callable[[], str], in_inches: Callable[[], str]
) -> tuple[str, ...]:
    texts = [in_mm()] if units is not Units.INCH else []
    return (*texts, in_inches()) if units is not Units.MM else tuple(texts)


def _metric(quantity: Area | Pitch | Growth | Temperature) -> str:
    match quantity:
        case Area():
            return f"{_significant(quantity.mm2, quantity.figures)} mm²"
        case Pitch():
            return f"{quantity.mm:.5g} mm"
        case Growth():
            return f"{quantity.factor:.2f} µm"
        case Temperature():
            return f"{_whole(quantity.celsius)} °C"


def _imperial(quantity: Area | Pitch | Growth | Temperature) -> str:
    match quantity:
        case Area():
            return f"{_significant(quantity.mm2 / MM_PER_INCH**2, quantity.figures)} in²"
        case Pitch():
            return _threads(quantity)
        case Growth():
            return f"{quantity.factor * 1e-4:.6f} in"
        case Temperature():
            return f"{_whole([32 + 1.8 * heat for heat in quantity.celsius])} °F"


def _in_newtons(quantity: Torque | Force) -> str:
    if isinstance(quantity, Force):
        return f"{_two_figures(quantity.newtons)} N"
    return f"{_span(quantity.newton_metres)} N·m"


def _in_pounds(quantity: Torque | Force) -> str:
    if isinstance(quantity, Force):
        return f"{_two_figures(quantity.newtons / N_PER_LBF)} lbf"
    return f"{_span([torque * LBF_IN_PER_NM for torque in quantity.newton_metres])} lbf·in"


def _whole(heats: Sequence[float]) -> str:
    """A range whose ends are one is told once."""
    return " to ".join(dict.fromkeys(f"{heat:.0f}" for heat in heats))


def _span(values: Sequence[float]) -> str:
    """One number, or several from least to greatest, to three figures.

    No torque is known so well, but one to stop at must be the same on the sheet, in the findings
    and in the drawings.
    """
    return " to ".join(_significant(float(f"{value:.2e}"), 3) for value in values)


def _two_figures(value: float) -> str:
    """Two digits, and noughts before the point."""
    return _significant(float(f"{value:.1e}"), 2)


def _significant(value: float, figures: int) -> str:
    """So many digits, without exponent."""
    digits = figures - 1 - math.floor(math.log10(abs(value))) if value else 0
    return _plain(value, max(digits, 0))


def _threads(pitch: Pitch) -> str:
    """Threads per inch alone where they are a number that a gearbox has, else with the length."""
    threads = MM_PER_INCH / pitch.mm
    if abs(threads - round(4 * threads) / 4) < SAME * threads:
        return f"{threads:.6g} per inch"
    return f"{pitch.mm / MM_PER_INCH:.5f} in ({threads:.6g} per inch)"


def _tool(tool: Tool, units: Units) -> tuple[str, ...]:
    """By its name, if it has one: 8.5 mm (0.3346 in), letter Q (0.3320 in), 6.350 mm (1/4)."""
    metric, inches = f"{_plain(tool.mm, tool.digits)} mm", f"{_plain(tool.mm / MM_PER_INCH, 4)} in"
    name = " = ".join(tool.names)
    if units is Units.BOTH:
        return metric, f"{name} ({inches})" if name else inches
    if units is Units.MM:
        return (f"{metric} ({name})" if name else metric,)
    return (f"{name or f'{tool.mm:.6g} mm'} ({inches})",)


def unparted(text: str) -> str:
    """A text in which no line ends between a number and its unit."""
    return _UNIT.sub("\u00a0", text)


def told(text: str | Telling, units: Units = Units.MM) -> str:
    """A sentence in the reader's units."""
    return text if isinstance(text, str) else text(units)


def in_words(mm: float, form: str, units: Units = Units.MM) -> str:
    """A length in a sentence, in the reader's units: "0.050 mm = 0.0020 in".

    Args:
        mm: the length [mm].
        form: how numbers in mm are formatted: ".3f", "g". Inches get one decimal more after f,
            five digits after g, or a form of their own behind a bar, as `HOLE_DEPTH`.
        units: the reader's.
    """
    return " = ".join(
        _in_each(
            units, lambda: f"{_mm_number(mm, form)} mm", lambda: f"{_inch_number(mm, form)} in"
        )
    )


def distance_told(micrometres: float, units: Units = Units.MM) -> str:
    """A measured distance [µm] to two digits: "0.88 mm", "12 µm", "0.00047 in"."""
    return " = ".join(
        _in_each(
            units,
            lambda: length_told(micrometres),
            lambda: f"{_significant(max(micrometres, LEAST) / 1000 / MM_PER_INCH, 2)} in",
        )
    )


def torque_in_words(newton_metres: float, units: Units = Units.MM, form: str = ".3g") -> str:
    """A torque [N·m] in a sentence, its numbers as `form`: "5.12 N·m = 45.3 lbf·in"."""
    return " = ".join(
        _in_each(
            units,
            lambda: f"{_no_exponent(newton_metres, form)} N·m",
            lambda: f"{_no_exponent(newton_metres * LBF_IN_PER_NM, form)} lbf·in",
        )
    )


def _no_exponent(value: float, form: str) -> str:
    """Rounded by a form of digits, a great number in figures: 1270 for 1.27e+03."""
    return f"{float(f'{value:{form}}'):.12g}"


def force_in_words(newtons: float, units: Units = Units.MM) -> str:
    """A force [N] in a sentence: "150 N = 34 lbf"."""
    return as_text(Force(newtons), units)


def signed_in_words(mm: float, units: Units = Units.MM) -> str:
    """How far something was moved, to four digits with its sign: "+25.4 mm = +1 in"."""
    texts = _in_each(units, lambda: f"{mm:+.4g} mm", lambda: f"{mm / MM_PER_INCH:+.4g} in")
    return " = ".join(texts) if mm else "0"


def volume_in_words(mm3: float, units: Units = Units.MM) -> str:
    """A volume [mm³] in a sentence: "1566.0000 mm³ = 0.095564 in³"."""
    texts = _in_each(
        units, lambda: f"{mm3:.4f} mm³", lambda: f"{_significant(mm3 / MM_PER_INCH**3, 7)} in³"
    )
    return " = ".join(texts)


def range_in_words(low: float, high: float, form: str, units: Units = Units.MM) -> str:
    """Two ends in a sentence, the unit behind them, one where both read alike; as `in_words`."""

    def ends(number: Callable[[float, str], str]) -> str:
        return " to ".join(dict.fromkeys(number(end, form) for end in (low, high)))

    return " = ".join(
        _in_each(units, lambda: f"{ends(_mm_number)} mm", lambda: f"{ends(_inch_number)} in")
    )


def _mm_number(mm: float, form: str) -> str:
    number = f"{mm:{form.partition('|')[0]}}"
    return f"{float(number):.12g}" if "e+" in number else number


def _inch_number(mm: float, form: str) -> str:
    inches, own = mm / MM_PER_INCH, form.partition("|")[2]
    if own.endswith("g"):
        return _significant(inches, int(own[1:-1]))
    if own:
        return f"{inches:{own}}"
    if form.endswith("f"):
        return _plain(inches, int(form[1:-1]) + 1)
    number = _significant(inches, 5)
    return number.rstrip("0").rstrip(".") if "." in number else number


def aimed(row: Row, units: Units = Units.MM) -> tuple[str, ...]:
    """The value of a row; one that is a limit at once is rounded as that, so never beyond it."""
    value = row.value
    if isinstance(value, Length):
        for limit, told_as in ((row.high, shown_high), (row.low, shown_low)):
            if limit is not None and math.isclose(value.mm, limit.mm, abs_tol=LIKE):
                return told_as(value, units)
    return shown(value, units)


def shown_low(limit: Length, units: Units = Units.MM) -> tuple[str, ...]:
    """A lower limit, rounded up where it has to be rounded."""
    return _lengths(limit, units, lambda steps: math.ceil(steps - _LAST_DIGIT_NOISE))


def shown_high(limit: Length, units: Units = Units.MM) -> tuple[str, ...]:
    """An upper limit, rounded down where it has to be rounded."""
    return _lengths(limit, units, lambda steps: math.floor(steps + _LAST_DIGIT_NOISE))


def _lengths(length: Length, units: Units, to_step: Callable[[float], int]) -> tuple[str, ...]:
    texts: list[str] = []
    if units is not Units.INCH:
        texts.append(f"{_stepped(length.mm, length.digits, to_step)} mm")
    if units is not Units.MM:
        digits = length.digits + 1 if length.inch_digits is None else length.inch_digits
        texts.append(f"{_stepped(length.mm / MM_PER_INCH, digits, to_step)} in")
    return tuple(texts)


def _stepped(value: float, digits: int, to_step: Callable[[float], int]) -> str:
    return _plain(to_step(value * 10**digits) / 10**digits, digits)


def _plain(value: float, digits: int) -> str:
    # Adding 0 turns the minus zero of a rounded value into plain zero.
    return f"{round(value, digits) + 0.0:.{digits}f}"
