"""What the shop finds in a design: wires on hand of which none suits."""

import pytest
from asked import settled_of

from tapmodel.errors import NoTapError
from tapmodel.findings import Finding
from tapmodel.shop.judged import judged
from tapmodel.shop.wires.answer import answer_for
from tapmodel.words import Severity


def _found(designation: str, wires: str) -> list[Finding]:
    return [
        finding
        for finding in judged(settled_of(designation, [f"shop.wires={wires}"])).findings
        if finding.field == "shop.wires"
    ]


def test_wires_of_which_none_suits_are_a_warning_with_their_range() -> None:
    (found,) = _found("M10", "[0.62, 0.7, 2.05]")
    allowed = answer_for(settled_of("M10")).allowed
    assert allowed is not None
    assert (found.code, found.severity) == ("wires", Severity.WARNING)
    # the nearest to the best of 0.866 mm
    assert found.actual == 0.7
    assert (found.limit.low, found.limit.high) == (allowed.least, allowed.greatest)


def test_one_that_suits_is_enough_and_none_listed_is_no_fault() -> None:
    assert _found("M10", "[0.62, 0.866]") == []
    ruled = settled_of("M10")
    assert judged(ruled).findings == ruled.findings


def test_wires_of_another_unit_are_asked_back_and_nothing_else_is_told() -> None:
    with pytest.raises(NoTapError) as caught:
        _found("3/8 BSW LH", "[0.032, 0.035, 0.040]")
    assert [found.code for found in caught.value.findings] == ["other-unit"]
