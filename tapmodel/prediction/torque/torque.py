"""The torque that a tap needs in a hole, as a band, and its course along the way."""

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from tapmodel.prediction.band import Band
from tapmodel.prediction.chips.record import Chips
from tapmodel.prediction.torque.along import Way, course_back, course_in, stop_of
from tapmodel.prediction.torque.cutting import (
    Teeth,
    cutting_forces,
    cutting_torques,
    most_together,
    teeth_of,
    thin_share,
    together,
)
from tapmodel.prediction.torque.formulas import (
    torque_by_a,
    torque_by_b,
    torque_by_c,
    torque_carried_over,
)
from tapmodel.prediction.torque.friction import chip_root_torque, rubbing_thread, wear_torque
from tapmodel.prediction.torque.record import Estimate, HoleToTap, Torque
from tapmodel.standards.materials.work import WorkMaterial
from tapmodel.tap.tap import Tap

Floats = NDArray[np.float64]

SPREAD = (0.51, 1.06)
"""Printed torque (A and B) in the one that Kienzle's law gives tooth by tooth, least and greatest:
computed for M6 to M20 with a chamfer of 5 pitches in C45, 42CrMo4 and grey iron, of the thread that
a tap has, with crests and its diameter over them. (Of a sharp V between the nominal diameter and
the drill it is 0.80 to 1.61.) Stands for the formulas where one of them is not printed, widened by
what was seen of the material or its group."""

_READ = (Estimate.FORMULA_A, Estimate.FORMULA_B)
"""Formulas that were read; only they tell with the teeth what is likely."""

THRUST = np.array([0.5, 1.0, 1.5])
"""Force square to a tooth's edge in the force along its cut, least, likely and greatest: for thin
chips they are alike (from memory, low certainty)."""


@dataclass(frozen=True, slots=True)
class _Cut:
    """A tap in a hole, at every place of the front where its torque can be greatest.

    Attributes:
        teeth: with their chips, (n,).
        forces: of the teeth [N], (n,).
        way: through the hole.
        fronts: the places, (m,) [mm].
        cutting: there [N·m], (m,).
        friction: there, least, likely and greatest [N·m], (3, m); that of the stop comes last.
    """

    teeth: Teeth
    forces: Floats
    way: Way
    fronts: Floats
    cutting: Floats
    friction: Floats


# A tap, its chips, the work and the part of a set are four things that no record holds together.
def torque_of(  # noqa: PLR0913, PLR0917
    tap: Tap,
    chips: Chips,
    material: WorkMaterial,
    rake: float,
    hole: HoleToTap,
    share: float = 1.0,
) -> Torque:
    """The torque of a new tap in a hole; `course_in` and `course_back` stay None.

    Args:
        tap: any; a left-hand tap needs what its mirror image needs.
        chips: of this tap in a hole of that drill.
        material: of the work.
        rake: of the edges where they cut [deg].
        hole: to be tapped.
        share: of the work in the hole that a tap of a set does. The printed formulas hold for all
            of it, so they are told times this share: left out they would leave a tap of a set
            with another likely torque than the one tap, though it cut all but nothing less. With
            the share by moments about the axis the taps of a set have the torque of the one
            together, as they must at one specific force; that their thinner chips cut dearer is
            what the teeth tell.

    Source: Kienzle tooth by tooth, and printed formulas, as the other files of this room say; how
    the band is made of them stands at `Torque.band`, a rule of this program.
    """
    return _torque(tap, _cut(tap, chips, material, rake, hole), hole, share)


def torque_along(  # noqa: PLR0913, PLR0917
    tap: Tap,
    chips: Chips,
    material: WorkMaterial,
    rake: float,
    hole: HoleToTap,
    share: float = 1.0,
) -> Torque:
    """The same with the course of the torque on the way in and back.

    Each line of the band runs as the teeth have it, its cutting scaled so that its greatest torque
    is that of the band.

    Source: as `torque_of`.
    """
    cut = _cut(tap, chips, material, rake, hole)
    found = _torque(tap, cut, hole, share)
    scale = _scale(cut, found.band)
    return replace(
        found,
        course_in=course_in(cut.way, scale),
        course_back=course_back(cut.way, _roots(cut)),
    )


def _cut(tap: Tap, chips: Chips, material: WorkMaterial, rake: float, hole: HoleToTap) -> _Cut:
    teeth = teeth_of(chips)
    forces = cutting_forces(teeth, material.kienzle, rake)
    way = Way(
        heights=teeth.height,
        torques=cutting_torques(teeth, forces),
        rubbing=rubbing_thread(tap, hole.drill),
        material=material,
        reach=math.inf if hole.blind else hole.depth,
        stop=stop_of(teeth.height, tap.chamfer_length, hole.depth, blind=hole.blind),
    )
    fronts = way.turning_points()
    cutting = together(way.heights, way.torques, fronts, way.reach)
    return _Cut(teeth, forces, way, fronts, cutting, way.friction(fronts))


def _torque(tap: Tap, cut: _Cut, hole: HoleToTap, share: float) -> Torque:
    material, thread = cut.way.material, tap.thread
    cutting, whole = float(np.max(cut.cutting)), sum(cut.way.torques.tolist())
    engaged = cutting / whole if whole else 0.0
    turns = tap.chamfer_length / thread.lead
    whole_work = {
        Estimate.FORMULA_A: torque_by_a(material, thread, hole.diameter, hole.drill, turns),
        Estimate.FORMULA_B: torque_by_b(material, thread, hole.diameter),
        Estimate.FORMULA_C: torque_by_c(material, thread, hole.diameter),
        Estimate.CARRIED_OVER: torque_carried_over(material, thread, hole.diameter),
    }
    printed = {
        name: None if torque is None else share * torque for name, torque in whole_work.items()
    }
    told = {name: engaged * torque for name, torque in printed.items() if torque is not None}
    banded = _band(cut, told)
    edges = cut.teeth.width * cut.teeth.radius
    rubs = np.max(cut.friction, axis=1)
    return Torque(
        cutting=cutting,
        engaged=engaged,
        friction=_banded(rubs),
        band=banded.band,
        low_by=banded.low_by,
        high_by=banded.high_by,
        likely_by=banded.likely_by,
        formula_a=printed[Estimate.FORMULA_A],
        formula_b=printed[Estimate.FORMULA_B],
        formula_c=printed[Estimate.FORMULA_C],
        thin=thin_share(cut.teeth, cut.way.torques),
        axial_force=_banded(THRUST * _first_turn(tap, cut)),
        wear=_banded(wear_torque(most_together(cut.way.heights, edges, cut.way.reach), material)),
        back=_banded(np.maximum(rubs, cut.friction[:, -1] + _roots(cut))),
    )


@dataclass(frozen=True, slots=True)
class _Banded:
    """The band of a torque and where it comes from, as `Torque` has them."""

    band: Band
    low_by: Estimate
    high_by: Estimate
    likely_by: tuple[Estimate, ...]


def _band(cut: _Cut, printed: Mapping[Estimate, float]) -> _Banded:
    """Least, likely and greatest torque, and where the ends come from.

    Args:
        cut: the tap in its hole.
        printed: torque by formulas, as far as the chamfer is engaged [N·m].
    """
    # A formula that gives less than the lands likely rub alone was not found with such lands.
    if np.any(cut.cutting > 0):
        rubs = float(np.max(cut.friction[1]))
        printed = {name: torque for name, torque in printed.items() if torque > rubs}
    read = {name: torque for name, torque in printed.items() if name in _READ}
    low, high = (1.0, 1.0) if len(read) == len(_READ) else spread_of(cut.way.material)
    scale = np.array([low, 1.0, high])
    teeth = np.max(np.outer(scale, cut.cutting) + cut.friction, axis=1)
    least, likely, most = teeth.tolist()
    highs = {Estimate.TEETH: most, **printed}
    # What is known of another kind of material only tells how much more it may be.
    lows = {Estimate.TEETH: least, **printed}
    lows.pop(Estimate.CARRIED_OVER, None)
    low_by, high_by = min(lows, key=lows.__getitem__), max(highs, key=highs.__getitem__)
    middle = math.prod((likely, *read.values())) ** (1 / (1 + len(read)))
    band = Band(lows[low_by], middle, highs[high_by])
    return _Banded(band, low_by, high_by, (Estimate.TEETH, *read))


def spread_of(material: WorkMaterial) -> tuple[float, float]:
    """Printed torque (A and B) in that of the teeth, where it is not printed [-].

    Least and greatest of `SPREAD` and of what was computed for the material, or, where not both are
    printed for it, for all of its group: none has the narrower band for having fewer estimates.

    Source: rule of this program.
    """
    low, high = material.printed or SPREAD
    return min(low, SPREAD[0]), max(high, SPREAD[1])


def _scale(cut: _Cut, band: Band) -> Floats:
    """Cutting torque of the band's lines in that of the teeth, (3,).

    The largest factor at which no place of the way has more torque than the line's greatest.
    """
    cuts = cut.cutting > 0
    if not np.any(cuts):
        return np.zeros(3)
    ends = np.array([[band.low], [band.likely], [band.high]])
    return np.maximum(np.min((ends - cut.friction[:, cuts]) / cut.cutting[cuts], axis=1), 0.0)


def _first_turn(tap: Tap, cut: _Cut) -> float:
    """Part along the axis of a force as great as that of the teeth of the first turn [N].

    Source: derived here; what a tooth is pushed by square to the cone leans by the cone's angle.
    """
    heights = cut.way.heights
    if not heights.size:
        return 0.0
    first = heights < heights[0] + tap.thread.lead
    return float(np.sum(cut.forces[first])) * math.sin(math.radians(tap.chamfer.angle))


def _roots(cut: _Cut) -> Floats:
    """Torque that shears the chips the tap has stopped in, least, likely and greatest, (3,)."""
    sections, stop = cut.teeth.area * cut.teeth.radius, np.array([cut.way.stop])
    left = together(cut.way.heights, sections, stop, cut.way.reach)
    return chip_root_torque(float(left[0]), cut.way.material)


def _banded(values: Floats) -> Band:
    least, likely, most = values.tolist()
    return Band(least, likely, most)
