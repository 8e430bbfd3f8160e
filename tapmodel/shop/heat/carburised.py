"""Carburising for a time or a depth, what to heed of it, and the answer for JSON."""

from dataclasses import replace
from enum import StrEnum
from typing import Any

from tapmodel.prediction.heat.diffusivity import AGREN
from tapmodel.prediction.heat.martensite import HARDNESS, RETAINED
from tapmodel.prediction.heat.record import CASE, Carburised, Carburising, Place, Profile
from tapmodel.shop.heat.asked import DEPTH
from tapmodel.tap.tap import TapThread

SOFT_SHARE = 0.3
"""Share of austenite from which a hard tooth is noticeably softer (common practice)."""


class Heed(StrEnum):
    """What to heed of a carburising."""

    GLASS = "glass-hard-tooth"
    AUSTENITE = "retained-austenite"
    SATURATED = "more-than-saturated"
    THIN = "root-thinner-than-flat"
    NO_CASE = "no-core"


FOR_DRAWINGS = 2.5
"""Fineness of the grid on which lines of equal carbon have no kinks to be seen."""


def carburised_of(
    asked: Carburising, thread: TapThread | None, depth: float | None, fineness: float = 1.0
) -> Carburised:
    """What a carburising makes, for its own hours or those that a depth takes.

    Args:
        asked: how it is done.
        thread: of a tap; None for a flat surface alone.
        depth: wanted depth to 0.4 % carbon [mm]; None for the hours of `asked`.
        fineness: of the grid, 1 for the numbers alone.

    Raises:
        InputError: a depth that no time gives.

    Source: computed here.
    """
    # Its library of sparse matrices takes a third of a second to load.
    from tapmodel.prediction.heat.carburising import carburised, hours_for  # noqa: PLC0415

    if depth is not None:
        wanted = DEPTH.holds("--depth", depth)
        asked = replace(asked, hours=hours_for(asked, thread, wanted))
    return carburised(asked, thread, fineness)


def heeds(found: Carburised) -> tuple[Heed, ...]:
    """What to heed, the gravest first.

    Source: rule of this program.
    """
    tooth, surface = found.tooth, found.flat.places[0]
    judged = (
        (Heed.GLASS, tooth is not None and tooth.through),
        (Heed.NO_CASE, tooth is not None and tooth.under_root.case is None),
        (Heed.AUSTENITE, surface.retained >= SOFT_SHARE),
        (Heed.SATURATED, found.asked.surface > found.saturation),
        (Heed.THIN, _thinner(found)),
    )
    return tuple(heed for heed, holds in judged if holds)


def _thinner(found: Carburised) -> bool:
    """Whether the case under the root is thinner than under a flat by what matters, a twentieth."""
    under, flat = found.case, found.flat.case
    return None not in (found.tooth, under, flat) and (under or 0.0) < 0.95 * (flat or 0.0)


def carburised_record(found: Carburised, thread: str) -> dict[str, Any]:
    """The answer as JSON has it: mm, deg C, hours, mass %, HRC, shares from 0 to 1.

    Args:
        found: the answer.
        thread: designation, empty for a flat surface alone.
    """
    asked, tooth = found.asked, found.tooth
    record: dict[str, Any] = {
        "steel_carbon": asked.steel,
        "surface_carbon": asked.surface,
        "temperature": asked.celsius,
        "hours": asked.hours,
        "saturation": found.saturation,
        "case_carbon": CASE,
        "flat": _profile(found.flat) | {"gain": found.gained, "total_case_harris": found.harris},
        "tooth": None,
        "heed": [heed.value for heed in heeds(found)],
        "sources": [str(AGREN), str(HARDNESS), str(RETAINED)],
    }
    if tooth is not None:
        record["tooth"] = {
            "thread": thread,
            "pitch": tooth.pitch,
            "height": tooth.height,
            "under_crest": _profile(tooth.under_crest),
            "middle": _place(tooth.middle),
            "under_root": _profile(tooth.under_root),
            "hard_right_through": tooth.through,
        }
    return record


def _profile(profile: Profile) -> dict[str, Any]:
    return {"case": profile.case, "places": [_place(place) for place in profile.places]}


def _place(place: Place) -> dict[str, float]:
    return {
        "depth": place.depth,
        "carbon": place.carbon,
        "hardness": place.hardness,
        "retained_austenite": place.retained,
    }
