"""Torques of the whole tap, and the sections that they come from."""

import math
from dataclasses import replace

import numpy as np
import pytest
from section_rows import FLUTED, fluted, land_shear

from tapmodel import design
from tapmodel.errors import InputError
from tapmodel.prediction.strength.edge import edge_of
from tapmodel.prediction.strength.outlines import slices_of, square_sector
from tapmodel.prediction.strength.plastic import sand_heap
from tapmodel.prediction.strength.record import Place, Spot, Strength
from tapmodel.prediction.strength.steel import tensile, yield_shear
from tapmodel.prediction.strength.strength import STOP_SHARE, strength_of
from tapmodel.prediction.strength.wrench import wrench_length
from tapmodel.shape.outlines.outline import Outline
from tapmodel.shape.outlines.section import section_outline
from tapmodel.standards.materials.steels import TapSteel, steel_named
from tapmodel.tap.tap import Tap

LIMITS = {
    # first yield at 1100 MPa, fracture at 2000 MPa at floor and, with Kts 2.5, at the thread's
    # root, all plastic at 1100 MPa [N·m]
    "M3": ("0.66", "1.20", "0.92", "1.31"),
    "M6": ("5.3", "9.6", "7.3", "10.4"),
    "M10": ("24.4", "44.4", "34.2", "47.1"),
    "M20": ("194", "352", "396", "373"),
}


@pytest.fixture(scope="module")
def oil_steel() -> TapSteel:
    return steel_named("O1")


def bare(name: str) -> Tap:
    """The tap of that name with the flutes of `FLUTED`, so thick behind that the root governs."""
    radius, count, ball, centre, offset = FLUTED[name]
    tap = design(name).tap
    flutes = replace(
        tap.flutes, count=count, cutter_diameter=2 * ball, centre_radius=centre, offset=offset,
        full_depth_length=tap.blank.thread_length - ball,
    )  # fmt: skip
    blank = replace(
        tap.blank, neck_diameter=0.0, neck_length=0.0, shank_diameter=5 * radius,
        square_across_flats=4 * radius,
    )  # fmt: skip
    return replace(tap, thread=replace(tap.thread, minor=2 * radius), flutes=flutes, blank=blank)


@pytest.mark.parametrize("name", LIMITS)
def test_torques_by_round_stresses(name: str):
    radius, count, *_ = FLUTED[name]
    torsion = fluted(name)
    root = slices_of(bare(name))[0]
    assert (root.radius, root.turns) == (pytest.approx(radius), count)
    heap = sand_heap(edge_of(root.sector, root.turns, points=32, even=True))
    torques = (
        1.1 * torsion.modulus,
        2.0 * torsion.modulus,
        2.0 / (2.5 * land_shear(name, torsion)),
        1.1 * heap,
    )
    # The heaps were measured on a grid.
    shares = (1e-3, 1e-3, 1e-3, 3e-3)
    for torque, printed, share in zip(torques, LIMITS[name], shares, strict=True):
        half = 0.5 * 10.0 ** -len(printed.partition(".")[2])
        assert torque == pytest.approx(float(printed), abs=half + share * torque)


@pytest.mark.parametrize("name", LIMITS)
def test_the_record_is_made_of_its_sections(name: str, oil_steel: TapSteel):
    found = strength_of(bare(name), oil_steel)
    torsion, root = fluted(name), found.sections[0]
    breaks, yields = tensile(62.0), yield_shear(62.0)
    assert root.modulus == pytest.approx(torsion.modulus, rel=1e-6)
    assert root.shear == pytest.approx(1e3 / root.modulus, rel=1e-12)
    assert root.spot is Spot.FLOOR
    assert math.hypot(*root.at) == pytest.approx(bare(name).flutes.core_diameter / 2, rel=5e-3)
    assert found.land_shear == pytest.approx(1e3 * land_shear(name, torsion), rel=2e-3)
    assert found.yields.likely == pytest.approx(yields.likely * root.modulus / 1e3, rel=1e-9)
    assert found.floor.low == pytest.approx(breaks.low * root.modulus / 1e3, rel=1e-9)
    notched = breaks.likely / (found.land_shear * found.notch.factor)
    assert found.thread_root.likely == pytest.approx(notched, rel=1e-12)
    lowest = min(found.floor.likely, notched, found.plastic.likely)
    assert found.governs.torque == pytest.approx(lowest, rel=1e-9)
    assert found.bears == pytest.approx(0.75 * found.yields.low, rel=1e-9)


def test_the_small_break_at_the_thread_and_the_large_at_the_floor(oil_steel: TapSteel):
    # Shear on the land by that at the floor, times the concentration: 1.2 and 0.8.
    ratios = {
        name: found.land_shear * found.notch.factor / found.sections[0].shear
        for name in ("M10", "M20")
        if (found := strength_of(bare(name), oil_steel, 0.05 * bare(name).thread.pitch))
    }
    assert ratios["M10"] == pytest.approx(1.2, abs=0.05)
    assert ratios["M20"] == pytest.approx(0.8, abs=0.05)
    assert strength_of(bare("M10"), oil_steel).governs.spot is Spot.THREAD_ROOT
    assert strength_of(bare("M20"), oil_steel).governs.spot is not Spot.THREAD_ROOT


@pytest.mark.parametrize("name", ["M3", "M10", "M20", "1/2 BSW", "Tr16x4", "M1", "G1/2"])
def test_order_of_the_torques(name: str, oil_steel: TapSteel):
    found = strength_of(design(name).tap, oil_steel)
    assert found.bears < found.yields.low < found.yields.likely < found.breaks.likely
    assert found.breaks.likely <= min(found.floor.likely, found.thread_root.likely)
    assert found.breaks.low <= found.breaks.likely <= found.breaks.high
    assert found.bears <= STOP_SHARE * found.breaks.low
    weakest = min(found.sections, key=lambda section: section.modulus)
    assert found.yields_at.place is weakest.place
    assert {Place.ROOT, Place.SHANK, Place.SQUARE} <= {s.place for s in found.sections}


@pytest.mark.parametrize("name", ["M10", "M20", "M3", "1/4-20 UNC"])
def test_slices_behind_the_thread_are_those_of_the_tap(name: str):
    tap = design(name).tap
    behind = [cut for cut in slices_of(tap) if cut.place is not Place.ROOT]
    assert sum(cut.place in (Place.NECK, Place.THREAD_END, Place.RUN_OUT) for cut in behind) >= 3
    for cut in behind:
        area = section_outline(tap, cut.z + 1e-9).area
        sector = Outline((cut.sector,)).area * cut.turns if cut.sector else math.pi * cut.radius**2
        assert sector - math.pi * cut.bore**2 == pytest.approx(area, rel=1e-6), cut.place


def test_the_tap_stiffens_along_the_run_out(oil_steel: TapSteel):
    found = strength_of(design("M20").tap, oil_steel)
    behind = (Place.THREAD_END, Place.RUN_OUT)
    run_out = [s.modulus for s in found.sections if s.place in behind]
    assert len(run_out) >= 3
    assert run_out == sorted(run_out)
    short = strength_of(design("M20").tap, oil_steel, run_out=False)
    assert len(short.sections) == len(found.sections) - 2
    assert short.bears == found.bears


@pytest.mark.parametrize("name", ["M18x0.75", "1/2 BSW", "M20"])
def test_the_run_out_begins_where_the_flutes_rise(name: str):
    tap = design(name).tap
    for cut in slices_of(tap):
        rises = cut.z > tap.flutes.full_depth_length
        if cut.place in (Place.THREAD_END, Place.RUN_OUT):
            assert (cut.place is Place.RUN_OUT) == rises, cut.z


def test_a_thin_neck_and_a_small_square_govern_where_they_are_weakest(oil_steel: TapSteel):
    tap = design("M10").tap
    square = replace(tap, blank=replace(tap.blank, square_across_flats=3.0))
    found = strength_of(square, oil_steel)
    assert (found.yields_at.place, found.yields_at.spot) == (Place.SQUARE, Spot.FLAT)
    yields = yield_shear(62.0).likely * 0.208165 * 27 / 1e3
    assert found.yields.likely == pytest.approx(yields, rel=1e-3)
    neck = replace(tap, blank=replace(tap.blank, neck_diameter=6.0))
    assert strength_of(neck, oil_steel).yields_at.place is Place.NECK


def test_a_front_centre_that_reaches_the_thread_weakens_the_root(oil_steel: TapSteel):
    tap = design("M20", chamfer={"pitches": 1.5}).tap
    drilled = replace(tap, blank=replace(tap.blank, front_centre=7.0))
    plain = replace(tap, blank=replace(tap.blank, front_centre=0.0))
    cut = slices_of(drilled)[0]
    assert cut.bore == pytest.approx(3.5 - tap.chamfer_length * math.tan(math.radians(30)))
    moduli = [strength_of(each, oil_steel).sections[0].modulus for each in (drilled, plain)]
    assert 0.97 < moduli[0] / moduli[1] < 0.9999


def test_a_square_is_full_where_its_corners_pass_the_shank():
    assert len(square_sector(8.0, 10.0)) == 2
    assert len(square_sector(7.0, 10.0)) == 1
    assert square_sector(10.0, 10.0) == ()


def test_a_soft_core_yields_first():
    tap = design("M10").tap
    found = strength_of(tap, steel_named("case-hardened mild steel"))
    hard = strength_of(tap, steel_named("O1"))
    assert found.yields_at.spot is Spot.CORE
    assert found.yields.likely < hard.yields.likely
    # The core of a plain shaft: as if the case were not there but for its thickness.
    thin = replace(steel_named("case-hardened mild steel"), case_depth=1e-4)
    bare_core = strength_of(tap, thin)
    weakest = min(section.modulus for section in bare_core.sections)
    assert bare_core.yields.likely == pytest.approx(0.9 * 500 / 3**0.5 * weakest / 1e3, rel=2e-3)
    assert found.yields.likely > bare_core.yields.likely


def test_a_web_that_is_all_case_has_no_core_to_yield():
    tap = design("M2").tap
    cased = steel_named("case-hardened mild steel")
    found, hard = strength_of(tap, cased), strength_of(tap, replace(cased, case_depth=0.0))
    assert found.plastic == hard.plastic
    assert found.yields.likely <= hard.yields.likely


def test_strength_by_hardness():
    # A coupling maker's table (read): 45, 50 and 55 HRC.
    for hardness, printed in ((45.0, 1480.0), (50.0, 1760.0), (55.0, 2075.0)):
        assert tensile(hardness).likely == pytest.approx(printed, abs=0.5)
    assert (tensile(62.0).low, tensile(62.0).high) == (2000.0, 2100.0)
    # von Mises on 0.9 of 2075 MPa.
    assert yield_shear(55.0).likely == pytest.approx(1080.0, abs=5.0)
    for hardness in np.arange(30.0, 70.5, 0.5):
        for band in (tensile(float(hardness)), yield_shear(float(hardness))):
            assert band.low <= band.likely <= band.high
    for wrong in (29.0, 71.0, math.nan):
        with pytest.raises(InputError):
            tensile(wrong)


def test_a_wrench_for_a_torque():
    assert wrench_length(30.0, 100.0) == pytest.approx(300.0)
    assert wrench_length(15.0) == pytest.approx(100.0)


def test_the_hand_of_the_thread_does_not_matter(oil_steel: TapSteel):
    def limits(name: str) -> tuple[float, ...]:
        found: Strength = strength_of(design(name).tap, oil_steel)
        return found.bears, found.thread_root.likely, found.plastic.likely

    assert limits("M10") == limits("M10-LH")


@pytest.mark.parametrize("name", ["M6", "M20", "Tr16x4", "1/2 BSW", "M64x1"])
def test_flutes_leave_more_than_the_core_and_less_than_a_round(name: str, oil_steel: TapSteel):
    tap = design(name).tap
    found = next(s for s in strength_of(tap, oil_steel).sections if s.place is Place.ROOT)
    core, root = tap.flutes.core_diameter, tap.thread.minor
    assert math.pi * core**4 / 32 < found.stiffness < math.pi * root**4 / 32
