"""Twist drills as shops stock them: metric, fraction, number and letter sizes."""

import math
from dataclasses import dataclass
from functools import cache

from tapmodel.sources import Source
from tapmodel.standards.inches import MM
from tapmodel.standards.tables import read_table
from tapmodel.words import Certainty

METRIC = "metric"
INCH_SETS = ("fraction", "number", "letter")
DRILL_SETS = (METRIC, *INCH_SETS)
"""Names of the sets, as a job writes them."""

MICRO_STEP, LARGEST_MICRO = 0.01, 1.0
"""Step of metric drills below that diameter [mm]; common practice."""

METRIC_STEPS = ((14.0, 0.05), (32.0, 0.25), (51.0, 0.5))
"""From there up to each of these diameters they are stocked in that step [mm], as the short series
of straight and taper shanks are listed (ISO 235, DIN 338 and DIN 345, from memory)."""

LARGEST_DRILL = METRIC_STEPS[-1][0]
"""Thicker holes [mm] are bored; common practice."""

FINE_FRACTIONS, FRACTIONS = 112, 128
"""Fractions come by 1/64 in up to so many of them, 1 3/4 in, and by 1/32 in up to 2 in."""

INCH_SIZES = Source(
    "ASME B94.11M",
    "twist drill sizes; letters and most numbers also as read in bd_warehouse 0.4.0 "
    "drill_sizes.csv",
    Certainty.MEMORY,
)

_SAME = 1e-6
"""Diameters [mm] this close are one drill: sizes are whole in the sixth decimal."""


@dataclass(frozen=True, slots=True)
class Drill:
    """One twist drill.

    Attributes:
        name: as it is stamped or called: "10.2 mm", "13/64", "#7" or "F".
        diameter: [mm].
        drill_set: the set it belongs to, one of `DRILL_SETS`.
    """

    name: str
    diameter: float
    drill_set: str


def metric_drill(diameter: float) -> Drill:
    """The drill of a diameter [mm] that is written in mm.

    Source: by definition.
    """
    return Drill(f"{diameter:.6g} mm", diameter, METRIC)


def metric_step(diameter: float) -> float:
    """Finest step of the metric drills about a diameter [mm], the last of them if thicker.

    Source: common practice, see `METRIC_STEPS`.
    """
    if diameter < LARGEST_MICRO:
        return MICRO_STEP
    return next((step for end, step in METRIC_STEPS if diameter <= end), METRIC_STEPS[-1][1])


@cache
def inch_drills(drill_set: str) -> tuple[Drill, ...]:
    """The drills of one of `INCH_SETS`, thinnest first.

    Fractions run from 1/64 to 1 3/4 in by 1/64 and to 2 in by 1/32, numbers from 80 (thinnest)
    to 1, letters from A to Z.

    Source: `INCH_SIZES`; each cell of its tables says how sure it is. Sizes of fractions by
    definition; how far they are stocked, from memory.
    """
    if drill_set == "fraction":
        stocked = (*range(1, FINE_FRACTIONS), *range(FINE_FRACTIONS, FRACTIONS + 1, 2))
        sizes = [(_fraction(count), count / 64) for count in stocked]
    else:
        mark = "#" if drill_set == "number" else ""
        rows = read_table(f"drill_{drill_set}s")
        sizes = [(mark + row["name"], float(row["diameter"])) for row in rows]
    drills = [Drill(name, round(size * MM, 6), drill_set) for name, size in sizes]
    return tuple(sorted(drills, key=lambda drill: drill.diameter))


def inch_names(diameter: float) -> tuple[str, ...]:
    """Names of the inch drills of a diameter [mm]: none, one, or two for 1/4 in, which is E too.

    Source: `INCH_SIZES`.
    """
    drills = (drill for name in INCH_SETS for drill in inch_drills(name))
    return tuple(drill.name for drill in drills if abs(drill.diameter - diameter) < _SAME)


def drill_called(name: str) -> Drill:
    """The number or letter drill of a name such as "#7" or "Z".

    Raises:
        KeyError: no drill is called so.

    Source: `INCH_SIZES`.
    """
    named = {drill.name: drill for kind in ("number", "letter") for drill in inch_drills(kind)}
    return named[name]


def next_drills(drill_set: str, diameter: float) -> tuple[Drill | None, Drill | None]:
    """The thickest drill of a set at most as thick as `diameter` [mm], and the thinnest at least.

    None where the set has no such drill.

    Source: metric sizes in steps of `metric_step`; inch sizes `INCH_SIZES`.
    """
    if drill_set == METRIC:
        step = metric_step(diameter)
        steps = round(diameter / step, 6)
        below, above = (round(n * step, 2) for n in (math.floor(steps), math.ceil(steps)))
        return (
            metric_drill(min(below, LARGEST_DRILL)) if below > 0 else None,
            metric_drill(above) if above <= LARGEST_DRILL else None,
        )
    drills = inch_drills(drill_set)
    thinner = [drill for drill in drills if drill.diameter <= diameter + _SAME]
    thicker = [drill for drill in drills if drill.diameter >= diameter - _SAME]
    return (thinner[-1] if thinner else None, thicker[0] if thicker else None)


def _fraction(count: int) -> str:
    """So many 64ths of an inch: whole inches, and the rest in lowest terms."""
    whole, rest = divmod(count, 64)
    divisor = math.gcd(rest, 64)
    parts = (str(whole) if whole else "", f"{rest // divisor}/{64 // divisor}" if rest else "")
    return " ".join(filter(None, parts))
