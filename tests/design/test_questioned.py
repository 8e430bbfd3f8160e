"""Numbers in the other unit are questioned, and no number in its own."""

import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "geometry"))

from listed_jobs import listed_designations
from sweeps import in_part

import tapmodel
from tapmodel.comparing.variants import Asked, compare_taps
from tapmodel.designing.cures.fix import fixed
from tapmodel.designing.design import design_tap
from tapmodel.designing.questioned import NEAR, UNITS, questioned, usual_lengths
from tapmodel.designing.settle import settle
from tapmodel.errors import NoTapError
from tapmodel.report.words.refusal import refusal
from tapmodel.spec.job import field_names, unit_of
from tapmodel.spec.job_file import job_for
from tapmodel.spec.units import Unit

LISTED = in_part([*listed_designations()], every=17)
EXAMPLES = sorted(Path(tapmodel.__file__).parents[1].glob("examples/*.toml"))
LENGTHS = (
    *("hole.drill", "thread.pitch_diameter", "thread.major", "chamfer.point_diameter"),
    *("flutes.cutter_diameter", "flutes.core_diameter", "flutes.full_depth_length"),
    *("blank.overall_length", "blank.thread_length", "blank.shank_diameter"),
    *("blank.square_across_flats", "blank.square_start"),
)


def test_the_ruled_lengths_of_every_listed_thread_are_questioned_in_inches_and_never_in_mm() -> (
    None
):
    wrong: list[str] = []
    for designation in LISTED:
        try:
            ruled = settle(job_for(designation))
        except NoTapError:
            continue
        tap, blank = ruled.tap, ruled.tap.blank
        own = {
            "hole.drill": ruled.drill,
            "thread.major": tap.thread.major,
            "thread.pitch_diameter": tap.thread.pitch_diameter,
            "chamfer.point_diameter": tap.chamfer.point_diameter,
            "flutes.cutter_diameter": tap.flutes.cutter_diameter,
            "flutes.core_diameter": tap.flutes.core_diameter,
            "flutes.full_depth_length": tap.flutes.full_depth_length,
            "blank.overall_length": blank.overall_length,
            "blank.thread_length": blank.thread_length,
            "blank.shank_diameter": blank.shank_diameter,
            "blank.square_across_flats": blank.square_across_flats,
            "blank.square_start": blank.square_start,
        }
        assert tuple(sorted(own)) == tuple(sorted(LENGTHS))
        for factor in (0.1, 0.5, 1, 2, 10):
            scaled = {field: value * factor for field, value in own.items()}
            if any(questioned(scaled | {"shop.cutters": [scaled[LENGTHS[4]]]}, ruled)):
                wrong.append(f"{designation} times {factor}")
        for unit, mm in UNITS.items():
            scaled = {field: value / mm for field, value in own.items()}
            asked = list(questioned(scaled, ruled))
            if {f.field for f in asked} != set(own) or any(f.values["unit"] != unit for f in asked):
                wrong.append(f"{designation} in {unit}")
    assert wrong == []
    assert len(LISTED) > 180


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_no_example_is_questioned(path: Path) -> None:
    assert "other-unit" not in {f.code for f in tapmodel.design(path).findings}


def test_the_border_is_a_factor_of_the_ruled_length() -> None:
    ruled = settle(job_for("3/8-16"))
    shank = ruled.tap.blank.shank_diameter
    for value, asked in ((1.001, False), (0.999, True)):
        given = {"blank.shank_diameter": shank * NEAR * value / 25.4}
        assert any(questioned(given, ruled)) is asked
        given = {"blank.shank_diameter": shank / NEAR / value / 25.4}
        assert any(questioned(given, ruled)) is asked


@pytest.mark.parametrize(
    ("designation", "typed", "told"),
    [
        ("3/8-16", "blank.shank_diameter=0.25", "0.25 looks like inches, and a bare number is mm"),
        ("3/8-16", "blank.shank_diameter=0.25", "write 0.25in in blank.shank_diameter"),
        ("3/4-20", "thread.major=0.75", "write 0.75in in thread.major"),
        ("3/4-20", "thread.major=750", "750 looks like thousandths of an inch"),
        ("3/4-20", "thread.major=750", "write 0.75in in thread.major"),
        ("M10", "hole.drill=.3346", "write 0.3346in in hole.drill"),
        ("1/2 BSW", "shop.cutters=[0.125, 0.25]", "write 0.25in in shop.cutters"),
        ("1/4-20", "blank.overall_length=2.5", "write 2.5in in blank.overall_length"),
    ],
)
def test_a_number_in_the_other_unit_is_asked_back(designation: str, typed: str, told: str) -> None:
    with pytest.raises(NoTapError) as caught:
        settle(job_for(designation, [typed]))
    said = refusal(caught.value)
    assert told in said
    mended = typed.replace("=750", "=0.75").replace("]", "in]").replace(", ", "in, ")
    mended += "" if "]" in typed else "in"
    assert "other-unit" not in {f.code for f in settle(job_for(designation, [mended])).findings}


@pytest.mark.parametrize(
    ("designation", "given"),
    [
        ("M10", ["thread.root_flat=0.025", "relief.thread.heel_drop=0.005"]),
        ("M10", ["blank.rear_chamfer=0.06", "flutes.offset=-0.2"]),
        ("M10", ["flutes.offset=0.1", "flutes.cutter_diameter=3"]),
        ("M10", ["flutes.offset=0"]),
        # a ring of eight turns
        ("M50x0.5", ["hole.depth=4"]),
        ("M20x1", ["blank.neck_length=150", "blank.overall_length=250"]),
    ],
)
def test_a_length_that_may_well_be_small_is_let_be(designation: str, given: list[str]) -> None:
    assert asked(designation, given) == set()


SWEPT = ("M10", "Tr12x3", "1/2-13 UNC", "1/2 BSW", "1 3/8-24 UNS")


@pytest.mark.parametrize("designation", SWEPT)
def test_every_length_of_the_job_is_asked_back_in_inches_and_none_near_the_ruled_one(
    designation: str,
) -> None:
    ruled = settle(job_for(designation))
    usual = usual_lengths(ruled)
    # The leadscrew's pitch, wheels and divisions go with the shop, not with the thread.
    of_shop = {"leadscrew", "wheels", "offset_step", "indicator_step"}
    lengths = {name for name in field_names() if unit_of(name) is Unit.MM}
    lengths -= {f"shop.{name}" for name in of_shop}
    assert set(usual) == lengths
    for name in lengths:
        asked_of = [f.field for f in questioned({name: _in_list(name, usual[name] / 25.4)}, ruled)]
        assert asked_of == [name]
        for factor in (0.4, 0.7, 1, 1.6, 2.5):
            given = {name: _in_list(name, usual[name] * factor)}
            assert not any(questioned(given, ruled)), (name, factor)
            with_unit = {name: _in_list(name, f"{abs(usual[name]) / 25.4:.6f}mm")}
            assert not any(questioned(with_unit, ruled))


def _in_list(name: str, value: object) -> object:
    return [value] if name.startswith("shop.") else value


def asked(designation: str, sets: list[str]) -> set[str]:
    """The fields that are asked back."""
    try:
        settle(job_for(designation, sets))
    except NoTapError as error:
        return {f.field for f in error.findings if f.code == "other-unit"}
    return set()


@pytest.mark.parametrize(
    ("sets", "fields"),
    [
        (["hole.depth=0.75"], {"hole.depth"}),
        (["flutes.offset=0.09"], {"flutes.offset"}),
        (["flutes.offset=-0.083"], {"flutes.offset"}),
        (["chamfer.length=0.33"], {"chamfer.length"}),
        (["blank.square_length=0.5"], {"blank.square_length"}),
        (["thread.pitch_diameter=.4484"], {"thread.pitch_diameter"}),
        (
            ["thread.pitch_diameter=0.4484", "hole.depth=0.75"],
            {"thread.pitch_diameter", "hole.depth"},
        ),
        (["shop.cutters='0.125, 0.25'"], {"shop.cutters"}),
        (["hole.depth=0.75mm"], set[str]()),
        (["hole.depth=0.75in"], set[str]()),
    ],
)
def test_bare_inches_of_a_half_inch_thread(sets: list[str], fields: set[str]) -> None:
    assert asked("1/2 BSW", sets) == fields


def test_a_number_that_is_asked_back_is_the_only_thing_told_and_has_no_cure() -> None:
    job = job_for("1/2 BSW", ["shop.cutters=0.125,0.25"])
    with pytest.raises(NoTapError) as caught:
        design_tap(job)
    assert refusal(caught.value) == (
        "0.25 looks like inches, and a bare number is mm: write 0.25in in shop.cutters, or 0.25mm "
        "if that is meant."
    )
    assert caught.value.exit_code == 1
    assert fixed(job) == (job, ())


def test_compared_taps_in_the_other_unit_are_broken() -> None:
    table = {"designation": "1/2 BSW"}
    varied = {"flutes.cutter_diameter": (0.25, "0.25in", 0.3125)}
    found = compare_taps(Asked(table, varied)).variants
    assert [one.errors for one in found] == [("other-unit",), (), ("other-unit",)]


@pytest.mark.parametrize(
    ("designation", "wires", "told"),
    [
        ("3/8 BSW LH", [0.032, 0.035, 0.040], "0.035 looks like inches"),
        # a set in inches goes from threads far finer to far coarser ones
        ("3/8 BSW LH", [0.018, 0.029, 0.036, 0.05], "write 0.036in in shop.wires"),
        ("3/8-16", [35], "35 looks like thousandths of an inch"),
        ("3/8 BSW LH", [0.17, 0.45, 0.9, 3.5, 6.35], ""),
        ("3/8 BSW LH", [0.45, 1.4], ""),
        ("M1", [0.17, 0.29, 0.895, 6.35], ""),
        # no set holds wires of 161 mm, nor of 4 um
        ("Tr160x28", [0.17, 0.29, 0.895, 6.35], ""),
        ("0.35 UNM", [0.17, 0.29, 0.895, 3.2], ""),
        # 0.25 in would be near as mm, but the least is 6.7 um then
        ("M3", [0.0067, 0.0114, 0.0352, 0.25], "write 0.0114in in shop.wires"),
    ],
)
def test_wires_in_the_other_unit_are_questioned_unless_one_is_near_as_it_stands(
    designation: str, wires: list[float], told: str
) -> None:
    try:
        settle(job_for(designation, [f"shop.wires={wires}"]))
        said = ""
    except NoTapError as error:
        said = refusal(error)
    assert told in said
    assert bool(said) is bool(told)


def test_a_refusal_begins_with_the_unit_that_was_missed() -> None:
    with pytest.raises(NoTapError) as caught:
        settle(job_for("3/4-20", ["thread.major=0.75"]))
    assert refusal(caught.value).startswith("0.75 looks like inches, and a bare number is mm")


def test_cutters_for_threads_of_all_sizes_are_no_slip() -> None:
    """16 mm would be near as thousandths, but 0.5 mm is what the rule takes for this thread."""
    assert not settle(job_for("0.90 UNM", ["shop.cutters=[0.3, 0.5, 16]"])).errors
    with pytest.raises(NoTapError, match=r"shop\.cutters"):
        settle(job_for("0.90 UNM", ["shop.cutters=[2, 4, 16]"]))
