"""The whole design: sound defaults over the range, every field counts, nothing ever crashes."""

import dataclasses
import math
import subprocess
import sys
from typing import Any

import pytest
from asked import design_of, settled_of
from hypothesis import given, settings
from hypothesis import strategies as st

from tapmodel.designing.design import design_tap
from tapmodel.designing.record import TapDesign
from tapmodel.designing.settle import settle
from tapmodel.errors import InputError, RefusedError
from tapmodel.report.blocks import Chapter, Table
from tapmodel.report.chapters.machines import dividing, gears, milling
from tapmodel.report.route.passes import passes
from tapmodel.report.route.relieved import relieve
from tapmodel.report.units import shown
from tapmodel.run.record.compose import design_record
from tapmodel.shape.flute_section import crest_edge_angle, flute_area, section_of
from tapmodel.spec.job import field_names
from tapmodel.spec.job_file import job_for
from tapmodel.words import Hand, Severity


def worst(design: TapDesign) -> set[str]:
    return {f.code for f in design.findings if f.severity is not Severity.NOTE}


@pytest.mark.parametrize(
    "designation",
    [
        *("M18x0.75", "M6", "M30", "M10x1", "M8", "M3x0.5", "M42x4.5", "M24x1", "M2.5", "M60x4"),
        *("M12-LH", "M10x1.25-6G", "M8-4H", "M16-7H", "M20xPh3P1.5", "M18x0.9", "M5x0.5", "M36x3"),
        # a drop of 0.4 % of the diameter would take the crest below the root of these
        *("M50x0.25", "M90x0.25", "M64x1", "M80x0.75", "M100x1", "2.5-16 UN", "M48x0.5"),
    ],
)
def test_a_designation_alone_gives_a_sound_tap(designation: str) -> None:
    assert worst(settled_of(designation)) == set()


@pytest.mark.parametrize("designation", ["M100x0.25", "M300x0.5", "M160x0.8", "M100x4"])
def test_large_taps_are_sound_but_for_lands_that_need_relieved_flanks(designation: str) -> None:
    # Of fine pitches the lands are narrow as far as twelve flutes and cutters of 32 mm reach.
    rubs = designation in {"M300x0.5", "M100x4"}
    assert worst(settled_of(designation)) == ({"land-rubs"} if rubs else set())
    relieved = settled_of(designation, ["relief.thread.applies_to=thread"])
    assert worst(relieved) == set()


@pytest.mark.parametrize("count", [3, 4, 5, 6])
@pytest.mark.parametrize("designation", ["M24x1", "M6", "M10x1", "M18x0.75", "M42x4.5"])
def test_every_usual_number_of_flutes_gives_a_sound_tap(designation: str, count: int) -> None:
    design = settled_of(designation, [f"flutes.count={count}"])
    # Three flutes leave lands of more than 16 mm on a large tap; six on a small one would leave
    # teeth taller than their feet are thick, were they wide enough.
    rubs = (designation, count) in {("M42x4.5", 3), ("M6", 6)}
    assert worst(design) == ({"land-rubs"} if rubs else set())
    assert design.tap.flutes.angles == tuple(360 * j / count for j in range(count))
    assert design.figures.rake_crest == pytest.approx(8.0, abs=1e-9)


def test_names_hands_and_starts() -> None:
    left = settled_of("M12-6G-LH")
    assert (left.name, left.designation, left.tap.thread.hand) == (
        "M12x1.75-6G-LH",
        "M12x1.75-6G-LH",
        Hand.LEFT,
    )
    right = settled_of("M12-6G", ["name=my tap"])
    assert right.name == "my tap"
    assert dataclasses.replace(left.tap.thread, hand=Hand.RIGHT) == right.tap.thread
    assert left.tap.flutes == right.tap.flutes
    starts = settled_of("M20xPh3P1.5").tap.thread
    assert (starts.starts, starts.lead, starts.pitch) == (2, 3.0, 1.5)
    names = {"Tr16x6 P3": "Tr16x6-P3", "1/2 BSW": "1-2-12-BSW", "G 1/2 LH": "G-1-2-LH"}
    for text, name in names.items():
        assert settled_of(text).name == name


def test_the_record_of_the_flutes_holds_together() -> None:
    design = settled_of("M18x0.75", ["flutes.cutter_diameter=4"])
    flutes, figures, crest = design.tap.flutes, design.figures, design.tap.thread.major / 2
    b = flutes.cutter_diameter / 2
    assert figures.depth_from_top == pytest.approx(crest - (flutes.centre_radius - b), abs=1e-12)
    assert figures.core_diameter == flutes.core_diameter
    assert flutes.core_diameter == pytest.approx(
        2 * (math.hypot(flutes.centre_radius, flutes.offset) - b), abs=1e-12
    )
    for rake, radius in (
        (figures.rake_crest, crest),
        (figures.rake_pitch, design.tap.thread.pitch_diameter / 2),
        (figures.rake_root, design.tap.thread.minor / 2),
    ):
        assert math.sin(math.radians(rake)) == pytest.approx((flutes.offset + b) / radius)
    assert crest_edge_angle(flutes, design.tap.thread.major) == pytest.approx(8.0)
    assert figures.flute_area == flute_area(section_of(flutes), crest)
    heel = math.degrees(math.asin((flutes.offset - b) / crest))
    assert figures.land_angle == pytest.approx(90 - 8 + heel)
    assert figures.land_width == pytest.approx(math.radians(figures.land_angle) * crest)


CHANGES = {
    "designation": "M20x1",
    "name": "x",
    "hole.class": "6G",
    "relief.thread.kind": "eccentric",
    "relief.chamfer.kind": "concentric",
    "relief.thread.applies_to": "thread",
    "chamfer.form": "taper",
    "thread.tap_class": "3",
    "flutes.count": "5",
    "thread.aim": "0.7",
    "thread.root_flat": "0.1",
    "thread.crest_flat": "0.08",
    "thread.crest_radius": "0.08",
    "thread.root_radius": "0.1",
    "thread.back_taper": "0.1",
    "flutes.land_share": "0.25",
    "blank.shank_must_pass": "true",
    "shop.tools": "inch",
    "shop.cutters": "[7, 9]",
    "shop.drills": '["fraction"]',
    "shop.wires": "[0.5]",
    "shop.plates": "[16, 20]",
    "shop.dividing_ratio": "90",
    "shop.leadscrew": "6",
    "shop.gears": "[30, 60]",
    "shop.cross_slide": "0.05mm, 5mm a turn",
    "shop.top_slide": "0.001in, 100 divisions",
    "shop.mill": "0.02mm, 4mm a turn",
    "shop.rotary_table": "72",
    "shop.relief_by": "centres",
    "shop.wheels": "[80]",
    "shop.offset_step": "0.02",
    "shop.indicator_step": "0.02",
    "hole.engagement": "70",
    "hole.material": "brass",
    "hole.depth": "9",
    "hole.kind": "blind",
    "tap.material": "W1",
    "tap.temper": "220",
    "tap.hardness": "60",
    "flutes.offset": "-2",
    "blank.square_start": "90",
}


PAPERS_ALONE = {
    # three flutes need a circle of holes, four none
    "shop.plates": ("flutes.count=3",),
    "shop.dividing_ratio": ("flutes.count=3",),
    "shop.leadscrew": ("shop.leadscrew=4", "shop.gears=[20, 30]"),
    "shop.gears": ("shop.leadscrew=4", "shop.gears=[20, 30]"),
    "shop.cross_slide": ("shop.cross_slide=0.02mm, 4mm a turn, on diameter",),
    "shop.top_slide": (),
    "shop.mill": ("shop.mill=0.02mm, 2mm a turn",),
    "shop.rotary_table": ("shop.rotary_table=90",),
    "shop.relief_by": (),
    "shop.wheels": ("shop.relief_by=wheel",),
    "shop.offset_step": ("shop.relief_by=centres",),
    "shop.indicator_step": (),
}
"""What is on hand for a tap that stays the same, and beside what the sheet tells of it."""

# The first has but one value; the others are of what is written, and make no other tap.
NOT_OF_THE_TAP = {"relief.chamfer.applies_to", "units", "report.paper", "report.projection"}

# What a shop has besides, and where that is told, is held in tests of its file and of the route.
NOT_OF_THE_TAP |= {
    *("shop.file", "shop.furnace", "shop.steels", "shop.mill_control", "shop.index", "shop.rate"),
}


# None of them alone makes a tap: below.
OF_A_SET = {f for f in field_names() if f.startswith("set.")}


@pytest.mark.parametrize("field", [f for f in field_names() if f not in NOT_OF_THE_TAP | OF_A_SET])
def test_every_field_of_the_job_file_counts(field: str) -> None:
    # the neck's cone and a shank that must pass show only where there is a neck or thick shank
    base = ["blank.neck_length=4", "blank.neck_diameter=13", "blank.shank_diameter=17.5"]
    base += PAPERS_ALONE.get(field, ())
    plain = settled_of("M18x0.75", base)
    value = CHANGES.get(field) or repr(_number(plain, field) * 1.01)
    changed = settled_of("M18x0.75", [*base, f"{field}={value}"])
    same = dataclasses.replace(changed, choices=()) == dataclasses.replace(plain, choices=())
    assert same == (field in PAPERS_ALONE)
    if field in PAPERS_ALONE:
        parts = (dividing.chapter, gears.chapter, milling.chapter, passes)
        told = [
            [*(_tables(part(each)) for part in parts), relieve(each).settings]
            for each in (plain, changed)
        ]
        assert told[0] != told[1]
    if field not in {"designation", "name", "blank.shank_must_pass"}:
        assert next(c for c in changed.choices if c.field == field).given


def _tables(told: Chapter | tuple[object, ...]) -> list[object]:
    """What stands in the tables."""
    blocks = told.blocks if isinstance(told, Chapter) else told
    tables = [block for block in blocks if isinstance(block, Table)]
    return [[*table.head, *(shown(c) for line in table.lines for c in line)] for table in tables]


@pytest.mark.parametrize(
    ("field", "value"),
    [
        ("set.number", "3"),
        ("set.taps", "2"),
        ("set.before_major", "17.7"),
        ("set.before_pitch_diameter", "17.45"),
    ],
)
def test_every_field_of_a_set_counts(field: str, value: str) -> None:
    base = ["set.number=2", "set.taps=3", "thread.major=17.9", "thread.pitch_diameter=17.52"]
    base += ["set.before_major=17.6", "set.before_pitch_diameter=17.5"]
    plain, changed = (settled_of("M18x0.75", sets) for sets in (base, [*base, f"{field}={value}"]))
    assert dataclasses.replace(changed, choices=()) != dataclasses.replace(plain, choices=())
    assert next(c for c in changed.choices if c.field == field).given


def _number(design: TapDesign, field: str) -> float:
    """The value of a number field in the design, or a usual one where the record has none."""
    if field in {"hole.drill", "flutes.rake", "chamfer.pitches"}:
        return {"hole.drill": 17.2, "flutes.rake": 8.0, "chamfer.pitches": 4.0}[field]
    here: Any = design_record(design)
    for part in field.split("."):
        here = here[part]
    return float(here) or 3.0


def test_every_choice_has_a_reason_and_a_source() -> None:
    choices = settled_of("M18x0.75").choices
    assert len({choice.field for choice in choices}) == len(choices) == 39
    for choice in choices:
        assert not choice.given
        assert choice.rule is not None
        assert choice.rule.code
        assert choice.source is not None
        assert choice.source.document


def test_the_same_job_gives_the_same_design() -> None:
    assert design_of("M6") == design_tap(job_for("M6"))


def numbers(low: float, high: float) -> st.SearchStrategy[float]:
    return st.floats(low, high).map(lambda value: round(value, 3))


@settings(max_examples=200)
@given(
    st.builds("M{}x{}".format, numbers(3, 60), st.sampled_from([0.25, 0.5, 0.75, 1, 1.5])),
    st.fixed_dictionaries(
        {},
        optional={
            "flutes.count": st.integers(2, 8),
            "flutes.cutter_diameter": numbers(0.5, 20),
            "flutes.offset": numbers(-10, 10),
            "flutes.depth_from_top": numbers(0.1, 20),
            "flutes.full_depth_length": numbers(1, 200),
            "chamfer.pitches": numbers(0.2, 20),
            "chamfer.point_diameter": numbers(1, 60),
            "relief.thread.edge_angle": numbers(0.1, 45),
            "relief.chamfer.heel_drop": numbers(0.001, 5),
            "thread.major": numbers(2, 61),
            "thread.root_flat": numbers(0.001, 1),
            "blank.neck_diameter": numbers(0, 60),
            "blank.shank_diameter": numbers(1, 60),
            "blank.overall_length": numbers(5, 300),
        },
    ),
)
def test_any_wish_is_designed_or_refused_with_words(
    designation: str, wishes: dict[str, float]
) -> None:
    try:
        design = settle(job_for(designation, [f"{k}={v}" for k, v in wishes.items()]))
    except (InputError, RefusedError):
        return
    record = design_record(design)
    for part in ("thread", "chamfer", "flutes", "blank"):
        values = [v for v in record[part].values() if isinstance(v, float)]
        assert all(math.isfinite(value) for value in values)
    assert design.figures.land_angle > 0
    assert design.tap.thread.minor < design.tap.thread.pitch_diameter < design.tap.thread.major
    assert design.tap.flutes.core_diameter < design.tap.thread.minor


def test_designing_never_loads_the_kernel() -> None:
    program = (
        "import sys; import tapmodel.designing.design, tapmodel.report.job_file; "
        "print([m for m in sys.modules if m.split('.')[0] in ('cadquery', 'OCP', 'trimesh')])"
    )
    result = subprocess.run([sys.executable, "-c", program], capture_output=True, check=True)
    assert result.stdout.strip() == b"[]"
