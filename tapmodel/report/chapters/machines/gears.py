"""Change gears that cut the tap's lead on the lathe of the shop."""

from collections.abc import Sequence
from functools import partial
from typing import TYPE_CHECKING

from tapmodel.report.blocks import (
    Chapter,
    Paragraphs,
    Quantity,
    Row,
    Rows,
    Table,
    Telling,
    Told,
    Words,
)
from tapmodel.report.words import gears as words
from tapmodel.shop.gears.another_wheel import another_wheel
from tapmodel.shop.gears.asked import GearsAsked, GearsFor, asked_by
from tapmodel.shop.gears.lead_room import LeadRoom
from tapmodel.shop.gears.trains import GearTrain, gear_trains, lacks_inch_wheel

if TYPE_CHECKING:
    # A lead alone is answered without what a tap takes to load.
    from tapmodel.designing.record import TapDesign

TITLE = "Change gears"

BEST = 5
"""Trains on paper."""

_HEAD = ("drivers", "driven", "cuts", "off by")
_OVER_THREAD = ("over the thread", "of the zone")


def chapter(design: "TapDesign") -> Chapter:
    """The best trains, where the job names both leadscrew and wheels; else nothing."""
    asked = asked_by(design)
    if asked is None:
        return Chapter("gears", TITLE, ())
    trains = gear_trains(asked.lead, asked.leadscrew, asked.wheels, BEST)
    return gears_chapter(asked, trains)


def gears_chapter(asked: GearsAsked, trains: Sequence[GearTrain]) -> Chapter:
    """What is cut with which leadscrew, the trains, and how they are set up."""
    tap = asked.tap
    several = tap is not None and tap.thread.starts > 1
    rows = Rows(
        (
            Row("lead to cut" if several else "pitch to cut", Words(words.pitch_text(asked.lead))),
            Row("leadscrew", Words(words.pitch_text(asked.leadscrew))),
        )
    )
    head = _HEAD if tap is None else (*_HEAD, *_OVER_THREAD)
    table = Table(head, tuple(_line(train, tap and tap.room) for train in trains))
    return Chapter("gears", TITLE, (rows, table, Paragraphs(_notes(asked, trains, tap))))


def _line(train: GearTrain, room: LeadRoom | None) -> tuple[Quantity, ...]:
    places = train.meshing
    cells = (
        Words(words.teeth_text(places.drivers)),
        Words(words.teeth_text(places.driven)),
        Told(partial(words.made_text, train)),
        Words(words.error_text(train)),
    )
    if room is None:
        return cells
    along = Told(partial(words.along_text, train, room))
    return (*cells, along, Words(words.share_text(train, room)))


def _notes(
    asked: GearsAsked, trains: Sequence[GearTrain], tap: GearsFor | None
) -> tuple[str | Telling, ...]:
    best = trains[0]
    notes: list[str | Telling] = []
    if tap is not None and best.error:
        notes.append(partial(words.room_text, tap.room))
        notes += [words.BEYOND] if tap.room.share(best) > 1 else []
    if best.error and lacks_inch_wheel(asked.lead, asked.leadscrew, asked.wheels):
        notes.append(words.INCH_WHEEL)
    more = another_wheel(asked)
    if more is not None:
        notes.append(words.another_wheel_text(more, asked.wheels, of_tap=tap is not None))
    if any(len(train.drivers) > 1 for train in trains):
        notes.append(words.PLACES)
    notes += [words.foul_text(train) for train in trains if not train.meshing.fits]
    if tap is None:
        return (*notes, words.EITHER_HAND, words.IDLER)
    if tap.thread.starts > 1:
        notes.append(partial(words.starts_text, tap.thread))
    return (*notes, words.DIRECTION[tap.thread.hand], words.IDLER)
