"""Hole, drill, thread profile and chamfer: hand-worked numbers and the laws between them."""

import math

import pytest
from asked import design_of
from refusals import refused

from tapmodel.designing.choose.hole import nearest_drill
from tapmodel.designing.design import design_tap
from tapmodel.errors import InputError
from tapmodel.shape.profile import segments
from tapmodel.spec.job_file import job_for
from tapmodel.standards.limits import HoleLimits

TAN30 = math.tan(math.radians(30))
GROUND = ["thread.tap_class=2"]
"""The tap whose sizes were worked out by hand where they are only the setting of a test."""


def test_m18x075_by_hand() -> None:
    """TD2 of grade 6 is 140 µm, so the zone to cut is D2 + 28 to 70 µm, its middle + 49."""
    design = design_of("M18x0.75")
    thread, limits = design.tap.thread, design.limits
    d2 = 17.513 + 0.049
    assert (limits.pitch_min, limits.pitch_max) == pytest.approx((17.541, 17.583), abs=1e-9)
    assert limits.major_min == pytest.approx(18.028, abs=1e-9)
    assert thread.pitch_diameter == pytest.approx(d2, abs=1e-9)
    # 18.028 and 0.02 P = 0.015 more, up to the next 0.01
    assert thread.major == 18.05
    assert thread.crest_flat == pytest.approx(0.375 - (18.05 - d2) * TAN30, abs=1e-12)
    assert thread.minor == pytest.approx(d2 - (0.375 - 0.09375) / TAN30, abs=1e-12)
    assert thread.first_z == pytest.approx(0.2325)


def test_a_ground_m18x075_by_hand() -> None:
    """TD2 of grade 5 is 112 µm, so the class 2 zone is D2 + 33.6 to 56 µm, its middle + 44.8."""
    design = design_of("M18x0.75", GROUND)
    thread, limits = design.tap.thread, design.limits
    d2 = 17.513 + 0.0448
    assert (limits.pitch_min, limits.pitch_max) == (17.5466, 17.569)
    assert thread.pitch_diameter == pytest.approx(d2, abs=1e-9)
    assert thread.major == 18.06
    assert thread.crest_flat == pytest.approx(0.375 - (18.06 - d2) * TAN30, abs=1e-12)
    assert thread.minor == pytest.approx(d2 - (0.375 - 0.09375) / TAN30, abs=1e-12)
    assert thread.first_z == pytest.approx(0.2325)


@pytest.mark.parametrize("designation", ["M2", "M6", "M10x1-6G", "M20xPh3P1.5-LH", "M42x4.5"])
def test_crest_flanks_and_root_add_up_to_the_pitch(designation: str) -> None:
    design = design_of(designation)
    thread = design.tap.thread
    flank = (thread.major - thread.minor) / 2 * TAN30
    assert thread.crest_flat + thread.root_flat + 2 * flank == pytest.approx(
        thread.pitch, abs=1e-12
    )
    profile = segments(thread)
    assert profile[-1].end - profile[0].start == pytest.approx(thread.pitch, abs=1e-12)
    assert thread.lead == thread.starts * thread.pitch
    assert thread.pitch / 16 - 1e-9 <= thread.crest_flat
    assert thread.major >= design.limits.major_min


def test_the_ridge_is_half_a_pitch_wide_at_the_pitch_diameter() -> None:
    thread = design_of("M8").tap.thread
    width = thread.crest_flat + (thread.major - thread.pitch_diameter) * TAN30
    assert width == pytest.approx(thread.pitch / 2, abs=1e-12)


def test_aim_walks_through_the_zone() -> None:
    sizes = [design_of("M8", [f"thread.aim={a}"]) for a in (0, 0.25, 1)]
    low, high = sizes[0].limits.pitch_min, sizes[0].limits.pitch_max
    assert [size.tap.thread.pitch_diameter for size in sizes] == pytest.approx(
        [low, low + (high - low) / 4, high], abs=1e-12
    )


def test_a_crest_flat_sets_the_major_diameter() -> None:
    thread = design_of("M8", [*GROUND, "thread.crest_flat=0.13"]).tap.thread
    assert thread.crest_flat == pytest.approx(0.13, abs=1e-12)
    assert thread.major == pytest.approx(7.238 + (0.625 - 0.13) / TAN30, abs=1e-9)


@pytest.mark.parametrize(
    ("hole_class", "deviation", "tolerance", "ground", "share"),
    # TD2 and EI of M8 by ISO 965-1; middles of the classes of ISO 2857 in TD2 of grade 5, 0.125
    [("4H", 0.0, 0.1, 1, 0.2), ("6H", 0.0, 0.16, 2, 0.4), ("6G", 0.028, 0.16, 3, 0.6)],
)
def test_the_tap_class_follows_the_hole_class(
    hole_class: str, deviation: float, tolerance: float, ground: int, share: float
) -> None:
    basic = 7.188
    design = design_of(f"M8-{hole_class}")
    # the middle between 0.2 and 0.5 of the hole's tolerance, over its least
    middle = basic + deviation + 0.35 * tolerance
    assert design.tap.thread.pitch_diameter == pytest.approx(middle, abs=1e-9)
    chosen = design.choice("thread.tap_class")
    assert chosen is not None
    assert chosen.rule is not None
    assert (chosen.value, dict(chosen.rule.values)["ground"]) == ("cut", ground)
    thread = design_of(f"M8-{hole_class}", [f"thread.tap_class={ground}"]).tap.thread
    assert thread.pitch_diameter == pytest.approx(basic + share * 0.125, abs=1e-9)


@pytest.mark.parametrize(
    ("sets", "words"),
    [
        (["thread.root_flat=0.7"], "leaves no depth"),
        (["thread.major=7.2"], "does not exceed the pitch diameter"),
    ],
)
def test_a_thread_without_depth_is_refused(sets: list[str], words: str) -> None:
    with refused(words):
        design_of("M8", sets)


def test_a_point_as_thick_as_the_crests_is_refused_with_its_cure() -> None:
    sets = ["thread.major=10.12", "chamfer.point_diameter=10.12", "chamfer.length=3"]
    found = {f.code: f for f in design_of("M10", sets).findings}
    assert found["chamfer-angle"].actual == 0.0
    (cure,) = found["point-drill"].cures
    assert cure.settings[0].field == "chamfer.point_diameter"
    assert 8.4 < float(cure.settings[0].value) < 8.5  # the drill


def test_hole_class_in_designation_and_file_must_agree() -> None:
    assert design_of("M8-6G", ["hole.class=6G"]).designation == "M8x1.25-6G"
    with pytest.raises(InputError, match=r"hole\.class together with designation"):
        design_of("M8-6G", ["hole.class=6H"])
    with pytest.raises(InputError, match=r"hole\.class"):
        design_of("M8", ["hole.class=6h"])


@pytest.mark.parametrize(
    ("designation", "drill"),
    [
        # ISO 2306 drills, as read in FreeCAD FeatureHole.cpp (commit 003e239)
        ("M3", 2.5),
        ("M4", 3.3),
        ("M5", 4.2),
        ("M6", 5.0),
        ("M8", 6.8),
        ("M10", 8.5),
        ("M12", 10.2),
        ("M14", 12.0),
        ("M16", 14.0),
        ("M18", 15.5),
        ("M20", 17.5),
        ("M24", 21.0),
        ("M30", 26.5),
        ("M8x1", 7.0),
        ("M10x1", 9.0),
        ("M10x1.25", 8.8),
        ("M12x1.5", 10.5),
        ("M20x1.5", 18.5),
    ],
)
def test_drills_are_those_of_iso_2306(designation: str, drill: float) -> None:
    assert design_of(designation).drill == drill


def test_a_drill_stays_inside_narrow_limits() -> None:
    def hole(low: float, high: float) -> HoleLimits:
        return HoleLimits(8.0, 7.0, 7.1, low, high)

    assert nearest_drill(6.75, 1.25, hole(6.81, 6.93)) == 6.9
    assert nearest_drill(6.75, 1.25, hole(6.81, 6.87)) == 6.85
    assert nearest_drill(6.75, 1.25, hole(6.81, 6.84)) == 6.81
    assert nearest_drill(6.75, 1.25, hole(6.811, 6.815)) == 6.813


@pytest.mark.parametrize(
    ("sets", "length"),
    [
        ([], 4 * 0.75),
        (["chamfer.form=taper"], 8 * 0.75),
        (["chamfer.form=bottoming"], 1.5 * 0.75),
        (["chamfer.pitches=2.5"], 2.5 * 0.75),
        (["chamfer.length=3.3"], 3.3),
        (["chamfer.angle=10"], (18.06 - 17.15) / 2 / math.tan(math.radians(10))),
        (["chamfer.angle=10", "chamfer.pitches=3"], 2.25),
        (["chamfer.point_diameter=16.5"], 3.0),
    ],
)
def test_the_cone_runs_from_the_point_to_the_crests(sets: list[str], length: float) -> None:
    design = design_of("M18x0.75", [*GROUND, *sets])
    chamfer = design.tap.chamfer
    assert design.figures.chamfer_length == pytest.approx(length, abs=1e-12)
    assert design.figures.chamfer_pitches == pytest.approx(length / 0.75)
    end = chamfer.point_diameter + 2 * length * math.tan(math.radians(chamfer.angle))
    assert end == pytest.approx(18.06, abs=1e-12)
    if "chamfer.angle=10" in sets:
        assert chamfer.angle == 10


def test_a_drill_beyond_the_crests_leaves_a_cone_that_rises() -> None:
    design = design_of("M27x1", ["hole.drill=40"])
    assert [error.code for error in design.errors] == ["drill-size"]
    assert design.tap.chamfer.point_diameter == pytest.approx(26.9)
    assert design.tap.chamfer.angle > 0


def test_the_point_starts_in_the_drilled_hole() -> None:
    for designation in ("M3", "M8", "M18x0.75", "M42x4.5"):
        design = design_of(designation)
        gap = design.drill - design.tap.chamfer.point_diameter
        assert 0.1 * design.tap.thread.pitch - 1e-9 <= gap < 0.1 * design.tap.thread.pitch + 0.05


@pytest.mark.parametrize(
    ("designation", "count", "pitches"), [("M18x0.75", 4, 4), ("M6", 3, 7), ("M20xPh3P1.5", 5, 4)]
)
def test_teeth_are_pitches_times_lands_and_starts_and_share_the_feed(
    designation: str, count: int, pitches: int
) -> None:
    design = design_tap(
        job_for(designation, [f"flutes.count={count}", f"chamfer.pitches={pitches}"])
    )
    chamfer, thread = design.tap.chamfer, design.tap.thread
    assert design.figures.chamfer_teeth == count * pitches * thread.starts
    radial_feed = thread.lead * math.tan(math.radians(chamfer.angle)) / count
    assert design.figures.chip_thickness == pytest.approx(
        radial_feed * math.cos(math.radians(chamfer.angle)), rel=1e-12
    )


def test_part_of_a_pitch_gives_the_teeth_whose_crests_lie_in_it() -> None:
    few = design_of("M18x0.75", ["chamfer.pitches=1.1"]).figures
    assert few.chamfer_teeth in (4, 5)
    design = design_of("M18x0.75", ["chamfer.pitches=1.3"])
    edge = math.degrees(math.asin(math.sin(math.radians(8))))
    middles = [
        0.2325 + 0.75 * (90 * j + edge) / 360 + 0.75 * k for j in range(4) for k in range(-2, 3)
    ]
    inside = [z for z in middles if 0 <= z < 1.3 * 0.75]
    assert design.figures.chamfer_teeth == len(inside)
