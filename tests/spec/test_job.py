"""The job file: what is accepted, what is refused and with which words, and the overrides."""

import json
import os
import re
import tomllib
from pathlib import Path
from typing import Never

import pytest

from tapmodel.errors import InputError
from tapmodel.spec.job import Job, field_descriptions, field_names, unit_of
from tapmodel.spec.job_file import apply_sets, checked, job_for, json_schema, read_job

FULL = """
designation = "M18x0.75"
[hole]
class = "6H"
drill = 17
[flutes]
offset = -1.5
[relief.thread]
kind = "eccentric"
applies_to = "thread"
[shop]
cutters = [3, 4.5]
"""


def refused(text: str, tmp_path: Path):
    path = tmp_path / "tap.toml"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(InputError) as failure:
        read_job(path)
    assert str(path) in str(failure.value)
    return str(failure.value)


def test_values_arrive_under_their_dotted_names(tmp_path: Path):
    path = tmp_path / "tap.toml"
    path.write_text("\ufeff" + FULL, encoding="utf-8")
    assert read_job(path).given() == {
        "designation": "M18x0.75",
        "hole.class": "6H",
        "hole.drill": 17.0,
        "flutes.offset": -1.5,
        "relief.thread.kind": "eccentric",
        "relief.thread.applies_to": "thread",
        "shop.cutters": [3.0, 4.5],
    }


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("[flutes]\noffsett = 1", ["flutes.offsett", "did you mean flutes.offset?"]),
        ("[fluts]\ncount = 3", ["fluts", "did you mean flutes?"]),
        ("colour = 1", ["colour", "no such field; a job has", "designation, name, units, hole"]),
        ("[flutes]\noffset = 'wide'", ["flutes.offset", "'wide'", "a number", "[mm]"]),
        ("[flutes]\noffset = '1.2 m'", ["flutes.offset", "1.2 m", "a number", "at most 1000"]),
        (
            "[flutes]\ncount = 3.5",
            ["flutes.count", "3.5", "whole number", "at least 2, at most 12"],
        ),
        ("[flutes]\ncount = 13", ["flutes.count", "13", "at least 2, at most 12"]),
        ("[flutes]\noffset = nan", ["flutes.offset", "nan", "a number"]),
        ("[hole]\ndrill = inf", ["hole.drill", "inf", "more than 0, at most 2000"]),
        ("[hole]\ndrill = -3", ["hole.drill", "-3", "more than 0"]),
        ("[hole]\ndrill = true", ["hole.drill", "True", "a number"]),
        ("[hole]\ndrill = 2024-01-01", ["hole.drill", "a number"]),
        ("[hole]\ndrill = 0x" + "f" * 5000, ["hole.drill", "20000 bits", "a number"]),
        ("[hole]\nclass = 6", ["hole.class", "6", "text in quotes"]),
        ("[hole]\nmaterial = true", ["hole.material", "True", "text in quotes"]),
        ("[hole]\nkind = 'deep'", ["hole.kind", "deep", '"through", "blind"']),
        ("[tap]\nhardness = 39.9", ["tap.hardness", "39.9", "at least 40, at most 68", "[HRC]"]),
        ("[tap]\nhardness = 68.1", ["tap.hardness", "68.1", "at least 40, at most 68"]),
        ("flutes = 3", ["flutes", "3", "keys of the table [flutes]: flutes.count"]),
        ("[chamfer]\nform = 'blunt'", ["chamfer.form", "blunt", '"taper", "plug", "bottoming"']),
        ("[relief.thread]\napplies_to = 'chamfer'", ["applies_to", '"crest", "thread"']),
        ("[relief.chamfer]\napplies_to = 'crest'", ["applies_to", '"chamfer"']),
        ("[shop]\ncutters = [3, 'x']", ["shop.cutters", "a list in brackets", "each a number"]),
        ("[shop]\ncutters = []", ["shop.cutters", "entries at least 1"]),
        ("name = '../x'", ["name", "../x", "letters, digits"]),
        ("[thread]\naim = 1.1", ["thread.aim", "1.1", "at most 1"]),
    ],
)
def test_a_bad_value_is_named_with_field_value_and_what_is_allowed(
    line: str, words: list[str], tmp_path: Path
):
    message = refused(f'designation = "M6"\n{line}\n', tmp_path)
    for word in words:
        assert word in message
    assert len(message) < 900


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("designation = \n", "line 1"),
        ("designation = ", "end of document"),
        ('designation = "M6"\n[hole\n', "line 2"),
        ('designation = "M6"\ndesignation = "M8"\n', "line 2"),
        ("a = " + "[" * 5000, "nested"),
        ("a = " + "9" * 5000, "digits"),
        ("[hole]\ndrill = 5", "designation"),
    ],
)
def test_bad_toml_is_named_by_line(text: str, word: str, tmp_path: Path):
    assert word in refused(text, tmp_path)


def test_files_that_are_no_job_files_are_refused(tmp_path: Path):
    big = tmp_path / "big.toml"
    with big.open("wb") as file:
        file.truncate(3_000_000_000)  # sparse: has the size without the bytes
    latin = tmp_path / "latin.toml"
    latin.write_bytes(b'designation = "M6" # \xe9')
    pipe = tmp_path / "pipe.toml"
    os.mkfifo(pipe)
    cases = {
        tmp_path / "none.toml": "existing file",
        tmp_path: "not a folder",
        big: "at most 1000000 bytes",
        latin: "UTF-8",
        pipe: "not a device or pipe",
        tmp_path / ("x" * 300): "readable file",
        tmp_path / "a\0b": "readable file",
    }
    for path, word in cases.items():
        with pytest.raises(InputError, match=word):
            read_job(path)


def test_a_file_that_may_not_be_read_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    path = tmp_path / "tap.toml"
    path.write_text(FULL)

    def locked(_path: Path) -> Never:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "read_bytes", locked)  # root, as CI runs, may read everything
    with pytest.raises(InputError, match="may read"):
        read_job(path)


@pytest.mark.parametrize(
    ("sets", "named"),
    [
        (["thread.aim=0.5", "thread.pitch_diameter=5.4"], "thread.aim together with"),
        (["thread.major=6.1", "thread.crest_flat=0.1"], "thread.major together with"),
        (["chamfer.form=plug", "chamfer.pitches=4"], "chamfer.form together with"),
        (["chamfer.pitches=4", "chamfer.length=4"], "chamfer.pitches together with"),
        (["flutes.offset=0", "flutes.rake=8"], "flutes.rake together with flutes.offset"),
        (["flutes.core_diameter=2", "flutes.depth_from_top=1"], "flutes.core_diameter together"),
        (
            ["chamfer.angle=9", "chamfer.point_diameter=5", "chamfer.form=plug"],
            "two of length, angle and point",
        ),
        (["blank.neck_diameter=4", "blank.neck_length=0"], "both 0 for no neck"),
        (["relief.thread.margin_angle=5", "relief.thread.edge_angle=4"], "delete one"),
        (["relief.thread.kind=eccentric", "relief.thread.margin_angle=4"], "margin_angle together"),
        (["relief.chamfer.kind=concentric", "relief.chamfer.heel_drop=1"], "takes no numbers"),
        (["relief.chamfer.edge_angle=4", "relief.chamfer.heel_drop=1"], "edge_angle together"),
        (["blank.square_length=8", "blank.square_start=58"], "blank.square_length together"),
    ],
)
def test_contradicting_values_are_refused(sets: list[str], named: str):
    with pytest.raises(InputError, match=named):
        job_for("M6", sets)


@pytest.mark.parametrize(
    ("file", "override", "left"),
    [
        ({"flutes": {"rake": 8.0}}, "flutes.offset=1", {"flutes.offset": 1.0}),
        ({"chamfer": {"form": "plug"}}, "chamfer.length=3", {"chamfer.length": 3.0}),
        (
            {"chamfer": {"form": "plug", "point_diameter": 5.0}},
            "chamfer.angle=9",
            {"chamfer.angle": 9.0, "chamfer.point_diameter": 5.0},
        ),
        (
            {"chamfer": {"form": "plug", "angle": 9.0}},
            "chamfer.point_diameter=5",
            {"chamfer.form": "plug", "chamfer.point_diameter": 5.0},
        ),
        (
            {"relief": {"thread": {"kind": "con-eccentric", "margin_angle": 9.0}}},
            "relief.thread.kind=eccentric",
            {"relief.thread.kind": "eccentric"},
        ),
        (
            {"relief": {"thread": {"kind": "con-eccentric", "margin_angle": 9.0}}},
            "relief.thread.edge_angle=3",
            {"relief.thread.edge_angle": 3.0},
        ),
        (
            {"blank": {"neck_diameter": 4.0, "neck_length": 3.0}},
            "blank.neck_length=0",
            {"blank.neck_length": 0.0},
        ),
    ],
)
def test_an_override_displaces_what_it_contradicts(
    file: dict[str, object], override: str, left: dict[str, object]
):
    table = {"designation": "M6", **file}
    before = json.dumps(table)
    assert checked(apply_sets(table, [override])).given() == {"designation": "M6", **left}
    assert json.dumps(table) == before


def test_two_overrides_together_displace_what_only_both_contradict():
    table = {"designation": "M6", "chamfer": {"angle": 9.0}}
    sets = ["chamfer.point_diameter=5", "chamfer.pitches=3"]
    left = {"chamfer.point_diameter": 5.0, "chamfer.pitches": 3.0}
    assert checked(apply_sets(table, sets)).given() == {"designation": "M6", **left}


def test_what_is_missing_is_said_to_be_needed():
    with pytest.raises(InputError, match=r"^designation is needed: thread of the hole"):
        checked({"name": "x"})


def test_override_values_are_toml_or_bare_words():
    job = job_for("M6", ["hole.class=6G", "shop.cutters=[2, 3.5]", 'name="x y"', "flutes.count=4"])
    assert job.given() == {
        "designation": "M6",
        "name": "x y",
        "hole.class": "6G",
        "flutes.count": 4,
        "shop.cutters": [2.0, 3.5],
    }
    later = job_for("M6", ["flutes.count=4", "flutes.count=5"])
    assert later.flutes.count == 5


@pytest.mark.parametrize(
    "text",
    ["flutes.count", "=3", "flutes.=3", "flutes.count=", "designation.x=3", "flutes.count=1\nx=2"],
)
def test_an_unreadable_override_is_refused(text: str):
    with pytest.raises(InputError, match="--set"):
        job_for("M6", [text])


def test_overrides_are_checked_like_the_file():
    with pytest.raises(InputError, match=r"flutes\.cuont.*did you mean flutes\.count\?"):
        job_for("M6", ["flutes.cuont=3"])
    with pytest.raises(InputError, match=r"flutes\.offset: 'wide'"):
        job_for("M6", ["flutes.offset=wide"])


def test_schema_knows_every_field_and_no_other():
    schema = json_schema()
    assert json.loads(json.dumps(schema))["additionalProperties"] is False
    assert set(schema["properties"]) == {name.split(".")[0] for name in field_names()}
    hole = {"class", "drill", "engagement", "material", "depth", "kind"}
    assert schema["$defs"]["Hole"]["properties"].keys() == hole
    assert schema["$defs"]["Tap"]["properties"].keys() == {"material", "temper", "hardness"}
    assert schema["required"] == ["designation"]


def test_a_job_cannot_be_changed():
    job = Job.model_validate(tomllib.loads(FULL))
    with pytest.raises(ValueError, match="frozen"):
        job.name = "x"


@pytest.mark.parametrize(
    ("field", "unit", "words"),
    [
        ("hole.engagement", "%", "(60 degrees: 5/8 H) [%]"),
        ("flutes.offset", "mm", "towards the land it edges [mm]"),
        ("flutes.rake", "deg", "wanted rake at the crest edge [deg]"),
        ("shop.cutters", "mm", "diameters of the ball-nose cutters on hand [mm]"),
        ("chamfer.pitches", "pitches (leads)", "in leads, the turns that cut each"),
        ("flutes.land_share", "of the spacing", "a share of the flute spacing at the crests"),
        ("flutes.count", "", "number of flutes"),
        ("hole.depth", "mm", "depth of the thread to be tapped [mm]"),
        ("tap.hardness", "HRC", "when the tap is tempered [HRC]"),
        ("thread.aim", "", "0 = least, 1 = largest"),
        ("designation", "", '"7/16-26 UNS-2B" or "Tr14x3 LH"'),
    ],
)
def test_a_fields_type_tells_its_unit_and_its_description_ends_in_it(
    field: str, unit: str, words: str
) -> None:
    assert unit_of(field) == unit
    assert field_descriptions()[field].endswith(words)
    section, _, key = field.rpartition(".")
    schema = json_schema()
    table = schema["$defs"][section.capitalize()] if section else schema
    assert table["properties"][key]["description"] == field_descriptions()[field]


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("count=6", "count: no such field; did you mean flutes.count?"),
        ("flutes=4", "no value but keys of the table [flutes]: flutes.count"),
        ("flute.count=6", "flute: no such field; did you mean flutes? a job has designation, "),
        (
            "flutes.cout=3",
            "flutes.cout: no such field; did you mean flutes.count? [flutes] has count, ",
        ),
    ],
)
def test_a_wrong_or_shortened_key_is_answered_with_the_field(text: str, words: str) -> None:
    with pytest.raises(InputError, match=re.escape(words)):
        job_for("M10", [text])


@pytest.mark.parametrize(
    ("text", "values"),
    [
        ("shop.cutters=1/8in,3/16in,6", [3.175, 4.7625, 6.0]),
        ("shop.cutters=6", [6.0]),
        ("shop.drills=number", ["number"]),
        ("shop.drills=number,letter", ["number", "letter"]),
        ("shop.drills=[number]", ["number"]),
        ("shop.plates=15,18", [15, 18]),
        ("shop.plates=15-20", [15, 16, 17, 18, 19, 20]),
        ("shop.plates=15-17,21,23", [15, 16, 17, 21, 23]),
        ("shop.plates=[15 - 17, 33]", [15, 16, 17, 33]),
        ("shop.plates=47\u201349", [47, 48, 49]),
        ("shop.plates='15-17, 20'", [15, 16, 17, 20]),
        ('shop.plates=["15-17", 20]', [15, 16, 17, 20]),
        ('shop.wires=.032",.035"', [0.8128, 0.889]),
    ],
)
def test_a_list_needs_neither_brackets_nor_quotes(text: str, values: list[object]) -> None:
    job = job_for("M10", [text])
    assert job.given()[text.partition("=")[0]] == values


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("1.4301", "1.4301"),
        ("1.0570", "1.0570"),
        ("0.6025", "0.6025"),
        ("304", "304"),
        ("C45", "C45"),
        ("EN AW-6082", "EN AW-6082"),
        ("X5CrNi18-10", "X5CrNi18-10"),
        ("'42CrMo4+QT'", "42CrMo4+QT"),
        ("mild steel", "mild steel"),
    ],
)
def test_a_material_is_named_by_word_or_by_the_number_of_a_standard(typed: str, name: str) -> None:
    assert job_for("M10", [f"hole.material={typed}"]).hole.material == name
    assert job_for("M10", [f"tap.material={typed}"]).tap.material == name


@pytest.mark.parametrize("typed", ["0", "-1", "10.5", "10000", "nan", "true", "[1]", '""'])
def test_what_names_no_material_is_refused(typed: str) -> None:
    with pytest.raises(InputError, match=r"hole\.material"):
        job_for("M10", [f"hole.material={typed}"])


@pytest.mark.parametrize("plates", ['"15-17,20"', '["15-17", 20]', "[15, 16, 17, 20]"])
def test_a_file_names_the_circles_of_plates_as_the_command_line_does(plates: str) -> None:
    job = checked(tomllib.loads(f'designation = "M10"\n[shop]\nplates = {plates}\n'))
    assert job.shop.plates == [15, 16, 17, 20]


@pytest.mark.parametrize(
    ("typed", "entry"),
    [
        *(("15,20-15", "'20-15'"), ("15-1001", "'15-1001'"), ("1-9", "'1-9'"), ("18,1", "1 ")),
        *(("15,,18", "''"), ("15-20-25", "'15-20-25'"), ("[15, 1.5]", "1.5"), ("2-900", "a list")),
    ],
)
def test_a_circle_that_is_none_is_refused_in_few_words(typed: str, entry: str) -> None:
    with pytest.raises(InputError, match=r"^shop\.plates: .*such as 15-20,21,23") as refused:
        job_for("M10", [f"shop.plates={typed}"])
    assert entry in str(refused.value)
    assert refused.value.allowed.count("holes") <= 2


@pytest.mark.parametrize("text", ["shop.cutters=,", "shop.plates=15,,18", "shop.drills=a b"])
def test_a_list_of_nonsense_is_refused(text: str) -> None:
    with pytest.raises(InputError, match=re.escape(text.partition("=")[0])):
        job_for("M10", [text])


def test_units_in_is_short_for_inch_in_a_job_as_on_the_command_line() -> None:
    assert job_for("M10", ['units="in"']).units == "inch"
    with pytest.raises(InputError, match="units"):
        job_for("M10", ['units="i"'])


def test_a_list_may_be_typed_as_one_text() -> None:
    job = checked(
        {
            "designation": "1/2 BSW",
            "shop": {"cutters": "1/8in, 1/4in", "drills": "metric,letter", "wires": "1,1.5mm,"},
        }
    )
    assert job.shop.cutters == [3.175, 6.35]
    assert job.shop.drills == ["metric", "letter"]
    assert job.shop.wires == [1.0, 1.5]
    assert job.typed()["shop.cutters"] == "1/8in, 1/4in"


def test_a_set_of_drills_that_is_nearly_one_is_guessed() -> None:
    with pytest.raises(InputError, match=r'did you mean "number"\?'):
        job_for("M10", ["shop.drills=metric,numbers"])


@pytest.mark.parametrize(
    ("line", "quoted"),
    [
        ("hole.drill = 27/64in", '"27/64in"'),
        ("hole.depth=3/4", '"3/4in"'),
        ("shop.cutters = [3, 1/8in, 1/4in]", '"1/8in"'),
        ("blank.shank_diameter = .25in  # thick", '".25in"'),
        ("blank.overall_length = 2 1/2 in", '"2 1/2 in"'),
    ],
)
def test_a_length_without_quotes_is_shown_with_them(tmp_path: Path, line: str, quoted: str) -> None:
    file = tmp_path / "tap.toml"
    file.write_text(f'designation = "1/2 BSW"\n{line}\n')
    with pytest.raises(InputError) as caught:
        read_job(file)
    assert caught.value.allowed.endswith(f"put quotes round a length with its unit: {quoted}")


@pytest.mark.parametrize(
    ("line", "answer"),
    [
        ("rake = 8,5", "write rake = 8.5"),
        ("rake = 8,5  # deg", "write rake = 8.5"),
        ("rake = -.5", "write rake = -0.5"),
        ("count = three", 'allowed: a number in digits, or a word in quotes: count = "three"'),
    ],
)
def test_a_line_that_toml_cannot_read_is_shown_with_its_number_and_how_it_is_written(
    tmp_path: Path, line: str, answer: str
) -> None:
    file = tmp_path / "tap.toml"
    file.write_text(f'designation = "M10"\n[flutes]\n{line}\n')
    with pytest.raises(InputError) as caught:
        read_job(file)
    assert str(caught.value) == f"{file}, line 3: '{line}' cannot be used; {answer}"


WORDS = {
    "units": "Inch",
    "chamfer.form": "Plug",
    "hole.kind": "BLIND",
    "relief.thread.kind": "Eccentric",
    "relief.thread.applies_to": "Crest",
    "relief.chamfer.applies_to": "Chamfer",
    "shop.tools": "METRIC",
    "report.paper": "LETTER",
    "report.projection": "Third",
}


@pytest.mark.parametrize("field", WORDS)
def test_case_does_not_matter_in_a_word_of_a_closed_list(field: str) -> None:
    found = job_for("M10", [f"{field}={WORDS[field]}"]).given()[field]
    assert found == ("Letter" if field == "report.paper" else WORDS[field].lower())
    assert job_for("M10", ["shop.drills=Metric,NUMBER"]).shop.drills == ["metric", "number"]


def test_an_angle_of_the_kind_that_the_job_holds_in_capitals_keeps_it() -> None:
    table = {"designation": "M10", "relief": {"thread": {"kind": "Eccentric"}}}
    found = checked(apply_sets(table, ["relief.thread.edge_angle=3"])).given()
    assert found["relief.thread.kind"] == "eccentric"


def test_the_words_of_a_closed_list_are_said_once() -> None:
    with pytest.raises(InputError) as caught:
        job_for("M10", ["chamfer.form=plugg"])
    assert caught.value.allowed == 'did you mean "plug"? Else one of "taper", "plug", "bottoming"'


def test_other_broken_lines_are_not_told_of_quotes(tmp_path: Path) -> None:
    file = tmp_path / "tap.toml"
    file.write_text('designation = "1/2 BSW\n')
    with pytest.raises(InputError) as caught:
        read_job(file)
    assert "round" not in caught.value.allowed
