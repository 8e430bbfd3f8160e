"""The thread and the flutes as they are seen from the side: lines of an orthographic view.

Abscissa is z, ordinate the height over the axis; the first flute points upwards, the eye looks
along the tap's own y. A line of sight stays in one section square to the axis, so what hides what
is asked there. The outline follows the convention of taps: the profile of a land turned into the
plane of the view, above and below, whether or not a flute lies there.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.shape.form import Form
from tapmodel.shape.outlines.outline import Point
from tapmodel.shape.profile import Part, profile_radius, segments
from tapmodel.shape.walls import FACE, HEEL
from tapmodel.tap.tap import Tap
from tapmodel.words import Hand

Floats = NDArray[np.float64]
Flags = NDArray[np.bool_]
Indices = NDArray[np.intp]

_TO_A_PITCH = 24  # points of an outline and of an edge
_ALONG = 9  # points of a crest or root along its land
_RUN_OUT = 48  # points of the rim of a flute behind the thread
_DEEP = 32  # points looked at between a place and the eye
_NEXT_TO_END = 1 - 1e-6  # a rim closes there with an upright tangent: its very end is noise
_ABOVE_BODY = 1e-4  # by which share of the crest a land stands out of the body behind
_ROUNDS_ACROSS = 3
_ROUNDS = 8  # after which a point of a wall has the radius that the thread has there


@dataclass(frozen=True, slots=True)
class SideLines:
    """Lines of the side view, each of points (z, height) [mm].

    Attributes:
        outline: of the thread, above the axis and below it, from front to end.
        rims: where flutes leave thread and blank, teeth by teeth, and their run-outs.
        rears, fronts: edges of crests across the lands, towards the square and towards the front;
            of rounded ones their middles are the rears.
        roots: their middles across the lands.
        ends: parts of the plane in which the thread ends that no flute takes away.
    """

    outline: tuple[tuple[Point, ...], tuple[Point, ...]]
    rims: tuple[tuple[Point, ...], ...]
    rears: tuple[tuple[Point, ...], ...]
    fronts: tuple[tuple[Point, ...], ...]
    roots: tuple[tuple[Point, ...], ...]
    ends: tuple[tuple[Point, Point], ...]


def side_lines(tap: Tap, runout_end: float) -> SideLines:
    """The lines of a tap.

    Args:
        tap: any that has flutes.
        runout_end: the largest z at which a flute still meets the blank [mm].
    """
    side = _Side(tap, runout_end)
    return SideLines(
        outline=(side.outline(0.0), side.outline(180.0)),
        rims=tuple(side.rims()),
        rears=tuple(side.across(Part.REAR_FLANK)),
        fronts=tuple(side.across(Part.FRONT_FLANK)),
        roots=tuple(side.across(Part.ROOT)),
        ends=tuple(side.ends()),
    )


class _Side:
    def __init__(self, tap: Tap, runout_end: float) -> None:
        self._tap, self._form, self._runout_end = tap, Form(tap), runout_end
        self._towards = -1.0 if tap.thread.hand is Hand.LEFT else 1.0
        self._parts = {segment.part: segment for segment in segments(tap.thread)}

    # --- lines ------------------------------------------------------------------------------

    def outline(self, theta: float) -> tuple[Point, ...]:
        """Profile at an angle [deg], chamfer and all, upwards at 0 and downwards at 180."""
        thread, form = self._tap.thread, self._form
        z = self._heights(0.0, form.thread_end, thread.first_z + thread.lead * theta / 360)
        w = z - thread.first_z - thread.lead * theta / 360
        radius = profile_radius(form.profile, w) - form.narrowed(z)
        radius = np.minimum(radius, form.point_radius + z * form.cone_tan)
        return _points(z, radius if theta == 0.0 else -radius)

    def rims(self) -> Iterator[tuple[Point, ...]]:
        """Both rims of every flute that can be seen."""
        form = self._form
        for land in range(form.lands):
            for wall in (FACE, HEEL):
                z = self._heights(0.0, form.thread_end, float(form.crest_z[land]))
                yield from self._rim(land, wall, z, threaded=True)
                turned = np.linspace(0.0, math.pi / 2, _RUN_OUT)
                length = (self._runout_end - form.thread_end) * _NEXT_TO_END
                behind = form.thread_end + length * np.sin(turned)
                if self._runout_end > form.thread_end:
                    yield from self._rim(land, wall, behind, threaded=False)

    def _rim(
        self, land: int, wall: int, z: Floats, *, threaded: bool
    ) -> Iterator[tuple[Point, ...]]:
        form, b = self._form, self._cutter(z)
        lands = np.full(z.shape, land)
        radius = np.full(z.shape, form.crest_radius) if threaded else form.body_radius(z)
        phi = form.wall_phi(wall, radius, b)
        for _ in range(_ROUNDS if threaded else 0):
            radius = np.min(form.threaded(lands, phi, z), axis=0)
            phi = form.wall_phi(wall, radius, b)
        cut = radius > math.hypot(form.walls.c, form.walls.e) - b - 1e-9
        theta = form.edge_angles[land] + phi
        yield from self._seen(z[None], radius[None], theta[None], cut[None])

    def across(self, part: Part) -> Iterator[tuple[Point, ...]]:
        """A line across every land and in every turn: a crest's edge on a flank, or a root."""
        form, rounded = self._form, self._parts[Part.CREST].is_arc
        if rounded and part is Part.FRONT_FLANK:
            return
        lands, turns = self._turns()
        follows = part is not Part.ROOT and not rounded
        middle = self._parts[part].middle if part is Part.ROOT else 0.0
        w = self._offset(part, np.array(math.inf)) if follows else np.array(middle)
        phi = self._over_land(np.full((len(lands), 2), form.crest_radius))
        # the wall depends on the radius that the line has there, and that on the wall
        for _ in range(_ROUNDS_ACROSS):
            z = form.offset_to_z(lands, turns, phi) + w
            radius = np.min(form.threaded(lands, phi, z), axis=0)
            phi = self._over_land(radius)
            w = self._offset(part, form.cone_radius(phi, z)) if follows else w
        z = form.offset_to_z(lands, turns, phi) + w
        thread, cone = form.threaded(lands, phi, z)
        on = (z >= 0.0) & (z <= form.thread_end)
        on &= (cone >= thread) if part is Part.ROOT else (cone > form.root_radius)
        yield from self._seen(z, np.minimum(thread, cone), form.edge_angles[lands] + phi, on)

    def _turns(self) -> tuple[Indices, Indices]:
        """Every land with every turn of the thread that may lie on it, a column each."""
        form = self._form
        count = math.ceil(form.thread_end / form.pitch) + 2
        first = np.floor(form.crest_z / form.pitch).astype(int)
        lands = np.repeat(np.arange(form.lands), count + 2)
        turns = np.tile(np.arange(-2, count), form.lands) - first[lands]
        return lands[:, None], turns[:, None]

    def _over_land(self, radius: Floats) -> Floats:
        """Angles behind the edge, even from face to heel, of which the ends have these radii."""
        face = self._form.wall_phi(FACE, radius[:, 0])
        heel = self._form.wall_phi(HEEL, radius[:, -1])
        return np.linspace(face, heel, _ALONG, axis=-1)

    def _offset(self, part: Part, cone: Floats) -> Floats:
        """Where on a flank the crest begins, be it at the cone that takes its top off [mm]."""
        flank = self._parts[part]
        crest = self._parts[Part.CREST].start_radius
        radius = np.clip(cone, self._form.root_radius, crest)
        return (
            flank.start
            + (radius - flank.start_radius) / flank.slope
            - (self._form.pitch if part is Part.FRONT_FLANK else 0.0)
        )

    def ends(self) -> Iterator[tuple[Point, Point]]:
        """The plane of the thread's end, where the eye meets a land first."""
        form, z = self._form, self._form.thread_end
        height = np.linspace(-form.crest_radius, form.crest_radius, 801)[1:-1]
        depth = np.linspace(0.0, form.crest_radius, 400)[::-1]
        high, deep = np.meshgrid(height, depth, indexing="ij")
        within = np.hypot(high, deep) < 0.995 * form.crest_radius
        solid = within & self._solid(np.full(high.shape, z), high, deep, form.crest_radius)
        met = np.argmax(solid, axis=1)
        body = float(form.body_radius(np.array(z)))
        on_land = solid.any(axis=1) & (
            np.hypot(height, depth[met]) > body + _ABOVE_BODY * form.crest_radius
        )
        for run in _runs(on_land):
            yield (z, float(height[run[0]])), (z, float(height[run[-1]]))

    # --- what is seen -----------------------------------------------------------------------

    def _heights(self, low: float, high: float, crest: float) -> Floats:
        """Places along the axis, the corners of the profile whose crest is there among them."""
        pitch = self._form.pitch
        corners = [segment.start for segment in self._parts.values()]
        turns = np.arange(math.floor((low - crest) / pitch) - 1, (high - crest) / pitch + 1)
        even = np.arange(_TO_A_PITCH) / _TO_A_PITCH * pitch
        places = crest + turns[:, None] * pitch + np.concatenate([corners, even])
        inside = places[(places > low) & (places < high)]
        return np.unique(np.concatenate([[low, high], inside]))

    def _cutter(self, z: Floats) -> Floats:
        """Half the width of the cutter's section [mm]."""
        b, beyond = float(self._form.walls.b), np.maximum(z - self._form.full_depth, 0.0)
        return np.sqrt(np.maximum(b**2 - beyond**2, 0.0))

    def _seen(
        self, z: Floats, radius: Floats, theta: Floats, on: Flags
    ) -> Iterator[tuple[Point, ...]]:
        """The visible runs of lines, shape (lines, points), of the points that are on them."""
        height, depth = radius * np.cos(theta), self._towards * radius * np.sin(theta)
        seen = on & (depth > 0)
        # what stands before them is asked only of points on the eye's side
        seen[seen] = ~self._hidden(z[seen], radius[seen], height[seen], depth[seen])
        for number in range(len(z)):
            for run in _runs(seen[number]):
                yield _points(z[number, run], height[number, run])

    def _hidden(self, z: Floats, radius: Floats, height: Floats, depth: Floats) -> Flags:
        """Whether the body stands between points and the eye."""
        top = np.maximum(self._form.crest_radius, radius)
        share = np.linspace(0.02, 1.0, _DEEP)[:, None]
        reach = np.sqrt(np.maximum(top**2 - height**2, 0.0))
        before = depth + (reach - depth) * share
        body = np.where(z < self._form.thread_end, self._form.root_radius, radius * 0.999)
        solid = self._solid(np.broadcast_to(z, before.shape), height + 0 * before, before, body)
        return np.any(solid, axis=0, keepdims=True)[0]

    def _solid(self, z: Floats, height: Floats, depth: Floats, radius: Floats | float) -> Flags:
        """Whether places lie in the round body of `radius` and in no flute."""
        flutes, b = self._tap.flutes, self._cutter(z)
        solid = np.hypot(height, depth) < radius
        for angle in np.radians(flutes.angles):
            x, y = height, self._towards * depth
            u = x * math.cos(angle) + y * math.sin(angle) - flutes.centre_radius
            t = y * math.cos(angle) - x * math.sin(angle) - flutes.offset
            solid &= np.hypot(np.minimum(u, 0.0), t) >= b
        return solid


def _points(z: Floats, height: Floats) -> tuple[Point, ...]:
    return tuple(zip(z.tolist(), height.tolist(), strict=True))


def _runs(on: Flags) -> Iterator[Indices]:
    """Numbers of places that follow each other and are all true, two at the least."""
    places = np.flatnonzero(on)
    if len(places):
        for run in np.split(places, np.flatnonzero(np.diff(places) > 1) + 1):
            if len(run) > 1:
                yield run
