"""How wide a thread of the tap is at a radius: its profile read across instead of along."""

import numpy as np
from numpy.typing import NDArray

from tapmodel.shape.profile import Segment

Floats = NDArray[np.float64]


def half_width(parts: tuple[Segment, ...], radii: Floats) -> Floats:
    """Half the axial width of a thread of the tap at `radii` of its profile [mm].

    Below the root it is half the pitch, where the thread meets its neighbours; above the crest
    the flanks go on, or the width is 0 if the crest is rounded.

    Args:
        parts: of the profile, as `tapmodel.shape.profile.segments` gives them.
        radii: any shape [mm].

    Source: derived here, the inverse of the profile.
    """
    crest, flank, root, _ = parts
    width = flank.start + (radii - flank.start_radius) / flank.slope
    if crest.is_arc:
        width = np.where(radii > crest.start_radius, _chord(crest, radii), width)
    below = radii < root.start_radius
    return np.where(below, root.middle - (_chord(root, radii) if root.is_arc else 0.0), width)


def _chord(segment: Segment, radii: Floats) -> Floats:
    """Half the chord of an arc at `radii`."""
    away = np.abs(radii - segment.arc_centre)
    long = abs(segment.arc)
    return np.sqrt(np.maximum((long - away) * (long + away), 0.0))


def crest_and_root(parts: tuple[Segment, ...]) -> tuple[float, float]:
    """Radii of the top of the crest and of the bottom of the root [mm]."""
    crest, _, root, _ = parts
    top, bottom = (float(part.radius(np.array(part.middle))) for part in (crest, root))
    return top, bottom
