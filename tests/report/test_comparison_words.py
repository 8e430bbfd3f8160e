"""Why one of several taps is the best: what decided, in numbers, and what the next would cost."""

from dataclasses import replace

import pytest

from tapmodel.comparing.ranking import verdict_on
from tapmodel.comparing.variant import Merit, Variant
from tapmodel.comparing.variants import Compared
from tapmodel.report.words.comparison import why
from tapmodel.spec.job import Job
from tapmodel.spec.job_file import job_for
from tapmodel.words import Units


def variant(number: int, merit: Merit | None, likely: float = 4.0) -> Variant:
    """A tap whose most torque is 5 N·m; its codes are as many as its warnings."""
    high = 5.0
    figures = {
        "torque_likely": likely,
        "torque_high": high,
        "bears": merit.margin * high if merit else None,
        "chamfer_clearance_um": -3.2 if merit and merit.binds else 12.0,
    }
    warnings = ("land-rubs", "chip-thin")[: merit.warnings] if merit else ()
    values = {"flutes.offset": number / 2}
    return Variant(number, values, figures, () if merit else ("core",), warnings, None, merit)


def told(*variants: Variant, units: Units = Units.MM, job: Job | None = None) -> str:
    compared = Compared(
        job or job_for("M10"), "M10", ("flutes.offset",), variants, verdict_on(variants)
    )
    return why(compared, units)


GOOD = Merit(binds=False, warnings=0, margin=2.0, rubbing=1.5)

ONLY_CORE = variant(3, None)
"""One that breaks a rule counts among none that could be safe."""


def test_sieve_by_sieve_what_decided_and_what_the_next_costs() -> None:
    text = told(
        variant(1, None),
        variant(2, replace(GOOD, binds=True)),
        variant(3, replace(GOOD, warnings=1)),
        variant(4, replace(GOOD, margin=1.8, rubbing=1.2), likely=4.4),
        variant(5, GOOD),
    )
    assert text == (
        "The best is no. 5 (flutes.offset = 2.5 mm): 4 of 5 break no rule, 3 of these do not bind, "
        "2 of these with no warning, the others with more, the greatest safety factor of these, "
        "2 (safe up to 10 N·m, it takes 5 N·m at the most). The runner-up is no. 4 "
        "(flutes.offset = 2 mm): safety factor 1.8 instead of 2 (10% less); likely torque 4.4 N·m "
        "instead of 4 N·m; flank and chamfer, added up at the pitch line, rub along 1.20 mm "
        "instead of 1.50 mm."
    )


@pytest.mark.parametrize(
    ("second", "cost"),
    [
        (replace(GOOD, margin=1.97), "safety factor 1.97 instead of 2 (2% less)."),
        (
            replace(GOOD, margin=1.99),
            "safety factor 1.99 instead of 2 (0.50% less, all but the same).",
        ),
        (
            replace(GOOD, warnings=1, margin=3.0),
            "warnings 1 instead of 0 (land-rubs); safety factor 3 instead of 2 (50% more).",
        ),
        (
            replace(GOOD, binds=True),
            "its chamfer binds by 0.0032 mm; safety factor 2 instead of 2 (the same).",
        ),
    ],
)
def test_what_the_runner_up_costs(second: Merit, cost: str) -> None:
    text = told(variant(1, GOOD), variant(2, second))
    assert text.endswith(f"The runner-up is no. 2 (flutes.offset = 1 mm): {cost}")


def test_rubbing_is_told_where_it_decided() -> None:
    text = told(variant(1, replace(GOOD, rubbing=1.6)), variant(2, GOOD), variant(3, GOOD))
    assert (
        "and of 3 with that safety factor the least rubbing (flank and chamfer, added "
        "up at the pitch line, rub along 1.50 mm)" in text
    )
    assert "the first of 2 that are alike in all this" in text


def test_a_best_that_binds_or_warns_is_not_praised() -> None:
    bad = Merit(binds=True, warnings=2, margin=0.4, rubbing=3.0)
    text = told(variant(1, bad), variant(2, replace(bad, margin=0.3)))
    assert "each of these binds, all with 2 warnings (here land-rubs chip-thin)" in text
    alone = told(variant(1, bad), variant(2, None))
    assert (
        "1 of 2 breaks no rule, and it binds, with 2 warnings (here land-rubs chip-thin)" in alone
    )
    assert alone.endswith("Each of the others breaks a rule.")


def test_inches_and_pounds() -> None:
    text = told(
        variant(1, GOOD), variant(2, replace(GOOD, margin=1.5), likely=8.0), units=Units.INCH
    )
    assert "flutes.offset = 0.019685 in" in text
    # 10 and 5 N·m by 8.8507 lbf·in.
    assert "safe up to 88.5 lbf·in, it takes 44.3 lbf·in" in text
    assert "likely torque 70.8 lbf·in instead of 35.4 lbf·in" in text
    assert "mm" not in text


def test_a_safety_factor_below_1_is_told_as_none_and_a_set_is_named() -> None:
    text = told(
        variant(1, replace(GOOD, margin=0.589)), variant(2, replace(GOOD, margin=0.522)), ONLY_CORE
    )
    assert (
        "A safety factor below 1 is no margin: it may take more than is safe. None of the 2 is "
        "safe as one tap: `tapmodel set` shares its work among several. The runner-up"
    ) in text
    alone = told(variant(1, replace(GOOD, margin=0.9)))
    assert alone.endswith(
        "It is not safe as one tap: `tapmodel set` shares its work among several."
    )


def test_a_tap_of_a_set_is_not_sent_to_another_set() -> None:
    weak = variant(1, replace(GOOD, margin=0.9))
    text = told(
        weak,
        job=job_for(
            "M10", ["set.number=1", "set.taps=2", "thread.major=9", "thread.pitch_diameter=9"]
        ),
    )
    assert text.endswith("It is not safe: leave less work to this tap of the set.")


def test_others_that_are_safe_but_warned_of_are_told() -> None:
    text = told(
        variant(1, replace(GOOD, margin=0.9)), variant(2, replace(GOOD, margin=1.2, warnings=1))
    )
    assert "more than is safe. Others are safe, but have more warnings." in text
    assert "None of" not in text


@pytest.mark.parametrize(("margin", "none"), [(1.0, True), (1.049, True), (1.051, False)])
def test_a_safety_factor_of_1_is_no_margin(margin: float, none: bool) -> None:
    text = told(variant(1, replace(GOOD, margin=margin)))
    assert ("A safety factor of 1 is no margin: it may take all that is safe." in text) is none
