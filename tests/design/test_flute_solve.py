"""Inverse and forward flute geometry are one: what is wished for comes out, or it is said why."""

import math

import pytest
from asked import settled_of
from hypothesis import given
from hypothesis import strategies as st
from refusals import refused

from tapmodel.designing.choose.flute_solve import FluteWish, solve
from tapmodel.shape.flute_section import on_ball, rake

MAJOR = 18.06
"""Of M18x0.75 with the class below."""
GROUND = "thread.tap_class=2"


def wish(
    *,
    rake: float | None = None,
    offset: float | None = None,
    core: float | None = None,
    depth: float | None = None,
    count: int = 4,
):
    return FluteWish(count, rake, offset, core, depth, 5.0)


@given(st.floats(-15, 20), st.floats(5, 10), st.floats(2, 10))
def test_rake_and_core_come_out_as_wished_or_the_ball_exit_is_named(
    angle: float, core: float, cutter: float
):
    found = solve(wish(rake=angle, core=core), cutter, MAJOR)
    if found.section is None:
        assert found.unmet
        assert found.unmet.limit == "core"
        return
    assert found.section.core_diameter == pytest.approx(core, abs=1e-9)
    if found.unmet is None:
        assert rake(found.section, MAJOR / 2) == pytest.approx(angle, abs=1e-9)
    else:
        assert found.unmet.limit == "ball exit"
        assert rake(found.section, MAJOR / 2) < angle


@given(st.floats(-15, 20), st.floats(2, 6), st.floats(2, 14))
def test_rake_and_depth_come_out_as_wished_on_wall_and_on_ball(
    angle: float, depth: float, cutter: float
):
    found = solve(wish(rake=angle, depth=depth), cutter, MAJOR)
    assert found.section is not None
    bottom = found.section.centre_radius - found.section.ball_radius
    assert MAJOR / 2 - bottom == pytest.approx(depth, abs=1e-9)
    if found.unmet is None:
        assert rake(found.section, MAJOR / 2) == pytest.approx(angle, abs=1e-9)


@pytest.mark.parametrize(("offset", "core"), [(0.0, 8.0), (-3.0, 8.0), (2.0, 7.0)])
def test_offset_and_core_come_out_as_wished(offset: float, core: float):
    section = solve(wish(offset=offset, core=core), 6.0, MAJOR).section
    assert section.offset == offset
    assert section.core_diameter == pytest.approx(core, abs=1e-12)


def test_offset_and_depth_are_taken_as_set():
    section = solve(wish(offset=-2.5, depth=5.0), 8.0, MAJOR).section
    assert (section.ball_radius, section.offset) == (4.0, -2.5)
    assert section.centre_radius == pytest.approx(9.03 - 5.0 + 4.0, abs=1e-12)


@pytest.mark.parametrize(("angle", "core", "cutter"), [(8.0, 12.3, 8.0), (20.0, 10.0, 8.0)])
def test_the_nearest_legal_core_and_cutter_are_legal_and_nearest(
    angle: float, core: float, cutter: float
):
    unmet = solve(wish(rake=angle, core=core), cutter, MAJOR).unmet
    most_core = dict(unmet.near)["flutes.core_diameter"]
    most_cutter = dict(unmet.near)["flutes.cutter_diameter"]
    for hair, met in ((-1e-9, True), (1e-9, False)):
        by_core = solve(wish(rake=angle, core=most_core + hair), cutter, MAJOR)
        by_cutter = solve(wish(rake=angle, core=core), most_cutter + hair, MAJOR)
        assert (by_core.unmet is None) is (by_cutter.unmet is None) is met


def test_the_nearest_legal_depth_is_legal_and_nearest():
    # a depth whose edge would lie on the ball's arc, where this rake cannot be had
    unmet = solve(wish(rake=15.0, depth=1.0), 14.0, MAJOR).unmet
    legal = dict(unmet.near)["flutes.depth_from_top"] + 1e-9
    assert solve(wish(rake=15.0, depth=legal), 14.0, MAJOR).unmet is None
    for depth in (legal - 0.02, legal - 0.1):
        assert on_ball(solve(wish(rake=15.0, depth=depth), 14.0, MAJOR).section, MAJOR / 2)
    assert not on_ball(solve(wish(rake=15.0, depth=legal), 14.0, MAJOR).section, MAJOR / 2)


def test_the_cutter_on_hand_whose_land_is_nearest_is_taken():
    lands = {}
    for cutter in (4.0, 6.0, 8.0, 10.0):
        design = settled_of("M18x0.75", [GROUND, f"flutes.cutter_diameter={cutter}"])
        lands[cutter] = design.figures.land_width
    for share in (0.2, 0.35, 0.5, 0.6):
        sets = [GROUND, "shop.cutters=[4.0, 6.0, 8.0, 10.0]", f"flutes.land_share={share}"]
        design = settled_of("M18x0.75", sets)
        wanted = share * math.pi * MAJOR / 4
        nearest = min(lands, key=lambda cutter: abs(lands[cutter] - wanted))
        assert design.tap.flutes.cutter_diameter == nearest
        assert design.figures.land_width == lands[nearest]


def test_a_cutter_that_would_scrape_at_the_wall_of_the_hole_is_passed_over():
    # With 2 mm the land of 4-40 would come nearest to the wanted one, but scrape at 2.2 mm.
    shop = ["flutes.core_diameter=1.138", "shop.tools=metric"]
    by_land = settled_of("4-40", [*shop, "flutes.cutter_diameter=2", "flutes.count=3"])
    assert by_land.rake_at_wall < -6
    ruled = settled_of("4-40", shop)
    assert ruled.tap.flutes.cutter_diameter == 1.5
    assert ruled.rake_at_wall > 0
    # Who wants negative rake gets the nearest land.
    wanted = settled_of("4-40", ["flutes.rake=-10"])
    assert wanted.rake_at_wall < 0


def test_the_wanted_land_is_its_share_of_the_spacing() -> None:
    design = settled_of("M18x0.75", [GROUND])
    cutter, share = design.choice("flutes.cutter_diameter"), design.choice("flutes.land_share")
    assert cutter is not None
    assert cutter.rule is not None
    assert cutter.rule.code == "cutter-nearest-land"
    assert dict(cutter.rule.values)["width"] == pytest.approx(0.35 * math.pi * MAJOR / 4)
    assert share is not None
    assert (share.value, share.unit) == (0.35, "of the spacing")


@pytest.mark.parametrize(
    ("sets", "words"),
    [
        (
            ["flutes.offset=-9", "flutes.core_diameter=2", "flutes.cutter_diameter=8"],
            "must stay within.*; set flutes.offset at least -",
        ),
        (
            ["flutes.depth_from_top=14", "flutes.offset=0"],
            "past the tap's axis.*depth_from_top at most 7",
        ),
        (["flutes.offset=8", "flutes.cutter_diameter=8"], "beside the tap.*; set flutes"),
        (
            ["flutes.core_diameter=17.2"],
            "does not reach the root.*; set flutes.core_diameter at most 1",
        ),
        (
            ["flutes.count=8", "flutes.cutter_diameter=10"],
            "No land is left.*flutes.cutter_diameter to 4 mm",
        ),
    ],
)
def test_flutes_that_leave_no_tooth_are_refused_with_the_cure(sets: list[str], words: str):
    with refused(words):
        settled_of("M18x0.75", sets)
