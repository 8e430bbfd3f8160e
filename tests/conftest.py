"""One small tap, made by hand from the definitions, and its solid, for all rooms' tests."""

import gc
import math
import signal
from dataclasses import replace
from typing import TYPE_CHECKING

import hypothesis
import pytest

from tapmodel.designing.record import TapDesign
from tapmodel.designing.work import Work
from tapmodel.shape import relief
from tapmodel.shape.figures import figures_of
from tapmodel.sources import Source
from tapmodel.standards.limits import HoleLimits, TapLimits
from tapmodel.standards.materials.steels import steel_named
from tapmodel.standards.materials.work import work_material
from tapmodel.tap.tap import Blank, Chamfer, Flutes, Reliefs, Tap, TapThread
from tapmodel.words import Certainty, Hand, ReliefPlace

if TYPE_CHECKING:
    import cadquery as cq

# Started in the background, a shell has its programs ignore Ctrl-C, and theirs inherit that.
signal.signal(signal.SIGINT, signal.default_int_handler)

# How long an example takes belongs to the benchmarks; the same are tried each time.
hypothesis.settings.register_profile("tests", deadline=None, derandomize=True, database=None)
hypothesis.settings.load_profile("tests")

# As the program does: to look for circles, of which few are made, takes a tenth of the time.
gc.set_threshold(100_000, 50, 100)


@pytest.fixture(scope="session")
def small_tap() -> Tap:
    """M8x1 with six turns, 3 flutes, chamfer, both reliefs, neck, square and two centres."""
    major, point, length = 8.05, 6.85, 2.0
    return Tap(
        thread=TapThread(
            pitch=1.0,
            starts=1,
            hand=Hand.RIGHT,
            flank_angle=30.0,
            major=major,
            pitch_diameter=7.42,
            minor=7.42 - 0.375 * math.sqrt(3),
            rounded_crest=False,
            rounded_root=False,
            first_z=0.31,
        ),
        chamfer=Chamfer(math.degrees(math.atan((major - point) / 2 / length)), point),
        flutes=Flutes(
            count=3,
            cutter_diameter=3.4,
            offset=0.4,
            centre_radius=3.2,
            full_depth_length=9.0,
        ),
        relief=Reliefs(
            relief.con_eccentric(ReliefPlace.THREAD, major, 70.0, 20.0, 0.03),
            relief.eccentric_by_edge(ReliefPlace.CHAMFER, major, 5.0),
        ),
        blank=Blank(
            overall_length=36.0,
            thread_length=6.0,
            neck_diameter=6.2,
            neck_length=8.0,
            shoulder_angle=30.0,
            shank_diameter=7.0,
            square_across_flats=5.5,
            square_length=7.0,
            rear_chamfer=0.4,
            front_centre=1.4,
            rear_centre=2.0,
        ),
    )


@pytest.fixture(scope="session")
def small_design(small_tap: Tap) -> TapDesign:
    """The small tap as a design without choices, for what reads more than the tap."""
    thread = small_tap.thread
    return TapDesign(
        name="small",
        designation="M8x1",
        hole=HoleLimits(0.0, 0.0, 0.0, 0.0, 0.0),
        basic_pitch_diameter=0.0,
        drill=7.0,
        work=Work(
            material=work_material("C45"),
            assumed=False,
            depth=12.0,
            kind="through",
            steel=steel_named("O1"),
        ),
        limits=TapLimits(
            tap_class="",
            pitch_min=thread.pitch_diameter - 0.01,
            pitch_max=thread.pitch_diameter + 0.01,
            major_min=thread.major - 0.02,
            source=Source("made by hand", "", Certainty.DERIVED),
        ),
        tap=small_tap,
        figures=figures_of(small_tap),
        choices=(),
        findings=(),
    )


@pytest.fixture(scope="session")
def left_tap(small_tap: Tap) -> Tap:
    """The same tap for the left hand."""
    return replace(small_tap, thread=replace(small_tap.thread, hand=Hand.LEFT))


@pytest.fixture(scope="session")
def small_solid(small_tap: Tap) -> "cq.Solid":
    """The solid of the small tap, as the modelling package's object."""
    # The kernel takes seconds to load: only for the tests that use it.
    import cadquery as cq  # noqa: PLC0415

    from tapmodel.geometry.kernel.build import build_solid  # noqa: PLC0415

    return cq.Solid(build_solid(small_tap).wrapped)
