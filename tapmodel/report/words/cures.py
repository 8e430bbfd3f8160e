"""Cures in words, as the end of a sentence: as typed into a job, and in inches where wanted."""

import math
from collections.abc import Callable

from tapmodel.findings import Bound, Cure, Setting
from tapmodel.report.blocks import Length
from tapmodel.report.tools import drill_of
from tapmodel.report.units import as_text, shown, shown_high, shown_low
from tapmodel.report.words.worsened import cost
from tapmodel.words import Units

DRILL = "hole.drill"

_ROUNDED = {Bound.AT_MOST: shown_high, Bound.AT_LEAST: shown_low, Bound.EXACTLY: shown}
"""To the legal side."""

_WHOLE: dict[Bound, Callable[[float], int]] = {
    Bound.AT_MOST: math.floor,
    Bound.AT_LEAST: math.ceil,
    Bound.EXACTLY: round,
}
"""Likewise of degrees, which are told whole."""

LEAST_DIGITS = 3
"""Decimals in mm that inches are made of, which have one more: 6 mm is 0.2362 in, not 0.2."""


def setting_text(setting: Setting, units: Units = Units.MM) -> str:
    """One value, as the middle of a sentence that begins with "set"."""
    words = f"{setting.field} {setting.bound} {value_text(setting, units)}"
    gone = f" (in place of {' and '.join(setting.replaces)})" if setting.replaces else ""
    bought = "" if setting.at_hand else " (not among shop.cutters)"
    return words + bought + gone


def value_text(setting: Setting, units: Units) -> str:
    """A value as a job takes it; first in inches or °F for whoever reads those alone.

    A drill to be taken is told as it is asked for at the store.
    """
    sold = setting.field == DRILL and setting.bound is Bound.EXACTLY
    if sold and not isinstance(setting.value, str):
        return as_text(drill_of(setting.value), units)
    typed = f"{setting.text} {setting.unit}".rstrip()
    if units is Units.MM or isinstance(setting.value, str) or setting.unit not in {"mm", "°C"}:
        return typed
    if setting.unit == "mm":
        length = Length(setting.value, max(setting.digits, LEAST_DIGITS))
        other = _ROUNDED[setting.bound](length, Units.INCH)[0]
    else:
        other = f"{_WHOLE[setting.bound](32 + 1.8 * setting.value)} °F"
    return f"{other} ({typed})" if units is Units.INCH else f"{typed} ({other})"


def cure_text(cure: Cure, units: Units = Units.MM) -> str:
    """All values of a cure, as the middle of such a sentence."""
    return " and ".join(setting_text(setting, units) for setting in cure.settings)


def _offer(cure: Cure, units: Units) -> str:
    """The same with what it costs behind it."""
    costs = cost(cure, units)
    return f"{cure_text(cure, units)} ({costs})" if costs else cure_text(cure, units)


def applied(cure: Cure) -> str:
    """What a job was given by a cure: "flutes.count = 3"."""
    values = (f"{each.field} = {each.text} {each.unit}".rstrip() for each in cure.settings)
    return ", ".join(values)


def advice(cures: tuple[Cure, ...], units: Units = Units.MM) -> str:
    """What to set, one cure or another: "set ..."; "" without cures."""
    if not cures:
        return ""
    long = any(len(cure.settings) > 1 or cure.worsens or cure.leaves for cure in cures)
    return f"set {(', or ' if long else ' or ').join(_offer(cure, units) for cure in cures)}"
