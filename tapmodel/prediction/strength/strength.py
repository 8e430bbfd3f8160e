"""What a tap of some steel bears, and where it gives way first."""

import math
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from tapmodel.prediction.band import Band
from tapmodel.prediction.strength.edge import edge_of
from tapmodel.prediction.strength.field import inside_of
from tapmodel.prediction.strength.notch import notch_of
from tapmodel.prediction.strength.outlines import Slice, slices_of
from tapmodel.prediction.strength.plastic import reach_inwards, sand_heap
from tapmodel.prediction.strength.record import Breaking, Place, Section, Spot, Strength
from tapmodel.prediction.strength.steel import SHEARED, YIELDS, tensile, yield_shear
from tapmodel.prediction.strength.torsion import Torsion, peak_of, round_torsion, torsion_of
from tapmodel.shape.outlines.outline import Loop
from tapmodel.standards.materials.steels import TapSteel
from tapmodel.tap.tap import Tap

Floats = NDArray[np.float64]

STOP_SHARE = 0.75
"""Which share of the least torque that yields or breaks it a tap is to be turned with at most: a
quarter for what bends it besides (common practice)."""

_HEAP_POINTS = 32
_ON_CIRCLE = 1e-6
_N_MM = 1e-3  # N·m by N·mm


_KEPT = 128
"""Sections whose torsion is kept: what a trial of other values leaves alone, most trials ask for
again, and so do taps that differ in hand and starts alone."""

_Peak = tuple[float, tuple[float, float]]
"""Greatest shear in 1 N·m [MPa], and its place [mm]."""


@dataclass(frozen=True, slots=True)
class _Twisted:
    """A slice with its torsion; shears in 1 N·m [MPa]."""

    slice: Slice
    section: Section
    land: float
    core: float


@dataclass(frozen=True, slots=True)
class _Sheared:
    """What torsion does to a section that is not round, wherever it stands.

    Attributes:
        stiffness: its torsion constant [mm⁴].
        land, rest: peaks on the circle of its lands, and elsewhere on its edge.
        core: greatest shear under the case, in 1 N·m [MPa].
    """

    stiffness: float
    land: _Peak
    rest: _Peak
    core: float


def strength_of(
    tap: Tap, steel: TapSteel, nose_radius: float | None = None, *, run_out: bool = True
) -> Strength:
    """The torques that a tap yields and breaks at.

    Args:
        tap: one that the rules let pass: its flutes leave a core and lands.
        steel: of which it is made, as hard as it is.
        nose_radius: corner at both sides of a flat thread root [mm]; None for the usual one of
            a threading tool. A rounded root has its own.
        run_out: whether sections along the run-out of the flutes are looked at beside the one
            where it begins; trials of a design may do without.

    Raises:
        InputError: a hardness beyond the tables.

    Source: derived here: Saint-Venant's torsion of plane sections, the row of grooves for the
    thread, a brittle steel that breaks by the greatest tension.
    """
    cuts = [_twisted(cut, steel) for cut in slices_of(tap, run_out=run_out)]
    root, weakest = cuts[0], max(cuts, key=lambda cut: cut.section.shear)
    breaking, yielding = tensile(steel.hardness), yield_shear(steel.hardness)
    notch = notch_of(tap.thread, steel, breaking.likely, nose_radius)
    core = _core(steel)
    yields, yields_at = _first_yield(cuts, yielding, core)
    thread_root = _over(breaking, root.land * notch.factor)
    plastic = _plastic(weakest, core if core and weakest.core else yielding)
    breaks, governs = _first_break(root, weakest, (breaking, thread_root, plastic))
    return Strength(
        steel=steel,
        sections=tuple(cut.section for cut in cuts),
        notch=notch,
        land_shear=root.land,
        yields=yields,
        yields_at=yields_at,
        floor=_over(breaking, _floor_shear(cuts)),
        thread_root=thread_root,
        plastic=plastic,
        breaks=breaks,
        governs=governs,
        bears=STOP_SHARE * min(yields.low, breaks.low),
    )


def _twisted(cut: Slice, steel: TapSteel) -> _Twisted:
    case = steel.case_depth
    if cut.is_round:
        return _round(cut, case)
    found = _sheared(cut.sector, cut.turns, cut.bore, cut.radius, case)
    (land, land_at), (rest, rest_at) = found.land, found.rest
    flat = Spot.FLAT if cut.place is Place.SQUARE else Spot.FLOOR
    peak, at, spot = (land, land_at, Spot.LAND) if land > rest else (rest, rest_at, flat)
    section = Section(cut.place, cut.z, found.stiffness, 1 / (peak * _N_MM), peak, spot, at)
    return _Twisted(cut, section, land, found.core)


@lru_cache(maxsize=_KEPT)
def _sheared(sector: Loop, turns: int, bore: float, radius: float, case: float) -> _Sheared:
    """Torsion of a section by a sector of it; `radius` of its lands, `case` its depth [mm]."""
    torsion = torsion_of(edge_of(sector, turns, bore))
    on_land = np.abs(np.abs(torsion.places) - radius) < _ON_CIRCLE * radius
    return _Sheared(
        stiffness=torsion.stiffness,
        land=_peak(torsion, on_land),
        rest=_peak(torsion, ~on_land),
        core=_core_shear(torsion, case) if case else 0.0,
    )


def _core_shear(torsion: Torsion, case: float) -> float:
    """Greatest shear under the case, in 1 N·m [MPa]; 0 where the section is case throughout."""
    deep = reach_inwards(torsion.edge) > case
    under = inside_of(torsion, case).shear[deep]
    return float(np.max(under, initial=0.0)) / _N_MM


def _peak(torsion: Torsion, among: NDArray[np.bool_]) -> _Peak:
    """Greatest shear in 1 N·m at some of the nodes [MPa], and its place [mm]."""
    if not among.any():
        return 0.0, (0.0, 0.0)
    peak, place = peak_of(torsion.places[among], torsion.shear[among])
    return peak / _N_MM, (place.real, place.imag)


def _round(cut: Slice, case: float) -> _Twisted:
    stiffness, modulus = round_torsion(2 * cut.radius, 2 * cut.bore)
    shear = 1 / (modulus * _N_MM)
    section = Section(cut.place, cut.z, stiffness, modulus, shear, Spot.ROUND, (cut.radius, 0.0))
    core = shear * max(1 - case / cut.radius, 0.0) if case else 0.0
    return _Twisted(cut, section, shear, core)


def _first_yield(cuts: list[_Twisted], surface: Band, core: Band | None) -> tuple[Band, Breaking]:
    """Of the surface, or of a soft core where it yields before."""
    weakest = max(cuts, key=lambda cut: cut.section.shear)
    band, section = _over(surface, weakest.section.shear), weakest.section
    spot = section.spot
    if core is not None:
        soft = max(cuts, key=lambda cut: cut.core)
        beneath = _over(core, soft.core)
        if beneath.likely < band.likely:
            band, section, spot = beneath, soft.section, Spot.CORE
    return band, Breaking(section.place, section.z, spot, band.likely)


def _core(steel: TapSteel) -> Band | None:
    """Shear at which the core of a cased steel yields [MPa]; None for one that is hard through."""
    if not steel.case_depth:
        return None
    return Band(*(SHEARED * share * steel.core_tensile for share in YIELDS))


def _first_break(
    root: _Twisted, weakest: _Twisted, limits: tuple[Band, Band, Band]
) -> tuple[Band, Breaking]:
    """Of the weakest section, the thread's root or all of a section, the likely first.

    `limits` are the breaking stress [MPa], and the torques of thread root and whole section.
    """
    breaking, thread_root, plastic = limits
    section = weakest.section
    ways = (
        (_over(breaking, section.shear), section, section.spot),
        (thread_root, root.section, Spot.THREAD_ROOT),
        (plastic, section, Spot.WHOLE),
    )
    band, where, spot = min(ways, key=lambda way: way[0].likely)
    bands = [way[0] for way in ways]
    low, high = min(each.low for each in bands), min(each.high for each in bands)
    return Band(low, band.likely, high), Breaking(where.place, where.z, spot, band.likely)


def _floor_shear(cuts: list[_Twisted]) -> float:
    """Greatest shear at the floor of a flute, in 1 N·m [MPa]; 0 where no floor is peaked."""
    sections = (cut.section for cut in cuts)
    return max((each.shear for each in sections if each.spot is Spot.FLOOR), default=0.0)


def _plastic(weakest: _Twisted, shear: Band) -> Band:
    cut = weakest.slice
    if cut.is_round:
        heap = 2 * math.pi * (cut.radius**3 - cut.bore**3) / 3
    else:
        heap = _heap(cut.sector, cut.turns, cut.bore)
    return Band(*(heap * stress * _N_MM for stress in _ends(shear)))


@lru_cache(maxsize=_KEPT)
def _heap(sector: Loop, turns: int, bore: float) -> float:
    """Torque in a shear that is the same all over the section [mm³]."""
    return sand_heap(edge_of(sector, turns, bore, _HEAP_POINTS, even=True))


def _over(stress: Band, shear: float) -> Band:
    """Torques [N·m] at which a shear that is told for 1 N·m reaches a stress, both [MPa]."""
    if shear <= 0.0:
        return Band(math.inf, math.inf, math.inf)
    return Band(stress.low / shear, stress.likely / shear, stress.high / shear)


def _ends(band: Band) -> tuple[float, float, float]:
    return band.low, band.likely, band.high
