"""Every kind of relief on threads of every sort is told, in every way of making it."""

import re
from itertools import product

import pytest

from tapmodel.designing.settle import settle
from tapmodel.errors import NoTapError
from tapmodel.report.route.operation import chapter_of
from tapmodel.report.route.relieved import relieve
from tapmodel.report.screen.chapter import chapter_lines
from tapmodel.report.screen.columns import plain
from tapmodel.shop.relief.plan import heel_made, heel_wanted, plans_of
from tapmodel.spec.job_file import job_for
from tapmodel.words import ReliefKind, ReliefWay, Units

TEXTS = (
    "M18x0.75",
    "M1",
    "3/8-16 UNC",
    "1/2 BSW LH",
    "0 BA",
    "Tr16x8(P4)",
    "1/2-10 Acme",
    "G1/4",
    "0.60 UNM",
)
KINDS = ("con-eccentric", "eccentric")


@pytest.mark.parametrize("text", TEXTS)
@pytest.mark.parametrize("way", tuple(ReliefWay))
def test_every_relief_is_told_in_inches(text: str, way: ReliefWay) -> None:
    made = 0
    for kind, place, chamfer in (
        ("concentric", "thread", KINDS[0]),
        *product(KINDS, ("thread",), KINDS),
    ):
        sets = (
            f"relief.thread.kind={kind}",
            f"relief.thread.applies_to={place}",
            f"relief.chamfer.kind={chamfer}",
            f"shop.relief_by={way}",
        )
        try:
            design = settle(job_for(text, sets))
        except NoTapError:
            continue
        chapter = chapter_of(1, relieve(design))
        page = "\n".join(chapter_lines(chapter, Units.INCH, plain))
        assert " mm" not in page
        assert not re.search(r"\b(nan|inf)\b", page)
        for plan in plans_of(design):
            made += 1
            short, step = heel_wanted(plan) - heel_made(plan), plan.shop.indicator_step
            # the way that must spare the edge may stop a division short, the others go beyond
            assert short < (step + 0.003 if way is ReliefWay.WHEEL else 1e-9)
            assert plan.span.relief.kind is not ReliefKind.CONCENTRIC
    assert made > 0
