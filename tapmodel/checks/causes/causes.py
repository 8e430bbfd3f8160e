"""Why a solid is not the designed tap, where that can be established."""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from tapmodel import precision
from tapmodel.checks.causes.flutes_seen import flutes_seen
from tapmodel.checks.causes.misplaced import Misplaced, misplaced, shank_middle
from tapmodel.checks.causes.sizes_seen import SizeSeen, sizes_seen
from tapmodel.checks.causes.thread_seen import ThreadSeen, thread_seen
from tapmodel.errors import KernelError
from tapmodel.geometry.kernel.measure.sampling import sample_faces
from tapmodel.geometry.kernel.measure.trimmed import TrimmedFaces
from tapmodel.geometry.kernel.topology import Solid
from tapmodel.tap.tap import Tap

# Points looked at: on every face, and so many more shared out by area.
_PER_FACE, _SPREAD = 1, 1500
# Of a flank several: faces that are alike have theirs at the same places, which one point of each
# would not tell from a thread of another lead.
_PER_FLANK = 8

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Causes:
    """What was established of a solid that is not the designed tap.

    Attributes:
        misplaced: what undone makes it that tap; None where nothing does.
        flutes: their number, where it is seen and another than the tap's; else None.
        flutes_wanted: the tap's.
        starts: their number, likewise.
        starts_wanted: the tap's.
        pitch_diameter: likewise [mm].
        pitch_diameter_wanted: the tap's [mm].
        sizes: that are seen and others than the tap's.
    """

    misplaced: Misplaced | None
    flutes: int | None
    flutes_wanted: int
    starts: int | None
    starts_wanted: int
    pitch_diameter: float | None
    pitch_diameter_wanted: float
    sizes: tuple[SizeSeen, ...] = ()


def causes(tap: Tap, solid: Solid, volume: float) -> Causes:
    """Look for what sets a solid apart from a tap.

    Args:
        tap: every number of the tap.
        solid: which was found not to be it.
        volume: of the solid [mm³].
    """
    try:
        faces = TrimmedFaces(solid)
    except KernelError:
        return _causes(tap)
    points = sample_faces(faces, _PER_FACE, _SPREAD).points
    place = misplaced(tap, points, faces.corners.reshape(-1, 3), volume)
    if place:
        return _causes(tap, place)
    front = float(faces.corners[:, :, 2].min())
    middle = shank_middle(tap, points, front)
    if middle is None:
        return _causes(tap)
    foot, samples = (*middle, front), sample_faces(faces, _PER_FLANK, 0)
    found = _causes(
        tap,
        None,
        flutes_seen(tap, points, faces.corners),
        thread_seen(tap, samples.points, foot),
    )
    return replace(found, sizes=sizes_seen(tap, faces, samples, foot))


def _causes(
    tap: Tap,
    place: Misplaced | None = None,
    flutes: int | None = None,
    thread: ThreadSeen | None = None,
) -> Causes:
    """What was seen, as far as it is not as wanted."""
    wanted, count = tap.thread, tap.flutes.count
    starts = thread.starts if thread else wanted.starts
    pitch_diameter = thread.pitch_diameter if thread else wanted.pitch_diameter
    same = abs(pitch_diameter - wanted.pitch_diameter) <= 2 * precision.FOREIGN_FACE
    return Causes(
        misplaced=place,
        flutes=flutes if flutes != count else None,
        flutes_wanted=count,
        starts=starts if starts != wanted.starts else None,
        starts_wanted=wanted.starts,
        pitch_diameter=None if same else pitch_diameter,
        pitch_diameter_wanted=wanted.pitch_diameter,
    )
