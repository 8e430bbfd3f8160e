"""The surfaces of a tap, each with how far a point lies off it and which way it faces there."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from enum import IntEnum

import numpy as np
from numpy.typing import NDArray

from tapmodel.geometry.smooth.places import Places
from tapmodel.shape.form import Form
from tapmodel.shape.profile import Part, Segment
from tapmodel.shape.relief import drop_rate
from tapmodel.shape.turned import Turned
from tapmodel.words import ReliefPlace

Floats = NDArray[np.float64]

_FLATTEST = 1e-9  # of an arc's height that is still divided by, of its radius
_CENTRE_TAN = float(np.tan(np.radians(30.0)))  # of a centre's half angle


class Kind(IntEnum):
    """How a surface is made, which is how it looks."""

    THREAD = 0
    FLUTE = 1
    TURNED = 2
    END = 3


@dataclass(frozen=True, slots=True)
class Surface:
    """One smooth surface.

    Attributes:
        kind: how it is made.
        off: distance of points from it, and from its borders where they lie beyond [mm].
        facing: normals out of the metal, (n, 3), not of length 1.
        profile: whether it is a part of the thread's profile.
    """

    kind: Kind
    off: Callable[[Places], Floats]
    facing: Callable[[Places], Floats]
    profile: bool = False


def surfaces_of(form: Form) -> list[Surface]:
    """Every surface of a right-hand tap."""
    blank = form.tap.blank
    found = [_part(form, segment) for segment in form.profile]
    found += [_cone(form), _flute(form)]
    found += [_plane(0.0, -1.0), _plane(form.thread_end, None)]
    found += [_turned(piece) for piece in form.turned]
    found += [_plane(blank.square_start, 1.0), _plane(blank.overall_length, 1.0)]
    found += _flats(form)
    if blank.front_centre > 0:
        found.append(_centre(blank.front_centre / 2, 0.0, 1.0))
    if blank.rear_centre > 0:
        found.append(_centre(blank.rear_centre / 2, blank.overall_length, -1.0))
    if blank.rear_chamfer > 0:
        end, wide = blank.overall_length, blank.shank_diameter / 2
        start = end - blank.rear_chamfer
        found.append(_turned(Turned(start, end, wide, wide - blank.rear_chamfer)))
    return found


def _about(at: Places, outwards: Floats, along: Floats, axial: Floats) -> Floats:
    """Vectors of parts outwards, along +theta and along the axis."""
    cosine, sine = np.cos(at.theta), np.sin(at.theta)
    x = outwards * cosine - along * sine
    return np.stack([x, outwards * sine + along * cosine, axial], axis=-1)


def _beyond(value: Floats, low: Floats | float, high: Floats | float) -> Floats:
    return np.maximum(np.maximum(low - value, value - high), 0.0)


# --- thread -----------------------------------------------------------------------------------


def _part(form: Form, segment: Segment) -> Surface:
    part, thread = segment.part, form.tap.thread
    relief = form.tap.relief.thread
    carries = part is Part.CREST or relief.applies_to is ReliefPlace.THREAD

    def offset(at: Places) -> Floats:
        middle = (segment.start + segment.end) / 2
        return at.w - form.pitch * np.rint((at.w - middle) / form.pitch)

    def reached(at: Places) -> Floats:
        return np.clip(at.phi, *form.phi_range())

    def off(at: Places) -> Floats:
        w, phi = offset(at), reached(at)
        low, high = form.part_limits(part, phi)
        radius = form.part_radius(part, np.clip(w, low, high), phi) - form.narrowed(at.z)
        lean = np.hypot(1.0, _slope(segment, w))
        return np.abs(at.r - radius) / lean + _beyond(w, low, high) + _outside(form, at)

    def facing(at: Places) -> Floats:
        slope = _slope(segment, offset(at))
        rate = drop_rate(relief, thread.major, np.degrees(reached(at))) if carries else 0.0
        along = (slope * form.advance + rate) / at.r
        return _about(at, np.ones_like(at.r), along, form.narrowing - slope)

    return Surface(Kind.THREAD, off, facing, profile=True)


def _outside(form: Form, at: Places) -> Floats:
    return _beyond(at.z, 0.0, form.thread_end)


def _slope(segment: Segment, w: Floats) -> Floats:
    if not segment.is_arc:
        return np.full_like(w, segment.slope)
    away = np.clip(w, segment.start, segment.end) - segment.middle
    height = np.sqrt(np.maximum(segment.arc**2 - away**2, (_FLATTEST * segment.arc) ** 2))
    return -np.sign(segment.arc) * away / height


def _cone(form: Form) -> Surface:
    relief, major = form.tap.relief.chamfer, form.tap.thread.major
    lean = float(np.hypot(1.0, form.cone_tan))

    def reached(at: Places) -> Floats:
        return np.clip(at.phi, *form.phi_range())

    def off(at: Places) -> Floats:
        return np.abs(at.r - form.cone_radius(reached(at), at.z)) / lean + _outside(form, at)

    def facing(at: Places) -> Floats:
        rate = drop_rate(relief, major, np.degrees(reached(at)))
        ones = np.ones_like(at.r)
        return _about(at, ones, rate / at.r, -form.cone_tan * ones)

    return Surface(Kind.THREAD, off, facing, profile=True)


# --- flutes -----------------------------------------------------------------------------------


def _flute(form: Form) -> Surface:
    """Walls, floor and run-out of a flute, which touch one another smoothly."""
    b = form.tap.flutes.cutter_diameter / 2
    c, e = form.walls.c, form.walls.e

    def towards(at: Places) -> tuple[Floats, Floats, Floats]:
        """From a point to the middle of the cutter, as far as that leaves it."""
        return np.maximum(c - at.u, 0.0), e - at.t, np.minimum(form.full_depth - at.z, 0.0)

    def off(at: Places) -> Floats:
        inwards, across, back = towards(at)
        return np.abs(np.sqrt(inwards**2 + across**2 + back**2) - b) + _beyond(-at.u, -np.inf, 0.0)

    def facing(at: Places) -> Floats:
        inwards, across, back = towards(at)
        cosine, sine = np.cos(at.turn), np.sin(at.turn)
        x = inwards * cosine - across * sine
        return np.stack([x, inwards * sine + across * cosine, back], axis=-1)

    return Surface(Kind.FLUTE, off, facing)


# --- blank ------------------------------------------------------------------------------------


def _plane(height: float, side: float | None) -> Surface:
    """A plane square to the axis; a shoulder of which it is not said faces either way."""

    def off(at: Places) -> Floats:
        return np.abs(at.z - height)

    def facing(at: Places) -> Floats:
        return np.tile([0.0, 0.0, 1.0 if side is None else side], (len(at.z), 1))

    return Surface(Kind.END, off, facing)


def _turned(piece: Turned) -> Surface:
    rise = piece.end_radius - piece.start_radius
    slope = rise / (piece.end - piece.start) if rise else 0.0
    lean = float(np.hypot(1.0, slope))

    def off(at: Places) -> Floats:
        radius = piece.start_radius + slope * (at.z - piece.start)
        return np.abs(at.r - radius) / lean + _beyond(at.z, piece.start, piece.end)

    def facing(at: Places) -> Floats:
        ones = np.ones_like(at.r)
        return _about(at, ones, 0.0 * ones, -slope * ones)

    return Surface(Kind.TURNED, off, facing)


def _centre(rim: float, height: float, side: float) -> Surface:
    """A 60-degree centre, which opens against `side` along the axis."""
    lean = float(np.hypot(1.0, _CENTRE_TAN))

    def off(at: Places) -> Floats:
        inside = (at.z - height) * side
        return np.abs(at.r - (rim - inside * _CENTRE_TAN)) / lean + _beyond(inside, 0.0, np.inf)

    def facing(at: Places) -> Floats:
        ones = np.ones_like(at.r)
        return _about(at, -ones, 0.0 * ones, -side * _CENTRE_TAN * ones)

    return Surface(Kind.END, off, facing)


def _flats(form: Form) -> Iterator[Surface]:
    blank = form.tap.blank
    half = blank.square_across_flats / 2
    for x, y in ((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0)):

        def off(at: Places, x: float = x, y: float = y) -> Floats:
            behind = _beyond(at.z, blank.square_start, blank.overall_length)
            return np.abs(at.x * x + at.y * y - half) + behind

        def facing(at: Places, x: float = x, y: float = y) -> Floats:
            return np.tile([x, y, 0.0], (len(at.x), 1))

        yield Surface(Kind.END, off, facing)
