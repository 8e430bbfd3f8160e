"""Laws of the limits of Acme threads."""

from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapmodel.errors import InputError
from tapmodel.spec.designation import parse
from tapmodel.standards.acme.hole_limits import AcmeThread, acme_hole_limits
from tapmodel.standards.families import FAMILIES
from tapmodel.standards.limits import Unlisted
from tapmodel.standards.tables import read_table
from tapmodel.words import Certainty, Family

RULES = FAMILIES[Family.ACME]
CLASSES = ("2G", "3G", "4G")


@st.composite
def threads(draw: st.DrawFn) -> AcmeThread:
    diameter = draw(st.integers(1250, 60000)) / 10000
    coarsest = max(2.0, 2 / diameter)
    tpi = max(draw(st.integers(2, 20)), round(coarsest + 0.0001, 4))
    return AcmeThread(diameter, tpi, draw(st.integers(1, 8)))


def fits(thread: AcmeThread) -> bool:
    """Whether the zone of class 2G ends below the crests; with one start it always does."""
    width = {1: 1, 2: 1.5, 3: 1.75}.get(thread.starts, 2)
    tolerance = width * (0.030 / thread.tpi**0.5 + 0.006 * thread.diameter**0.5)
    return tolerance < 0.5 / thread.tpi + (0.020 if thread.tpi <= 10 else 0.010) - 0.0003


@given(threads().filter(fits))
def test_limits_nest_and_a_closer_class_is_nowhere_wider(thread: AcmeThread):
    found = [acme_hole_limits(thread, name).limits for name in CLASSES]
    for hole in found:
        sizes = [hole.minor_min, hole.minor_max, hole.pitch_min, hole.pitch_max, hole.major_min]
        assert all(small < large for small, large in pairwise(sizes))
    for wider, closer in pairwise(found):
        assert closer.pitch_max < wider.pitch_max
        assert (closer.minor_min, closer.minor_max) == (wider.minor_min, wider.minor_max)


@given(st.integers(125, 6000), st.integers(2, 20), st.sampled_from(CLASSES))
def test_the_tap_lies_inside_the_hole_with_a_reserve_for_wear(
    thousandths: int, tpi: int, hole_class: str
):
    text = f"{thousandths / 1000:.3f}-{tpi} ACME-{hole_class}"
    if tpi * thousandths < 2000:
        with pytest.raises(InputError, match="threads per inch for a size of"):
            RULES.settle(parse(text))
        return
    settled = RULES.settle(parse(text))
    hole = RULES.hole_limits(settled).limits
    tap = RULES.tap_limits(settled, RULES.tap_class(settled))
    assert hole.pitch_min < tap.pitch_min < tap.pitch_max < hole.pitch_max
    assert tap.major_min >= hole.major_min


# Worked by hand with the remembered formulas; inches: major min, D2 max, D1 max.
BY_HAND = {
    "1/4-16 ACME-2G": (0.260, 0.2188 + 0.0105, 0.1875 + 0.005),
    "1/2-10 ACME-2G": (0.520, 0.4637, 0.4050),
    "1-5 ACME-2G": (1.020, 0.9194, 0.8100),
    "1-5 ACME-3G": (1.020, 0.9091, 0.8100),
    "1-5 ACME-4G": (1.020, 0.9065, 0.8100),
    "2-4 ACME-2G": (2.020, 1.8985, 1.7625),
}


@pytest.mark.parametrize("text", BY_HAND)
def test_limits_worked_by_hand(text: str):
    found = RULES.hole_limits(RULES.settle(parse(text)))
    sizes = [found.limits.major_min, found.limits.pitch_max, found.limits.minor_max]
    assert [size / 25.4 for size in sizes] == pytest.approx(BY_HAND[text], abs=1e-9)
    assert [source.certainty for source in found.sources] == [Certainty.MEMORY, Certainty.READ]


def test_what_is_listed_and_what_is_said_of_the_rest():
    for row in read_table("acme_sizes"):
        found = RULES.hole_limits(RULES.settle(parse(f"{row['size']}-{row['tpi']} ACME")))
        assert (found.listed, found.note) == (True, {})
    special = RULES.hole_limits(RULES.settle(parse("1/2-8 ACME")))
    assert not special.listed
    assert special.note == {"why": (Unlisted.ACME_PAIRING,)}
    double = RULES.hole_limits(RULES.settle(parse("0.500-0.1P-0.2L-ACME-2G")))
    assert not double.listed
    assert double.note == {"why": (Unlisted.ACME_STARTS,)}


# Worked by hand: TD2 of 1/2-10 in one start, 0.030 * 0.1^0.5 + 0.006 * 0.5^0.5 = 0.0137295 in,
# times 1.5, 1.75 and 2, from memory of ASME B1.5; the other diameters are those of one start.
SEVERAL_STARTS = {2: 0.0206, 3: 0.0240, 4: 0.0275, 5: 0.0275}


@pytest.mark.parametrize("starts", SEVERAL_STARTS)
def test_several_starts_have_a_wider_zone_of_the_pitch_diameter(starts: int):
    single = RULES.hole_limits(RULES.settle(parse("1/2-10 ACME"))).limits
    found = acme_hole_limits(AcmeThread(0.5, 10, starts), "2G")
    width = (found.limits.pitch_max - found.limits.pitch_min) / 25.4
    assert width == pytest.approx(SEVERAL_STARTS[starts], abs=1e-9)
    assert replace(found.limits, pitch_max=single.pitch_max) == single
    certainty = [source.certainty for source in found.sources]
    assert certainty == [Certainty.MEMORY, Certainty.MEMORY, Certainty.READ]


def test_a_thread_finer_than_the_zone_of_its_starts_is_refused_with_the_finest():
    # 2 * (0.030 * 0.05^0.5 + 0.006 * 3.22^0.5) = 0.0350; room 0.025 + 0.010, so 19 is the finest.
    with pytest.raises(InputError, match=r"19 or fewer for 3\.22 in in class 2G") as caught:
        acme_hole_limits(AcmeThread(3.22, 20, 4), "2G")
    assert caught.value.field == "pitch"
    assert acme_hole_limits(AcmeThread(3.22, 19, 4), "2G").limits
    assert acme_hole_limits(AcmeThread(6.0, 20, 1), "2G").limits


@pytest.mark.parametrize(
    ("text", "field"),
    [("0.124-20", "diameter"), ("6.001-4", "diameter"), ("1-1.9", "pitch"), ("1-21", "pitch")],
)
def test_sizes_out_of_range_are_refused(text: str, field: str):
    with pytest.raises(InputError) as caught:
        RULES.settle(parse(f"{text} ACME"))
    assert caught.value.field == field


def test_the_only_tap_class_is_cut():
    settled = RULES.settle(parse("1/2-10 ACME"))
    assert RULES.tap_class(settled) == "cut"
    with pytest.raises(InputError) as caught:
        RULES.tap_limits(settled, "H3")
    assert caught.value.field == "thread.tap_class"
