"""What a program is told of a tap that was measured."""

from pathlib import Path

import pytest

import tapmodel
from tapmodel.shop.measured.verdicts import Standing


def test_a_program_gets_what_the_command_tells() -> None:
    made = tapmodel.measured("M18x0.75", {"over_wires": 18.25, "core": "0.32in"}, wire=0.433)
    wires, core = made.verdicts
    # (18.25 - 1.299 + 0.649519 - 17.562) / 2; 0.32 in = 8.128 mm
    assert wires.take == pytest.approx(0.01926, abs=5e-5)
    assert (core.value, core.standing) == (pytest.approx(8.128), Standing.IN_LIMITS)
    assert made.tap is not None
    assert made.tap.flutes.core_diameter == pytest.approx(8.128)
    assert made.prediction is not None
    assert made.record()["as_it_is"]["stop_at"] == made.prediction.stop_at
    assert made.design.tap.flutes.core_diameter == pytest.approx(8.1)
    assert "too large: take more" in str(made)


def test_it_reads_what_the_command_has_kept(tmp_path: Path) -> None:
    file = tmp_path / "cell.measured.toml"
    file.write_text("major = 18.1\nover_wires = 18.2\n", encoding="utf-8")
    made = tapmodel.measured("M18x0.75", file)
    assert [one.size.value for one in made.verdicts] == ["major", "pitch_diameter"]
    with pytest.raises(tapmodel.InputError, match="an existing file"):
        tapmodel.measured("M18x0.75", tmp_path / "none.toml")


def test_unknown_names_and_lone_wires_are_refused() -> None:
    with pytest.raises(tapmodel.InputError, match="over_wires"):
        tapmodel.measured("M18x0.75", {"colour": 3.0})
    with pytest.raises(tapmodel.InputError, match="--wire"):
        tapmodel.measured("M18x0.75", {"major": 18.1}, wire=0.433)
