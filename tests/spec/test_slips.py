"""Slips of the pen in a designation: what is offered for them is read, and is the thread meant."""

import pytest

from tapmodel.designing.settle import settle
from tapmodel.errors import InputError, MeantError
from tapmodel.spec.designation import parse
from tapmodel.spec.job_file import job_for

SLIPS = {
    "3/8 Withworth LH": "3/8 Whit LH",
    "3/8 Whitwort": "3/8 Whit",
    "W3/8 LH": "3/8 BSW LH",
    "3/8 W LH": "3/8 BSW LH",
    "W 1 1/4": "1 1/4 BSW",
    "MF64x1": "M64x1",
    "MF64x1-6G LH": "M64x1-6G-LH",
    "M64/1": "M64x1",
    "MF 10/1,25": "M10x1.25",
    "T16x4": "Tr16x4",
    "T16x8(P4)": "Tr16x8(P4)",
    "Tr16x8(4)": "Tr16x8(P4)",
    "Tr16x8(4) LH": "Tr16x8(P4) LH",
    "Tr16x4(P8)": "Tr16x8(P4)",
    "Tr16x4(P8) LH-8H": "Tr16x8(P4) LH-8H",
    "M20xPh1.5P3-LH": "M20xPh3P1.5-LH",
}


@pytest.mark.parametrize("typed", SLIPS)
def test_a_slip_is_answered_with_what_was_meant_and_that_makes_a_tap(typed: str) -> None:
    with pytest.raises(MeantError) as refused:
        parse(typed)
    assert refused.value.value == typed
    assert refused.value.allowed == SLIPS[typed]
    made, offered = parse(settle(job_for(SLIPS[typed])).designation), parse(SLIPS[typed])
    assert (made.diameter, made.hand, made.starts) == (
        offered.diameter,
        offered.hand,
        offered.starts,
    )
    assert made.pitch == (offered.pitch or made.pitch)


@pytest.mark.parametrize(
    "typed", ["W28.8x1/14", "M5/16", "T16", "Tr16x4(P6)", "W21.8", "3/8 Wood", "MF64x40", "Mx1"]
)
def test_where_no_thread_was_likely_meant_none_is_offered(typed: str) -> None:
    with pytest.raises(InputError) as refused:
        parse(typed)
    assert not isinstance(refused.value, MeantError)


@pytest.mark.parametrize(
    ("typed", "why"),
    [
        ("Tr16x8(P3)", "8 is no multiple of 3"),
        ("Tr16x18(P2)", "18 is 9 times 2"),
        ("Tr16x4(P6)", "4 is less than 6"),
        ("M20xPh4P1.5", "4 is no multiple of 1.5"),
    ],
)
def test_a_lead_that_no_starts_have_is_refused_with_its_numbers(typed: str, why: str) -> None:
    with pytest.raises(InputError, match=f"1 to 8 times the pitch P: {why};"):
        parse(typed)
