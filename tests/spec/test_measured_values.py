"""What was measured, as it is typed and as it stands in its file."""

import math
import tomllib
from datetime import UTC, datetime
from pathlib import Path

import pytest

from tapmodel.errors import InputError
from tapmodel.spec.measured.file import beside, measured_in, read_measured
from tapmodel.spec.measured.record import found_of, measured_of
from tapmodel.spec.measured.sizes import EXCLUSIVE, LENGTHS, Size, range_of, rivals


def typed(size: Size, text: object) -> float:
    return found_of(size, text, size.option).number


def test_lengths_are_read_as_everywhere() -> None:
    # 0.71 in = 18.034 mm; 1/2 in = 12.7 mm
    for text, mm in (
        *(("18.02", 18.02), (18.02, 18.02), (18, 18.0), ("18.02mm", 18.02)),
        *(("0.71in", 18.034), ("1/2in", 12.7), ('1 1/2"', 38.1)),
    ):
        assert typed(Size.MAJOR, text) == pytest.approx(mm, abs=1e-12)
    assert typed(Size.CHAMFER_ANGLE, "8.5") == 8.5
    assert typed(Size.HARDNESS, 61) == 61.0


def test_what_was_typed_is_kept_as_it_was() -> None:
    assert found_of(Size.MAJOR, "0.71in", "--major").typed == "0.71in"
    assert found_of(Size.MAJOR, "18.02", "--major").typed == 18.02
    over = found_of(Size.OVER_WIRES, 18.2, "--over-wires", "0.017in")
    assert (over.wire_typed, over.wire) == ("0.017in", pytest.approx(0.4318))


@pytest.mark.parametrize("size", Size)
@pytest.mark.parametrize(
    "text", ["nan", "inf", "1e300", "", "thick", "-1", True, None, [18.0], 10**400, math.nan, 1e300]
)
def test_nonsense_is_refused_by_name(size: Size, text: object) -> None:
    with pytest.raises(InputError) as caught:
        typed(size, text)
    assert str(caught.value).startswith(f"{size.option}: ")
    assert f"{range_of(size).most:g}" in caught.value.allowed


@pytest.mark.parametrize("size", [size for size in Size if size not in LENGTHS])
@pytest.mark.parametrize("text", ["45mm", "1/2in", "60 HRC"])
def test_angles_and_hardness_take_no_unit(size: Size, text: str) -> None:
    with pytest.raises(InputError, match="a bare number"):
        typed(size, text)


def test_two_readings_of_the_same_are_one_too_many() -> None:
    for row in EXCLUSIVE:
        one, other = sorted(row)
        assert rivals(one) == {other}
        found = {size: found_of(size, "17.5", size.option) for size in (one, other)}
        with pytest.raises(InputError, match="both settle the same"):
            measured_of(found)


def test_a_wire_belongs_to_a_value_over_wires() -> None:
    with pytest.raises(InputError, match="a wire belongs to over_wires"):
        found_of(Size.MAJOR, 18.0, "--major", 0.433)
    with pytest.raises(InputError, match=r"^--wire: "):
        found_of(Size.OVER_WIRES, 18.0, "--over-wires", "thin")


def test_the_file_may_be_written_by_hand(tmp_path: Path) -> None:
    file = beside(tmp_path / "lens-cell.toml")
    assert file.name == "lens-cell.measured.toml"
    assert read_measured(file) is None
    file.write_text(
        'core = 8.15\nmajor = "0.71in"\nmajr = 3\n'
        "over_wires = { value = 18.2, wire = 0.433, on = 2026-11-26 }\n"
        '[notes]\nmike = "no. 3"\n',
        encoding="utf-8",
    )
    known = read_measured(file)
    assert known is not None
    # in the order of the work, not of the file
    assert list(known) == [Size.MAJOR, Size.OVER_WIRES, Size.CORE]
    assert known.number(Size.MAJOR) == pytest.approx(18.034)
    over = known.get(Size.OVER_WIRES)
    assert over is not None
    assert (over.wire, over.on) == (0.433, datetime(2026, 11, 26, tzinfo=UTC))
    assert known.strange == ("majr (did you mean major?)",)


@pytest.mark.parametrize(
    ("line", "place", "allowed"),
    [
        ("major = true", "m: major", "a length such as"),
        ('major = "thick"', "m: major", "from 0.001 to 2000 mm"),
        ("major = { on = 2026-11-26 }", "m: major", "major = { value = ... }"),
        ('core = { value = 8, on = "today" }', "m: core: on", "a date such as"),
        ("core = { value = 8, wire = 1 }", "m: core: wire", "a wire belongs to over_wires"),
        ("over_wires = { value = 18, wire = nan }", "m: over_wires: wire", "a length"),
        ("hardness = 90", "m: hardness", "from 20 to 70"),
        ("core = [8.1, 8.2]", "m: core", "a length"),
    ],
)
def test_a_wrong_line_is_told_by_file_and_key(line: str, place: str, allowed: str) -> None:
    with pytest.raises(InputError) as caught:
        measured_in(tomllib.loads(line), "m")
    assert caught.value.field == place
    assert allowed in caught.value.allowed
