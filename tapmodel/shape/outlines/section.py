"""The exact outline of the tap in any section square to its axis, by arithmetic from the record."""

import math

from tapmodel.errors import InputError
from tapmodel.shape.flute_section import land_angle, section_of
from tapmodel.shape.outlines.outline import Arc, Line, Loop, Outline, Piece, full_circle
from tapmodel.shape.outlines.section_tops import Outside, Plain, Threaded
from tapmodel.shape.outlines.section_walls import Flute, flutes_at
from tapmodel.shape.profile import segments
from tapmodel.shape.relief import heel_drop
from tapmodel.shape.turned import turned_lengths
from tapmodel.tap.tap import Blank, Tap
from tapmodel.words import Hand

CENTRE_SLOPE = math.tan(math.radians(30.0))
"""Radius of a 60-degree centre by its depth."""

_NOTHING = 1e-9
"""Pieces shorter than this are rounding and are left out [mm]."""


def section_outline(tap: Tap, z: float) -> Outline:
    """Outline of the section at `z`, counter-clockwise seen from +z, holes clockwise.

    x and y are those of the tap's frame; a left-hand tap is mirrored as its record says. At the
    thread's end plane the side of the blank counts. Tops of lands are followed by arcs within
    `section_tops.ARC_DEVIATION`; everything else is exact.

    Args:
        tap: the tap.
        z: height of the section above the front [mm].

    Raises:
        InputError: `z` is not on the tap.

    Source: derived here from the definitions in `tapmodel.tap.tap`.
    """
    blank = tap.blank
    if not 0.0 <= z <= blank.overall_length:
        raise InputError("z", z, f"a height on the tap, 0 to {blank.overall_length:g} mm")
    highest = max(tap.thread.major, blank.shank_diameter, blank.neck_diameter) / 2 + 1.0
    flutes = flutes_at(tap.flutes, z)
    outsides = [_outside(tap, z, flute.angle) for flute in flutes]
    hole = _centre_radius(blank, z)
    cut = any(
        flute.floor < outside.radius(flute.floor_angle)
        for flute, outside in zip(flutes, outsides, strict=True)
    )
    if cut:
        outline = _fluted(flutes, outsides, hole, highest)
    else:
        outline = _round(_outside(tap, z, min(tap.flutes.angles)), hole)
    return outline.mirrored() if tap.thread.hand is Hand.LEFT else outline


def full_thread_height(tap: Tap) -> float:
    """A height in the full thread: behind the relieved chamfer, at full depth of the flutes [mm].

    Source: derived here, middle of that length; its end where there is none.
    """
    section, crest = section_of(tap.flutes), tap.thread.major
    land = land_angle(section, tap.flutes.count, crest / 2)
    dropped = heel_drop(tap.relief.chamfer, crest, land)
    end = min(tap.blank.thread_length, tap.flutes.full_depth_length)
    start = tap.chamfer_length + dropped / math.tan(math.radians(tap.chamfer.angle))
    return (min(start, end) + end) / 2


def _outside(tap: Tap, z: float, flute: float) -> Outside:
    blank = tap.blank
    if z < blank.thread_length:
        return Threaded(tap, z, flute, segments(tap.thread))
    side = blank.square_across_flats / 2 if z >= blank.square_start else math.inf
    return Plain(_turned_radius(tap, z), side)


def _turned_radius(tap: Tap, z: float) -> float:
    """Radius of the blank behind the thread [mm]."""
    blank = tap.blank
    edge = blank.shank_diameter / 2 - blank.rear_chamfer + blank.overall_length - z
    length = next(
        piece
        for piece in turned_lengths(blank, tap.thread.major)[1:]
        if piece.start <= z <= piece.end
    )
    if length.end == length.start:
        return min(length.end_radius, edge)
    share = (z - length.start) / (length.end - length.start)
    return min(length.start_radius + share * (length.end_radius - length.start_radius), edge)


def _centre_radius(blank: Blank, z: float) -> float:
    """Radius of the centre that the section passes through, 0 for none [mm]."""
    front = blank.front_centre / 2 - z * CENTRE_SLOPE
    rear = blank.rear_centre / 2 - (blank.overall_length - z) * CENTRE_SLOPE
    return max(front, rear, 0.0)


def _round(outside: Outside, hole: float) -> Outline:
    if isinstance(outside, Plain) and outside.circle <= outside.side:
        loop = full_circle(outside.circle)
    else:
        loop = _tidy(outside.pieces(0.0, 360.0))
    return Outline((loop, full_circle(hole, hole=True)) if hole > 0 else (loop,))


def _fluted(
    flutes: tuple[Flute, ...], outsides: list[Outside], hole: float, highest: float
) -> Outline:
    """Lands and flutes in turn; lands of their own where a centre is wider than the core."""
    count = len(flutes)
    turn = [0.0] * count
    turn[-1] = 360.0
    lands: list[tuple[Piece, ...]] = []
    heels: list[float] = []
    faces = [
        flute.meeting(outside.radius, highest, heel=False)
        for flute, outside in zip(flutes, outsides, strict=True)
    ]
    for land, (flute, outside) in enumerate(zip(flutes, outsides, strict=True)):
        behind = flutes[(land + 1) % count]

        def top(angle: float, land: int = land, outside: Outside = outside) -> float:
            return outside.radius(angle + turn[land])

        heels.append(behind.meeting(top, highest, heel=True))
        start = flute.wall_angle(faces[land], heel=False)
        end = behind.wall_angle(heels[land], heel=True) + turn[land]
        lands.append(outside.pieces(start, end))
    if hole > min(flute.floor for flute in flutes):
        return Outline(_separate(flutes, lands, (heels, faces), hole))
    loop: list[Piece] = []
    for land, pieces in enumerate(lands):
        after = (land + 1) % count
        loop += pieces
        loop += _between(flutes[after], heels[land], faces[after], (pieces, lands[after]))
    outer = _tidy(tuple(loop))
    return Outline((outer, full_circle(hole, hole=True)) if hole > 0 else (outer,))


def _between(
    flute: Flute,
    heel: float,
    face: float,
    tops: tuple[tuple[Piece, ...], tuple[Piece, ...]],
) -> tuple[Piece, ...]:
    """The flute between two lands, or the step between their tops where it does not cut."""
    if heel > flute.floor or face > flute.floor:
        return flute.trace(heel, face)
    return (Line(tops[0][-1].end, tops[1][0].start),)


def _separate(
    flutes: tuple[Flute, ...],
    lands: list[tuple[Piece, ...]],
    meetings: tuple[list[float], list[float]],
    hole: float,
) -> tuple[Loop, ...]:
    heels, faces = meetings
    loops: list[Loop] = []
    for land, (flute, pieces) in enumerate(zip(flutes, lands, strict=True)):
        behind = flutes[(land + 1) % len(flutes)]
        down = behind.wall(heels[land], hole, heel=True)
        up = flute.wall(faces[land], hole, heel=False)
        start, end = behind.wall_angle(hole, heel=True), flute.wall_angle(hole, heel=False)
        inner = Arc((0.0, 0.0), hole, start, start - (start - end) % 360.0)
        loops.append(_tidy((*pieces, *down, inner, *up)))
    return tuple(loops)


def _tidy(pieces: tuple[Piece, ...]) -> Loop:
    return tuple(piece for piece in pieces if math.dist(piece.start, piece.end) > _NOTHING)
