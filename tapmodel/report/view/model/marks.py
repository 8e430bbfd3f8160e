"""Points of a tap that are named on its model, each with its number."""

import math
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Angle, Length, small_length
from tapmodel.report.units import Units, as_text
from tapmodel.shape.flute_section import section_of
from tapmodel.shape.form import Form
from tapmodel.shape.outlines.section import full_thread_height
from tapmodel.shape.walls import FACE, HEEL
from tapmodel.words import Hand

Vector = tuple[float, float, float]


@dataclass(frozen=True, slots=True)
class Place:
    """A point on the surface.

    Attributes:
        at: in the tap's own frame, of its own hand [mm].
        facing: the normal there, of length 1.
    """

    at: Vector
    facing: Vector


@dataclass(frozen=True, slots=True)
class Mark:
    """What is named.

    Attributes:
        key: short name.
        label: in the trade's words.
        text: its number with the unit.
        places: where it can be shown: one on each land, or in each flute.
    """

    key: str
    label: str
    text: str
    places: tuple[Place, ...]


def marks_of(design: TapDesign, units: Units) -> tuple[Mark, ...]:
    """Land, heel, cutting face, web and chamfer with their numbers."""
    figures, tap = design.figures, design.tap
    drop = figures.thread_relief.heel_drop
    heel = f"drops {as_text(small_length(drop), units)}" if drop else "no relief"
    pitches = f"{figures.chamfer_pitches:.1f} pitches"
    land = (
        f"{as_text(Length(figures.land_width, 2), units)}, {as_text(Angle(figures.land_angle, 1))}"
    )
    cone = f"{as_text(Angle(tap.chamfer.angle, 1))}, {pitches}"
    form = Form(tap)
    return (
        Mark("land", "land", land, _each(form, _on_land)),
        Mark("heel", "heel", heel, _each(form, _on_heel)),
        Mark(
            "face",
            "cutting face",
            f"rake {as_text(Angle(figures.rake_crest, 1))}",
            _each(form, _on_face),
        ),
        Mark(
            "web",
            "web (core)",
            as_text(Length(tap.flutes.core_diameter, 2), units),
            _each(form, _on_web),
        ),
        Mark("chamfer", "chamfer", cone, _each(form, _on_chamfer)),
    )


def _each(form: Form, place: Callable[[Form, int], tuple[Vector, Vector]]) -> tuple[Place, ...]:
    """What is found beside every flute, in the frame of the tap's own hand."""
    side = -1.0 if form.tap.thread.hand is Hand.LEFT else 1.0
    found = (place(form, flute) for flute in range(form.lands))
    return tuple(Place((x, side * y, z), (u, side * v, w)) for (x, y, z), (u, v, w) in found)


def _crest(form: Form, land: int, phi: float, z: float) -> tuple[float, float]:
    """Height of a crest's middle near z, and its radius there [mm]."""
    begin = float(form.crest_z[land]) + form.advance * phi
    height = begin + form.pitch * round((z - begin) / form.pitch)
    radius = form.threaded(np.asarray(land), np.asarray(phi), np.asarray(height)).min()
    return height, float(radius)


def _on_crest(
    form: Form, land: int, phi: float, z: float, lean: float = 0.0
) -> tuple[Vector, Vector]:
    height, radius = _crest(form, land, phi, z)
    theta = float(form.edge_angles[land]) + phi
    facing = theta + lean
    at = (radius * math.cos(theta), radius * math.sin(theta), height)
    return at, (math.cos(facing), math.sin(facing), 0.0)


def _heel_phi(form: Form) -> float:
    return float(form.wall_phi(HEEL, np.asarray(form.crest_radius)))


def _on_land(form: Form, land: int) -> tuple[Vector, Vector]:
    return _on_crest(form, land, 0.5 * _heel_phi(form), full_thread_height(form.tap))


def _on_heel(form: Form, land: int) -> tuple[Vector, Vector]:
    height = full_thread_height(form.tap) + form.pitch
    return _on_crest(form, land, 0.995 * _heel_phi(form), height, math.pi / 4)


def _on_chamfer(form: Form, land: int) -> tuple[Vector, Vector]:
    middle = 0.6 * form.tap.chamfer_length
    at, (x, y, _) = _on_crest(form, land, 0.15 * _heel_phi(form), middle)
    lean = math.atan(form.cone_tan)
    return at, (x * math.cos(lean), y * math.cos(lean), -math.sin(lean))


def _on_face(form: Form, flute: int) -> tuple[Vector, Vector]:
    radius = (form.crest_radius + form.root_radius) / 2
    angle = float(form.walls.angle(FACE, np.asarray(radius)))
    u, t = radius * math.cos(angle), radius * math.sin(angle)
    inwards, across = max(form.walls.c - u, 0.0), form.walls.e - t
    long = math.hypot(inwards, across)
    height, _ = _crest(form, flute, 0.0, full_thread_height(form.tap) - 2 * form.pitch)
    return _placed(form, flute, (u, t, height), (inwards / long, across / long, 0.0))


def _on_web(form: Form, flute: int) -> tuple[Vector, Vector]:
    section = section_of(form.tap.flutes)
    u, t = (part / section.centre_distance for part in (section.centre_radius, section.offset))
    core = section.core_diameter / 2
    height = 0.5 * full_thread_height(form.tap)
    return _placed(form, flute, (core * u, core * t, height), (u, t, 0.0))


def _placed(form: Form, flute: int, at: Vector, facing: Vector) -> tuple[Vector, Vector]:
    """Out of a flute's own frame."""
    angle = float(form.flute_angles[flute])
    return _turned(at, angle), _turned(facing, angle)


def _turned(vector: Vector, angle: float) -> Vector:
    x, y, z = vector
    cosine, sine = math.cos(angle), math.sin(angle)
    return x * cosine - y * sine, x * sine + y * cosine, z
