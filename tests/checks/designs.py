"""Taps built by hand from the definitions alone, to be judged by the checks room."""

import math
from dataclasses import replace

from tapmodel.shape import relief
from tapmodel.tap.flanks import Flanks
from tapmodel.tap.tap import Blank, Chamfer, Flutes, Relief, Reliefs, Tap, TapThread
from tapmodel.words import Hand, ReliefPlace

CHAMFER, CREST, THREAD = ReliefPlace.CHAMFER, ReliefPlace.CREST, ReliefPlace.THREAD


def thread(major: float, pitch: float, first_z: float, starts: int = 1) -> TapThread:
    """60-degree thread with a root flat of P/8 and groove and ridge equal at pitch diameter."""
    return TapThread(
        pitch=pitch,
        starts=starts,
        hand=Hand.RIGHT,
        flank_angle=30.0,
        major=major,
        pitch_diameter=major - 0.64 * pitch,
        minor=major - 0.64 * pitch - 0.375 * pitch * math.sqrt(3),
        rounded_crest=False,
        rounded_root=False,
        first_z=first_z,
    )


def chamfer(major: float, length: float, point: float) -> Chamfer:
    """Cone from `point` diameter at the front to `major` at `length`."""
    return Chamfer(math.degrees(math.atan((major - point) / 2 / length)), point)


def _eccentric(place: ReliefPlace, major: float, edge_angle: float) -> Relief:
    return relief.eccentric_by_edge(place, major, edge_angle)


def m10() -> Tap:
    """M10x1.5, 3 flutes, deep: straight faces, positive rake, neck smaller than the thread."""
    return Tap(
        thread(10.08, 1.5, 0.4),
        chamfer(10.08, 6.0, 8.0),
        Flutes(3, 4.2, 0.6, 4.0, 40.0),
        Reliefs(relief.concentric(THREAD), _eccentric(CHAMFER, 10.08, 6.0)),
        Blank(100.0, 24.0, 7.6, 15.0, 30.0, 8.0, 6.3, 10.0, 0.5, 3.0, 2.5),
    )


def m18() -> Tap:
    """M18x0.75, 4 shallow flutes: faces on the ball, negative rake, shank below the thread."""
    reliefs = Reliefs(
        relief.con_eccentric(THREAD, 18.06, 55.0, 12.0, 0.05),
        relief.con_eccentric(CHAMFER, 18.06, 55.0, 6.0, 0.30),
    )
    return Tap(
        thread(18.06, 0.75, -0.2),
        chamfer(18.06, 3.0, 17.0),
        Flutes(4, 7.0, 1.4, 8.8, 30.0),
        reliefs,
        Blank(112.0, 22.0, 15.6, 20.0, 20.0, 14.0, 11.2, 14.0, 0.6, 0.0, 4.0),
    )


def no_neck() -> Tap:
    """M6x1, 3 flutes, straight step to a thicker shank, run-out inside the shank, crest relief."""
    return Tap(
        thread(6.05, 1.0, 0.1),
        chamfer(6.05, 2.5, 4.9),
        Flutes(3, 3.0, 0.3, 2.4, 21.0),
        Reliefs(_eccentric(CREST, 6.05, 4.0), _eccentric(CHAMFER, 6.05, 8.0)),
        Blank(66.0, 19.0, 0.0, 0.0, 30.0, 6.3, 5.0, 8.0, 0.4, 0.0, 0.0),
    )


def m20() -> Tap:
    """D 20, P 1.25, 25 turns, 5 flutes, whole thread relieved eccentrically."""
    return Tap(
        thread(20.07, 1.25, 0.33),
        chamfer(20.07, 5.0, 18.5),
        Flutes(5, 6.0, 0.7, 8.6, 36.0),
        Reliefs(_eccentric(THREAD, 20.07, 2.0), _eccentric(CHAMFER, 20.07, 5.0)),
        Blank(125.0, 31.25, 17.5, 10.0, 30.0, 16.0, 12.5, 16.0, 0.8, 5.0, 5.0),
    )


def two_starts() -> Tap:
    """M12x1.75 with two starts, 4 flutes, left hand."""
    return Tap(
        replace(thread(12.07, 1.75, 0.9, starts=2), hand=Hand.LEFT),
        chamfer(12.07, 7.0, 10.0),
        Flutes(4, 4.4, 0.5, 5.0, 34.0),
        Reliefs(_eccentric(THREAD, 12.07, 3.0), relief.concentric(CHAMFER)),
        Blank(110.0, 29.0, 9.0, 14.0, 30.0, 9.0, 7.1, 11.0, 0.5, 0.0, 3.0),
    )


def rounded() -> Tap:
    """M10x1.5 with flanks at 27.5 degrees, arcs at crest and root, the thread not relieved."""
    # An arc of 0.18 that touches both flanks ends there.
    minor = 9.12 - Flanks(1.5, 9.12, math.radians(27.5)).arc_height(0.18)
    return Tap(
        TapThread(1.5, 1, Hand.RIGHT, 27.5, 10.08, 9.12, minor, True, True, 0.4),
        chamfer(10.08, 6.0, 8.0),
        Flutes(3, 4.2, 0.6, 4.0, 20.0),
        Reliefs(relief.concentric(THREAD), _eccentric(CHAMFER, 10.08, 6.0)),
        Blank(50.0, 12.0, 7.6, 15.0, 30.0, 8.0, 6.3, 10.0, 0.5, 3.0, 2.5),
    )


def tapered() -> Tap:
    """The M10 with a back taper: over its 18 mm behind the chamfer it loses 36 µm of diameter."""
    tap = m10()
    return replace(tap, thread=replace(tap.thread, back_taper=0.2))


def shortened(tap: Tap, turns: int) -> Tap:
    """The tap with so many turns less: front, thread's end and all behind it stay as they were."""
    less = turns * tap.thread.lead
    flutes = replace(tap.flutes, full_depth_length=tap.flutes.full_depth_length - less)
    blank = replace(
        tap.blank,
        overall_length=tap.blank.overall_length - less,
        thread_length=tap.blank.thread_length - less,
    )
    return replace(tap, flutes=flutes, blank=blank)


ALL = {
    "m10": m10,
    "m18": m18,
    "no_neck": no_neck,
    "m20": m20,
    "two_starts": two_starts,
    "tapered": tapered,
}
