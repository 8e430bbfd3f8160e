"""Where the columns of points of a preview's threaded length stand round the axis."""

import numpy as np
from numpy.typing import NDArray

from tapmodel.shape.form import Form
from tapmodel.shape.profile import Part
from tapmodel.shape.walls import FACE, HEEL

Floats = NDArray[np.float64]

# Largest angles between two columns: of a land, and where it is wider at the point only [rad].
CLOSE, WIDE = float(np.radians(3.0)), float(np.radians(6.0))
# The lands part at least this share of the void away from its walls.
_WELL_IN = 0.3
# The first column of a land within the void, as a share of the way from the parting to the wall.
_WITHIN = 0.9
# Least radius of a column over that of the core, where the void has no width.
_ABOVE_CORE = 1.0005
# Radii at which the walls of a flute are listed.
_RADII = 200


class Columns:
    """Where the columns stand: at a share s of the way from one flute to the next."""

    def __init__(self, form: Form) -> None:
        """Choose for each radius where in the void the lands part, and then the shares."""
        self.form = form
        core = form.tap.flutes.core_diameter / 2
        root, point = _lowest(form)
        lowest = max(core * _ABOVE_CORE, min(root, point))
        self._radii = np.linspace(lowest, form.widest_crest, _RADII)
        heel, face = (form.walls.angle(side, self._radii) for side in (HEEL, FACE))
        low, high = heel + _WELL_IN * (face - heel), face - _WELL_IN * (face - heel)
        # Upright where the void leaves room for that at all radii, else leaning with its walls.
        self._parting = np.clip((np.max(low) + np.min(high)) / 2, low, high)
        before, behind = (self._parting - heel, face - self._parting)
        self.shares = self._spread(max(root, lowest), before, behind)

    def phi(self, radius: Floats) -> Floats:
        """Angle behind the crest edge [rad] at radii of shape (..., columns, rows) [mm]."""
        parting = np.interp(radius, self._radii, self._parting - self.form.edge_angle)
        return parting + self.form.spacing * self.shares[:, None]

    def _spread(self, root: float, before: Floats, behind: Floats) -> Floats:
        """Close shares over the land down to the root, wide ones where only the point is wider."""
        spacing, deep = self.form.spacing, self._radii >= min(root, self._radii[-1])
        starts, ends = (
            [_WITHIN * float(np.min(side[reached])) / spacing for reached in (deep, ...)]
            for side in (behind, before)
        )
        marks = [starts[1], starts[0], 1 - ends[0], 1 - ends[1]]
        runs = [
            np.linspace(a, b, int(np.ceil((b - a) * spacing / step)), endpoint=False)
            for a, b, step in zip(marks[:-1], marks[1:], (WIDE, CLOSE, WIDE), strict=True)
        ]
        return np.concatenate([[0.0], *runs, [marks[3], 1.0]])


def _lowest(form: Form) -> tuple[float, float]:
    """Least radii of the thread's root and of the chamfer cone on a land [mm]."""
    phi = np.linspace(*form.phi_range(), 65)
    root = form.root_radius - form.narrowed_at_end - float(np.max(form.part_drop(Part.ROOT, phi)))
    return root, form.point_radius - float(np.max(form.cone_drop(phi)))
