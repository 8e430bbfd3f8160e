"""What the page is told names controls by their labels: it has boxes, and no job file."""

import re
from typing import TYPE_CHECKING

import pytest

from tapmodel.designing.design import design_tap
from tapmodel.errors import InputError, NoTapError
from tapmodel.report.view.controls.groups import ENTRIES
from tapmodel.report.view.controls.on_page import on_page
from tapmodel.report.words.findings import what
from tapmodel.serve.refusal import refused_by
from tapmodel.spec.job_file import job_for

if TYPE_CHECKING:
    from collections.abc import Iterator

    from served_page import Served

FIELDS = re.compile("|".join(rf"\b{re.escape(field)}\b" for field in ENTRIES if "." in field))

# Jobs whose refusal, findings, cures or reasons speak of fields.
JOBS: tuple[dict[str, object], ...] = (
    {"designation": "M18x0.75"},
    {"designation": "M18x0.75", "flutes.rake": 99},
    {"designation": "Tr16x4"},
    {"designation": "M48x1", "shop.tools": "inch"},
    {"designation": "M48x1", "flutes.cutter_diameter": 0.5},
    {"designation": "M18x0.75", "chamfer.pitches": 4, "chamfer.form": "plug"},
    {"designation": "M10", "relief.thread.margin_angle": 80.0},
    {"designation": "M10", "flutes.rake": -29.0},
    {"designation": "M10", "blank.front_centre": 0.9},
    {"designation": "M10", "hole.drill": 9.6, "flutes.depth_from_top": 0.2},
)


def texts(answer: object) -> "Iterator[str]":
    """Every text of an answer that is no name of a field."""
    match answer:
        case dict():
            for value in answer.values():
                yield from texts(value)
        case list():
            for value in answer:
                yield from texts(value)
        case str() if answer not in ENTRIES:
            yield answer


@pytest.mark.parametrize(
    ("field", "value", "words"),
    [
        (
            "cutters",
            "x",
            "allowed: diameters of the ball-nose cutters on hand [mm]: 1 to 200 values ",
        ),
        ("wires", "-1", "with commas between, as 4, 5, 1/2in; each a number, more than 0, at most"),
        ("wheels", "4,x", ": 1 to 50 values with commas between, as 4, 5, 1/2in; each a number"),
    ],
)
def test_a_list_that_is_refused_is_told_as_its_box_takes_it(
    served: "Served", field: str, value: str, words: str
) -> None:
    job = {"designation": "M10", f"shop.{field}": value}
    message = served.post("tap", {"job": job}).json()["error"]["message"]
    assert words in message
    assert "brackets" not in message


@pytest.mark.parametrize("job", JOBS)
@pytest.mark.parametrize("path", ["tap", "cures", "recommended"])
def test_no_text_of_the_page_names_a_field_that_has_a_control(
    served: "Served", path: str, job: dict[str, object]
) -> None:
    asked = {"job": job, "changed": [*job] if path == "recommended" else []}
    found = [*texts(served.post(path, asked).json())]
    assert found or path == "recommended"
    for text in found:
        assert not FIELDS.search(text), text
        assert "tapmodel set JOB" not in text
        assert not re.search(r"\d deg\b", text), text


def test_the_page_keeps_the_names_by_which_it_sends_fields(served: "Served") -> None:
    view = served.post("tap", {"job": JOBS[0]}).json()["view"]
    sent = {control["field"] for group in view["fields"] for control in group["controls"]}
    assert {"designation", "flutes.rake", "relief.chamfer.heel_drop"} <= sent <= ENTRIES.keys()


@pytest.mark.parametrize(
    ("job", "message"),
    [
        ({"flutes.rake": 99}, "“flutes: rake at the crest”: 99 cannot be used; allowed: "),
        ({"designation": "M18x"}, "“hole: thread”: 'M18x' cannot be used; "),
        ({"designation": ""}, "“hole: thread”: '' cannot be used; "),
        (
            {"flutes.rake": 4, "flutes.offset": 1},
            "“flutes: rake at the crest” together with “flutes: offset of the cutter”: ",
        ),
        ({"blank.shoulder_angle": 99}, "blank.shoulder_angle (in the job file): 99 cannot "),
        ({"relief.chamfer.kind": "x"}, "“relief of the chamfer: kind”: 'x' cannot be used"),
    ],
)
def test_a_refusal_names_the_control(
    served: "Served", job: dict[str, object], message: str
) -> None:
    answer = served.post("tap", {"job": {"designation": "M18x0.75"} | job}).json()
    assert answer["error"]["message"].startswith(message)


def test_what_was_wrong_in_a_file_is_told_as_it_stands_there() -> None:
    error = InputError("lens.toml: flutes.rake", 99, "at most 45")
    told = refused_by(error)["error"]
    assert told["message"] == "lens.toml: flutes.rake: 99 cannot be used; allowed: at most 45"


def test_sentences_of_the_command_line_keep_the_names_of_the_job_file() -> None:
    with pytest.raises(NoTapError) as refused:
        design_tap(job_for("M10", ["flutes.rake=-29"]))
    told = what(refused.value.finding)
    assert "or flutes.rake at least " in told
    assert "or “flutes: rake at the crest” at least " in on_page(told)


def test_a_field_without_a_control_is_told_with_where_it_is_set() -> None:
    told = on_page(
        "set thread.root_flat or thread.root_radius to the nose you have; see shop.mills"
    )
    nose = "“thread: nose flat of the tool” or thread.root_radius (in the job file)"
    assert told == f"set {nose} to the nose you have; see shop.mills"
    assert on_page("thread.root_radius") == "thread.root_radius"


def test_what_is_not_built_says_what_the_page_can_do(served: "Served") -> None:
    job = {"designation": "M10", "hole.drill": 9.9}
    error = served.post("build", {"job": job, "formats": ["step"]}).json()["error"]
    assert error["forceable"] is True
    assert error["message"] == "Not built, as it breaks a rule: see what was found."
    job = {"designation": "M10", "chamfer.point_diameter": 9.99, "chamfer.angle": 1.0}
    error = served.post("build", {"job": job, "formats": ["step"]}).json()["error"]
    assert "--force" not in error["message"]
