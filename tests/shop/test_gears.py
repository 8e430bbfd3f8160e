"""Laws of the search for change gears: against every train there is, and in good time."""

from collections import Counter
from fractions import Fraction
from itertools import permutations

import pytest
from asked import settled_of
from hypothesis import given, settings
from hypothesis import strategies as st

from tapmodel.shop.gears.another_wheel import allowed, another_wheel
from tapmodel.shop.gears.asked import GearsAsked, asked_by
from tapmodel.shop.gears.meshing import meshing
from tapmodel.shop.gears.trains import GearTrain, gear_trains

INCH = Fraction(254, 10)
SET = [
    *(20, 24, 25, 28, 30, 32, 35, 36, 38, 40, 40, 42, 44, 45, 46, 48, 50, 52, 54, 55, 56, 60, 60),
    *(63, 64, 65, 66, 70, 72, 75, 80, 84, 90, 95, 100, 110, 120, 127),
]
"""Wheels of a full set, two sizes of them twice."""


def every_train(wanted: Fraction, leadscrew: Fraction, wheels: list[int]) -> list[GearTrain]:
    """All of them, by trying every wheel in every place."""
    found: dict[tuple[tuple[int, ...], tuple[int, ...]], Fraction] = {}
    for side in (1, 2):
        for row in permutations(wheels, 2 * side):
            made = leadscrew
            for driver, driven in zip(row[:side], row[side:], strict=True):
                made *= Fraction(driver, driven)
            found[tuple(sorted(row[:side])), tuple(sorted(row[side:]))] = made
    trains = [
        GearTrain(drivers, driven, made, (made - wanted) / wanted)
        for (drivers, driven), made in found.items()
    ]
    return sorted(trains, key=rank)


def rank(train: GearTrain) -> tuple[object, ...]:
    wheels = (*train.drivers, *train.driven)
    return abs(train.error), fouls(train), len(wheels), sum(wheels), train.drivers, train.driven


def fouls(train: GearTrain) -> bool:
    """No order clears both shafts by 15 teeth, written out."""
    if len(train.drivers) == 1:
        return False
    (a, c), (b, d) = train.drivers, train.driven
    return not any(
        w + x >= y + 15 and y + z >= x + 15
        for w, y in ((a, c), (c, a))
        for x, z in ((b, d), (d, b))
    )


def test_the_order_of_a_worked_example() -> None:
    # 20 on 80 would have the 127 beside it foul the 20's shaft: 100 teeth against 127 + 15
    places = meshing((20, 127), (80, 95))
    assert places.pairs == ((127, 80), (20, 95))
    assert (places.drivers, places.driven) == ((127, 20), (80, 95))
    # 127 + 80 - 20 = 187 and 20 + 95 - 80 = 35
    assert places.fits
    # 10 on 8: 18 teeth against 9 + 15 of the wheel beside; 9 + 8 against 8 + 15
    assert not meshing((9, 10), (8, 8)).fits
    # 17 + 10 - 8 = 19, and 8 + 17 - 10 = 15; with 16 that is a tooth too few
    assert meshing((8, 17), (10, 17)).fits
    assert not meshing((8, 17), (10, 16)).fits
    assert meshing((20,), (120,)).fits


@given(st.lists(st.integers(15, 127), min_size=4, max_size=4))
def test_of_wheels_with_fifteen_teeth_and_more_some_order_fits(teeth: list[int]) -> None:
    places = meshing((teeth[0], teeth[1]), (teeth[2], teeth[3]))
    assert places.fits
    (a, b), (c, d) = places.pairs
    assert a + b >= c + 15
    assert c + d >= b + 15
    assert sorted(places.drivers) == sorted(teeth[:2])
    assert sorted(places.driven) == sorted(teeth[2:])


pitches = st.one_of(
    st.fractions(Fraction(1, 10), 12, max_denominator=40),
    st.integers(2, 60).map(lambda threads: INCH / threads),
)


@given(pitches, pitches, st.lists(st.integers(8, 40), min_size=2, max_size=7), st.integers(1, 40))
def test_the_search_finds_what_trying_everything_finds(
    wanted: Fraction, leadscrew: Fraction, wheels: list[int], most: int
) -> None:
    expected = every_train(wanted, leadscrew, wheels)[:most]
    assert list(gear_trains(wanted, leadscrew, wheels, most)) == expected


@settings(max_examples=50)
@given(pitches, pitches, st.lists(st.integers(20, 127), min_size=2, max_size=40))
def test_each_train_is_made_of_wheels_at_hand_and_cuts_what_it_says(
    wanted: Fraction, leadscrew: Fraction, wheels: list[int]
) -> None:
    found = gear_trains(wanted, leadscrew, wheels)
    assert found
    assert list(found) == sorted(found, key=rank)
    for train in found:
        assert Counter(train.drivers + train.driven) <= Counter(wheels)
        turns = Fraction(1)
        for driver, driven in zip(train.drivers, train.driven, strict=True):
            turns *= Fraction(driver, driven)
        assert train.made == leadscrew * turns
        assert train.error == train.made / wanted - 1


# (wanted, leadscrew), without a wheel of 127: drivers, driven, millionths. Worked out apart.
WITHOUT_127 = {
    (Fraction(3, 2), INCH / 8): ((25, 50), (42, 63), -63.0),
    (Fraction(3, 4), INCH / 8): ((25, 50), (63, 84), -63.0),
    (INCH / 26, Fraction(3)): (None, None, 51.8),
    (Fraction(7, 4), INCH / 8): (None, None, 27.3),
    (Fraction(31415926536, 2 * 10**10), Fraction(3)): ((25, 95), (63, 72), -18.5),
}


@pytest.mark.parametrize("case", WITHOUT_127)
def test_the_best_of_a_full_set_without_127(case: tuple[Fraction, Fraction]) -> None:
    drivers, driven, ppm = WITHOUT_127[case]
    found = gear_trains(*case, [teeth for teeth in SET if teeth != 127])[0]
    assert found.ppm == pytest.approx(ppm, abs=0.06)
    assert drivers is None or (found.drivers, found.driven) == (drivers, driven)


@pytest.mark.parametrize(
    ("wanted", "driver"),
    [("0.7", 28), ("0.75", 30), ("0.9", 36), ("1", 40), ("1.5", 60), ("1.75", 70), ("2.5", 100)],
)
def test_metric_pitches_by_127_on_eight_to_the_inch(wanted: str, driver: int) -> None:
    found = gear_trains(Fraction(wanted), INCH / 8, SET)[0]
    assert (found.drivers, found.driven, found.error) == ((driver,), (127,), 0)


def test_the_lead_of_a_tap_is_exact() -> None:
    screw, wheels = INCH / 8, (20, 127)
    for designation, lead in (
        ("G 1/4", INCH / 19),
        ("1/4-20 UNC", INCH / 20),
        ("1/2-13 UNC", INCH / 13),
        ("M20xPh3P1.5", Fraction(3)),
        ("M18x0.9", Fraction(9, 10)),
        ("2 BA", Fraction(81, 100)),
        ("Tr16x6(P3)", Fraction(6)),
    ):
        asked = asked_by(settled_of(designation), screw, wheels)
        assert asked is not None
        assert asked.lead == lead


def test_the_error_of_a_train_over_a_thread_and_in_the_zone_of_the_tap() -> None:
    # 125 millionths over 20 mm are 2.5 um; 1.732 times that are 4.33 um of pitch diameter.
    design = settled_of("M18x1.5", ["blank.thread_length=20"])
    asked = asked_by(design, INCH / 8, (30, 50, 63, 80))
    assert asked is not None
    assert asked.tap is not None
    train = gear_trains(asked.lead, asked.leadscrew, asked.wheels)[0]
    assert train.along(asked.tap.room.length) == pytest.approx(0.0025, abs=0.00001)
    zone = design.limits.pitch_max - design.limits.pitch_min
    assert asked.tap.room.share(train) == pytest.approx(0.00433 / zone, rel=2e-3)


def test_a_job_asks_for_gears_where_it_names_both_leadscrew_and_wheels() -> None:
    def asked(*sets: str) -> object:
        return asked_by(settled_of("M10", list(sets)))

    assert asked() is None
    assert asked("shop.leadscrew=8tpi") is None
    assert asked("shop.gears=20,30") is None
    assert asked("shop.leadscrew=8tpi", "shop.gears=20,30") is not None


def bought(lead: Fraction, screw: Fraction, wheels: list[int]) -> dict[int, Fraction]:
    """Error of the best train that fits with each wheel bought besides, by trying every train."""
    found: dict[int, Fraction] = {}
    for teeth in range(20, 128):
        trains = every_train(lead, screw, [*wheels, teeth])
        found[teeth] = min(abs(train.error) for train in trains if not fouls(train))
    return found


@pytest.mark.parametrize(
    ("lead", "screw", "wheels"),
    [
        (Fraction(3, 4), INCH / 8, [20, 70, 80, 100]),  # one near, and 127 exact
        (Fraction(3, 4), INCH / 8, [20, 30, 40]),
        (INCH / 19, Fraction(4), [40, 50, 60, 95]),  # exact beside 95 alone
        (INCH / 19, Fraction(4), [30, 50, 60]),  # none near
        (Fraction(1), INCH / 8, [40, 50]),
        (Fraction(5, 4), Fraction(4), [20, 50, 60]),
        (Fraction(2), Fraction(4), [40]),  # a second wheel or an own one of 80
    ],
)
def test_the_wheel_to_buy_is_what_trying_every_wheel_finds(
    lead: Fraction, screw: Fraction, wheels: list[int]
) -> None:
    asked = GearsAsked(lead, screw, tuple(wheels * 2 if len(wheels) == 1 else wheels))
    due, found = bought(lead, screw, list(asked.wheels)), another_wheel(asked)
    assert found is not None
    near = [teeth for teeth, error in due.items() if error <= Fraction(200, 1_000_000)]
    exact = [teeth for teeth, error in due.items() if not error]
    assert found.train is None or found.train[0] == near[0]
    assert (found.train is None, found.exact is None) == (not near, not exact)
    assert found.exact is None or (found.exact[0], found.exact[1].error) == (exact[0], 0)
    assert found.nearest is not None
    assert abs(found.nearest[1].error) == min(due.values())
    for teeth, train in filter(None, (found.train, found.exact, found.nearest)):
        assert abs(train.error) == due[teeth]
        assert teeth in train.drivers + train.driven
        assert Counter(train.drivers + train.driven) <= Counter((*asked.wheels, teeth))


def test_no_wheel_is_bought_where_the_error_is_small_enough() -> None:
    assert another_wheel(GearsAsked(Fraction(1), Fraction(4), (20, 80))) is None
    # 125 millionths
    assert another_wheel(GearsAsked(Fraction(3, 2), INCH / 8, (30, 50, 63, 80))) is None
    design = settled_of("M18x1.5", ["blank.thread_length=20"])
    asked = asked_by(design, INCH / 8, (30, 50, 63, 80))
    assert asked is not None
    # a quarter of the zone over 20 mm, by the tangent of 30 degrees
    zone = design.limits.pitch_max - design.limits.pitch_min
    assert allowed(asked) == pytest.approx(0.25 * zone * 0.5773503 / 20, rel=1e-6)
    assert another_wheel(asked) is None
    assert another_wheel(GearsAsked(*(asked.lead, asked.leadscrew, (30, 80), asked.tap)))
