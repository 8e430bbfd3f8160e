"""The hole that a tap leaves against its gauges, and how often the tap can be sharpened."""

import math
from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import NDArray

from tapmodel.prediction.chips.edge import CuttingEdge
from tapmodel.shape.back_taper import narrowed
from tapmodel.shape.flute_section import land_angle, section_of
from tapmodel.shape.relief import drop
from tapmodel.standards.limits import HoleLimits
from tapmodel.tap.tap import Tap
from tapmodel.words import ReliefPlace

Floats = NDArray[np.float64]

OVERSIZE = 0.02
"""By how much a hole comes out larger than a tap led by hand or in a floating holder [mm].

Source: common practice, a hundredth or two in steel; more where chips weld to the edges."""

# Sizes that are equal but for the last digits are equal [mm].
_EQUAL = 1e-9
# Each step leaves some hundredths of what was left of the edge's place.
_STEPS = 8


class FaceLimit(StrEnum):
    """What ends the sharpening of the cutting faces."""

    PITCH = "pitch diameter"
    MAJOR = "major diameter"
    LAND = "land"


@dataclass(frozen=True, slots=True)
class Sharpening:
    """How a shop sharpens.

    Attributes:
        face_stock: ground off each cutting face at a time, along the land's arc [mm].
        chamfer_stock: by which the chamfer moves back along the axis at a time [mm].
        least_land: share of its width that a land must keep.
        least_thread: full thread that must stay behind the chamfer, in leads: each thread one
            whole turn, to lead the tap.

    Source: common practice for the stock; the two limits are rules of this program.
    """

    face_stock: float = 0.1
    chamfer_stock: float = 0.3
    least_land: float = 0.5
    least_thread: float = 1.0


@dataclass(frozen=True, slots=True)
class Gauge:
    """What the gauges say of the hole, and what the tap has left.

    Attributes:
        pitch_diameter, major, minor: of the hole [mm].
        oversize: by how much it is larger than the tap [mm].
        go: whether the GO gauge enters: pitch, major and minor diameter reach their least.
        no_go: whether the NO-GO gauge stays out: the pitch diameter keeps to its greatest.
        wear_left: in pitch diameter until GO enters no more [mm]; negative where it does not now.
        sharpenings_face: times the cutting faces can be ground before GO enters no more or the
            lands are too narrow.
        face_limit: what ends that.
        sharpenings_chamfer: times the chamfer can be ground before the full thread is too short
            or, with a back taper, too thin for the GO gauge to enter.
    """

    pitch_diameter: float
    major: float
    minor: float
    oversize: float
    go: bool
    no_go: bool
    wear_left: float
    sharpenings_face: int
    face_limit: FaceLimit
    sharpenings_chamfer: int


# Three more facts of the bench belong to the same question; a record for them would hide it.
def gauge_of(  # noqa: PLR0913
    tap: Tap,
    hole: HoleLimits,
    drill: float,
    *,
    measured: float | None = None,
    oversize: float = OVERSIZE,
    sharpening: Sharpening = Sharpening(),
) -> Gauge:
    """The hole of a tap against the limits of its gauges.

    Args:
        tap: that cuts.
        hole: limits of the thread.
        drill: diameter of the drilled hole [mm].
        measured: pitch diameter of the tap at its edges, if not as designed [mm].
        oversize: by how much the hole is larger than the tap [mm].
        sharpening: how the tap is sharpened.

    Source: derived here.
    """
    angles = _ground(tap, sharpening)
    pitches, majors = edge_diameters(tap, angles)
    if measured is not None:
        pitches = pitches + (measured - pitches[0])
    pitches, majors = pitches + oversize + widened(tap), majors + oversize
    fits = hole.minor_min - _EQUAL <= (minor := max(drill, tap.thread.minor))
    deep, wide = pitches >= hole.pitch_min - _EQUAL, majors >= hole.major_min - _EQUAL
    times = int(np.argmin(np.append(deep & wide, False)))
    pitch = float(pitches[0])
    return Gauge(
        pitch_diameter=pitch,
        major=float(majors[0]),
        minor=minor,
        oversize=oversize,
        go=fits and times > 0,
        no_go=pitch <= hole.pitch_max + _EQUAL,
        wear_left=pitch - hole.pitch_min,
        sharpenings_face=max(times - 1, 0),
        face_limit=_limit(deep, times),
        sharpenings_chamfer=_chamfers(tap, sharpening, pitch - hole.pitch_min),
    )


def widened(tap: Tap) -> float:
    """By how much teeth of the chamfer cut flanks larger than the tap is as stated [mm].

    With a back taper the first tooth to reach the pitch line has the greatest pitch diameter of
    those that do. It is taken to stand where the cone crosses that line; it stands behind by its
    distance from the tooth before at most, so the hole is no larger than this.

    Source: derived here.
    """
    thread, chamfer = tap.thread, tap.chamfer
    above = (thread.pitch_diameter - chamfer.point_diameter) / 2
    reached = max(above / math.tan(math.radians(chamfer.angle)), 0.0)
    return -2 * narrowed(tap, reached)


def edge_diameters(tap: Tap, ground: Floats) -> tuple[Floats, Floats]:
    """Pitch and major diameter at the cutting edges after grinding the faces back.

    Relief of the whole thread lowers both by the drop at the place of the edge, relief of the
    crest the major diameter alone. The ground face has the shape it had, turned about the axis.

    Args:
        tap: as designed.
        ground: angles by which the faces are ground back, (n,) [deg].

    Returns:
        The two diameters, (n,) [mm].

    Source: derived here.
    """
    relief, edge = tap.relief.thread, CuttingEdge(tap)
    full = np.full_like(ground, tap.thread.pitch_diameter)
    pitches = full
    if relief.applies_to is ReliefPlace.THREAD:
        pitches = 2 * _edge_radii(edge, full / 2, ground)
    return pitches, 2 * _edge_radii(edge, np.full_like(ground, tap.thread.major) / 2, ground)


def _edge_radii(edge: CuttingEdge, levels: Floats, ground: Floats) -> Floats:
    """Radii at which the dropped surface of the profile's radii `levels` meets the face."""
    radii, tap = levels, edge.tap
    for _ in range(_STEPS):
        behind = edge.phi(radii) + ground
        radii = levels - drop(tap.relief.thread, tap.thread.major, behind)
    return radii


def _ground(tap: Tap, sharpening: Sharpening) -> Floats:
    """Angles of the faces before and after each grinding that leaves land enough [deg]."""
    major = tap.thread.major
    land = land_angle(section_of(tap.flutes), tap.flutes.count, major / 2)
    each = math.degrees(sharpening.face_stock / (major / 2))
    most = max(0, math.floor((1 - sharpening.least_land) * land / each + _EQUAL))
    return each * np.arange(most + 1, dtype=np.float64)


def _limit(deep: NDArray[np.bool_], times: int) -> FaceLimit:
    """What the first grinding too many would break."""
    if times == len(deep):
        return FaceLimit.LAND
    return FaceLimit.MAJOR if deep[times] else FaceLimit.PITCH


def _chamfers(tap: Tap, sharpening: Sharpening, wear: float) -> int:
    """Until the full thread is too short, or so thin that the hole has worn its reserve away."""
    spare = tap.blank.thread_length - tap.chamfer_length
    spare -= sharpening.least_thread * tap.thread.lead
    if tap.thread.narrowing:
        spare = min(spare, wear / (2 * tap.thread.narrowing))
    return max(0, math.floor(spare / sharpening.chamfer_stock + _EQUAL))
