"""Turns of a rotary table's handle, and degrees and minutes beyond them, in words."""

from fractions import Fraction

from tapmodel.report.words.dividing import off_text
from tapmodel.shop.rotary_table import Handle, TableIndexing
from tapmodel.spec.shop.rotary_tables import RotaryTable

ONE_WAY = "Turn the handle always the same way, so that the worm has no play, and clamp the table."
"""Common practice."""


def angle_text(angle: Fraction) -> str:
    """Degrees and minutes: "3°", "3° 26′", "3° 25.71′"."""
    degrees, rest = divmod(angle, 1)
    minutes = round(float(rest * 60), 2)
    if minutes >= 60:
        degrees, minutes = degrees + 1, 0.0
    return f"{degrees}° {minutes:g}′" if minutes else f"{degrees}°"


def handle_text(found: Handle) -> str:
    """How far the handle goes: "12 turns + 3° 26′"."""
    turns = f"{found.turns} turn" if found.turns == 1 else f"{found.turns} turns"
    if not found.beyond:
        return turns
    return f"{turns} + {angle_text(found.beyond)}" if found.turns else angle_text(found.beyond)


def error_text(found: Handle) -> str:
    """By how much the table stands beyond its place, in minutes."""
    return f"{float(found.error * 60):+.2f}′"


def table_text(table: RotaryTable) -> str:
    """The table and its dial: "90:1, divisions of 2′"."""
    if not table.division:
        return f"{table.ratio}:1"
    minutes = float(table.division * 60)
    size = f"{float(table.division):g}°" if table.division >= 1 else f"{minutes:.4g}′"
    return f"{table.ratio}:1, divisions of {size}"


def nearest_text(what: str, found: TableIndexing) -> str:
    """What cannot be set exactly, and how near one comes."""
    each = "Take each by the table below, from the first, so that errors do not add up."
    if not found.table.division:
        return f"{what} do not fall on whole degrees, and the handle is told without a dial. {each}"
    return (
        f"{what} do not all fall on a division of the rotary table's dial: none lies further than "
        f"{off_text(float(found.worst))} from its place. {each}"
    )
