"""The drill: percentage of thread that it leaves, and the nearest one out of the sets on hand."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from tapmodel.designing.record import TapDesign
from tapmodel.sources import Source
from tapmodel.spec.designation import parse
from tapmodel.standards.drill_sets import (
    INCH_SETS,
    LARGEST_DRILL,
    METRIC,
    Drill,
    drill_called,
    inch_drills,
    inch_names,
    metric_step,
    next_drills,
)
from tapmodel.standards.families import FAMILIES
from tapmodel.standards.limits import HoleLimits
from tapmodel.standards.thread_forms import ThreadForm
from tapmodel.words import Certainty

FULL_THREAD = Source(
    "Machinery's Handbook",
    "percentage of full thread: share of the depth 0.6495 P of a 60-degree screw",
    Certainty.MEMORY,
)
ENGAGEMENT = Source(
    "tapmodel",
    "share of the basic depth in which screw and hole overlap: 5/8 H at 60 degrees",
    Certainty.DERIVED,
)

FULL_DEPTH = 1.5
"""Twice the basic depth of a 60-degree screw's thread, 3/4 H: 1.299038 P on diameter."""

FINE_STEP = 0.1
"""Step of metric drills [mm] that is tried first where finer ones are stocked, too."""

NEAR_ENOUGH = 0.1
"""Stock drills in steps of more than 0.1 mm must come this near to the one aimed at, in pitches."""

_EQUAL = 1e-9
"""Distances [mm] this close are equal: binary noise of decimal sizes."""


@dataclass(frozen=True, slots=True)
class ThreadPercentage:
    """How much of the thread a drilled hole leaves [%], by the two conventions.

    Attributes:
        of_full_thread: of the basic depth 0.6495 P of a 60-degree screw, as inch handbooks count;
            None for every other form, where only the basic depth of engagement counts.
        of_engagement: of the basic depth of engagement, major less minor diameter of the form:
            1.0825 P on diameter (5/8 H a side) for 60-degree threads.
    """

    of_full_thread: float | None
    of_engagement: float


def thread_percentage(
    diameter: float, drill: float, pitch: float, form: ThreadForm
) -> ThreadPercentage:
    """Percentages of thread that a drill leaves; all lengths [mm].

    A drill of one pitch under the nominal diameter leaves 77.0 % and 92.4 % at 60 degrees.

    Source: `FULL_THREAD`, `ENGAGEMENT`.
    """
    depth = 100 * (diameter - drill) / pitch
    full = depth / (FULL_DEPTH * form.height) if form.flank_angle == 30 else None
    return ThreadPercentage(full, depth / form.minor_drop)


def percentage_left(design: TapDesign) -> ThreadPercentage:
    """What the drill of a design leaves.

    Source: as `thread_percentage`.
    """
    read = parse(design.designation)
    return percentage_of(design, FAMILIES[read.family].settle(read).diameter)


def percentage_of(design: TapDesign, diameter: float) -> ThreadPercentage:
    """What the drill of a design leaves of a thread of that diameter [mm], in the same depth.

    Source: as `thread_percentage`.
    """
    form = FAMILIES[parse(design.designation).family].form
    return thread_percentage(diameter, design.drill, design.tap.thread.pitch, form)


def with_drill_in_mm(given: Mapping[str, object]) -> dict[str, object]:
    """Values given by dotted name, the drill by its diameter [mm] where it is given by name.

    Source: `tapmodel.standards.drill_sets`.
    """
    drill = given.get("hole.drill")
    sized = {"hole.drill": drill_called(drill).diameter} if isinstance(drill, str) else {}
    return {**given, **sized}


def drill_for(engagement: float, diameter: float, pitch: float, form: ThreadForm) -> float:
    """Diameter [mm] that leaves `engagement` [%] of the basic depth of engagement.

    Source: `ENGAGEMENT`, turned round.
    """
    return diameter - engagement * form.minor_drop * pitch / 100


def nearest_drill(
    wanted: float, pitch: float, hole: HoleLimits, drill_sets: Sequence[str] = (METRIC,)
) -> float:
    """Drill nearest to `wanted` [mm] out of the sets that lies inside the minor limits.

    Two that are equally near: the thicker, which leaves less thread to cut. Where no drill of the
    sets suits, the hole is bored: `wanted` in steps of 0.01 mm, inside the limits.

    Source: rule of this program; the metric drills agree with ISO 2306 (read) at M3 to M30 coarse.
    """
    found = drills_suiting(wanted, pitch, hole, drill_sets)
    if found:
        least = min(abs(drill - wanted) for drill in found)
        return max(drill for drill in found if abs(drill - wanted) <= least + _EQUAL)
    between = round((hole.minor_min + hole.minor_max) / 2, 3)
    return _on_step(wanted, 0.01, hole) or between


def drills_suiting(
    wanted: float, pitch: float, hole: HoleLimits, drill_sets: Sequence[str]
) -> tuple[float, ...]:
    """Of `drills_inside` those that are taken [mm].

    Above 14 mm metric drills come in coarse steps: one that lies inside the limits but far from
    what is wanted would leave too much or too little thread, where a boring bar leaves it right.

    Source: rule of this program.
    """
    aimed = min(max(wanted, hole.minor_min), hole.minor_max)
    inside = drills_inside(wanted, pitch, hole, drill_sets)
    if metric_step(aimed) <= FINE_STEP:
        return inside
    return tuple(
        size
        for size in inside
        if abs(size - aimed) <= NEAR_ENOUGH * pitch + _EQUAL or inch_names(size)
    )


def drills_inside(
    wanted: float, pitch: float, hole: HoleLimits, drill_sets: Sequence[str]
) -> tuple[float, ...]:
    """Drills [mm] of the sets inside the minor limits; of the metric ones the nearest alone.

    That one lies on the coarsest step that falls inside: 0.1 mm, below pitch 1 0.05 mm, below
    1 mm diameter 0.01 mm, above 14 mm the steps of `metric_step`. Ties go to the even step, which
    gives 6.8 for M8, 10.2 for M12 and 8.8 for M10x1.25 as ISO 2306 lists them.

    Source: rule of this program.
    """
    inches = [
        drill.diameter for name in INCH_SETS if name in drill_sets for drill in inch_drills(name)
    ]
    found = [size for size in inches if hole.minor_min <= size <= hole.minor_max]
    if METRIC in drill_sets:
        finest = metric_step(min(max(wanted, hole.minor_min), hole.minor_max))
        steps = (max(FINE_STEP, finest), finest) if pitch >= 1 else (finest,)
        on_steps = (_on_step(wanted, step, hole) for step in steps)
        found += [size for size in on_steps if size is not None and size <= LARGEST_DRILL][:1]
    return tuple(found)


def neighbours(hole: HoleLimits, drill_sets: Sequence[str]) -> tuple[Drill | None, Drill | None]:
    """The drills of the sets next below and next above the minor limits; None where none is.

    Source: `tapmodel.standards.drill_sets`.
    """
    below = [next_drills(name, hole.minor_min)[0] for name in drill_sets]
    above = [next_drills(name, hole.minor_max)[1] for name in drill_sets]
    return (
        max(filter(None, below), key=lambda drill: drill.diameter, default=None),
        min(filter(None, above), key=lambda drill: drill.diameter, default=None),
    )


def _on_step(wanted: float, step: float, hole: HoleLimits) -> float | None:
    """The whole step nearest to `wanted` inside the minor limits, if any."""
    lowest = math.ceil(round(hole.minor_min / step, 6))
    highest = math.floor(round(hole.minor_max / step, 6))
    if lowest > highest:
        return None
    return round(min(max(round(round(wanted / step, 6)), lowest), highest) * step, 2)
