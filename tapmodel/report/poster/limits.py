"""Limits of the thread, of the tap and of the hole side by side."""

from dataclasses import dataclass

from tapmodel.designing.limits.crests import major_zone
from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Length
from tapmodel.report.units import Units, shown, shown_high, shown_low


@dataclass(frozen=True, slots=True)
class LimitRow:
    """One diameter; every text in the reader's units, a line a unit.

    Attributes:
        name: of the diameter.
        target: of the tap.
        tap, hole: limits of both.
    """

    name: str
    target: tuple[str, ...]
    tap: tuple[str, ...]
    hole: tuple[str, ...]


def limit_rows(design: TapDesign, units: Units) -> tuple[LimitRow, ...]:
    """Major, pitch and minor diameter."""
    tap, limits, hole = design.tap.thread, design.limits, design.hole

    def least(value: float, digits: int) -> tuple[str, ...]:
        return tuple(f"≥ {text}" for text in shown_low(Length(value, digits), units))

    def most(value: float, digits: int) -> tuple[str, ...]:
        return tuple(f"≤ {text}" for text in shown_high(Length(value, digits), units))

    def zone(low: float, high: float, digits: int) -> tuple[str, ...]:
        lows = shown_low(Length(low, digits), units)
        highs = shown_high(Length(high, digits), units)
        return tuple(f"{a.partition(' ')[0]} – {b}" for a, b in zip(lows, highs, strict=True))

    return (
        LimitRow(
            "major ⌀",
            shown(Length(tap.major), units),
            zone(*major_zone(design), 3),
            least(hole.major_min, 3),
        ),
        LimitRow(
            "pitch ⌀",
            shown(Length(tap.pitch_diameter, 4), units),
            zone(limits.pitch_min, limits.pitch_max, 4),
            zone(hole.pitch_min, hole.pitch_max, 4),
        ),
        LimitRow(
            "minor ⌀",
            shown(Length(tap.minor), units),
            most(hole.minor_min, 3),
            zone(hole.minor_min, hole.minor_max, 3),
        ),
    )
