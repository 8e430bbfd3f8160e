"""Carburising: carbon under a flat surface and in the tap's own tooth, and the time for a case."""

from dataclasses import replace

import numpy as np

from tapmodel.errors import InputError
from tapmodel.prediction.heat.diffusion import STEPS, Bath, Diffused, diffused
from tapmodel.prediction.heat.diffusivity import agren, reach
from tapmodel.prediction.heat.grid import Floats, Grid, Numbers, spacing, strip
from tapmodel.prediction.heat.harris import total_case
from tapmodel.prediction.heat.record import (
    CASE,
    LONGEST,
    SHORTEST,
    Carburised,
    Carburising,
    Place,
    Profile,
    Tooth,
)
from tapmodel.prediction.heat.saturation import saturation
from tapmodel.prediction.heat.tooth_grid import tooth_grid
from tapmodel.tap.tap import TapThread

TOLD = (0.0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.7, 1.0, 1.5, 2.0)
"""Depths that are told [mm]."""

_REACHES = 8.0
"""Depth of a section in the length that carbon goes: below it there is none."""

_STEEL_DENSITY = 7850.0
"""Of the steel [kg/m³], as in the source of the mass gains that the tests hold."""

_CLOSE = 1e-4
"""Share by which a depth may miss the one that is wanted."""

_TRIES = 30


def carburised(asked: Carburising, thread: TapThread | None, fineness: float = 1.0) -> Carburised:
    """What a carburising makes of a flat surface, and of a thread where one is named.

    Args:
        asked: how it is done.
        thread: of the tap; None for the flat alone.
        fineness: of grid and steps of time, 1 for 0.01 % carbon and 5 µm.

    Source: Fick's second law with the diffusivity of `diffusivity.AGREN`, computed here.
    """
    found = _of_flat(asked, fineness)
    return Carburised(
        asked=asked,
        flat=_profile(found, found.grid.under_root),
        tooth=None if thread is None else _tooth(asked, thread, fineness),
        harris=total_case(asked.celsius, asked.hours),
        saturation=saturation(asked.celsius),
        gained=_STEEL_DENSITY * found.gained / _width(found.grid) / 100,
    )


def hours_for(asked: Carburising, thread: TapThread | None, case: float) -> float:
    """Time after which carbon falls to `CASE` at a depth [h]: under the root, or under a flat.

    Args:
        asked: how it is done; its hours do not matter.
        thread: of the tap; None for a flat.
        case: the depth [mm].

    Raises:
        InputError: it takes longer than `LONGEST`, or less than `SHORTEST`, or the core of the tap
            ends before.
    """
    low, high = SHORTEST, LONGEST
    hours = 1.0
    for _ in range(_TRIES):
        found = _case(replace(asked, hours=hours), thread)
        if found is not None and abs(found - case) < _CLOSE * case:
            return hours
        if found is None or found > case:
            high = hours
        else:
            low = hours
        # Depths grow almost as the root of time; bisection where that leads astray.
        guess = hours * (case / found) ** 2 if found else 0.0
        hours = guess if low < guess < high else (low * high) ** 0.5
        if high / low < 1 + _CLOSE:
            break
    raise InputError("--depth", case, _reachable(asked, thread))


def _reachable(asked: Carburising, thread: TapThread | None) -> str:
    """What a message says of the depths that there are."""
    where = "under a flat surface" if thread is None else "under this root"
    least, most = (_case(replace(asked, hours=hours), thread) for hours in (SHORTEST, LONGEST))
    if most is None and thread is not None:
        most = thread.minor / 2
    return f"{least or 0.0:.2g} to {most or 0.0:.3g} mm {where}, in {SHORTEST:g} to {LONGEST:g} h"


def _case(asked: Carburising, thread: TapThread | None) -> float | None:
    found = _of_flat(asked, 1.0) if thread is None else _of_thread(asked, thread, 1.0)
    return _depth_of_case(found, found.grid.under_root)


def _bath(asked: Carburising) -> tuple[Bath, float]:
    """What the section stands in, and the length that carbon goes [mm]."""
    law = agren(asked.celsius)
    goes = reach(law, max(asked.surface, asked.steel), asked.seconds)
    return Bath(law, asked.steel, asked.surface), goes


def _steps(fineness: float) -> int:
    return round(STEPS * fineness)


def _of_flat(asked: Carburising, fineness: float) -> Diffused:
    bath, goes = _bath(asked)
    grid = strip(_REACHES * goes, spacing(goes, fineness))
    return diffused(grid, bath, asked.seconds, _steps(fineness))


def _of_thread(asked: Carburising, thread: TapThread, fineness: float) -> Diffused:
    bath, goes = _bath(asked)
    # No carbon passes the axis, which the other side comes to likewise.
    depth = min(_REACHES * goes, thread.minor / 2)
    grid = tooth_grid(thread, depth, spacing(goes, fineness))
    return diffused(grid, bath, asked.seconds, _steps(fineness))


def _tooth(asked: Carburising, thread: TapThread, fineness: float) -> Tooth:
    found = _of_thread(asked, thread, fineness)
    grid, height = found.grid, (thread.major - thread.minor) / 2
    return Tooth(
        found=found,
        height=height,
        pitch=thread.pitch,
        under_crest=_profile(found, grid.under_crest),
        under_root=_profile(found, grid.under_root),
        middle=_place(found, grid.under_crest, height / 2),
    )


def _profile(found: Diffused, line: Numbers) -> Profile:
    end = float(found.grid.depths(line)[-1])
    places = tuple(_place(found, line, depth) for depth in TOLD if depth <= end)
    return Profile(places, _depth_of_case(found, line))


def _place(found: Diffused, line: Numbers, depth: float) -> Place:
    carbon = found.grid.at_depth(found.carbon, line, np.array([depth]))
    return Place(depth, float(carbon[0]))


_FINE = 4000  # places at which a line is looked at


def _depth_of_case(found: Diffused, line: Numbers) -> float | None:
    """Depth at which carbon falls to `CASE`; None where it is nowhere so much, or so little."""
    end = float(found.grid.depths(line)[-1])
    depths: Floats = np.linspace(0.0, end, _FINE)
    below = np.flatnonzero(found.grid.at_depth(found.carbon, line, depths) < CASE)
    if not len(below) or not below[0]:
        return None
    at = int(below[0])
    high, low = found.grid.at_depth(found.carbon, line, depths[at - 1 : at + 1])
    return float(depths[at - 1] + (high - CASE) / (high - low) * (depths[at] - depths[at - 1]))


def _width(grid: Grid) -> float:
    """Of a grid along the axis [mm]."""
    return float(np.ptp(grid.nodes[:, 0]))
