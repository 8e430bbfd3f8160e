"""The hole against its gauges, and how often the tap can be sharpened."""

import math
from dataclasses import replace

import numpy as np
import pytest
from trial_taps import designed, faced, relieved

from tapmodel.prediction.gauge import (
    OVERSIZE,
    FaceLimit,
    Gauge,
    Sharpening,
    edge_diameters,
    gauge_of,
)
from tapmodel.shape.flute_section import face_angle, land_angle, section_of
from tapmodel.shape.relief import con_eccentric, concentric, drop, eccentric_by_edge
from tapmodel.tap.tap import Relief, Tap
from tapmodel.words import ReliefPlace

DESIGN = designed("M10")
HOLE, DRILL = DESIGN.hole, DESIGN.drill
MAJOR = DESIGN.tap.thread.major


def radial(relief: Relief) -> Tap:
    """The tap with radial faces, so that its edges lie at one angle."""
    chamfer = concentric(ReliefPlace.CHAMFER)
    return relieved(faced(DESIGN.tap, 0.0), relief, chamfer)


def sharpened(tap: Tap, **more: float) -> Gauge:
    return gauge_of(tap, HOLE, DRILL, sharpening=Sharpening(**more))


def test_a_designed_tap_leaves_a_hole_between_its_gauges() -> None:
    for designation in ("M10", "1/2-13 UNC", "G1/2", "Tr20x4", "4 BA"):
        design = designed(designation)
        gauge = gauge_of(design.tap, design.hole, design.drill, oversize=0.005)
        assert gauge.go
        assert gauge.no_go
        expected = design.tap.thread.pitch_diameter + 0.005 - design.hole.pitch_min
        assert gauge.wear_left == pytest.approx(expected, abs=1e-12)
        assert gauge.minor == design.drill
        assert gauge.major == pytest.approx(design.tap.thread.major + 0.005)


def test_each_gauge_tells_its_own_limit() -> None:
    plain = radial(concentric(ReliefPlace.CREST))
    least, most = HOLE.pitch_min, HOLE.pitch_max
    for measured, go, no_go in (
        (least - 0.001, False, True),
        (least, True, True),
        (most, True, True),
        (most + 0.001, True, False),
    ):
        gauge = gauge_of(plain, HOLE, DRILL, measured=measured - 0.01, oversize=0.01)
        assert (gauge.go, gauge.no_go) == (go, no_go)
        assert gauge.wear_left == pytest.approx(measured - least, abs=1e-12)
    assert not gauge_of(plain, HOLE, HOLE.minor_min - 0.001).go
    assert gauge_of(plain, HOLE, HOLE.minor_min).go
    small = replace(plain, thread=replace(plain.thread, major=HOLE.major_min - OVERSIZE - 0.001))
    assert not gauge_of(small, HOLE, DRILL).go
    assert gauge_of(plain, HOLE, DRILL).oversize == OVERSIZE


@pytest.mark.parametrize("place", [ReliefPlace.CREST, ReliefPlace.THREAD])
def test_without_relief_of_the_flanks_the_pitch_diameter_stays(place: ReliefPlace) -> None:
    tap = radial(concentric(place))
    angles = np.array([0.0, 10.0, 30.0])
    for diameters in edge_diameters(tap, angles):
        assert np.all(diameters == diameters[0])
    gauge = sharpened(tap)
    assert gauge.face_limit is FaceLimit.LAND
    land = math.radians(land_angle(section_of(tap.flutes), 4, MAJOR / 2)) * MAJOR / 2
    assert gauge.sharpenings_face == math.floor(0.5 * land / 0.1)
    assert sharpened(tap, least_land=0.25, face_stock=0.05).sharpenings_face == math.floor(
        0.75 * land / 0.05
    )


def test_relief_of_the_crest_lowers_the_major_diameter_alone() -> None:
    relief = eccentric_by_edge(ReliefPlace.CREST, MAJOR, 8.0)
    pitches, majors = edge_diameters(radial(relief), np.array([0.0, 12.0]))
    assert pitches[1] == pitches[0]
    dropped = float(drop(relief, MAJOR, np.array(12.0)))
    assert majors[0] - majors[1] == pytest.approx(2 * dropped, rel=1e-9)
    gauge = sharpened(radial(relief), face_stock=0.02)
    assert gauge.face_limit is FaceLimit.MAJOR
    spare = (MAJOR + OVERSIZE - HOLE.major_min) / 2
    assert gauge.sharpenings_face == times(relief, spare, 0.02)


@pytest.mark.parametrize("angle", [1.0, 3.0, 6.0])
@pytest.mark.parametrize("stock", [0.02, 0.1])
def test_relief_of_the_thread_counts_by_its_drop(angle: float, stock: float) -> None:
    relief = eccentric_by_edge(ReliefPlace.THREAD, MAJOR, angle)
    tap = radial(relief)
    gauge = sharpened(tap, face_stock=stock, least_land=0.0)
    spare = gauge.wear_left / 2
    assert spare == pytest.approx(
        (DESIGN.tap.thread.pitch_diameter + OVERSIZE - HOLE.pitch_min) / 2
    )
    crest = (MAJOR + OVERSIZE - HOLE.major_min) / 2
    assert gauge.sharpenings_face == times(relief, min(spare, crest), stock)
    assert gauge.face_limit is (FaceLimit.PITCH if spare <= crest else FaceLimit.MAJOR)


def times(relief: Relief, spare: float, stock: float) -> int:
    """How many grindings until the drop exceeds what there is to spare, found one by one."""
    done = 0
    while (
        float(drop(relief, MAJOR, np.array(math.degrees((done + 1) * stock / (MAJOR / 2)))))
        <= spare
    ):
        done += 1
    return done


def test_a_margin_is_ground_off_before_the_size_goes() -> None:
    relief = con_eccentric(ReliefPlace.THREAD, MAJOR, 40.0, 9.0, 0.25)
    pitches, _ = edge_diameters(radial(relief), np.array([0.0, 8.9, 9.0, 12.0]))
    assert pitches[:3] == pytest.approx(DESIGN.tap.thread.pitch_diameter)
    dropped = float(drop(relief, MAJOR, np.array(12.0)))
    assert pitches[0] - pitches[3] == pytest.approx(2 * dropped, rel=1e-9)


@pytest.mark.parametrize("hook", [-15.0, 15.0])
def test_a_rake_puts_the_pitch_line_at_another_drop(hook: float) -> None:
    relief = eccentric_by_edge(ReliefPlace.THREAD, MAJOR, 6.0)
    tap = relieved(faced(DESIGN.tap, hook), relief, concentric(ReliefPlace.CHAMFER))
    pitches, majors = edge_diameters(tap, np.array([0.0]))
    section, pitch = section_of(tap.flutes), float(pitches[0])
    behind = face_angle(section, pitch / 2) - face_angle(section, MAJOR / 2)
    dropped = float(drop(relief, MAJOR, np.array(behind)))
    assert abs(dropped) > 0.005
    assert math.copysign(1, dropped) == math.copysign(1, hook)
    assert pitch == pytest.approx(tap.thread.pitch_diameter - 2 * dropped, abs=1e-9)
    assert majors[0] == pytest.approx(MAJOR, abs=1e-9)
    told = gauge_of(tap, HOLE, DRILL, measured=8.5, oversize=0.0)
    assert told.pitch_diameter == 8.5


def test_a_tap_too_small_is_not_sharpened() -> None:
    gauge = gauge_of(DESIGN.tap, HOLE, DRILL, measured=HOLE.pitch_min - 0.1, oversize=0.0)
    assert (gauge.sharpenings_face, gauge.face_limit) == (0, FaceLimit.PITCH)
    assert gauge.wear_left == pytest.approx(-0.1)


def test_the_chamfer_is_ground_until_one_lead_is_left() -> None:
    for designation in ("M10", "M20xPh6P1.5"):
        design = designed(designation)
        tap = design.tap
        for stock, leads in ((0.3, 1.0), (0.5, 2.0)):
            shop = Sharpening(chamfer_stock=stock, least_thread=leads)
            count = gauge_of(tap, design.hole, design.drill, sharpening=shop).sharpenings_chamfer
            spare = tap.blank.thread_length - tap.chamfer_length - leads * tap.thread.lead
            assert count * stock <= spare + 1e-9
            assert (count + 1) * stock > spare


def tapered(back_taper: float, **thread: float) -> Tap:
    return replace(DESIGN.tap, thread=replace(DESIGN.tap.thread, back_taper=back_taper, **thread))


def test_a_back_taper_lets_the_chamfer_cut_the_flanks_larger() -> None:
    """The cone passes the pitch line so far before its end, where the tap is as stated."""
    tap = tapered(0.1)
    thread, cone = tap.thread, math.tan(math.radians(tap.chamfer.angle))
    before = (thread.major - thread.pitch_diameter) / 2 / cone
    found = gauge_of(tap, HOLE, DRILL)
    plain = gauge_of(DESIGN.tap, HOLE, DRILL)
    assert found.pitch_diameter - plain.pitch_diameter == pytest.approx(0.001 * before)
    assert 0.003 < found.pitch_diameter - plain.pitch_diameter < 0.004
    assert found.major == plain.major


def test_the_first_tooth_at_the_pitch_line_is_no_larger_than_that() -> None:
    """Every tooth by itself: its own pitch diameter, if its cone leaves the pitch line standing."""
    tap = tapered(0.5)
    thread, cone = tap.thread, math.tan(math.radians(tap.chamfer.angle))
    edges = [
        angle + face_angle(section_of(tap.flutes), thread.major / 2) for angle in tap.flutes.angles
    ]
    crests = [
        thread.first_z + thread.lead * edge / 360 + turn * thread.pitch
        for edge in edges
        for turn in range(-2, 8)
    ]
    own = [(z, thread.pitch_diameter - 0.005 * (z - tap.chamfer_length)) for z in crests if z > 0]
    cut = [d for z, d in own if tap.chamfer.point_diameter + 2 * z * cone >= d]
    found = gauge_of(tap, HOLE, DRILL, oversize=0.0).pitch_diameter
    step = 0.005 * thread.lead / tap.flutes.count
    assert found - step < max(cut) <= found + 1e-9


def test_each_grinding_of_a_chamfer_takes_size_where_the_thread_narrows() -> None:
    """0.3 mm of 0.5 in 100 are 1.5 µm; the reserve of the pitch diameter ends before the thread."""
    tap = tapered(0.5)
    found = gauge_of(tap, replace(HOLE, pitch_min=tap.thread.pitch_diameter), DRILL)
    assert found.sharpenings_chamfer == math.floor(found.wear_left / 0.0015)
    assert found.sharpenings_chamfer < gauge_of(DESIGN.tap, HOLE, DRILL).sharpenings_chamfer
