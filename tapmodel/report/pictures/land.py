"""One land from its heel, with the lines on which it would lie without relief."""

import math

import numpy as np
from numpy.typing import NDArray

from tapmodel.designing.record import TapDesign
from tapmodel.report.pictures.axes import axes, first_edge, hand_sign, lift
from tapmodel.report.pictures.toned import tones
from tapmodel.report.pictures.view import SIZE, View, Window
from tapmodel.shape.back_taper import narrowed
from tapmodel.shape.flute_section import heel_angle, section_of
from tapmodel.shape.profile import profile_radius, segments
from tapmodel.words import ReliefKind

Floats = NDArray[np.float64]

_FRONT = 12.0  # by which the camera stands towards the cutting end [deg]
_TOP, _TEETH = 1.5, 1.3  # of the picture's height, for the land's top and the teeth [pitches]
_LEVEL = 0.39  # of the land's horizon above the middle of the picture, of its height
_POINTS = 48  # of a crest's line along the land, and of a pitch's along the heel


def land_from_heel(design: TapDesign) -> View:
    """Along the first land from its heel, about the end of the chamfer."""
    pitch, radius = design.tap.thread.pitch, design.tap.thread.major / 2
    land = design.figures.land_angle
    raised = lift(radius, _TOP * pitch, 12.0, min(45.0, land + 4.0))
    above, front = math.radians(raised), math.tan(math.radians(_FRONT))
    rise = radius * (1 - math.cos(above))
    height = rise + _TEETH * pitch
    heel = axes(design, _heel(design))
    below = _LEVEL * height - rise
    middle = heel.at(
        radius - below * math.cos(above), below * math.sin(above), design.tap.chamfer_length
    )
    reach = height * SIZE[0] / SIZE[1]
    return View(
        direction=heel.at(math.sin(above), math.cos(above), -front),
        up=heel.at(math.cos(above), -math.sin(above), 0.0),
        window=Window(middle, height),
        references=without_relief(design, reach),
        tones=tones(design),
        title="One land from its heel",
        alt=f"Close-up of one land of {design.designation} from the heel, about the end of the "
        "chamfer.",
        caption=f"Dashed: where the teeth would reach without relief; {_gap(design)}.",
    )


def _gap(design: TapDesign) -> str:
    """What the dashes tell of the reliefs."""
    if design.tap.relief.thread.kind is not ReliefKind.CONCENTRIC:
        return "the gap below the dashes is the relief"
    if design.tap.relief.chamfer.kind is not ReliefKind.CONCENTRIC:
        return "the chamfer's relief is the gap below them, on full teeth they lie: no relief there"
    return "they lie on the teeth: there is no relief"


def without_relief(design: TapDesign, reach: float) -> tuple[Floats, ...]:
    """Middles of the crests along the first land, and the profile on its heel, all undropped.

    Args:
        design: the tap.
        reach: how far before and behind the end of the chamfer [mm].

    Returns:
        Lines, each (n, 3) [mm].
    """
    z, pitch = design.tap.chamfer_length, design.tap.thread.pitch
    start, end = max(0.0, z - reach), min(z + reach, design.tap.blank.thread_length)
    turns = (
        design.tap.thread.first_z + design.tap.thread.lead * _heel(design) / 360 - start
    ) / pitch
    heels = start + np.arange(turns % 1.0, (end - start) / pitch) * pitch
    crests = (_crest(design, float(height)) for height in heels)
    return (*crests, _heel_profile(design, start, end))


def _heel(design: TapDesign) -> float:
    """Polar angle at which the first land ends at the major diameter [deg]."""
    return first_edge(design) + design.figures.land_angle


def _crest(design: TapDesign, z: float) -> Floats:
    """Middle of the crest that is at height `z` where the land ends [mm]."""
    wall = _on_wall(design, _undropped(design, np.zeros(1), np.array([z])))
    angle = np.linspace(first_edge(design), float(wall[0]), _POINTS)
    height = z + design.tap.thread.lead * (angle - _heel(design)) / 360
    radius, kept = _undropped(design, np.zeros(_POINTS), height), height >= 0
    return _placed(design, radius[kept], angle[kept], height[kept])


def _heel_profile(design: TapDesign, start: float, end: float) -> Floats:
    """Profile on the heel's wall, carried on to the radius that the edge has [mm]."""
    thread = design.tap.thread
    z = np.arange(start, end, thread.pitch / _POINTS)
    radius = np.full_like(z, thread.major / 2)
    for _ in range(12):  # a point's angle on the wall depends on its radius, less than that on it
        w = z - thread.first_z - thread.lead * _on_wall(design, radius) / 360
        radius = _undropped(design, w, z)
    return _placed(design, radius, _on_wall(design, radius), z)


def _on_wall(design: TapDesign, radius: Floats) -> Floats:
    """Polar angle of the wall that ends the first land [deg]."""
    section = section_of(design.tap.flutes)
    following = design.tap.flutes.angles[0] + 360 / design.tap.flutes.count
    reached = np.maximum(radius, section.core_diameter / 2)  # a point may be smaller than the core
    return following + np.array([heel_angle(section, float(r)) for r in reached])


def _undropped(design: TapDesign, w: Floats, z: Floats) -> Floats:
    """Radius at the edge: thread or chamfer cone, whichever is less [mm]."""
    chamfer = design.tap.chamfer
    cone = chamfer.point_diameter / 2 + z * math.tan(math.radians(chamfer.angle))
    profile = profile_radius(segments(design.tap.thread), w) - narrowed(design.tap, z)
    return np.minimum(profile, cone)


def _placed(design: TapDesign, radius: Floats, angle: Floats, z: Floats) -> Floats:
    turned = np.radians(angle)
    return np.stack(
        [radius * np.cos(turned), hand_sign(design) * radius * np.sin(turned), z], axis=1
    )
