"""What rubs: by hand from areas, pressures and radii."""

import math
from dataclasses import replace

import numpy as np
import pytest
from ideal_chips import plain_tap, unrelieved

from tapmodel.prediction.torque.friction import (
    BRINELL,
    CHIP_ROOT,
    LAND_PRESSURE,
    RUBBING_TURNS,
    WEAR_DRAG,
    RubbingThread,
    chip_root_torque,
    engaged_length,
    land_friction,
    rubbing_thread,
    wear_torque,
)
from tapmodel.shape.flute_section import land_angle, section_of
from tapmodel.shape.relief import con_eccentric, eccentric_by_edge
from tapmodel.standards.materials.work import work_material
from tapmodel.tap.tap import Tap
from tapmodel.words import ReliefKind, ReliefPlace

STEEL = work_material("C45")


def flank_area(tap: Tap, angle: float, drill: float) -> float:
    """Of both flanks of all lands on that angle [deg], for each millimetre along the axis."""
    crest = tap.thread.major / 2
    deep, middle = crest - drill / 2, (crest + drill / 2) / 2
    return 3 * 2 * deep / math.cos(math.radians(30)) * math.radians(angle) * middle / 1.5


def test_lands_without_relief_rub_from_edge_to_heel() -> None:
    tap = unrelieved(plain_tap())
    land = land_angle(section_of(tap.flutes), 3, tap.thread.major / 2)
    found = rubbing_thread(tap, 8.5)
    crest = 3 * tap.thread.crest_flat * math.radians(land) * tap.thread.major / 2 / 1.5
    assert found.area == pytest.approx(flank_area(tap, land, 8.5) + crest)
    assert found.radius == pytest.approx((tap.thread.major + 8.5) / 4)


def test_a_relieved_crest_rubs_on_its_margin_and_a_little_more_and_the_flanks_stay() -> None:
    tap, bare = plain_tap(), unrelieved(plain_tap())
    land = land_angle(section_of(tap.flutes), 3, tap.thread.major / 2)
    flanks = flank_area(tap, land, 8.5)
    crest = (rubbing_thread(tap, 8.5).area - flanks) / (rubbing_thread(bare, 8.5).area - flanks)
    # the drop of 0.04 mm grows with the square of the way behind the margin; 0.003 mm touch
    angle = 14.0 + (42.0 - 14.0) * math.sqrt(0.003 / 0.04)
    assert crest == pytest.approx(angle / land, rel=0.01)


def test_a_thread_relieved_from_its_edge_touches_only_while_the_work_springs_back() -> None:
    tap = plain_tap()
    relief = eccentric_by_edge(ReliefPlace.THREAD, tap.thread.major, 3.0)
    free = replace(tap, relief=replace(tap.relief, thread=relief))
    # 0.003 mm at 3 deg over the crest, twice as far on flanks of 30 deg
    on_flank = 0.003 / math.sin(math.radians(30)) / math.tan(math.radians(3.0))
    angle = math.degrees(on_flank / (tap.thread.major / 2))
    flanks = flank_area(tap, angle, 8.5)
    found = rubbing_thread(free, 8.5).area
    assert flanks < found < 1.12 * flanks
    assert relief.kind is ReliefKind.ECCENTRIC
    margin = con_eccentric(ReliefPlace.THREAD, tap.thread.major, 42.0, 10.0, 0.04)
    kept = replace(tap, relief=replace(tap.relief, thread=margin))
    assert found < rubbing_thread(kept, 8.5).area < rubbing_thread(tap, 8.5).area


def test_friction_is_pressure_times_area_times_coefficient_times_radius() -> None:
    rubbing = RubbingThread(area=2.0, radius=5.0, begins=3.0, ends=12.0)
    found = land_friction(rubbing, STEEL, np.array([0.0, 4.0]))
    by_hand = [share * 9.81 * 188 * 0.13 * (2.0 * 4.0) * 5.0 / 1000 for share in LAND_PRESSURE]
    assert found[:, 1] == pytest.approx(by_hand)
    assert found[:, 0].tolist() == [0.0, 0.0, 0.0]
    assert by_hand == sorted(by_hand)


def test_six_turns_behind_the_chamfer_are_pressed_on() -> None:
    tap = plain_tap()
    found = rubbing_thread(tap, 8.5)
    assert found.begins == pytest.approx(3.0)
    assert found.ends == pytest.approx(6.0 + RUBBING_TURNS * 1.5)
    short = replace(tap, blank=replace(tap.blank, thread_length=9.0))
    assert rubbing_thread(short, 8.5).ends == 9.0


def test_the_length_in_the_work() -> None:
    rubbing = RubbingThread(area=1.0, radius=1.0, begins=3.0, ends=12.0)
    fronts = np.array([0.0, 3.0, 5.0, 8.0, 12.0, 20.0])
    # work of 5 mm lies between z = front - 5 and z = front of the tap
    assert engaged_length(rubbing, fronts, 5.0).tolist() == [0, 0, 2, 5, 5, 0]
    assert engaged_length(rubbing, fronts, math.inf).tolist() == [0, 0, 2, 5, 9, 9]


def test_a_wear_land_and_the_roots_of_chips() -> None:
    hardness = BRINELL * 188
    wear = [drag * hardness * 0.1 * 7.0 / 1000 for drag in WEAR_DRAG]
    assert wear_torque(7.0, STEEL) == pytest.approx(wear)
    roots = [share * 0.22 * hardness * 7.0 / 1000 for share in CHIP_ROOT]
    assert chip_root_torque(7.0, STEEL) == pytest.approx(roots)


def test_a_tenth_of_wear_on_a_lathe_tool_adds_the_known_share() -> None:
    # per mm of edge: chip 0.3 mm thick, kc by Kienzle; 4 to 5 % is what textbooks give
    law = STEEL.kienzle
    cutting = law.specific_force(0.3, law.rake) * 0.3
    middle = 1000 * float(wear_torque(1.0, STEEL)[1])
    assert 0.04 < middle / cutting < 0.05


def test_hard_work_rubs_more() -> None:
    rubbing = rubbing_thread(plain_tap(), 8.5)
    soft, hard = work_material("42CrMo4"), work_material("42CrMo4 40 HRC")
    engaged = np.array([6.0])
    ratio = land_friction(rubbing, hard, engaged) / land_friction(rubbing, soft, engaged)
    assert ratio.ravel() == pytest.approx([371 / 193] * 3)


def test_flanks_of_turns_that_a_back_taper_has_cleared_rub_no_more() -> None:
    """0.5 in 100 clears the flanks by 3 µm 2.4 mm behind the chamfer, of the 9 mm pressed on."""
    bare = unrelieved(plain_tap())
    tap = replace(bare, thread=replace(bare.thread, back_taper=0.5))
    land = land_angle(section_of(tap.flutes), 3, tap.thread.major / 2)
    whole = flank_area(bare, land, 8.5)
    crest = rubbing_thread(bare, 8.5).area - whole
    # 3 µm of radius are lost 1.2 mm behind it
    expected = whole * 2.4 / (6 * 1.5) + crest * 1.2 / (6 * 1.5)
    # looked at in 24 places, each of which stands for 0.375 mm
    assert rubbing_thread(tap, 8.5).area == pytest.approx(expected, rel=0.09)
    slight = replace(bare, thread=replace(bare.thread, back_taper=0.01))
    assert rubbing_thread(slight, 8.5).area == pytest.approx(rubbing_thread(bare, 8.5).area)
