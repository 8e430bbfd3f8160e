"""Drills, cutters and blanks in the sizes that the shop buys."""

import re

import pytest
from asked import settled_of

from tapmodel.designing.choose.cutters import CUTTERS, INCH_CUTTERS, cutters_to_buy
from tapmodel.designing.record import TapDesign
from tapmodel.report.words.choices import why
from tapmodel.standards.drill_sets import inch_names

INCH = 25.4

# The tap drills of American shop charts, for about 75 % of thread; from memory. Left out: 4-40, for
# which they name #43 and the rule #44, whose 0.086 in are nearer to the 0.087 in aimed at.
CHART = {
    "8-32 UNC": "#29",
    "10-24 UNC": "#25",
    "10-32 UNF": "#21",
    "1/4-20 UNC": "#7",
    "1/4-28 UNF": "#3",
    "5/16-18 UNC": "F",
    "5/16-24 UNF": "I",
    "3/8-16 UNC": "5/16",
    "3/8-24 UNF": "Q",
    "7/16-14 UNC": "U",
    "1/2-13 UNC": "27/64",
    "1/2-20 UNF": "29/64",
    "5/8-11 UNC": "17/32",
    "3/4-10 UNC": "21/32",
    "1-8 UNC": "7/8",
}


def designed(designation: str, *sets: str) -> TapDesign:
    return settled_of(designation, sets)


def reason(design: TapDesign, field: str) -> str:
    choice = design.choice(field)
    assert choice is not None
    return why(choice)


@pytest.mark.parametrize("thread", CHART)
def test_the_drill_of_an_inch_thread_is_that_of_the_charts(thread: str):
    assert CHART[thread] in inch_names(designed(thread).drill)


@pytest.mark.parametrize("thread", ["3/8-16 UNC", "1/2-12 BSW LH", "1/2-10 ACME-2G"])
def test_a_thread_of_inches_is_made_with_tools_of_inches(thread: str):
    by_rule, metric = designed(thread), designed(thread, "shop.tools=metric")
    assert by_rule.tap.flutes.cutter_diameter in INCH_CUTTERS
    assert inch_names(by_rule.drill)
    assert metric.tap.flutes.cutter_diameter in CUTTERS
    assert (metric.drill * 20) % 1 == pytest.approx(0, abs=1e-9)
    told = reason(by_rule, "shop.tools")
    assert re.fullmatch(r"inch drills, cutters and blanks for [\w ]+ threads", told)


@pytest.mark.parametrize("thread", ["M10", "2 BA", "Tr20x4", "G 1/2"])
def test_any_other_is_made_with_metric_ones_unless_the_shop_has_others(thread: str):
    by_rule, inch = designed(thread), designed(thread, "shop.tools=inch")
    assert by_rule.tap.flutes.cutter_diameter in CUTTERS
    assert inch.tap.flutes.cutter_diameter in INCH_CUTTERS
    assert inch.hole.minor_min <= inch.drill <= inch.hole.minor_max


def test_a_shop_of_inches_turns_blanks_of_inches():
    # 3.16 in, that of 7/16 in, the next larger size (ASME B94.9, from memory); M10 has 80 mm else
    blank = designed("M10", "shop.tools=inch").tap.blank
    assert blank.overall_length / INCH == pytest.approx(3.16, abs=0.005)
    assert designed("3/8 BSW", "shop.tools=metric").tap.blank.shank_diameter == 10.0


def test_where_no_inch_tool_suits_the_metric_ones_are_looked_at_too():
    design = designed("1.875-12 UN")
    assert design.drill == 45.5
    # Between 7/64 in, whose lands rub, and 1/8 in, which scrapes at the wall of the hole.
    design = designed("1/4-20 UNC")
    assert design.tap.flutes.cutter_diameter == 3.0
    assert "no inch one suits" in reason(design, "shop.cutters")
    for inches in (7 / 64, 1 / 8):
        size = f"flutes.cutter_diameter={INCH * inches}"
        found = designed("1/4-20 UNC", "flutes.count=4", size).findings
        assert {"land-rubs", "rake-at-wall"} & {finding.code for finding in found}


@pytest.mark.parametrize("thread", ["M64x1", "3-8 UN", "M52x1.5"])
def test_beyond_two_inches_the_hole_is_bored(thread: str):
    design = designed(thread)
    assert design.hole.minor_min < design.drill < design.hole.minor_max
    if thread == "M52x1.5":
        assert design.drill == 50.5  # of a step that is stocked
    else:
        assert reason(design, "hole.drill").startswith("bore to ")
    assert not [found for found in design.findings if found.code == "drill-between"]


def test_cutters_to_buy_are_of_the_sizes_on_hand():
    on_hand = tuple(INCH * size for size in (1 / 8, 0.010, 1 / 4))
    bought = cutters_to_buy(on_hand)
    assert INCH / 2 in bought
    assert not {6.0, 10.0} & {*bought}
    assert 6.35 not in bought
    assert 10.0 in cutters_to_buy((6.0, INCH / 4))
