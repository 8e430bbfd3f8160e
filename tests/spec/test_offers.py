"""What a refused designation is offered keeps hand, class and starts as they were typed."""

import re

import pytest

from tapmodel.designing.settle import settle
from tapmodel.errors import InputError
from tapmodel.spec.designation import parse
from tapmodel.spec.job_file import job_for
from tapmodel.words import Hand

OFFERED = re.compile(
    r"\bM[0-9.]+(?:x[0-9.]+|xPh[0-9.]+P[0-9.]+)?[-\w ]*?(?=[,;?]| \(| for| or|$)"
    r"|\bTr[0-9.]+x[0-9.]+(?:\(P[0-9.]+\))?[-\w ]*?(?=[,;:?]| \(| for| or|$)"
    r"|\bG [0-9/]+[-\w ]*?(?=[,;?]| or|$)"
    r"|[0-9.]+ UNM[-\w ]*?(?=[,;?]| or|$)"
    r"|[#0-9][0-9/. ]*-[0-9.]+[-\w ]*?(?=[,;?]| for| and| or|$)"
    r"|[0-9/]+ BS[WF][-\w ]*?(?=[,;?]| or|$)"
)

LEFT = [
    ("1/2-16 BSW LH", 2),
    ("1/2-20 BSF LH normal", 2),
    ("1/2-16 BSW normal LH", 2),
    ("left hand 1/2-16 BSW", 2),
    ("11/32 BSW LH normal", 3),
    ("15/32 BSF LH", 3),
    ("9.525 BSW LH close", 1),
    ("7/32 Whit LH normal", 1),
    ("0.3 Whit LH normal", 1),
    ("BSW 1/2 12 LH normal", 1),
    ("1/4-28 UNC LH", 2),
    ("1/4-28 UNC-3B-LH", 2),
    ("LH 1/4-28 UNC-1B", 2),
    ("1/2-11 UNF-3B LH", 2),
    ("1/4-20 UNS-3B LH", 1),
    ("7/16-26 UNC-3B LH", 2),
    ("2-32 UNC-3B LH", 2),
    ("2-32 LH", 2),
    ("M2.1-LH", 3),
    ("M2.1-6G-LH", 3),
    ("M20x3-6G-LH 2 start", 2),
    ("left hand M10x6 2 start 6G", 1),
    ("Tr20x8-8H LH two starts", 2),
    ("Tr20x16 LH", 2),
    ("10x1.5 LH", 2),
    ("10x1 6G LH", 1),
    ("12x3 LH", 2),
    ("S0.9 LH", 2),
    ("S 0.9x0.225 LH", 2),
    ("1/2 LH", 4),
    ("1/2-LH-3B", 1),
    ("1/2 3B LH", 1),
]


def refusal(text: str) -> InputError:
    with pytest.raises(InputError) as caught:
        settle(job_for(text))
    return caught.value


@pytest.mark.parametrize(("typed", "number"), LEFT)
def test_an_offer_keeps_hand_class_and_starts(typed: str, number: int) -> None:
    offers = OFFERED.findall(refusal(typed).allowed.partition("; for instance")[0])
    assert len(offers) >= number
    read = [parse(offer) for offer in offers]
    assert {one.hand for one in read} == {Hand.LEFT}
    wanted = re.search(r"\b(normal|close|[123]B|6G|8H)\b", typed)
    if wanted:
        assert {one.hole_class for one in read} == {wanted[1]}
    if re.search(r"\b(2|two) starts?\b", typed):
        assert {one.starts for one in read} == {2}


@pytest.mark.parametrize(("typed", "number"), LEFT)
def test_a_right_hand_is_offered_where_a_right_hand_was_typed(typed: str, number: int) -> None:
    right = re.sub(r"[ -]?LH\b|left hand ?|LH ", "", typed)
    offers = OFFERED.findall(refusal(right).allowed.partition("; for instance")[0])
    assert len(offers) >= number
    assert {parse(offer).hand for offer in offers} == {Hand.RIGHT}


@pytest.mark.parametrize("typed", ["BSW 1/2 LH 2-start", "2 start S0.9", "1/2-16 BSW two starts"])
def test_nothing_is_offered_without_the_starts_that_were_typed(typed: str) -> None:
    assert "a single start; several are known of" in refusal(typed).allowed
    assert OFFERED.findall(refusal(typed).allowed) == []
