"""The plane sections of a tap that torsion is asked of, each by one of its equal sectors.

The threaded length is taken as the circle of the thread's root with the flutes in it: the ridges
of the thread stiffen it by some 5 %, and a plane section cannot show what the grooves between
them do to the stress (`notch` does). A relief of the whole thread, which takes a little more off
the lands, is not taken off. Where the cutter runs out the section is as the cutter leaves it at
that height; that the groove also ends there is not seen.
"""

import math
from dataclasses import dataclass

from tapmodel.prediction.strength.record import Place
from tapmodel.shape.flute_section import FluteSection, section_of
from tapmodel.shape.outlines.outline import Arc, Line, Loop
from tapmodel.shape.outlines.section import CENTRE_SLOPE
from tapmodel.shape.outlines.section_walls import Flute, flutes_at
from tapmodel.shape.turned import Turned, runout_end, turned_lengths
from tapmodel.tap.tap import Tap

_RUNS = (0.35, 0.7)
"""At which shares of the run-out, beside its beginning, a section is taken."""

_SAME = 1e-9  # heights that are one [mm]
_TOUCHES = 1e-6  # a flute or a flat that cuts less than this share of the radius cuts nothing


@dataclass(frozen=True, slots=True)
class Slice:
    """A section of the tap square to its axis.

    Attributes:
        place: what stands there.
        z: its height [mm].
        radius: of the circle on which its lands or corners lie [mm].
        turns: equal sectors of it.
        sector: one of them, counter-clockwise; empty where the section is round.
        bore: radius of a centre that it passes through, 0 for none [mm].
    """

    place: Place
    z: float
    radius: float
    turns: int
    sector: Loop
    bore: float = 0.0

    @property
    def is_round(self) -> bool:
        """Whether nothing is cut from its circle."""
        return not self.sector


def fluted_sector(void: FluteSection, count: int, radius: float) -> Loop:
    """One flute and the land behind it: of a circle of `radius` [mm] with `count` flutes.

    Empty where the flutes do not reach the circle.

    Source: the void of `tapmodel.shape.flute_section`.
    """
    flute = Flute(0.0, void)
    if flute.floor > radius * (1 - _TOUCHES):
        return ()
    face, heel = flute.wall_angle(radius, heel=False), flute.wall_angle(radius, heel=True)
    return (*flute.trace(radius, radius), Arc((0.0, 0.0), radius, face, heel + 360 / count))


def square_sector(across: float, diameter: float) -> Loop:
    """A quarter of a square `across` flats whose corners are turned to `diameter`, all [mm].

    Empty where the flats do not reach the circle.

    Source: by definition.
    """
    half, radius = across / 2, diameter / 2
    if half > radius * (1 - _TOUCHES):
        return ()
    rise = min(math.sqrt(radius**2 - half**2), half)
    flat = Line((half, -rise), (half, rise))
    if rise == half:
        return (flat,)
    corner = math.degrees(math.atan2(rise, half))
    return flat, Arc((0.0, 0.0), radius, corner, 90.0 - corner)


def slices_of(tap: Tap, *, run_out: bool = True) -> tuple[Slice, ...]:
    """The sections that carry the torque, from the front to the square.

    The root where all of the chamfer has cut; every turned length behind the thread where the
    flutes reach it, at its ends and along the run-out; shank and square.

    Args:
        tap: the tap.
        run_out: whether sections along the run-out are taken, not only where it begins.

    Source: derived here.
    """
    cuts = [_root(tap)]
    cuts += [_behind(tap, length, z) for length, z in _heights(tap, run_out=run_out)]
    return (*cuts, _shank(tap), _square(tap))


def _root(tap: Tap) -> Slice:
    """Where the torque of all teeth has come together, with the front centre if it reaches it."""
    z = min(tap.chamfer_length, tap.blank.thread_length)
    bore = tap.blank.front_centre / 2 - z * CENTRE_SLOPE
    core = tap.flutes.core_diameter / 2
    radius = tap.thread.minor / 2
    sector = _sector(tap, z, radius)
    limit = core if sector else radius
    return Slice(Place.ROOT, z, radius, tap.flutes.count, sector, bore if 0 < bore < limit else 0.0)


def _heights(tap: Tap, *, run_out: bool) -> list[tuple[Turned, float]]:
    """Turned lengths behind the thread and heights in them at which the flutes still cut."""
    lengths = turned_lengths(tap.blank, tap.thread.major)
    flutes = tap.flutes
    end = runout_end(section_of(flutes), flutes.full_depth_length, lengths)
    start = max(flutes.full_depth_length, tap.blank.thread_length)
    wanted = {start, *(start + share * (end - start) for share in _RUNS)} if run_out else {start}
    found: list[tuple[Turned, float]] = []
    for length in lengths[1:]:
        ends = {length.start}
        if length.end_radius < length.start_radius:
            ends.add(length.end)
        at_full_depth = [length.start] if not length.is_cone else []
        for z in sorted(ends | wanted):
            inside = length.start - _SAME <= z <= length.end + _SAME and z < end - _SAME
            told = [other for _, other in found]
            # A cylinder is the same all along the full depth of the flutes.
            if z <= flutes.full_depth_length:
                told += [z for start in at_full_depth if z > start]
            if inside and not any(abs(z - other) < _SAME for other in told):
                found.append((length, z))
    return found


def _behind(tap: Tap, length: Turned, z: float) -> Slice:
    share = (z - length.start) / (length.end - length.start) if length.end > length.start else 0.0
    radius = length.start_radius + share * (length.end_radius - length.start_radius)
    blank = tap.blank
    neck = blank.has_neck and z <= blank.thread_length + blank.neck_length + _SAME
    place = Place.RUN_OUT if z > tap.flutes.full_depth_length else Place.THREAD_END
    place = Place.NECK if neck else place
    return Slice(place, z, radius, tap.flutes.count, _sector(tap, z, radius))


def _sector(tap: Tap, z: float, radius: float) -> Loop:
    flutes = flutes_at(tap.flutes, z)
    return fluted_sector(flutes[0].void, tap.flutes.count, radius) if flutes else ()


def _shank(tap: Tap) -> Slice:
    lengths = turned_lengths(tap.blank, tap.thread.major)
    flutes = tap.flutes
    end = runout_end(section_of(flutes), flutes.full_depth_length, lengths)
    z = max(lengths[-1].start, end)
    return Slice(Place.SHANK, z, tap.blank.shank_diameter / 2, 1, ())


def _square(tap: Tap) -> Slice:
    blank = tap.blank
    sector = square_sector(blank.square_across_flats, blank.shank_diameter)
    bore = blank.rear_centre / 2 - blank.square_length * CENTRE_SLOPE
    return Slice(
        Place.SQUARE,
        blank.square_start,
        blank.shank_diameter / 2,
        4,
        sector,
        bore if 0 < bore < blank.square_across_flats / 2 else 0.0,
    )
