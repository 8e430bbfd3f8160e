"""The first screen in words: verdict with the gravest finding, drill with its limits, flutes."""

import re

import pytest

from tapmodel.designing.design import design_tap
from tapmodel.designing.record import TapDesign
from tapmodel.report.units import Units
from tapmodel.report.view.first import first_figures, in_short, under, verdict_of
from tapmodel.report.view.model.milled import milled
from tapmodel.spec.job_file import job_for


def designed(thread: str, *sets: str) -> TapDesign:
    return design_tap(job_for(thread, sets))


def test_the_verdict_names_the_gravest() -> None:
    text = verdict_of(designed("Tr16x4"), Units.MM).text
    assert text == (
        "It can be made, but 2 warnings; "
        "the gravest: one tap is not enough: in mild steel it takes about 78.5 N·m"
    )
    # That it breaks goes before whatever else was found first.
    assert designed("Tr16x4").findings[0].code == "land-rubs"
    good = verdict_of(designed("M18x0.75"), Units.MM)
    assert (good.weight, good.text) == ("good", "No rule is broken, and nothing is warned of")


@pytest.mark.parametrize(
    ("sentence", "short"),
    [
        (
            "In mild steel (assumed, set hole.material) the tap may take up to 3.20 N·m, and is.",
            "in mild steel the tap may take up to 3.20 N·m",
        ),
        ("ISO 2903 prints no tolerance for it: computed.", "ISO 2903 prints no tolerance for it"),
        ("One tap, M3: is not enough; share the work.", "one tap, M3: is not enough"),
    ],
)
def test_a_sentence_is_shortened_at_a_pause(sentence: str, short: str) -> None:
    assert in_short(sentence) == short


def test_the_drill_stands_beside_the_limits_of_its_hole() -> None:
    """Limits of M18x0.75 6H by ISO 965-1: EI 0, T_D1 0.190."""
    drill = first_figures(designed("M18x0.75"), Units.MM)[0]
    assert (drill.text, drill.beside) == (
        "17.25\u00a0mm",
        "minor diameter 17.188 to 17.378\u00a0mm",
    )
    inches = first_figures(designed("M18x0.75"), Units.INCH)[0]
    assert inches.beside == "minor diameter 0.6767 to 0.6841\u00a0in"


def test_no_line_of_a_figure_ends_between_a_number_and_its_unit() -> None:
    both = {one.key: one.text for one in first_figures(designed("1 1/8-7 UNC"), Units.BOTH)}
    assert both["blank"] == "28.870\u00a0mm = 1.1366\u00a0in"
    assert re.fullmatch("[0-9]+\u00a0N·m = [0-9]+\u00a0lbf·in", both["stop"])


def test_what_stands_under_the_heading_follows_the_hand() -> None:
    assert under(designed("Tr16x8(P4)LH"), Units.MM).split("; ")[1] == "left hand"
    assert under(designed("Tr16x4"), Units.MM).split("; ")[1] == "right hand"


def test_each_flute_is_told_with_the_move_before_it() -> None:
    told = [(one.name, one.move) for one in milled(designed("M18x0.75"), Units.MM).stations]
    assert told == [
        ("flute 1 of 4", "start here"),
        *((f"flute {n} of 4", "index 90°, 10 turns") for n in (2, 3, 4)),
    ]
    odd = milled(designed("M18x0.75", "flutes.count=7", "shop.plates=[15, 16]"), Units.MM)
    assert [one.move for one in odd.stations[1:3]] == [
        "index 51.4286°, 5 turns + 11 holes on 16, off by -14.46′",
        "index 51.4286°, 5 turns + 12 holes on 16, off by +4.82′",
    ]


def test_the_crank_of_the_model_is_that_of_the_shops_own_head() -> None:
    for sets, ratio in (
        ((), 40),
        (("shop.dividing_ratio=60",), 60),
        (("shop.rotary_table=90:1",), 90),
    ):
        assert milled(designed("M18x0.75", *sets), Units.MM).ratio == ratio
