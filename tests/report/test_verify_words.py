"""What `verify` says of a file: the verdict last, the worst first, units that read well."""

from typing import Any

import pytest

from tapmodel.checks.proof.length_told import length_told
from tapmodel.report.screen.verify import verify_summary
from tapmodel.report.words.causes import causes_told
from tapmodel.words import Units

AS_IT_IS = {"mirrored": False, "turn": 0.0, "shift": (0.0, 0.0, 0.0), "axis": "z", "scale": 1.0}


NONE_SEEN = {
    "misplaced": None,
    "flutes": None,
    "flutes_wanted": 3,
    "starts": None,
    "starts_wanted": 2,
    "pitch_diameter": None,
    "pitch_diameter_wanted": 9.089,
    "sizes": (),
}


@pytest.mark.parametrize(
    ("micrometres", "text"),
    [
        (16234.0, "16 mm"),
        (123456.0, "123 mm"),
        (877.0, "0.88 mm"),
        (99.0, "99 µm"),
        (100.0, "0.1 mm"),
        (0.0213, "0.021 µm"),
        (0.0, "0.001 µm"),
    ],
)
def test_a_distance_has_the_unit_in_which_it_reads_well(micrometres: float, text: str) -> None:
    assert length_told(micrometres) == text


@pytest.mark.parametrize(
    ("change", "told"),
    [
        ({"mirrored": True}, ["mirror image: the other hand"]),
        ({"scale": 1 / 25.4}, ["25.4 times too small: inches read as mm"]),
        ({"scale": 25.4}, ["25.4 times too large: mm read as inches"]),
        ({"shift": (0.0, 0.0, 10.0)}, ["moved along its axis by +10 mm"]),
        ({"shift": (3.0, -4.0, 0.0)}, ["its axis stands 5 mm off (x +3 mm, y -4 mm)"]),
        ({"turn": 30.0}, ["turned about its axis by +30°"]),
        ({"axis": "-y", "turn": 90.0}, ["its axis lies along Y; put it along Z, front at z = 0"]),
    ],
)
def test_each_cause_has_its_words(change: dict[str, Any], told: list[str]) -> None:
    found = NONE_SEEN | {"misplaced": AS_IT_IS | change}
    assert causes_told(found) == told


@pytest.mark.parametrize(
    ("seen", "units", "told"),
    [
        ({"starts": 1}, Units.MM, ["it has 1 start, the design 2"]),
        (
            {"flutes": 4, "starts": 3},
            Units.MM,
            ["it has 4 flutes, the design 3", "it has 3 starts"],
        ),
        (
            {"pitch_diameter": 9.109},
            Units.MM,
            ["its pitch diameter is 9.1090 mm, the design's 9.0890 mm"],
        ),
        ({"pitch_diameter": 9.109}, Units.INCH, ["its pitch diameter is 0.35862 in"]),
    ],
)
def test_what_is_otherwise_has_its_words(
    seen: dict[str, Any], units: Units, told: list[str]
) -> None:
    found = causes_told(NONE_SEEN | seen, units)
    assert len(found) == len(told)
    assert all(one.startswith(text) for one, text in zip(found, told, strict=True))


@pytest.mark.parametrize(
    ("name", "seen", "wanted", "units", "told"),
    [
        ("overall-length", 82.0, 80.0, Units.MM, "it is 2 mm longer (82 mm, the design's 80 mm)"),
        ("thread-length", 22.5, 24.0, Units.MM, "its thread is 1.5 mm shorter (22.5 mm, the des"),
        ("major", 10.12, 10.07, Units.MM, "its major diameter is 0.05 mm larger (10.12 mm, the"),
        ("core", 4.3, 4.0, Units.MM, "its core is 0.3 mm thicker (4.3 mm, the design's 4 mm)"),
        ("core", 3.7, 4.0, Units.MM, "its core is 0.3 mm thinner (3.7 mm, the design's 4 mm)"),
        ("cutter", 6.5, 7.0, Units.MM, "its flutes are of a cutter of about 6.5 mm, the design's"),
        ("rake", 12.0, 8.0, Units.MM, "its rake at the crest is 12.00°, the design's 8.00°"),
        ("overall-length", 80.0, 82.54, Units.INCH, "it is 0.1 in shorter (3.1496 in, the desig"),
    ],
)
def test_a_size_that_is_otherwise_is_told_with_by_how_much(
    name: str, seen: float, wanted: float, units: Units, told: str
) -> None:
    causes = NONE_SEEN | {"sizes": ({"name": name, "seen": seen, "wanted": wanted},)}
    (said,) = causes_told(causes, units)
    assert said.startswith(told)


def _measured(differences: list[str], causes: dict[str, Any] | None) -> dict[str, Any]:
    return {
        "solids": 1,
        "genus": 0,
        "faces": 311,
        "ideal_points": 3778,
        "ideal_um_max": 0.0,
        "volume": 1566.0,
        "volume_expected": 1566.0,
        "volume_relative_error": 0.0,
        "deviation_um_by_surface": {"thread": 0.02},
        "ideal_um_by_feature": {"thread": 0.01},
        "bounds": {"volume": 1e-5, "section_area": 1e-5, "any_face": 1e-4, "thread_face": 1e-4},
        "differences": differences,
        "causes": causes,
    }


def test_a_failed_comparison_is_short_states_what_is_allowed_and_ends_in_the_verdict() -> None:
    causes = NONE_SEEN | {"flutes": 4}
    lines = verify_summary(_measured([f"face {n}" for n in range(20)], causes)).splitlines()
    assert [line for line in lines if "DIFFERS" in line] == [f"DIFFERS  face {n}" for n in range(6)]
    assert "and 14 more" in lines[-3]
    assert "0.1 µm at every face" in lines[-2]
    assert lines[-1] == "verdict  NOT the designed tap: it has 4 flutes, the design 3"


def test_so_does_one_that_agrees() -> None:
    lines = verify_summary(_measured([], None)).splitlines()
    assert "at most 0.02 µm off" in lines[2]
    assert lines[-1].split(maxsplit=1) == ["verdict", "this is the designed tap"]


def test_verify_is_told_in_inches_where_they_are_wanted() -> None:
    place = AS_IT_IS | {"shift": (0.0, 0.0, 50.8)}
    causes = NONE_SEEN | {"misplaced": place}
    measured = _measured(["genus 1 instead of 0", "thread: a face lies 2.5 mm off"], causes)
    measured |= {"volume": 25.4**3, "deviation_um_by_surface": {"thread": 2540.0}}
    measured["ideal_um_by_feature"] = {"thread": 0.0}
    told = verify_summary(measured, Units.INCH)
    assert "1.000000 in³, the design's 0.09556318 in³" in told
    assert "DIFFERS  genus 1 instead of 0" in told
    assert "DIFFERS  thread: a face lies 0.10 in off" in told
    assert "0.0000039 in at every face" in told
    assert "moved along its axis by +2 in" in told
    assert " mm" not in told
    assert "a face lies 2.5 mm = 0.10 in off" in verify_summary(measured, Units.BOTH)


def test_what_agrees_is_told_in_inches_as_well() -> None:
    # 0.02 µm over 25400
    assert "at most 0.00000079 in off" in verify_summary(_measured([], None), Units.INCH)
