"""The threaded length before it is fluted: columns of points behind the crest edge of each land.

A column runs up the axis through every corner of the profile and every place where the chamfer
cone crosses it, so the profile is exact in each column. The columns of a land reach on either
side into the void of a flute; there the next land begins with its own relief, and the step
between the two stays in the void, which is convex.
"""

from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from tapmodel.geometry.preview.columns import Columns
from tapmodel.geometry.preview.grid import Centre, closed_mesh
from tapmodel.shape.form import Form
from tapmodel.shape.profile import Part, profile_radius

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]

# A column leans with the walls, so its angle hangs on the radius that follows from the angle.
_ROUNDS = 3
# Straight pieces that stand for an arc of the profile.
_ARC_PIECES = 8


def thread_mesh(form: Form) -> tuple[Floats, Indices]:
    """Closed mesh of the threaded length with chamfer, reliefs and front centre, not fluted.

    Args:
        form: surfaces of the right-hand tap.

    Returns:
        Vertices (n, 3) [mm] and triangles (m, 3).
    """
    columns, starts = Columns(form), form.tap.thread.starts
    lands, shares = form.lands, len(columns.shares)
    turns, rows = _turns(form), _rows_of_pitch(form)
    # The rows of a land, all columns alike: the helix alone moves them.
    crests = form.crest_z[:, None, None, None] + form.pitch * turns[:, None]
    phi = columns.phi(np.full((lands, shares, len(turns) * rows), form.crest_radius))
    for _ in range(_ROUNDS):
        phi = columns.phi(_rows(form, crests, phi)[1])
    z, radius = _rows(form, crests, phi)
    land = np.broadcast_to(np.arange(lands)[:, None, None], phi.shape)
    points = form.points(land, phi, radius, z).reshape(lands * shares, -1, 3)
    centre = Centre(form.tap.blank.front_centre)
    return closed_mesh(points, starts * rows, centre, Centre())


def _pieces(form: Form) -> tuple[int, int, int, int]:
    """Straight pieces of crest, rear flank, root and front flank."""
    crest, _, root, _ = (_ARC_PIECES if segment.is_arc else 1 for segment in form.profile)
    return crest, 1, root, 1


def _rows_of_pitch(form: Form) -> int:
    """Rows of a pitch: the start of each piece of the profile, the cone's crossing within it."""
    return 2 * sum(_pieces(form))


def _turns(form: Form) -> Indices:
    """Numbers of the turns, enough for whole ones of every start beyond both ends."""
    spread = form.pitch * (2 * form.tap.thread.starts + 2)
    low, high = float(form.crest_z.min()) - spread, float(form.crest_z.max()) + spread
    first = int(np.floor(-high / form.pitch))
    last = int(np.ceil((form.thread_end - low) / form.pitch))
    return np.arange(first, last + 1)


def _rows(form: Form, crests: Floats, phi: Floats) -> tuple[Floats, Floats]:
    """Height and radius of all rows, the helix at `crests` for phi = 0; shape of phi [mm]."""
    blocks = phi.reshape(*phi.shape[:-1], -1, _rows_of_pitch(form))
    profile = _Profile(form, blocks)
    base = crests + form.advance * blocks
    start, end = profile.corners()
    # Odd rows go where the cone crosses their part, or rest on one end of it.
    z = base + start
    before, after = (profile.gap(w, base + w) for w in (start, end))
    crossed = (before < 0) != (after < 0)
    share = np.divide(before, before - after, out=np.zeros_like(z), where=crossed)
    share[..., ::2] = 0.0
    z = np.clip(base + start + share * (end - start), 0.0, form.thread_end)
    radius = np.minimum(profile.radius(z - base, z), profile.cone(z))
    return z.reshape(phi.shape), radius.reshape(phi.shape)


class _Profile:
    """The axial profile at angles phi, shape (..., rows of a pitch)."""

    def __init__(self, form: Form, phi: Floats) -> None:
        self.form = form
        # Beyond its land a relief's arc may end; what it would be there is cut away.
        reached = np.clip(phi, *form.phi_range())
        bodily = form.part_drop(Part.ROOT, reached)
        alone = np.maximum(form.part_drop(Part.CREST, reached) - bodily, 0.0)
        self._alone = np.minimum(alone, form.crest_radius - form.root_radius)
        self._bodily = bodily
        self._fallen = form.cone_drop(reached)

    def corners(self) -> tuple[Floats, Floats]:
        """Axial offsets between which the part of each row lies [mm]."""
        form = self.form
        wider = self._alone * form.flank_tan
        crest = form.segments[Part.CREST].end + wider
        root = np.full_like(crest, form.segments[Part.ROOT].start)
        marks = [-crest, crest, root, form.pitch - root, form.pitch - crest]
        ends: list[tuple[Floats, Floats]] = []
        for start, end, count in zip(marks[:-1], marks[1:], _pieces(form), strict=True):
            shares = np.linspace(0.0, 1.0, count + 1)
            divided = [start + share * (end - start) for share in shares.tolist()]
            ends += pairwise(divided)
        # Two rows for each piece.
        numbered = [(row, *pair) for row, pair in enumerate(pair for pair in ends for _ in "ab")]
        starts = [start[..., row] for row, start, _ in numbered]
        stops = [end[..., row] for row, _, end in numbered]
        return np.stack(starts, axis=-1), np.stack(stops, axis=-1)

    def radius(self, w: Floats, z: Floats) -> Floats:
        """Radius of the profile at axial offsets w from a crest's middle and heights z [mm]."""
        whole = profile_radius(self.form.profile, w)
        sunk = self._bodily + self.form.narrowed(z)
        return np.minimum(whole, self.form.crest_radius - self._alone) - sunk

    def cone(self, z: Floats) -> Floats:
        """Radius of the chamfer cone at heights z [mm]."""
        return self.form.point_radius + z * self.form.cone_tan - self._fallen

    def gap(self, w: Floats, z: Floats) -> Floats:
        """How far the cone stands outside the profile at offset w and height z [mm]."""
        return self.cone(z) - self.radius(w, z)
