"""Lengths as people write them."""

from pathlib import Path

import pytest

from tapmodel.errors import InputError, WriteError
from tapmodel.library.request import job_of
from tapmodel.spec.job import field_names, unit_of
from tapmodel.spec.job_file import apply_sets, checked, job_for, json_schema, read_job
from tapmodel.spec.lengths import millimetres_of, rewritten
from tapmodel.spec.units import Unit


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("6.35", 6.35),
        (" 6.35 mm ", 6.35),
        ("6.35MM", 6.35),
        ("0.25in", 6.35),
        (".25 in.", 6.35),
        ("1/4in", 6.35),
        ("1/4 inch", 6.35),
        ('1 1/2"', 38.1),
        ("1-1/2″", 38.1),
        ("-0.1in", -2.54),
        ("2e-1", 0.2),
        ("7/16 in", 11.1125),
    ],
)
def test_a_length_is_read_to_the_last_bit(text: str, mm: float) -> None:
    assert millimetres_of(text) == mm


@pytest.mark.parametrize(
    "text",
    [
        *("", "in", "1/4", "1/0in", "a", "1,5", "nan", "1/4/2in", "1 2in", "5 m", "0x5", "--1"),
        *(
            "9e999mm",
            "9" * 400 + "mm",
            "9" * 5000 + "in",
            "0." + "9" * 5000,
            "1\u0131n",
            "\uff11in",
        ),
    ],
)
def test_what_is_no_length_is_none(text: str) -> None:
    assert millimetres_of(text) is None


@pytest.mark.parametrize(
    ("text", "written"),
    [
        *(("0,035in", "0.035in"), ("10,1", "10.1"), (" -8,5 mm ", "-8.5 mm"), ("5/16", "5/16in")),
        *(("1 1/4", "1 1/4in"), ("-3/8", "-3/8in")),
        *((text, "") for text in ("0.035in", "1/4in", "1,2,3", "a", "1/0", "1,5/16", ",5", "5,")),
    ],
)
def test_what_is_nearly_a_length_is_written_as_one(text: str, written: str) -> None:
    assert rewritten(text) == written


@pytest.mark.parametrize("name", ["5/16", " 5/16 ", "5/16in"])
def test_a_bare_fraction_names_a_fraction_drill(name: str, tmp_path: Path) -> None:
    assert job_for("3/8-16", [f"hole.drill={name}"]).hole.drill == 7.9375
    path = tmp_path / "tap.toml"
    path.write_text(f'designation = "3/8-16"\n[hole]\ndrill = "{name}"\n')
    assert read_job(path).hole.drill == 7.9375
    assert job_of("3/8-16", {"hole.drill": name}).hole.drill == 7.9375


@pytest.mark.parametrize(
    ("value", "written"),
    [
        *(("hole.drill=5/17", "5/17in"), ("blank.overall_length=2 1/4", "2 1/4in")),
        *(("shop.cutters=3/16,1/4in", "3/16in"), ("shop.cutters=[1/4in,3/16]", "3/16in")),
        *(("hole.drill=8,5", "8.5"), ("flutes.rake='8,5'", "8.5"), ("shop.leadscrew=1/8", "1/8in")),
        ("shop.wires=0,035in", "0.035in; a comma parts the entries of a list"),
    ],
)
def test_a_length_without_unit_or_point_is_answered_with_them(value: str, written: str) -> None:
    with pytest.raises(WriteError) as refused:
        job_for("3/8-16", [value])
    assert str(refused.value).endswith(f" cannot be used; write {written}")
    meant = written.partition(";")[0]
    assert job_for("3/8-16", [f"{value.partition('=')[0]}={meant}"]).given()


def test_an_angle_is_not_asked_back_in_inches() -> None:
    with pytest.raises(InputError) as refused:
        job_for("3/8-16", ["flutes.rake='1/4'"])
    assert "write" not in str(refused.value)
    assert job_for("3/8-16", ["flutes.rake=-.5"]).flutes.rake == -0.5


LENGTHS = [field for field in field_names() if unit_of(field) is Unit.MM]


@pytest.mark.parametrize(
    "field", [name for name in LENGTHS if not name.startswith(("shop.", "set."))]
)
@pytest.mark.parametrize("written", ["1/4in", " .25 in", '0.25"', "6.35mm", "6.35"])
def test_every_length_of_a_job_is_read_with_its_unit(field: str, written: str) -> None:
    assert job_for("3/8-16", [f"{field}={written}"]).given()[field] == 6.35
    table = apply_sets({"designation": "3/8-16"}, [f"{field}='{written}'"])
    assert checked(table).given()[field] == 6.35
    assert job_of("3/8-16", {field: written}).given()[field] == 6.35


def test_what_the_tap_before_leaves_is_read_with_its_unit() -> None:
    """The two lengths go together, and with the place of the tap in its set."""
    before = ["set.before_major=1/4in", "set.before_pitch_diameter=0.2355in"]
    found = job_for("3/8-16", ["set.number=2", "set.taps=2", *before]).given()
    assert (found["set.before_major"], found["set.before_pitch_diameter"]) == (6.35, 5.9817)


def test_a_list_of_lengths_is_read_with_or_without_quotes(tmp_path: Path) -> None:
    for written in ("[1/4in, 6mm, 3]", '["1/4in", "6mm", 3]'):
        assert job_for("M10", [f"shop.cutters={written}"]).shop.cutters == [6.35, 6.0, 3.0]
    path = tmp_path / "tap.toml"
    path.write_text('designation = "M10"\n[shop]\ncutters = [\'3/16"\', 5]\n')
    assert read_job(path).shop.cutters == [4.7625, 5.0]


@pytest.mark.parametrize("field", ["flutes.rake", "flutes.count", "chamfer.pitches", "thread.aim"])
def test_what_is_no_length_takes_no_unit(field: str) -> None:
    with pytest.raises(InputError, match=field):
        job_for("M10", [f"{field}=3mm"])


@pytest.mark.parametrize("typed", ["100in", "-1/4in", "1/0in", "2 m"])
def test_a_length_out_of_range_is_refused_as_typed_and_told_how_to_write_it(typed: str) -> None:
    with pytest.raises(InputError) as failure:
        job_for("M10", [f"blank.shank_diameter={typed}"])
    assert repr(typed) in str(failure.value)
    assert "6.35mm, 0.25in or 1/4in" in str(failure.value)


def test_no_neck_in_any_unit_displaces_a_neck_in_the_file() -> None:
    table = {"designation": "M6", "blank": {"neck_diameter": 4.0, "neck_length": "3mm"}}
    assert checked(apply_sets(table, ["blank.neck_length=0in"])).given() == {
        "designation": "M6",
        "blank.neck_length": 0.0,
    }


def test_the_schema_lets_a_length_be_a_number_or_a_text() -> None:
    shank = json_schema()["$defs"]["Blank"]["properties"]["shank_diameter"]
    number, text, nothing = shank["anyOf"]
    assert (number["type"], number["exclusiveMinimum"], number["maximum"]) == ("number", 0, 2000)
    assert text == {"type": "string", "format": "length"}
    assert nothing == {"type": "null"}
