"""One small tap, made by hand from the definitions, and its solid, for all rooms' tests."""

import math
import signal
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from tapmodel.shape import relief
from tapmodel.standards.limits import HoleLimits
from tapmodel.tap.tap import Blank, Chamfer, Flutes, Reliefs, TapThread
from tapmodel.design.record import TapDesign
from tapmodel.words import Hand, ReliefPlace

if TYPE_CHECKING:
    import cadquery as cq

# Started in the background, a shell has its programs ignore Ctrl-C, and theirs inherit that.
signal.signal(signal.SIGINT, signal.default_int_handler)


@pytest.fixture(scope="session")
def small_tap() -> TapDesign:
    """M8x1 with six turns, 3 flutes, chamfer, both reliefs, neck, square and two centres."""
    slope = math.tan(math.radians(30))
    major, pitch, pitch_diameter, root_flat = 8.05, 1.0, 7.42, 0.125
    thread = TapThread(
        pitch=pitch,
        lead=pitch,
        starts=1,
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
        first_z=0.31,
    )
    point, length = 6.85, 2.0
    angle = math.degrees(math.atan((major - point) / 2 / length))
    flutes = Flutes(
        count=3,
        cutter_diameter=3.4,
        offset=0.4,
        centre_radius=3.2,
        depth_from_top=0.0,
        core_diameter=2 * math.hypot(3.2, 0.4) - 3.4,
        rake_crest=0.0,
        rake_pitch=0.0,
        rake_root=0.0,
        chordal_hook=0.0,
        land_angle=0.0,
        land_width=0.0,
        area=0.0,
        angles=(0.0, 120.0, 240.0),
        full_depth_length=9.0,
        runout_end=10.7,
    )
    return TapDesign(
        name="small",
        designation="M8x1",
        hole=HoleLimits(0.0, 0.0, 0.0, 0.0, 0.0),
        basic_pitch_diameter=0.0,
        drill=7.0,
        thread=thread,
        chamfer=Chamfer(angle, length, length / pitch, point, 1, 0.0),
        flutes=flutes,
        relief=Reliefs(
            relief.con_eccentric(ReliefPlace.THREAD, major, 70.0, 20.0, 0.03),
            relief.eccentric_by_edge(ReliefPlace.CHAMFER, major, 70.0, 5.0),
        ),
        blank=Blank(36.0, 6.0, 6.2, 8.0, 30.0, 7.0, 5.5, 7.0, 29.0, 0.4, 1.4, 2.0),
        choices=(),
        findings=(),
    )


@pytest.fixture(scope="session")
def left_tap(small_tap: TapDesign) -> TapDesign:
    """The same tap for the left hand."""
    return replace(small_tap, thread=replace(small_tap.thread, hand=Hand.LEFT))


@pytest.fixture(scope="session")
def small_solid(small_tap: TapDesign) -> "cq.Solid":
    """The solid of the small tap, as the modelling package's object."""
    # The kernel takes seconds to load: only for the tests that use it.
    import cadquery as cq  # noqa: PLC0415

    from tapmodel.geometry.kernel.build import build_solid  # noqa: PLC0415

    return cq.Solid(build_solid(small_tap).wrapped)
