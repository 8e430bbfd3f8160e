"""Why a solid is not the designed tap, where that can be established."""

from dataclasses import dataclass

from tapmodel.checks.causes.flutes_seen import flutes_seen
from tapmodel.checks.causes.misplaced import Misplaced, misplaced
from tapmodel.errors import KernelError
from tapmodel.geometry.kernel.measure.sampling import sample_faces
from tapmodel.geometry.kernel.measure.trimmed import TrimmedFaces
from tapmodel.geometry.kernel.topology import Solid
from tapmodel.tap.tap import Tap

# Points looked at: on every face, and so many more shared out by area.
_PER_FACE, _SPREAD = 1, 1500


@dataclass(frozen=True, slots=True)
class Causes:
    """What was established of a solid that is not the designed tap.

    Attributes:
        misplaced: what undone makes it that tap; None where nothing does.
        flutes: their number, where it is seen and another than the tap's; else None.
        flutes_wanted: the tap's.
    """

    misplaced: Misplaced | None
    flutes: int | None
    flutes_wanted: int


def causes(tap: Tap, solid: Solid, volume: float) -> Causes:
    """Look for what sets a solid apart from a tap.

    Args:
        tap: every number of the tap.
        solid: which was found not to be it.
        volume: of the solid [mm³].
    """
    wanted = tap.flutes.count
    try:
        faces = TrimmedFaces(solid)
    except KernelError:
        return Causes(None, None, wanted)
    points = sample_faces(faces, _PER_FACE, _SPREAD).points
    place = misplaced(tap, points, faces.corners.reshape(-1, 3), volume)
    if place:
        return Causes(place, None, wanted)
    seen = flutes_seen(tap, points, faces.corners)
    return Causes(None, seen if seen != wanted else None, wanted)
