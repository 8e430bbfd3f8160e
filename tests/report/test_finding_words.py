"""Every finding has its sentence, and every sentence its finding; none fails for want of values."""

import ast
import math
import pickle
import re
import tomllib
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from asked import design_of

from tapmodel.designing import codes
from tapmodel.designing.codes import Code, Lost
from tapmodel.designing.judging import FIGURES
from tapmodel.designing.settle import settle
from tapmodel.errors import NoTapError, RefusedError
from tapmodel.findings import Bound, Cure, Finding, Held, Setting
from tapmodel.report.words import no_solid
from tapmodel.report.words.cures import advice
from tapmodel.report.words.findings import SENTENCES, what
from tapmodel.report.words.limits import RIGHT, ROOM, actual, allowed, expected
from tapmodel.report.words.refusal import refusal
from tapmodel.report.words.rules import unlisted
from tapmodel.shop.judged import judged
from tapmodel.spec.job import field_names
from tapmodel.spec.job_file import job_for
from tapmodel.standards.limits import Unlisted
from tapmodel.words import Severity

DESIGN = Path(codes.__file__).parent
SHOP = DESIGN.parent / "shop"

SAID = tomllib.loads(Path(__file__).with_name("finding_words.toml").read_text())["said"]


def found_in(designation: str, sets: list[str]) -> tuple[Finding, ...]:
    try:
        return judged(settle(job_for(designation, sets))).findings
    except NoTapError as error:
        return error.findings


@cache
def every_finding() -> tuple[Finding, ...]:
    """All findings of all jobs of the table, some hundreds."""
    return tuple(f for row in SAID for f in found_in(row["designation"], row["sets"]))


@pytest.mark.parametrize("row", SAID, ids=lambda row: f"{row['code']}: {row['sentence'][:30]}")
def test_each_rule_says_what_it_always_said(row: dict[str, Any]) -> None:
    said = [what(f) for f in found_in(row["designation"], row["sets"]) if f.code == row["code"]]
    assert len(said) >= 1
    if row["sentence"].endswith("."):
        assert row["sentence"] in said
    else:
        assert any(sentence.startswith(row["sentence"]) for sentence in said)


def test_every_code_has_a_sentence_and_every_sentence_a_code() -> None:
    assert set(SENTENCES) == set(Code)
    assert set(no_solid.REASONS) == set(Lost)
    assert set(unlisted.NOTES) == set(Unlisted)
    assert set(RIGHT) == set(ROOM) == set(Held)


def test_every_code_is_written_in_a_rule_and_met_here() -> None:
    assert {f.code for f in every_finding()} == set(Code)
    rooms = [*DESIGN.rglob("*.py"), *SHOP.rglob("*.py")]
    source = "".join(path.read_text() for path in rooms if path.stem != "codes")
    for kind in (Code, Lost):
        written = set(re.findall(rf"\b{kind.__name__}\.([A-Z_]+)", source))
        assert written == {member.name for member in kind}


def test_no_sentence_and_no_number_fails_for_its_values() -> None:
    for finding in every_finding():
        texts = what(finding), expected(finding), actual(finding), allowed(finding)
        assert all(texts), finding
        assert what(finding).endswith(".")
        assert finding.field in FIGURES | set(field_names())


def test_the_numbers_written_are_those_that_are_held() -> None:
    for finding in every_finding():
        limit, number = finding.limit, finding.actual
        if limit.held is not None or isinstance(number, str):
            continue
        written = float(actual(finding).split()[0])
        assert written == pytest.approx(number, rel=1e-4, abs=1e-9)
        assert actual(finding).endswith(f" {limit.unit}")
        # ends that are the same stand once
        ends = list(dict.fromkeys(end for end in (limit.low, limit.high) if end is not None))
        # a unit may hold a number of its own, as "per 100 of length"
        numbers = allowed(finding).removesuffix(limit.unit)
        told = [float(word) for word in re.findall(r"-?\d[-+.\de]*", numbers)]
        assert told == pytest.approx(ends, rel=1e-4, abs=1e-9)
        if finding.severity is Severity.ERROR:
            low = -math.inf if limit.low is None else limit.low
            high = math.inf if limit.high is None else limit.high
            assert not low < number < high


def test_the_design_room_holds_no_sentence() -> None:
    for folder in ("rules", "limits", "cures"):
        for path in (DESIGN / folder).rglob("*.py"):
            assert list(_texts(path)) == [], path.name


def _texts(path: Path) -> Iterator[str]:
    """Texts of more than one word that are no docstrings."""
    tree = ast.parse(path.read_text())
    documented = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
    for node in ast.walk(tree):
        text = node.value if isinstance(node, ast.Constant) else None
        if isinstance(text, str) and " " in text.strip() and id(node) not in documented:
            yield text


def _setting(field: str, bound: Bound, value: float | str, *more: object) -> Setting:
    return Setting(field, bound, value, *more)  # pyright: ignore[reportArgumentType]


def test_cures_end_the_sentence() -> None:
    drop = _setting("relief.chamfer.heel_drop", Bound.AT_LEAST, 0.05, "mm", 4)
    count = _setting("flutes.count", Bound.AT_MOST, 3)
    kind = _setting("relief.chamfer.kind", Bound.EXACTLY, "eccentric", "", 0, ("a.b", "c.d"))
    alone, apart = (Cure((drop,)), Cure((count,))), (Cure((drop, count)), Cure((kind,)))
    assert advice(()) == ""
    by_drop = "relief.chamfer.heel_drop at least 0.0500 mm"
    assert advice(alone) == f"set {by_drop} or flutes.count at most 3"
    assert advice(apart) == (
        f"set {by_drop} and flutes.count at most 3, "
        "or relief.chamfer.kind to eccentric (in place of a.b and c.d)"
    )
    finding = next(f for f in every_finding() if f.code == "core")
    told = what(replace(finding, cures=alone))
    assert told == f"The web is too thin to drive the tap; set {by_drop} or flutes.count at most 3."


@pytest.mark.parametrize(
    ("code", "sets", "reason"),
    [
        ("crest-flat", ["thread.major=18.22"], "meet below the major diameter of 18.220 mm"),
        ("front-centre", ["blank.front_centre=8.2"], "which leave 8.100 mm between them"),
        ("rear-chamfer", ["blank.rear_chamfer=7.1"], "a rear chamfer of 7.000 mm or more leaves"),
        ("crest-drop", ["relief.thread.heel_drop=0.6"], "the surface of relief.thread falls below"),
    ],
)
def test_why_there_is_no_solid_is_told_with_its_number(
    code: str, sets: list[str], reason: str
) -> None:
    found = next(f for f in found_in("M18x0.75", sets) if f.code == code)
    assert reason in no_solid.no_solid(found.no_solid)


def test_a_refusal_keeps_its_findings_on_its_way_between_processes() -> None:
    with pytest.raises(NoTapError) as caught:
        design_of("M18x0.75", ["flutes.core_diameter=17.2"])
    sent = pickle.loads(pickle.dumps(caught.value))  # noqa: S301  (our own)
    assert sent.finding == caught.value.finding
    assert refusal(sent) == what(caught.value.finding)
    assert str(sent).startswith("flute-depth: flutes.core_diameter = 17.2 mm, allowed <= 17.0")
    broken = RefusedError(every_finding(), forced=True)
    again = pickle.loads(pickle.dumps(broken))  # noqa: S301  (our own)
    assert (again.findings, again.forced) == (broken.findings, True)
