"""Taps built by hand from the definitions alone, to be judged by the checks room."""

import math
from dataclasses import replace

from tapmodel.shape import relief
from tapmodel.standards.limits import HoleLimits
from tapmodel.tap.tap import Blank, Chamfer, Flutes, Relief, Reliefs, TapThread
from tapmodel.design.record import TapDesign
from tapmodel.words import Hand, ReliefPlace

CHAMFER, CREST, THREAD = ReliefPlace.CHAMFER, ReliefPlace.CREST, ReliefPlace.THREAD


def thread(major: float, pitch: float, first_z: float, starts: int = 1) -> TapThread:
    """60-degree thread with a root flat of P/8 and groove and ridge equal at pitch diameter."""
    slope = math.tan(math.radians(30))
    pitch_diameter = major - 0.64 * pitch
    root_flat = pitch / 8
    return TapThread(
        pitch=pitch,
        lead=starts * pitch,
        starts=starts,
        hand=Hand.RIGHT,
        flank_angle=30.0,
        tap_class="",
        major=major,
        major_min=major - 0.02,
        pitch_diameter=pitch_diameter,
        pitch_min=pitch_diameter - 0.01,
        pitch_max=pitch_diameter + 0.01,
        minor=pitch_diameter - (pitch / 2 - root_flat) / slope,
        crest_flat=pitch / 2 - (major - pitch_diameter) * slope,
        root_flat=root_flat,
        crest_radius=0.0,
        root_radius=0.0,
        first_z=first_z,
    )


def flutes(count: int, cutter: float, offset: float, centre: float, length: float) -> Flutes:
    """Equal flutes, the first one at 20 degrees; only what locates the voids is meaningful."""
    return Flutes(
        count=count,
        cutter_diameter=cutter,
        offset=offset,
        centre_radius=centre,
        depth_from_top=0.0,
        core_diameter=2 * math.hypot(centre, offset) - cutter,
        rake_crest=0.0,
        rake_pitch=0.0,
        rake_root=0.0,
        chordal_hook=0.0,
        land_angle=0.0,
        land_width=0.0,
        area=0.0,
        angles=tuple(20.0 + 360.0 * k / count for k in range(count)),
        full_depth_length=length,
        runout_end=length + cutter / 2,
    )


def design(
    thread_: TapThread, chamfer: Chamfer, flutes_: Flutes, reliefs: Reliefs, blank: Blank
) -> TapDesign:
    """A whole design; texts and hole limits are of no interest to the checks."""
    hole = HoleLimits(0.0, 0.0, 0.0, 0.0, 0.0)
    return TapDesign("tap", "M", hole, 0.0, 0.0, thread_, chamfer, flutes_, reliefs, blank, (), ())


def chamfer(major: float, length: float, point: float, pitch: float) -> Chamfer:
    """Cone from `point` diameter at the front to `major` at `length`."""
    angle = math.degrees(math.atan((major - point) / 2 / length))
    return Chamfer(angle, length, length / pitch, point, 1, 0.0)


def _eccentric(place: ReliefPlace, major: float, edge_angle: float) -> Relief:
    return relief.eccentric_by_edge(place, major, 60.0, edge_angle)


def m10() -> TapDesign:
    """M10x1.5, 3 flutes, deep: straight faces, positive rake, neck smaller than the thread."""
    shape = thread(10.08, 1.5, 0.4)
    return design(
        shape,
        chamfer(10.08, 6.0, 8.0, 1.5),
        flutes(3, 4.2, 0.6, 4.0, 40.0),
        Reliefs(relief.concentric(THREAD, 10.08), _eccentric(CHAMFER, 10.08, 6.0)),
        Blank(100.0, 24.0, 7.6, 15.0, 30.0, 8.0, 6.3, 9.0, 90.0, 0.5, 3.0, 2.5),
    )


def m18() -> TapDesign:
    """M18x0.75, 4 shallow flutes: faces on the ball, negative rake, shank below the thread."""
    shape = thread(18.06, 0.75, -0.2)
    reliefs = Reliefs(
        relief.con_eccentric(THREAD, 18.06, 55.0, 12.0, 0.05),
        relief.con_eccentric(CHAMFER, 18.06, 55.0, 6.0, 0.30),
    )
    return design(
        shape,
        chamfer(18.06, 3.0, 17.0, 0.75),
        flutes(4, 7.0, 1.4, 8.8, 30.0),
        reliefs,
        Blank(112.0, 22.0, 15.6, 20.0, 20.0, 14.0, 11.2, 14.0, 98.0, 0.6, 0.0, 4.0),
    )


def no_neck() -> TapDesign:
    """M6x1, 3 flutes, straight step to a thicker shank, run-out inside the shank, crest relief."""
    shape = thread(6.05, 1.0, 0.1)
    return design(
        shape,
        chamfer(6.05, 2.5, 4.9, 1.0),
        flutes(3, 3.0, 0.3, 2.4, 21.0),
        Reliefs(_eccentric(CREST, 6.05, 4.0), _eccentric(CHAMFER, 6.05, 8.0)),
        Blank(66.0, 19.0, 0.0, 0.0, 30.0, 6.3, 5.0, 8.0, 58.0, 0.4, 0.0, 0.0),
    )


def m20() -> TapDesign:
    """D 20, P 1.25, 25 turns, 5 flutes, whole thread relieved eccentrically."""
    shape = thread(20.07, 1.25, 0.33)
    return design(
        shape,
        chamfer(20.07, 5.0, 18.5, 1.25),
        flutes(5, 6.0, 0.7, 8.6, 36.0),
        Reliefs(_eccentric(THREAD, 20.07, 2.0), _eccentric(CHAMFER, 20.07, 5.0)),
        Blank(125.0, 31.25, 17.5, 10.0, 30.0, 16.0, 12.5, 16.0, 109.0, 0.8, 5.0, 5.0),
    )


def two_starts() -> TapDesign:
    """M12x1.75 with two starts, 4 flutes of unequal spacing, left hand."""
    shape = replace(thread(12.07, 1.75, 0.9, starts=2), hand=Hand.LEFT)
    grooves = replace(flutes(4, 4.4, 0.5, 5.0, 34.0), angles=(10.0, 98.0, 190.0, 282.0))
    return design(
        shape,
        chamfer(12.07, 7.0, 10.0, 1.75),
        grooves,
        Reliefs(_eccentric(THREAD, 12.07, 3.0), relief.concentric(CHAMFER, 12.07)),
        Blank(110.0, 29.0, 9.0, 14.0, 30.0, 9.0, 7.1, 10.0, 99.0, 0.5, 0.0, 3.0),
    )


ALL = {"m10": m10, "m18": m18, "no_neck": no_neck, "m20": m20, "two_starts": two_starts}
