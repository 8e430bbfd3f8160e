"""How much the grooves of a thread raise the shear of a twisted tap.

Close to the surface a shaft in torsion is a body in antiplane shear: the lines of stress run along
the axis past a row of ridges as an ideal fluid runs past a corrugated wall. That row, which
relieves each of its grooves, is solved exactly for the tap's own profile. Far below, the stress is
that of a plain shaft whose surface lies where the wall seems to lie from there, a little above the
roots, and which therefore carries less stress than one of the root's diameter.
"""

import math
from functools import lru_cache

import numpy as np

from tapmodel.prediction.strength.analytic import conjugate_mirrored
from tapmodel.prediction.strength.edge import by_number, edge_of
from tapmodel.prediction.strength.record import Notch, RadiusHeld
from tapmodel.prediction.strength.torsion import peak_of
from tapmodel.shape.outlines.outline import Arc, Line, Loop, Piece
from tapmodel.shape.profile import Segment, segments
from tapmodel.standards.materials.steels import TapSteel
from tapmodel.tap.tap import TapThread

NOSE = 0.025
"""Corner that a threading tool leaves at each side of a flat root, by the pitch: 0.02 to 0.03, a
stone's stroke over the corner (common practice)."""

SHIELDED = 2.5
"""Power of root by effective diameter: 3 by what a plain shaft of the effective diameter carries;
half a power less meets the 20 axisymmetric solutions for M6, M10, M18x0.75 and Tr16x4 with corners
of 0.01 to 0.1 pitches within 1 % (fitted here)."""

_CROWDED = 2e-5
"""Nodes whose step is less than this share of the pitch are too close to a corner to tell."""


def notch_of(thread: TapThread, steel: TapSteel, strength: float, nose: float | None) -> Notch:
    """The stress concentration of a tap's thread in torsion.

    The radius is never less than the critical distance of the steel: sharper notches break as if
    they had that one. It is never more than fits between the flanks.

    Args:
        thread: of the tap.
        steel: for its toughness.
        strength: stress at which the steel breaks [MPa].
        nose: corner radius of a flat root [mm]; None for `NOSE` pitches.

    Source: derived here; critical distance after D. Taylor, The Theory of Critical Distances
    (2007), from memory.
    """
    least = critical_distance(steel.toughness, strength)
    if thread.rounded_root:
        radius, held = thread.root_radius, RadiusHeld.THREAD
        # A whole round root is as wide as fits; only its factor for a larger one is not known.
        factor, lift = row_of_grooves(_unit(thread), 0.0)
    else:
        radius, held = (NOSE * thread.pitch if nose is None else nose), RadiusHeld.TOOL
        if radius < least:
            radius, held = least, RadiusHeld.MATERIAL
        room = widest_corner(thread)
        if radius > room:
            radius, held = room, RadiusHeld.ROOM
        factor, lift = row_of_grooves(_unit(thread), radius / thread.pitch)
    effective = thread.minor + 2 * lift * thread.pitch
    return Notch(factor * (thread.minor / effective) ** SHIELDED, radius, held, effective)


def critical_distance(toughness: float, strength: float) -> float:
    """Length below which no notch is sharper for the steel [mm].

    Args:
        toughness: KIc [MPa·sqrt(m)].
        strength: [MPa].

    Source: `(1/pi) (KIc/sigma)**2`, D. Taylor (2007), from memory.
    """
    return 1e3 / math.pi * (toughness / strength) ** 2


def widest_corner(thread: TapThread) -> float:
    """The largest corner radius that a flat root has room for [mm].

    Source: derived here; two of them meet in the middle of the flat.
    """
    return thread.root_flat / 2 / math.tan(math.radians(90 - thread.flank_angle) / 2)


def _unit(thread: TapThread) -> tuple[Segment, ...]:
    """The profile in pitches, its root at height 0, rounded so that like threads are one."""
    pitch, root = thread.pitch, thread.minor / 2

    def share(length: float) -> float:
        return round(length / pitch, 9)

    return tuple(
        Segment(
            s.part,
            share(s.start),
            share(s.end),
            share(s.start_radius - root),
            share(s.end_radius - root),
            share(s.arc),
        )
        for s in segments(thread)
    )


@lru_cache(maxsize=64)
def row_of_grooves(profile: tuple[Segment, ...], corner: float) -> tuple[float, float]:
    """A surface in antiplane shear with an endless row of grooves along the stress's normal.

    Args:
        profile: crest, flank, root, flank over one pitch, all in pitches, with the bottom of the
            root at radius 0.
        corner: radius at both sides of a flat root, in pitches; 0 for a rounded root.

    Returns:
        Greatest shear by that far below, and how far above the bottom of the root the surface
        seems to lie from there, in pitches.

    Source: derived here; `exp(-2 pi i x)` makes one period of the body the inside of a closed
    curve, on which the real part of an analytic function is given.
    """
    edge = edge_of(_half_outline(profile, corner))
    wave = 2 * math.pi
    places = np.exp(-1j * wave * edge.places)
    steps = -1j * wave * places * edge.steps
    known, slope = -edge.places.imag, -edge.steps.imag
    found = conjugate_mirrored(places, steps, known[:, None], slope[:, None])[:, 0]
    along = by_number(np.concatenate([found, -found[::-1]]))[: len(found)]
    length = np.abs(edge.steps)
    told = length > _CROWDED
    shear = np.abs(edge.steps.real - along)[told] / length[told]
    far = np.sum(steps / places * (known + 1j * found)).imag / math.pi
    return peak_of(edge.places[told], shear)[0], -float(far)


def _half_outline(profile: tuple[Segment, ...], corner: float) -> Loop:
    """From the middle of a crest to the middle of a root, the body at the left: x is -w."""
    crest, flank, root, _ = profile
    lean = math.atan2(flank.start_radius - flank.end_radius, flank.end - flank.start)
    cut = corner * math.tan(lean / 2)
    foot = (cut * math.cos(lean) - flank.end, cut * math.sin(lean) + flank.end_radius)
    return (
        _half_crest(crest),
        Line((-flank.start, flank.start_radius), foot),
        *_half_root(root, corner, cut, math.degrees(lean)),
    )


def _half_crest(crest: Segment) -> Piece:
    if not crest.is_arc:
        return Line((0.0, crest.end_radius), (-crest.end, crest.end_radius))
    half = math.degrees(math.asin(min(crest.end / crest.arc, 1.0)))
    return Arc((0.0, crest.arc_centre), crest.arc, 90.0, 90.0 + half)


def _half_root(root: Segment, corner: float, cut: float, lean: float) -> tuple[Piece, ...]:
    """Half of a rounded root, or a corner's arc and half of the flat; `lean` of the flank [deg]."""
    height, middle = root.start_radius, -root.middle
    if root.is_arc:
        half = math.degrees(math.asin(min((root.end - root.start) / 2 / -root.arc, 1.0)))
        return (Arc((middle, root.arc_centre), -root.arc, 270.0 + half, 270.0),)
    begin = -root.start - cut
    return (
        Arc((begin, height + corner), corner, 270.0 + lean, 270.0),
        Line((begin, height), (middle, height)),
    )
