"""What goes wrong in the hole: causes by the tap's own numbers, and values that move them."""

from collections.abc import Mapping

import pytest
from asked import design_of

from tapmodel.designing.design import settled_tap, without_prediction
from tapmodel.designing.record import TapDesign
from tapmodel.errors import NoTapError
from tapmodel.findings import Cure
from tapmodel.report.blocks import Paragraphs
from tapmodel.report.chapters.in_the_hole.symptoms import chapter
from tapmodel.report.chapters.order import OPERATIONS, all_chapters, operations
from tapmodel.report.units import told
from tapmodel.report.words.symptoms import NAMES, SENTENCES, TITLES, cause_text
from tapmodel.shop.symptoms.causes import LISTED
from tapmodel.shop.symptoms.record import Cause, Sign, Why
from tapmodel.shop.symptoms.symptoms import CAUSES, symptoms_of
from tapmodel.spec.job import Job
from tapmodel.spec.job_file import apply_sets, checked
from tapmodel.words import Units

JOBS = (
    ("M10", ()),
    ("M18x0.75", ()),
    ("Tr16x4", ()),
    ("0.90 UNM", ()),
    ("3/8-16", ("chamfer.form=bottoming", "hole.kind=blind")),
    ("M10", ("relief.chamfer.kind=concentric",)),
    ("M18x0.75", ("relief.thread.kind=concentric", "chamfer.pitches=14")),
    ("M12", ("hole.material=brass", "flutes.rake=10", "relief.thread.kind=eccentric")),
    ("M20", ("blank.thread_length=25", "chamfer.point_diameter=16.5")),
)


def designed(text: str, *sets: str) -> TapDesign:
    return design_of(text, sets)


def causes(design: TapDesign, sign: Sign) -> Mapping[Why, Cause]:
    symptom = next(one for one in symptoms_of(design) if one.sign is sign)
    return {cause.why: cause for cause in symptom.causes}


@pytest.fixture(scope="module", params=JOBS, ids=lambda job: " ".join((job[0], *job[1])))
def design(request: pytest.FixtureRequest) -> TapDesign:
    text, sets = request.param
    return designed(text, *sets)


def test_every_cause_and_every_symptom_has_its_words() -> None:
    assert set(SENTENCES) == set(Why)
    assert set(TITLES) == set(CAUSES) == set(Sign)


def test_the_likeliest_stand_first_and_the_unlikely_nowhere(design: TapDesign) -> None:
    for symptom in symptoms_of(design):
        weights = [cause.weight for cause in symptom.causes]
        assert weights == sorted(weights, reverse=True)
        assert min(weights, default=1) >= LISTED


def test_every_sentence_has_a_number_in_either_unit(design: TapDesign) -> None:
    for units in Units:
        for symptom in symptoms_of(design):
            for cause in symptom.causes:
                text = cause_text(cause, units)
                assert any(letter.isdigit() for letter in text), text
                mm = text.split("; set ")[0]
                assert units is not Units.INCH or " mm" not in mm, text


def test_a_cause_is_told_once_with_its_numbers(design: TapDesign) -> None:
    (paragraphs,) = chapter(design).blocks
    assert isinstance(paragraphs, Paragraphs)
    whole = " ".join(told(text, Units.MM) for text in paragraphs.texts)
    for symptom in symptoms_of(design):
        for cause in symptom.causes:
            assert whole.count(cause_text(cause, Units.MM)) == 1
    every = [cause.why for one in symptoms_of(design) for cause in one.causes]
    assert {why for why in every if every.count(why) > 1} <= set(NAMES)


def _weight(design: TapDesign, sign: Sign, why: Why) -> float:
    foreseen = design.prediction
    assert foreseen is not None
    found = {cause.why: cause.weight for cause in CAUSES[sign](design, foreseen)}
    return found.get(why, 0.0)


def _applied(cure: Cure, text: str, sets: tuple[str, ...]) -> Job:
    values = [f"{one.field}={one.text}" for one in cure.settings]
    return checked(apply_sets(apply_sets({"designation": text}, sets), values))


@pytest.mark.parametrize(("text", "sets"), JOBS)
def test_every_value_moves_the_number_that_it_is_offered_for(
    text: str, sets: tuple[str, ...]
) -> None:
    design = designed(text, *sets)
    for symptom in symptoms_of(design):
        for cause in symptom.causes:
            for cure in cause.cures[:1]:
                try:
                    after = settled_tap(_applied(cure, text, sets))
                except NoTapError:
                    pytest.fail(f"{cause.why}: {cure}")
                if after.prediction is None:
                    pytest.fail(f"{cause.why}: {cure} breaks {after.errors}")
                weight = _weight(after, symptom.sign, cause.why)
                assert weight < cause.weight, (symptom.sign, cause.why, cure)


def test_numbers_of_one_tap_by_hand() -> None:
    design = designed("M10")
    binds = causes(design, Sign.BINDS)
    foreseen = design.prediction
    assert foreseen is not None
    # 15 mm of thread, of whose chips the flutes hold so much; half of a through hole's fall out
    assert binds[Why.CHIPS_JAM].weight == pytest.approx(15 / foreseen.chips_held / 2)
    near = binds[Why.NEAR_STOP]
    assert near.weight == pytest.approx(foreseen.torque.band.high / foreseen.stop_at)
    # 0.4 of the spacing of three flutes on 10.07 mm
    rubs = binds[Why.LANDS_RUB]
    assert rubs.values.number("most") == pytest.approx(0.4 * 3.14159265 * 10.07 / 3)
    place = causes(design, Sign.LARGE)
    assert Why.NO_MARGIN not in place
    # 8.50 of 8.376 to 8.676 mm lies in the lower half; of a drill in the upper one it says so
    assert Why.HOLE_WIDE not in place
    wide = causes(designed("M10", "hole.drill=8.6"), Sign.LARGE)[Why.HOLE_WIDE]
    assert cause_text(wide, Units.MM).endswith("take a smaller drill, of 8.376 mm at least")
    zone = place[Why.HIGH_IN_ZONE].values
    assert zone.number("left") == pytest.approx(9.206 - zone.number("pitch_diameter"), abs=1e-3)
    assert zone.number("share") == pytest.approx(
        (zone.number("pitch_diameter") - 9.026) / 0.180, abs=2e-3
    )


def test_the_cures_of_findings_are_those_that_are_offered() -> None:
    design = designed("M10", "relief.chamfer.kind=concentric")
    found = next(one for one in design.findings if one.code == "chamfer-rubs")
    cause = causes(design, Sign.BINDS)[Why.CHAMFER_PROUD]
    assert cause.tried
    assert cause.cures == found.cures
    assert next(iter(causes(design, Sign.BINDS))) is Why.CHAMFER_PROUD


def test_what_the_numbers_rule_out_is_not_named() -> None:
    sharp = causes(designed("M20"), Sign.TAPERS)
    assert not {Why.SHORT_CHAMFER, Why.SHORT_GUIDE} & set(sharp)
    short = causes(designed("M20", "chamfer.form=bottoming", "hole.kind=blind"), Sign.TAPERS)
    assert short[Why.SHORT_CHAMFER].values.number("leads") < 3


def test_the_square_is_told_by_what_breaks_it_and_what_breaks_first() -> None:
    cause = causes(designed("M10"), Sign.SNAPS)[Why.SQUARE_WEAK]
    assert cause.values.number("alone") > cause.values.number("first")
    text = cause_text(cause, Units.MM)
    assert "a wrench pulled askew" in text
    assert f"{cause.values.number('alone'):.3g} N·m" in text


def test_it_stands_on_page_and_route_and_with_all_but_not_on_the_sheet() -> None:
    design = designed("M10")
    assert chapter not in OPERATIONS
    assert "symptoms" not in {one.key for one in operations(design)}
    assert all_chapters(design)[-1].key == "symptoms"
    assert not chapter(without_prediction(design)).blocks
