"""The library from outside: what a user who models in Python does with a tap."""

import math
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest

import tapmodel
from tapmodel.shape.outlines.section import section_outline


@pytest.fixture(scope="module")
def tap() -> tapmodel.DesignedTap:
    return tapmodel.design("M8", {"flutes.count": 3}, blank={"thread_length": 10, "neck_length": 6})


def test_numbers_are_there_at_once(tap: tapmodel.DesignedTap) -> None:
    assert tap.tap.flutes.count == 3
    assert tap.tap.blank.thread_length == 10
    assert tap.figures.core_diameter == pytest.approx(tap.tap.flutes.core_diameter)
    assert tap.record()["flutes"]["rake_crest"] == tap.figures.rake_crest
    assert not tap.errors
    assert "M8" in repr(tap)
    assert "chordal hook" in str(tap)


def test_dotted_keys_and_groups_say_the_same() -> None:
    dotted = tapmodel.design("M8", {"relief.thread.kind": "eccentric", "flutes.count": 4})
    groups = tapmodel.design("M8", relief={"thread": {"kind": "eccentric"}}, flutes={"count": 4})
    assert dotted.design == groups.design


def test_a_job_file_a_table_and_a_job_ask_for_the_same(tmp_path: Path) -> None:
    file = tmp_path / "job.toml"
    file.write_text('designation = "M8"\nflutes.count = 3\n')
    table = {"designation": "M8", "flutes": {"count": 3}}
    by_file = tapmodel.design(file)
    for other in (str(file), table, by_file.job):
        assert tapmodel.design(other).design == by_file.design
    changed = tapmodel.design(by_file.job, {"flutes.count": 4})
    assert (changed.tap.flutes.count, by_file.tap.flutes.count) == (4, 3)


@pytest.mark.parametrize(
    ("what", "sets", "field"),
    [
        ("M8", {"flutes.cout": 3}, "flutes.cout"),
        ("M8", {"flute": {"count": 3}}, "flute"),
        (5, {}, "designation"),
        ("no-such.toml", {}, "job file"),
    ],
)
def test_what_cannot_be_used_is_named(what: str, sets: dict[str, object], field: str) -> None:
    with pytest.raises(tapmodel.InputError, match=f"^{field}: "):
        tapmodel.design(what, sets)


def test_a_section_is_followed_as_closely_as_asked(tap: tapmodel.DesignedTap) -> None:
    outline = section_outline(tap.tap, 5.0)
    for chord, relative in ((1e-2, 1e-2), (1e-5, 1e-5)):
        (outside,) = tap.section(5.0, chord)
        x, y = outside.T
        area = float(x @ np.roll(y, -1) - y @ np.roll(x, -1)) / 2
        assert area == pytest.approx(outline.area, rel=relative)
        assert math.hypot(*outside[0]) <= tap.tap.thread.major / 2 + 1e-9
    # The rear centre is a hole, run the other way round.
    _, hole = tap.section(tap.tap.blank.overall_length - 0.1)
    x, y = hole.T
    assert float(x @ np.roll(y, -1) - y @ np.roll(x, -1)) < 0


def test_the_quick_mesh_is_closed_and_nearly_the_tap(tap: tapmodel.DesignedTap) -> None:
    mesh = tap.mesh()
    assert mesh.is_watertight
    assert mesh.volume == pytest.approx(tap.solid().Volume(), rel=5e-3)


def test_the_solid_is_the_modelling_package_s_own_and_goes_on(tap: tapmodel.DesignedTap) -> None:
    solid = tap.solid()
    assert solid.isValid()
    assert solid.wrapped.IsSame(tap.solid().wrapped)
    half = tap.workplane().split(keepTop=True)
    assert 0 < half.val().Volume() < solid.Volume()


def test_files_are_written_with_their_record(tap: tapmodel.DesignedTap, tmp_path: Path) -> None:
    record = tap.write(tmp_path, formats=("stl",))
    assert [file["path"] for file in record["files"]] == ["M8x1.25.stl"]
    assert (tmp_path / "M8x1.25" / "M8x1.25.stl").stat().st_size == record["files"][0]["bytes"]


def test_kinds_of_files_may_stand_in_one_text(tap: tapmodel.DesignedTap, tmp_path: Path) -> None:
    record = tap.write(tmp_path, formats="stl,dxf")
    kinds = {Path(file["path"]).suffix for file in record["files"]}
    assert kinds == {".stl", ".dxf"}
    with pytest.raises(tapmodel.InputError, match="'stp' cannot be used"):
        tap.write(tmp_path, formats="stp")


def test_a_tap_that_breaks_a_rule_has_numbers_but_no_solid() -> None:
    broken = tapmodel.design("M8", {"blank.square_across_flats": 9})
    assert broken.errors
    for make in (broken.solid, broken.mesh, broken.write):
        with pytest.raises(tapmodel.RefusedError, match=broken.errors[0].code):
            make()


def test_a_notebook_sees_section_numbers_and_findings(tap: tapmodel.DesignedTap) -> None:
    shown = tap._repr_html_()
    assert shown.count("<svg") == 1
    assert f"{tap.figures.rake_crest:.2f}" in shown
    assert tap.findings[0].code in shown


def test_variants_stand_side_by_side() -> None:
    varied = {"flutes.count": [3, 4], "flutes.rake": [4, 8]}
    rows = tapmodel.compare("M18x0.75", varied)
    assert [(row["flutes.count"], row["flutes.rake"]) for row in rows] == [
        *((3, 4), (3, 8), (4, 4), (4, 8))
    ]
    for row in rows:
        assert row["rake_crest"] == pytest.approx(row["flutes.rake"], abs=1e-9)
        assert row["thread_relief.heel_drop"] > 0
    head, units, *lines = str(rows).splitlines()
    assert head.split()[:4] == [*varied, "cutter_diameter", "core_diameter"]
    assert units.split()[:3] == ["deg", "mm", "mm"]
    assert len(lines) == 4


def test_a_single_value_may_stand_alone() -> None:
    (row,) = tapmodel.compare("M18x0.75", {"flutes.count": 3, "flutes.rake": 8.0})
    assert (row["flutes.count"], row["flutes.rake"]) == (3, 8.0)
    cutter = tapmodel.design("M18x0.75", {"flutes.count": 3}).tap.flutes.cutter_diameter
    assert row["cutter_diameter"] == cutter


def test_a_variant_that_leaves_no_tap_is_a_row_that_says_so() -> None:
    (row,) = tapmodel.compare("M8", {"thread.root_flat": [0.7]})
    assert row["errors"] == "thread-depth"
    assert row["rake_crest"] is None


def test_importing_loads_nothing_heavy() -> None:
    heavy = "{'numpy', 'pydantic', 'OCP', 'cadquery', 'trimesh', 'scipy', 'typer'}"
    script = f"import sys, tapmodel; print(sorted({heavy} & set(sys.modules)))"
    run = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    assert run.stdout.strip() == "[]"


def test_designing_loads_no_kernel() -> None:
    script = (
        "import sys, tapmodel; tapmodel.design('M8').record();"
        "print(sorted({'OCP', 'cadquery', 'trimesh'} & set(sys.modules)))"
    )
    run = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    assert run.stdout.strip() == "[]"


def test_every_name_that_is_offered_is_there() -> None:
    for name in tapmodel.__all__:
        assert getattr(tapmodel, name) is not None
    with pytest.raises(AttributeError, match="no attribute 'desing'"):
        tapmodel.desing  # noqa: B018
