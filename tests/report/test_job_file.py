"""The commented job file asks for exactly the design it was written from, and can be edited."""

import dataclasses
import tomllib

import pytest

from tapmodel.designing.record import TapDesign
from tapmodel.designing.settle import settle
from tapmodel.errors import InputError
from tapmodel.report.job_file import CHOSEN_ANEW, INSTEAD, _following, commented_job
from tapmodel.report.words.choices import source_text, why
from tapmodel.run.record.compose import design_record
from tapmodel.spec.job import field_names
from tapmodel.spec.job_file import apply_sets, checked, job_for

JOBS = [
    ("M18x0.75", []),
    ("M6-LH", ["flutes.offset=0", "name=left tap"]),
    ("M8", ["chamfer.angle=12.3456789012345", "flutes.depth_from_top=2.6"]),
    ("M8", ["relief.thread.edge_angle=2", "relief.chamfer.kind=con-eccentric"]),
    ("M42x4.5", ["relief.chamfer.kind=concentric", "shop.cutters=[3, 12.123456789012, 9]"]),
    (
        "M20xPh3P1.5",
        ["thread.crest_flat=0.2", "blank.square_start=90", "flutes.rake=6.12345678901"],
    ),
    ("M10x1-6G", ["thread.pitch_diameter=9.4212", "flutes.cutter_diameter=5.1"]),
    ("M3", ["blank.neck_length=0", "blank.shank_must_pass=true", "chamfer.length=2"]),
]


def written(designation: str, sets: list[str]) -> tuple[TapDesign, str]:
    job = job_for(designation, sets)
    design = settle(job)
    return design, commented_job(job, design)


def numbers(design: TapDesign) -> TapDesign:
    return dataclasses.replace(design, choices=())


@pytest.mark.parametrize(("designation", "sets"), JOBS)
def test_reading_it_back_gives_the_same_design(designation: str, sets: list[str]) -> None:
    design, text = written(designation, sets)
    again = settle(checked(tomllib.loads(text)))
    assert numbers(again) == numbers(design)
    ruled = {c.field for c in again.choices if not c.given}
    assert ruled == {c.field for c in design.choices if not c.given} & {"flutes.cutter_diameter"}


@pytest.mark.parametrize(("designation", "sets"), JOBS)
def test_every_choice_stands_in_it_with_its_reason(designation: str, sets: list[str]) -> None:
    design, text = written(designation, sets)
    flowing = " ".join(text.replace("#", " ").split())
    for choice in design.choices:
        assert f"{choice.field.rpartition('.')[2]} = " in text
        assert why(choice) in flowing
        assert source_text(choice) in flowing or choice.field == CHOSEN_ANEW
    assert max(len(line) for line in text.splitlines()) <= 100


def test_what_follows_can_be_put_in_the_place_of_what_it_replaces() -> None:
    design, text = written("M18x0.75", [])
    swapped = text.replace("# offset = -2.7433", "offset = -2.5").replace("\nrake = 8.0", "")
    assert swapped.count("\noffset") == 1
    flutes = settle(checked(tomllib.loads(swapped))).tap.flutes
    assert flutes.offset == -2.5
    assert flutes.core_diameter == pytest.approx(design.tap.flutes.core_diameter)
    with pytest.raises(InputError, match=r"flutes\.rake together with flutes\.offset"):
        checked(tomllib.loads(text.replace("# offset = -2.7433", "offset = -2.5")))


def test_one_edit_moves_what_hangs_on_it_and_nothing_else() -> None:
    design, text = written("M18x0.75", [])
    edited = settle(checked(tomllib.loads(text.replace("rake = 8.0", "rake = 12.0"))))
    assert edited.figures.rake_crest == pytest.approx(12.0)
    assert edited.tap.flutes.core_diameter == pytest.approx(design.tap.flutes.core_diameter)
    assert (edited.tap.thread, edited.tap.chamfer, edited.drill) == (
        design.tap.thread,
        design.tap.chamfer,
        design.drill,
    )
    assert not [f for f in edited.findings if f.severity == "error"]


def test_the_cutters_on_hand_keep_deciding() -> None:
    _, text = written("M18x0.75", [])
    edited = text.replace("count = 4", "count = 6")
    assert settle(checked(tomllib.loads(edited))).tap.flutes.cutter_diameter == 6.0


@pytest.mark.parametrize(
    ("override", "field", "value"),
    [
        ("flutes.offset=-2", "offset", -2.0),
        ("flutes.depth_from_top=5", "depth_from_top", 5.0),
        ("flutes.cutter_diameter=6", "cutter_diameter", 6.0),
    ],
)
def test_one_override_is_enough_on_a_full_file(override: str, field: str, value: float) -> None:
    _, text = written("M18x0.75", [])
    job = checked(apply_sets(tomllib.loads(text), [override]))
    assert design_record(settle(job))["flutes"][field] == pytest.approx(value)


@pytest.mark.parametrize(
    "override",
    [
        *("relief.thread.kind=eccentric", "relief.thread.kind=concentric", "chamfer.pitches=7"),
        *("relief.thread.edge_angle=2", "chamfer.angle=9", "thread.pitch_diameter=17.56"),
        *("thread.crest_flat=0.08", "blank.square_start=95", "blank.neck_diameter=13"),
    ],
)
def test_any_override_of_a_full_file_is_sound(override: str) -> None:
    _, text = written("M18x0.75", [])
    design = settle(checked(apply_sets(tomllib.loads(text), [override])))
    assert not [f for f in design.findings if f.severity == "error"]


def test_what_follows_goes_by_the_names_of_fields() -> None:
    design, _ = written("M18x0.75", [])
    assert {*INSTEAD, *_following(design), CHOSEN_ANEW} <= set(field_names())
