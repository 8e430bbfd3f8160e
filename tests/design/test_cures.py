"""Every cure works: applied to the job it mends its finding, breaks nothing, and is nearest."""

import math

import pytest
from broken_jobs import broken_job
from cure_trials import judged_cures
from refusals import refused
from sweeps import in_part

from tapmodel.designing.choose.cutters import INCH_CUTTERS
from tapmodel.designing.cures import advice as advice_of_cures
from tapmodel.designing.cures.legal_value import nearest_legal, rulers
from tapmodel.designing.cures.trials import Outcome, Trials, Values
from tapmodel.designing.design import design_tap
from tapmodel.designing.settle import settle
from tapmodel.errors import NoTapError
from tapmodel.findings import Bound, Finding, Lever, Setting
from tapmodel.report.words.cures import advice
from tapmodel.report.words.findings import what
from tapmodel.spec.job_file import apply_sets, checked, job_for
from tapmodel.spec.overrides import apply_values


def first(found: tuple[Finding, ...], code: str) -> Finding:
    return next(finding for finding in found if finding.code == code)


# What of these was wrong once: a cure that left no tap (20207), a value that those beside it made
# needless (20229), none where the chamfer's values drive one another out (10074, 20994), a warning
# that an error hid (20046), another warning brought while an error went (20906), a sentence
# without a number (20302, 20442).
ONCE_WRONG = (10074, 20046, 20207, 20229, 20302, 20442, 20906, 20994)


@pytest.mark.parametrize("seed", [*in_part(range(10)), *ONCE_WRONG])
def test_every_cure_of_a_broken_job_works(seed: int) -> None:
    wrong = [text for tried in judged_cures(broken_job(seed)) for text in tried.wrong]
    assert wrong == []


def test_a_value_on_its_limit_is_legal_whatever_its_binary_noise() -> None:
    # 3.3 less the pitch of 1.5 is 1.7999999999999998 in binary
    sets = ["blank.thread_length=3.3", "chamfer.length=1.8"]
    codes = {finding.code for finding in settle(job_for("M10", sets)).findings}
    assert "chamfer-length" not in codes
    longer = design_tap(job_for("M10", [sets[0], "chamfer.length=1.801"]))
    assert "set chamfer.length at most 1.800 mm" in what(first(longer.findings, "chamfer-length"))


def test_a_cure_is_data_that_a_machine_can_apply() -> None:
    sets = ["flutes.count=6", "flutes.cutter_diameter=8", "blank.square_across_flats=14"]
    table = apply_sets({"designation": "M18x0.75"}, sets)
    found = design_tap(checked(table)).findings
    for code in ("flute-neighbours", "square-flats"):
        for cure in first(found, code).cures:
            mended = apply_values(table, [(s.field, s.value) for s in cure.settings])
            assert code not in {f.code for f in settle(checked(mended)).findings}


def test_a_class_that_must_go_back_to_the_rules_is_named_as_a_job_takes_it() -> None:
    found = design_tap(job_for("M3", ["thread.tap_class=D11"])).findings
    errors = [finding for finding in found if finding.severity == "error"]
    assert [advice(finding.cures) for finding in errors] == ["set thread.tap_class to cut"]
    (setting,) = errors[0].cures[0].settings
    assert setting.value == "cut"
    table = apply_values({"designation": "M3"}, [(setting.field, setting.value)])
    assert settle(checked(table)).limits == settle(job_for("M3")).limits


def test_a_refusal_without_a_design_offers_cures_too() -> None:
    job = job_for("M18x0.75", ["flutes.core_diameter=17.2"])
    with refused(r"set flutes\.core_diameter at most 1\d\.\d{3} mm") as no:
        design_tap(job)
    cure = no.value.finding.cures[0].settings[0]
    mended = settle(job_for("M18x0.75", [f"{cure.field}={cure.text}"]))
    assert {f.severity for f in mended.findings} <= {"warning", "note"}


def test_values_that_are_needed_together_are_named_together() -> None:
    # fewer flutes leave room for the cutter, but its web is then thicker than the shank
    sets = ["chamfer.form=taper", "chamfer.angle=0.6", "flutes.depth_from_top=0.3"]
    job = job_for("M3.8x0.639", [*sets, "flutes.cutter_diameter=0.41", "flutes.offset=0"])
    with pytest.raises(NoTapError) as no:
        design_tap(job)
    cures = no.value.finding.cures
    assert cures
    assert all(len(cure.settings) > 1 for cure in cures)
    assert " and " in what(no.value.finding)


def test_a_field_that_the_cure_replaces_is_named() -> None:
    sets = ["flutes.offset=8", "flutes.cutter_diameter=2"]
    with pytest.raises(NoTapError) as no:
        design_tap(job_for("M18x0.75", [*sets, "flutes.core_diameter=8"]))
    settings = [s for cure in no.value.finding.cures for s in cure.settings]
    assert settings
    assert all(
        s.replaces == (("flutes.offset",) if s.field == "flutes.rake" else ()) for s in settings
    )


@pytest.mark.parametrize("near", [None, 2.3, 2.4, 3.1, 0.5])
@pytest.mark.parametrize("limit", [2.3, 1.0004, 0.0006])
def test_the_search_ends_at_the_limit_wherever_a_formula_expects_it(
    near: float | None, limit: float
) -> None:
    scale = rulers(Lever("blank.neck_length", Bound.AT_MOST, 5.0, near))[0]
    found = nearest_legal(lambda index: scale.value(index) <= limit, scale)
    if limit < 0.001:
        assert found is None
    else:
        assert found is not None
        assert scale.value(found) == pytest.approx(int(limit * 1000) / 1000, abs=1e-12)


def test_a_gap_of_legal_values_is_found_and_its_near_side_taken() -> None:
    scale = rulers(Lever("blank.neck_length", Bound.AT_LEAST, 5.0))[0]
    found = nearest_legal(lambda index: 7.1 <= scale.value(index) <= 9.0, scale)
    assert found is not None
    assert scale.value(found) == 7.1


def test_a_cure_that_worsens_nothing_is_named_before_one_that_does() -> None:
    # a cutter of 9.02 mm would do too, and leave lands that rub over half of their spacing
    sets = ["flutes.cutter_diameter=12", "flutes.core_diameter=10", "flutes.count=3"]
    found = first(design_tap(job_for("M18x0.75", sets)).findings, "flute-wish")
    fields = [setting.field for cure in found.cures for setting in cure.settings]
    assert fields == ["flutes.core_diameter", "flutes.depth_from_top"]


def test_what_is_left_of_a_mended_error_is_no_worsening() -> None:
    # at least 0.3 of the shank for a square that drives, 0.707 for one that wastes nothing
    found = first(
        design_tap(job_for("M18x0.75", ["blank.square_across_flats=3"])).findings, "square-slim"
    )
    assert [cure.worsens for cure in found.cures] == [()]


def test_what_a_cure_worsens_costs_no_further_design(monkeypatch: pytest.MonkeyPatch) -> None:
    asked: set[tuple[Values, frozenset[str]]] = set()
    outcome = Trials.outcome

    def counted(trials: Trials, values: Values, without: frozenset[str] = frozenset()) -> Outcome:
        asked.add((values, without))
        return outcome(trials, values, without)

    monkeypatch.setattr(Trials, "outcome", counted)
    cures = [cure for finding in design_tap(job_for("Tr12x3")).findings for cure in finding.cures]
    assert any(cure.worsens for cure in cures)
    told, made = len(asked), asked.copy()
    asked.clear()
    monkeypatch.setattr(advice_of_cures, "_told", lambda _trials, _finding, cure: cure)
    design_tap(job_for("Tr12x3"))
    assert (len(asked), asked) == (told, made)


def test_a_good_design_is_not_designed_twice(monkeypatch: pytest.MonkeyPatch) -> None:
    # For cures, not even a trial that was made before may be asked for.
    calls: list[str] = []
    monkeypatch.setattr("tapmodel.designing.design.with_runners_up", lambda design, _: design)
    monkeypatch.setattr(Trials, "outcome", lambda *_: calls.append("again"))
    design_tap(job_for("M18x0.75"))
    assert calls == []


CROWDED = ["flutes.count=6", "flutes.cutter_diameter=8.5"]


def cutters_named(designation: str, sets: list[str]) -> list[Setting]:
    """Every cutter that a cure of the design names."""
    return [
        setting
        for finding in design_tap(job_for(designation, sets)).findings
        for cure in finding.cures
        for setting in cure.settings
        if setting.field == "flutes.cutter_diameter"
    ]


def test_a_cure_names_a_cutter_that_is_stocked() -> None:
    named = cutters_named("M18x0.75", CROWDED)
    assert {setting.text for setting in named} == {"7"}
    assert all(setting.bound is Bound.EXACTLY and setting.at_hand for setting in named)
    inch = cutters_named("3/4-16 UNF", ["flutes.count=6", "flutes.cutter_diameter=9"])
    assert inch
    for setting in inch:
        assert any(math.isclose(float(setting.value), size) for size in INCH_CUTTERS)


def test_a_cure_names_a_cutter_of_those_listed_or_says_that_it_is_none() -> None:
    listed = cutters_named("M18x0.75", [*CROWDED, "shop.cutters=[4.4, 3.1, 9]"])
    assert {(setting.value, setting.at_hand) for setting in listed} == {(4.4, True), (9.0, True)}
    sets = [*CROWDED, "shop.cutters=[8.5, 9, 12]"]
    bought = cutters_named("M18x0.75", sets)
    assert {(setting.value, setting.at_hand) for setting in bought} == {(7.0, False)}
    # What can be done with what is there goes before what must be bought.
    assert advice(first(design_tap(job_for("M18x0.75", sets)).findings, "land-root").cures) == (
        "set flutes.count at most 5 or flutes.cutter_diameter to 7 mm (not among shop.cutters)"
    )


def test_a_larger_cutter_against_wide_lands_is_said_to_be_none_of_those_listed() -> None:
    named = cutters_named("M18x0.75", ["shop.cutters=3", "flutes.count=4"])
    assert named
    assert {setting.at_hand for setting in named} == {False}
