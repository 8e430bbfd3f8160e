"""Laws of the words of choices: every reason has its sentence, with the numbers that it needs."""

import ast
import inspect
import re
import string
import sys
from collections.abc import Callable, Iterator
from functools import cache
from itertools import islice
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "geometry"))

from listed_jobs import listed_designations
from random_jobs import SAMPLERS

import tapmodel.designing
from tapmodel.designing.choice import Choice, Reason
from tapmodel.designing.record import TapDesign
from tapmodel.designing.settle import settle
from tapmodel.errors import TapmodelError
from tapmodel.report.blocks import Table
from tapmodel.report.chapters import choices as choices_chapter
from tapmodel.report.page.html import chapter_html
from tapmodel.report.screen.design import design_page
from tapmodel.report.units import shown
from tapmodel.report.words.choices import SENTENCES, sentence, source_text, value_text, why
from tapmodel.spec.job_file import checked, job_for
from tapmodel.words import Units

RARE = [
    ("M17x0.07", []),
    ("M18x0.75-6H", []),
    ("M3x1.5", []),
    ("G 1/4", []),
    ("M8", ["hole.engagement=70"]),
    ("M8", ["hole.engagement=99", 'shop.drills=["fraction", "metric"]']),
    ("M30", ["shop.cutters=[0.5mm]"]),
    ("M42x0.1", []),
    ("M64x1", ["hole.depth=60"]),
    ("M64x1", ["shop.tools=inch"]),
    ("Tr240x7", ["hole.material=42CrMo4 40 HRC"]),
    ("3/8 BSW", []),
    ("M8", ["chamfer.form=bottoming"]),
    ("M8", ["shop.steels=[D2, W1]"]),
    ("M8", ["shop.furnace=780"]),
]
"""Jobs whose rules the sizes and the random jobs hardly meet."""

EVERY = 40
RANDOM = 60


@cache
def choices() -> tuple[Choice, ...]:
    """Of the listed sizes, sparsely, of random jobs, and of the rare ones."""
    return tuple(choice for design in _designs() for choice in design.choices)


@cache
def reasons() -> frozenset[Reason]:
    return frozenset(choice.rule for choice in choices() if choice.rule is not None)


def _designs() -> Iterator[TapDesign]:
    for designation, sets in RARE:
        yield settle(job_for(designation, sets))
    for designation in islice(listed_designations(), 0, None, EVERY):
        yield from _if_any(lambda text=designation: settle(job_for(text)))
    for sample in SAMPLERS.values():
        for seed in range(5000, 5000 + RANDOM):
            yield from _if_any(lambda sample=sample, seed=seed: settle(checked(sample(seed))))


def _if_any(designed: Callable[[], TapDesign]) -> Iterator[TapDesign]:
    try:
        yield designed()
    except TapmodelError:
        return


def _codes_in_design() -> Iterator[str]:
    """The codes that the design room's sources hand to `by_rule`."""
    for file in Path(tapmodel.designing.__path__[0]).rglob("*.py"):
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and ast.unparse(node.func) == "by_rule":
                code = node.args[0]
                assert isinstance(code, ast.Constant), f"{file}:{node.lineno}"
                assert isinstance(code.value, str)
                yield code.value


def test_every_code_of_the_design_room_has_a_sentence_and_the_reverse() -> None:
    codes = list(_codes_in_design())
    assert set(codes) == set(SENTENCES)
    assert len(codes) == len(set(codes)), "two rules share a code"


def test_every_reason_is_met() -> None:
    assert {reason.code for reason in reasons()} == set(SENTENCES)


def test_every_sentence_takes_the_values_of_its_reason_and_no_others() -> None:
    for reason in reasons():
        words = SENTENCES[reason.code]
        if isinstance(words, str):
            needed = {name for _, name, _, _ in string.Formatter().parse(words) if name}
        else:
            by_name = inspect.signature(words).parameters.values()
            needed = {one.name for one in by_name if one.kind is one.KEYWORD_ONLY}
        assert needed == set(dict(reason.values)), reason


def test_sentences_read_as_the_end_of_one() -> None:
    for reason in reasons():
        text = sentence(reason)
        assert len(text) >= len("its place")
        assert text == text.strip()
        assert not text.endswith(".")
        assert not set("{}[]") & set(text), text


def test_values_stay_numbers_until_they_are_written() -> None:
    for choice in choices():
        text = value_text(choice)
        if isinstance(choice.value, float):
            assert float(text.removesuffix(choice.unit)) == choice.value
        elif isinstance(choice.value, str):
            assert text == choice.value
        assert text.endswith(choice.unit)
        assert source_text(choice).endswith(")") is not choice.given


ONE_PITCH = "nominal diameter less one pitch, on the next step of 0.25 mm inside the minor limits"
# 0.3 of TD2 = 140 um; 0.2 of t = 112 um in ISO 2857
CUT_OR_GROUND = (
    "for a thread cut on a lathe, 0.042 mm of pitch diameter to hit; thread.tap_class = 2 is the "
    "class of ground taps for this hole, 0.022 mm wide"
)
# 0.2 of TD2 over 18; with 0.015 more that is 18.043
LEAST_MAJOR = (
    "least allowed 18.028 mm plus 0.02 P to turn to, up to the next 0.01 mm, unless the crest "
    "would be narrower than P/16"
)
# 0.35 of the circumference of 18.05 mm in four
NEAREST_LAND = (
    "of the cutters on hand that leave no tooth scraping where the wall of the hole begins, "
    "nor one taller than its foot is thick, and if possible keep half the rake there, the one "
    "whose land comes nearest to 4.96 mm"
)
ASSUMED = "an assumption, as the job names none: torque and advice hold for this material alone"
FOR_99 = (
    "6.660 mm for 99 % of the basic depth of engagement, the nearest inside the minor limits of "
    "the metric, fraction drills: 6.7 mm"
)


@pytest.mark.parametrize(
    ("field", "value", "reason"),
    [
        ("hole.drill", "17.25 mm", ONE_PITCH),
        ("thread.tap_class", "cut", CUT_OR_GROUND),
        ("thread.major", "18.05 mm", LEAST_MAJOR),
        ("hole.material", "mild steel", ASSUMED),
        ("hole.depth", "27.0 mm", "1.5 times the diameter, the usual depth of a thread"),
        (
            *("hole.kind", "through"),
            "the usual hole, unless the chamfer asked for is a bottoming one",
        ),
        ("chamfer.form", "plug", "plug is the form for through and blind holes alike"),
        (
            *("flutes.count", "4"),
            "3 below 12 mm for chip room, 4 up to 36 mm, 6 up to 100 mm, 8 above; this is 18 mm",
        ),
        ("flutes.cutter_diameter", "8.0 mm", NEAREST_LAND),
        ("flutes.rake", "8.0 deg", "8 deg; 8 to 12 deg suit low-carbon steel"),
        (
            *("flutes.land_share", "0.35 of the spacing"),
            "land about a third of the spacing: near a quarter of the diameter with four flutes",
        ),
        ("relief.thread.heel_drop", "0.072 mm", "0.4 % of the diameter"),
        (
            *("blank.rear_centre", "4.2 mm"),
            "0.3 of the shank for a tailstock centre, none below 6 mm",
        ),
    ],
)
def test_a_ruled_choice_in_words(field: str, value: str, reason: str) -> None:
    choice = settle(job_for("M18x0.75")).choice(field)
    assert choice is not None
    assert (value_text(choice), why(choice)) == (value, reason)


def test_a_drill_for_an_engagement_names_the_sets() -> None:
    sets = ["hole.engagement=99", 'shop.drills=["fraction", "metric"]']
    choice = settle(job_for("M8", sets)).choice("hole.drill")
    assert choice is not None
    assert (value_text(choice), why(choice)) == ("6.7 mm", FOR_99)


@pytest.mark.parametrize(
    ("given", "field", "value"),
    [
        ("[3, 5.125, 9]", "shop.cutters", "3, 5.125, 9 mm"),
        ('["letter", "number"]', "shop.drills", "letter, number"),
        ("-1", "flutes.offset", "-1.0 mm"),
        ("1", "thread.tap_class", "1"),
        ("3.5", "chamfer.pitches", "3.5 pitches (leads)"),
        ("70", "hole.engagement", "70.0 %"),
        ("61", "tap.hardness", "61.0 HRC"),
        ("W1", "tap.material", "W1"),
    ],
)
def test_a_given_choice_in_words(given: str, field: str, value: str) -> None:
    choice = settle(job_for("M8", [f"{field}={given}"])).choice(field)
    assert choice is not None
    assert (value_text(choice), why(choice), source_text(choice)) == (value, "as given", "job")


@pytest.mark.parametrize(
    ("units", "drill", "cutters", "rake"),
    [
        (Units.MM, "10.4902 mm", "6, 6.35 mm", "8.0 deg"),
        (Units.INCH, "10.4902 mm (0.4130 in)", "6, 6.35 mm (0.2362, 1/4 in)", "8.0 deg"),
        (Units.BOTH, "10.4902 mm (0.4130 in)", "6, 6.35 mm (0.2362, 1/4 in)", "8.0 deg"),
    ],
)
def test_lengths_of_choices_have_inches_behind_them_for_who_reads_those(
    units: Units, drill: str, cutters: str, rake: str
) -> None:
    design = settle(job_for("1/2 BSW", ["shop.cutters=6,1/4in"]))
    names = ("hole.drill", "shop.cutters", "flutes.rake")
    settled = [choice for name in names if (choice := design.choice(name))]
    assert [value_text(choice, units) for choice in settled] == [drill, cutters, rake]
    (table,) = choices_chapter.chapter(design).blocks
    assert isinstance(table, Table)
    cells = {shown(line[0])[0]: shown(line[1], units) for line in table.lines}
    assert cells["hole.drill"] == (drill,)
    assert f"hole.drill = {drill}" in design_page(design, units, sources=True)


MARK = 'class="long"'


def test_the_long_list_is_marked_for_pages_that_are_narrow() -> None:
    design = settle(job_for("1 1/8-7 UNC", []))
    page = chapter_html(choices_chapter.chapter(design), Units.BOTH)
    rows = re.findall(r'<th scope="row">(.*?)</th>(.*?)</tr>', page, re.DOTALL)
    assert len(rows) == len(design.choices)
    long = {head.replace("<wbr>", "").strip(): cells for head, cells in rows if MARK in cells}
    assert list(long) == ["shop.cutters"]
    assert "(1/32, 3/64, 1/16, 5/64, " in long["shop.cutters"]
