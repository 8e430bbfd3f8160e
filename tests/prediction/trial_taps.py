"""Taps of every family for trials of the prediction, and what a trial changes about one."""

import math
from dataclasses import fields, is_dataclass, replace
from functools import cache
from typing import Any

from tapmodel.designing.record import TapDesign
from tapmodel.designing.settle import settle
from tapmodel.shape import relief
from tapmodel.spec.job_file import job_for
from tapmodel.tap.tap import Relief, Reliefs, Tap
from tapmodel.words import ReliefPlace

FAMILIES = (
    *("M10", "M18x0.75", "M20xPh6P1.5", "1/2-13 UNC", "0.80 UNM", "1/2 BSW", "G1/2"),
    *("4 BA", "Tr20x4", "Tr40x14P7", "1/2-10 ACME-2G"),
)
"""A thread of each family, some with several starts, four with rounded crests."""

# Lengths and angles among the fields of a tap: angles and counts stay when it grows.
_UNSCALED = ("starts", "flank_angle", "angle", "count", "margin_angle", "shoulder_angle")


@cache
def designed(designation: str, *sets: str) -> TapDesign:
    return settle(job_for(designation, sets))


def grown(tap: Tap, factor: float) -> Tap:
    """The same shape, every length times `factor`."""
    return _grown(tap, factor)


def _grown(record: Any, factor: float) -> Any:  # noqa: ANN401
    changed: dict[str, Any] = {}
    for field in fields(record):
        value = getattr(record, field.name)
        if is_dataclass(value):
            changed[field.name] = _grown(value, factor)
        elif isinstance(value, float) and field.name not in _UNSCALED:
            changed[field.name] = value * factor
    return replace(record, **changed)


def relieved(tap: Tap, thread: Relief, chamfer: Relief) -> Tap:
    return replace(tap, relief=Reliefs(thread, chamfer))


def unrelieved(tap: Tap) -> Tap:
    return relieved(
        tap, relief.concentric(ReliefPlace.CREST), relief.concentric(ReliefPlace.CHAMFER)
    )


def faced(tap: Tap, rake: float) -> Tap:
    """The same tap with straight faces of that rake at the crest [deg], its core kept."""
    flutes, major = tap.flutes, tap.thread.major
    ball, wall = 0.16 * major, major / 2 * math.sin(math.radians(rake))
    offset = wall - ball
    centre = math.sqrt((0.25 * major + ball) ** 2 - offset**2)
    return replace(
        tap,
        flutes=replace(
            flutes, count=4, cutter_diameter=2 * ball, offset=offset, centre_radius=centre
        ),
    )


def reliefs(place: ReliefPlace, major: float) -> tuple[Relief, ...]:
    """One of each kind; one margin ends on the land, one on the face itself."""
    return (
        relief.concentric(place),
        relief.eccentric_by_edge(place, major, 5.0),
        relief.con_eccentric(place, major, 40.0, 12.0, 0.01 * major),
        relief.con_eccentric(place, major, 40.0, 0.5, 0.01 * major),
    )
