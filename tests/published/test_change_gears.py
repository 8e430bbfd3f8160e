"""Change gears against printed trains.

Read: J. Rose, Modern Machine Shop Practice (pp. 330 and 632); C. Knight, The Mechanician (selection
of wheels); American Mechanic (proportion of wheels); F. D. Jones, Turning and Boring (p. 93: metric
pitches on leadscrews in inches); a school's exercises on change gears; two posts of machinists'
forums on 120/127 and on 80/63, with a table of metric pitches on a leadscrew of 8 per inch; lecture
notes on the measurement of screw threads (an error of pitch in effective diameter).
"""

from fractions import Fraction

import pytest

from tapmodel.shop.gears.trains import GearTrain, diameter_taken, gear_trains, lacks_inch_wheel
from tapmodel.spec.shop.pitches import pitch_for


def best(wanted: str, leadscrew: str, wheels: list[int]) -> GearTrain:
    """The best train; a pitch is written as on the command line."""
    lead, screw = pitch_for("wanted", wanted), pitch_for("leadscrew", leadscrew)
    return gear_trains(lead, screw, wheels, 1)[0]


# (wanted, leadscrew): drivers, driven.
EXACT = {
    # Rose p. 632, in today's sense: the wheels there are counted from the leadscrew.
    ("11tpi", "4tpi"): ((18, 48), (36, 66)),
    # Rose p. 330, leadscrews of 6 and of 3 per inch.
    **{(f"{n}tpi", "6tpi"): ((24,), (4 * n,)) for n in (18, 17, 16, 15, 14, 13)},
    **{(f"{n}tpi", "3tpi"): ((18,), (6 * n,)) for n in (18, 17, 16, 15)},
    # American Mechanic.
    ("5tpi", "2tpi"): ((40,), (100,)),
    # Knight; the second is coarser than its leadscrew.
    ("4tpi", "2tpi"): ((20,), (40,)),
    ("1 1/2tpi", "2tpi"): ((40,), (30,)),
    # Jones p. 93: 3 mm by a screw of 6 per inch: 6 x 3 x 5 : 127.
    ("3mm", "6tpi"): ((90,), (127,)),
    # A forum: 120/127 makes 3 mm of 8 per inch, and the reverse.
    ("3", "8tpi"): ((120,), (127,)),
    ("8tpi", "3"): ((127,), (120,)),
    # A school's exercises: 1/3, 1/4 and 2/3.
    ("2", "6"): ((20,), (60,)),
    ("1.5", "6"): ((20,), (80,)),
    ("12tpi", "8tpi"): ((40,), (60,)),
}


@pytest.mark.parametrize("case", EXACT)
def test_printed_wheels_cut_what_they_are_printed_for(case: tuple[str, str]) -> None:
    drivers, driven = EXACT[case]
    assert best(*case, [*drivers, *driven]) == GearTrain(
        drivers, driven, pitch_for("wanted", case[0]), Fraction(0)
    )


def test_where_no_whole_wheel_does_none_is_exact() -> None:
    # Knight: 2.3 per inch by 1.8 per inch, 20 on the mandrel, wants a wheel of 25.5556.
    lead, screw = pitch_for("wanted", "2.3tpi"), pitch_for("leadscrew", "1.8tpi")
    for teeth in range(21, 31):
        found = gear_trains(lead, screw, [20, teeth], 1)[0]
        assert (found.drivers, found.driven) == ((20,), (teeth,))
        assert float(1 + found.error) == pytest.approx(25.5556 / teeth, rel=1e-5)


# (driver, driven) for 1.27, and the error in millionths; the last four are worked out.
NEAR_127 = {
    (80, 63): -125.0,
    (47, 37): 212.8,
    (108, 85): 463.2,
    (33, 26): -605.7,
    (14, 11): 2147.5,
    (89, 70): 1124.9,
}


@pytest.mark.parametrize("wheels", NEAR_127)
def test_what_stands_for_127_is_off_by_the_printed_error(wheels: tuple[int, int]) -> None:
    found = gear_trains(Fraction(127, 100), Fraction(1), wheels, 1)[0]
    assert (*found.drivers, *found.driven) == wheels
    assert found.ppm == pytest.approx(NEAR_127[wheels], abs=0.06)
    assert best("1.27", "1", [100, 127]).error == 0


# Pitch: driver and screw wheel beside 63 and 80 on a leadscrew of 8 per inch, a forum's table.
BY_80_63 = {
    "1": (30, 75),
    "1.25": (30, 60),
    "1.5": (30, 50),
    "1.75": (35, 50),
    "2": (40, 50),
    "2.5": (55, 55),
    "3": (60, 50),
}


@pytest.mark.parametrize("pitch", BY_80_63)
def test_metric_pitches_by_63_and_80_are_all_off_alike(pitch: str) -> None:
    driver, screw = BY_80_63[pitch]
    found = best(pitch, "8tpi", [driver, 63, screw, 80])
    if pitch != "2.5":  # 55:55 is a train of 63:80 with two more wheels
        assert set(found.drivers) == {driver, 63}
        assert set(found.driven) == {screw, 80}
    assert found.ppm == pytest.approx(125.0, abs=0.05)
    assert float(found.made) == pytest.approx(1.500188 / 1.5 * float(pitch), abs=2e-6)


def test_only_127_joins_inches_and_millimetres() -> None:
    inch, metric = pitch_for("", "8tpi"), Fraction(3, 2)
    for lead, screw in ((metric, inch), (inch, metric)):
        assert lacks_inch_wheel(lead, screw, [20, 100, 120])
        assert not lacks_inch_wheel(lead, screw, [20, 127])
        assert not lacks_inch_wheel(lead, screw, [254])
    assert not lacks_inch_wheel(metric, Fraction(3), [20])
    assert not lacks_inch_wheel(inch, pitch_for("", "19tpi"), [20])


def test_an_error_of_pitch_in_effective_diameter() -> None:
    # Lecture notes: 1.92 times the error of pitch at 55 degrees; 1.732 at 60 degrees.
    assert diameter_taken(0.01, 27.5) == pytest.approx(0.0192, abs=0.00002)
    assert diameter_taken(-0.01, 30) == pytest.approx(0.01732, abs=0.00001)
