"""The estimate of a run follows its teeth, and what it says of the limits."""

from dataclasses import replace

import pytest

from tapmodel.designing.record import TapDesign
from tapmodel.errors import InputError
from tapmodel.run.crew import Limits
from tapmodel.run.estimate import BUILD, demand_within, estimate


def test_it_grows_with_lands_times_turns(small_design: TapDesign) -> None:
    once = estimate(small_design)
    # 6 mm of pitch 1 with 3 lands.
    assert once.teeth == 18
    tap = small_design.tap
    longer = replace(tap.blank, thread_length=2 * tap.blank.thread_length)
    twice = estimate(replace(small_design, tap=replace(tap, blank=longer)))
    assert twice.teeth == 2 * once.teeth
    assert twice.seconds - once.seconds == pytest.approx(BUILD.seconds[1] * once.teeth)
    assert twice.memory_mb - once.memory_mb == pytest.approx(BUILD.memory_mb[1] * once.teeth)
    assert twice.files_mb - once.files_mb == pytest.approx(BUILD.files_mb[1] * once.teeth)


def test_arcs_cost_more_than_flats(small_design: TapDesign) -> None:
    tap = small_design.tap
    arched = replace(tap, thread=replace(tap.thread, rounded_crest=True))
    rounded = replace(small_design, tap=arched)
    assert estimate(rounded).files_mb > 1.5 * estimate(small_design).files_mb - BUILD.files_mb[0]


def test_a_limit_is_kept_to_the_point_and_says_what_would_do(small_design: TapDesign) -> None:
    foreseen = estimate(small_design)
    demand_within(foreseen, Limits(foreseen.seconds, int(foreseen.memory_mb) + 1))
    with pytest.raises(InputError, match=f"--limit-seconds.*at least {foreseen.seconds:.0f}"):
        demand_within(foreseen, Limits(0.99 * foreseen.seconds))
    with pytest.raises(InputError, match="--limit-mb"):
        demand_within(foreseen, Limits(memory_mb=int(0.99 * foreseen.memory_mb)))
