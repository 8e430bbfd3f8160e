"""Change gears and a dividing head, asked for by nonsense: one message that names the option."""

import pytest
from entry import faults, refusal_faults, run
from sweeps import in_part

GEARS = {"pitch": "1.5", "leadscrew": "8tpi", "gears": "20,30,40,127"}
NONSENSE = (
    *("", " ", ",", "0", "-1", "-8tpi", "0tpi", "nan", "inf", "-inf", "1e9", "1e400", "1e-300"),
    *(
        "x",
        "8tp",
        "1/2",
        "1/0tpi",
        "9" * 400,
        "9" * 5000,
        "\x1b[2J",
        "\udcff",
        "\u0663",
        "[20, 30]",
    ),
    *("20;30", "20,,30", "20,30.5", "20,-30", "30-20,40", "7,20", "20,401", "0-9999"),
)
DIVIDING = {"ratio": "40", "plates": "15-20,21", "table": "90"}


def gears(**instead: str) -> list[str]:
    return ["gears", *(f"--{name}={value}" for name, value in (GEARS | instead).items())]


def test_the_wheels_and_pitches_that_the_nonsense_stands_for_are_answered() -> None:
    assert run(gears()).code == 0
    assert run(["dividing", "7", "--ratio=40", "--plates=15-20,21"]).code == 0


@pytest.mark.parametrize("option", GEARS)
def test_nonsense_for_gears_is_refused_with_the_option(option: str) -> None:
    found = {
        value[:20]: refusal_faults(run([*gears(**{option: value}), *more]), f"--{option}")
        for value in NONSENSE
        for more in ([], ["--json"])
    }
    assert {value: faults for value, faults in found.items() if faults} == {}


@pytest.mark.parametrize("value", ["0", "-1", "1001", "1e9", "nan", "x", "", "9" * 400, "1.5"])
def test_no_number_of_trains_is_refused(value: str) -> None:
    assert refusal_faults(run([*gears(), f"--most={value}"]), "--most") == []


LINES: dict[str, tuple[list[str], str]] = {
    "nothing": (["gears"], "JOB"),
    "wheels alone": (["gears", "--gears=20,30"], "JOB"),
    "no leadscrew": (["gears", "--pitch=1", "--gears=20,30"], "--leadscrew"),
    "no wheels": (["gears", "--pitch=1", "--leadscrew=4"], "--gears"),
    "one wheel": (gears(gears="20"), "--gears"),
    "too many wheels": (gears(gears="20-220"), "--gears"),
    "a job without a lathe": (["gears", "M10"], "--leadscrew"),
    "a job without wheels": (["gears", "M10", "--set=shop.leadscrew=4"], "shop.gears"),
    "a job without a leadscrew": (["gears", "M10", "--set=shop.gears=20,30"], "shop.leadscrew"),
    "a pitch beside a job": (["gears", "M10", "--pitch=1", "--leadscrew=4"], "--pitch"),
    "a value set without a job": ([*gears(), "--set=shop.leadscrew=4"], "--set"),
    "no thread": (["gears", "banana", "--leadscrew=4", "--gears=20,30"], "banana"),
    "no file": (["gears", "none.toml", "--leadscrew=4", "--gears=20,30"], "none.toml"),
    "unknown units": ([*gears(), "--units=furlong"], "--units"),
    "no divisions": (["dividing"], "DIVISIONS"),
    "two divisions": (["dividing", "7", "9"], "9"),
    "a value set without a job to divide": (["dividing", "7", "--set=flutes.count=3"], "--set"),
    "a rotary table of no turns": (["dividing", "7", "--table=0"], "--table"),
    "a dial that does not come out": (["dividing", "7", "--table=90,7min"], "--table"),
    "no file to divide": (["dividing", "none.toml"], "none.toml"),
    "negative divisions": (["dividing", "-7"], "-7"),
}


@pytest.mark.parametrize("name", LINES)
def test_a_wrong_line_is_refused(name: str) -> None:
    words, named = LINES[name]
    assert refusal_faults(run(words), named) == []


@pytest.mark.parametrize("option", DIVIDING)
def test_nonsense_for_a_dividing_head_is_refused_with_the_option(option: str) -> None:
    values = [value for value in NONSENSE if value not in {"7,20", "20,401"} or option == "ratio"]
    found = {
        value[:20]: refusal_faults(run(["dividing", "7", f"--{option}={value}"]), f"--{option}")
        for value in values
    }
    assert {value: faults for value, faults in found.items() if faults} == {}


@pytest.mark.parametrize("value", [v for v in NONSENSE if not v.startswith("-")])
def test_nonsense_for_divisions_is_refused_or_read(value: str) -> None:
    # what may be a thread of 30 in is refused as that
    named = "designation" if value == "30-20,40" else "DIVISIONS"
    assert refusal_faults(run(["dividing", value]), named) == []


@pytest.mark.parametrize(
    ("number", "pitch", "most"),
    [
        *((0, "0.01", "1"), (1, "1000", "1000"), (2, "0.1234567890123", "1000")),
        *((3, "2540tpi", "1"), (4, "0.0254tpi", "1000")),
    ],
)
def test_extremes_are_answered(number: int, pitch: str, most: str) -> None:
    for screw in in_part(("0.01", "1000", "3.175"), number, every=3):
        ended = run([*gears(pitch=pitch, leadscrew=screw, gears="8-60,400"), f"--most={most}"])
        assert (ended.code, faults(ended)) == (0, [])


def test_so_are_those_of_a_dividing_head() -> None:
    ended = run(["dividing", "10000", "--ratio=1000", "--plates=2-200"])
    assert (ended.code, faults(ended)) == (0, [])
