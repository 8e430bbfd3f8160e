"""Which sizes a solid has: overall length, thread, major diameter, core, cutter, rake.

Each is read from faces or corners that agree with one another to the tolerance of foreign files;
where none agree, nothing is said of that size.
"""

from dataclasses import dataclass, replace
from enum import StrEnum
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from tapmodel import precision
from tapmodel.checks.causes.flute_faces import floors_seen, section_seen
from tapmodel.checks.causes.thread_seen import thread_seen
from tapmodel.checks.ideal.laws import narrowed
from tapmodel.geometry.kernel.measure.sampling import Samples
from tapmodel.geometry.kernel.measure.trimmed import TrimmedFaces
from tapmodel.shape.flute_section import FluteSection, rake, section_of
from tapmodel.tap.tap import Tap

Floats = NDArray[np.float64]

_SAME = 2 * precision.FOREIGN_FACE
_LEVELS = 2  # faces square to the axis between front and rear: behind the thread, at the square
_HEAP = 6  # corners that make out the crests
_CLEAR = 0.05  # away from both ends of the full thread, of its length
_SAME_RAKE = 1e-3  # two rakes that are not told apart [deg]


class SizeName(StrEnum):
    """What is measured."""

    OVERALL_LENGTH = "overall-length"
    THREAD_LENGTH = "thread-length"
    MAJOR = "major"
    CORE = "core"
    CUTTER = "cutter"
    RAKE = "rake"


@dataclass(frozen=True, slots=True)
class SizeSeen:
    """A size that is not as wanted: a length [mm], or the rake at the crest [deg]."""

    name: SizeName
    seen: float
    wanted: float


def sizes_seen(
    tap: Tap, faces: TrimmedFaces, samples: Samples, foot: tuple[float, float, float]
) -> tuple[SizeSeen, ...]:
    """The sizes of a solid that are others than the tap's, as far as they are made out.

    Args:
        tap: the tap.
        faces: of a solid that lies along z.
        samples: several points of each of its faces.
        foot: where its axis meets its front [mm].

    Source: derived here.
    """
    corners, points = faces.corners - np.array(foot), samples.points - np.array(foot)
    wanted = {
        SizeName.OVERALL_LENGTH: tap.blank.overall_length,
        SizeName.THREAD_LENGTH: tap.blank.thread_length,
        SizeName.MAJOR: tap.thread.major,
        SizeName.CORE: tap.flutes.core_diameter,
        SizeName.CUTTER: tap.flutes.cutter_diameter,
    }
    overall = float(np.ptp(corners[:, :, 2]))
    found, edge = {SizeName.OVERALL_LENGTH: overall}, None
    thread = _thread_length(corners, faces, overall)
    if thread is not None:
        found[SizeName.THREAD_LENGTH] = thread
        found |= _major(tap, corners, thread)
        split = _split(points, samples.faces)
        floors = floors_seen(tap, split)
        if floors is not None:
            found[SizeName.CORE] = 2 * (floors.away - floors.ball)
            found[SizeName.CUTTER] = 2 * floors.ball
            section = section_seen(tap, split, floors)
            if section is not None and _of_its_hand(tap, section, samples.points, foot):
                edge = _rake(tap, section, found.get(SizeName.MAJOR, tap.thread.major))
    sizes = tuple(
        SizeSeen(name, size, wanted[name])
        for name, size in found.items()
        if abs(size - wanted[name]) > _SAME
    )
    return sizes if edge is None else (*sizes, edge)


def _split(points: Floats, owners: NDArray[np.intp]) -> list[Floats]:
    """The points of each face that has some."""
    starts = np.flatnonzero(np.diff(np.sort(owners), prepend=-1))
    return np.split(points[owners.argsort(kind="stable")], starts[1:])


def _of_its_hand(
    tap: Tap, section: FluteSection, points: Floats, foot: tuple[float, float, float]
) -> bool:
    """Whether a thread of the tap's hand is seen: which wall of a flute cuts follows from that.

    Lands that are relieved begin at the edge, so the flutes are those that were seen.
    """
    flutes = replace(
        tap.flutes,
        cutter_diameter=2 * section.ball_radius,
        offset=section.offset,
        centre_radius=section.centre_radius,
    )
    return thread_seen(replace(tap, flutes=flutes), points, foot) is not None


def _rake(tap: Tap, seen: FluteSection, major: float) -> SizeSeen | None:
    """The rake at the crest, where the cutting faces lean otherwise.

    A thread of another diameter alone moves the edge along the same face: that is no other rake.
    """
    asked = float(rake(section_of(tap.flutes), tap.thread.major / 2))
    here, there = (float(rake(seen, edge / 2)) for edge in (major, tap.thread.major))
    if min(abs(here - asked), abs(there - asked)) <= _SAME_RAKE:
        return None
    return SizeSeen(SizeName.RAKE, here, asked)


def _thread_length(corners: Floats, faces: TrimmedFaces, overall: float) -> float | None:
    """Height of the lower one of the two faces that are square to the axis between the ends."""
    ends = np.concatenate([[0], np.cumsum(faces.sizes)])
    heights = [corners[low:high, :, 2] for low, high in pairwise(ends.tolist()) if high > low]
    flat = sorted(float(z.mean()) for z in heights if np.ptp(z) <= precision.FOREIGN_FACE)
    between = [z for z in flat if _SAME < z < overall - _SAME]
    steps = [z for n, z in enumerate(between) if n == 0 or z - between[n - 1] > _SAME]
    return steps[0] if len(steps) == _LEVELS else None


def _major(tap: Tap, corners: Floats, thread: float) -> dict[SizeName, float]:
    """The crests' diameter at the cutting edges, where no relief has taken anything off.

    Nothing of a rounded crest, whose top need not be a corner.
    """
    if tap.thread.rounded_crest:
        return {}
    x, y, z = corners.reshape(-1, 3).T
    begin = tap.chamfer_length
    gap = _CLEAR * (thread - begin)
    full = (z > begin + gap) & (z < thread - gap)
    radius = np.sort(np.hypot(x[full], y[full]) + narrowed(tap, z[full]))
    top = radius[radius > radius[-1] - _SAME] if len(radius) else radius
    return {SizeName.MAJOR: 2 * float(np.median(top))} if len(top) >= _HEAP else {}
