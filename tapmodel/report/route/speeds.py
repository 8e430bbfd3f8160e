"""Rows of speed and feed for the annealed steel of the tap."""

from functools import partial

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Length, Row, Told, Words
from tapmodel.report.units import in_words
from tapmodel.shop.cutting_speed import (
    DRILLING,
    FINISHING,
    TEETH,
    Cut,
    speed,
    table_feed,
    turning_feed,
)
from tapmodel.shop.tapping_speed import revolutions
from tapmodel.shop.threading.stopping import BY_HAND, REACTION, stopping
from tapmodel.standards.inches import MM
from tapmodel.words import Units

RULE = (
    "Speeds and feeds are common practice for the annealed steel and tools of high-speed steel; "
    "where a machine does not turn so fast, take the fastest that it has. Carbide takes thrice "
    "the speed where it does not chatter."
)
"""What they hold for."""

_PER_FOOT = 12 * MM / 1000
"""Metres in a foot."""


def speed_row(design: TapDesign, cut: Cut) -> Row:
    """Surface speed of a cut."""
    return Row("cutting speed", Told(partial(_speed, speed(_steel(design), cut))))


def turns_row(design: TapDesign, cut: Cut, diameter: float, what: str) -> Row:
    """Turns a minute for a cut on a diameter [mm]; `what` has that diameter."""
    return _turns(speed(_steel(design), cut), diameter, what)


def turned(design: TapDesign, diameter: float, what: str) -> tuple[Row, ...]:
    """Speed, turns and feeds for turning from a diameter [mm]; `what` has it."""
    feed = turning_feed(diameter)
    return (
        speed_row(design, Cut.TURNING),
        turns_row(design, Cut.TURNING, diameter, what),
        Row("feed in a turn, roughing", Length(feed)),
        Row("feed in a turn, last cut", Length(FINISHING * feed)),
    )


def milled(design: TapDesign, cutter: float, what: str) -> tuple[Row, ...]:
    """Speed, turns and feed of a cutter [mm]."""
    feed = table_feed(_steel(design), cutter)
    return (
        speed_row(design, Cut.MILLING),
        turns_row(design, Cut.MILLING, cutter, what),
        Row(f"feed of the table in a minute, {TEETH} teeth", Told(partial(_a_minute, feed))),
    )


def stopped(design: TapDesign) -> tuple[Row, ...]:
    """Turns of the spindle at which a hand still stops behind the thread, and what to set.

    Nothing where the tool runs out over what is thinner, so that it need not be stopped.
    """
    found = stopping(design.tap)
    if found is None:
        return ()
    cutting = revolutions(speed(_steel(design), Cut.THREADING), design.tap.thread.major)
    label = partial(_stops, design.tap.blank.neck_length if found.neck else None)
    if found.turns < BY_HAND:
        return (Row(label, Words("turn it by hand")),)
    least = min(cutting, found.turns)
    return (
        Row(label, Words(_two_figures(found.turns))),
        Row("the lesser of both, turns a minute to set", Words(_two_figures(least))),
    )


def _stops(neck: float | None, units: Units) -> str:
    place = (
        "in the last turn" if neck is None else f"in the neck of {in_words(neck, '.1f|.2f', units)}"
    )
    return f"turns a minute at which a hand, in {REACTION:g} s (from memory), stops {place}"


def drilled(design: TapDesign) -> tuple[Row, ...]:
    """Speed and turns of the drill in what is tapped."""
    slow = DRILLING * min(design.work.material.group.speed)
    label = "cutting speed of the drill (common practice)"
    return Row(label, Told(partial(_speed, slow))), _turns(slow, design.drill, "of the drill")


def _turns(at: float, diameter: float, what: str) -> Row:
    """Told to two figures, as nobody sets more."""
    return Row(partial(_label, what, diameter), Words(_two_figures(revolutions(at, diameter))))


def _two_figures(turns: float) -> str:
    return f"{float(f'{turns:.2g}'):g}"


def _label(what: str, diameter: float, units: Units) -> str:
    return f"turns a minute {what}, {in_words(diameter, '.2f', units)}"


def _speed(metres: float, units: Units) -> str:
    texts = {Units.MM: f"{metres:.2g} m/min", Units.INCH: f"{metres / _PER_FOOT:.2g} ft/min"}
    return texts.get(units) or " = ".join(texts.values())


def _a_minute(feed: float, units: Units) -> str:
    return in_words(float(f"{feed:.2g}"), ".1f", units)


def _steel(design: TapDesign) -> str:
    return design.work.steel.name
