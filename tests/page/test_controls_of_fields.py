"""Controls as the page is told of them: values, ranges, steps, ways, what they lay over a job."""

import pytest

from tapmodel.designing.design import design_tap, settled_tap
from tapmodel.report.blocks import Length
from tapmodel.report.units import Units, as_text
from tapmodel.report.view.controls.fields import fields_of
from tapmodel.report.view.controls.groups import ENTRIES
from tapmodel.report.view.controls.record import Control, State
from tapmodel.report.view.findings import findings_of
from tapmodel.report.view.first import first_figures
from tapmodel.serve.answers.recommended import recommended
from tapmodel.serve.asked import Asked, answered
from tapmodel.spec.job import job_fields
from tapmodel.spec.job_file import job_for

THREADS = ("M18x0.75", "Tr16x4", "1/4-20 UNC", "M3", "G 1/2", "M48x1")


def controls(thread: str, *sets: str, units: Units = Units.MM) -> dict[str, Control]:
    groups = fields_of(design_tap(job_for(thread, sets)), units)
    return {control.field: control for group in groups for control in group.controls}


def test_every_control_is_of_a_field_of_the_job() -> None:
    assert set(ENTRIES) <= set(job_fields())


@pytest.mark.parametrize("thread", THREADS)
@pytest.mark.parametrize("units", [Units.MM, Units.INCH])
def test_what_rules_choose_lies_in_the_range_of_its_slider(thread: str, units: Units) -> None:
    for control in controls(thread, units=units).values():
        if control.slider is None or control.state is State.NONE:
            continue
        low, high, step = control.slider.low, control.slider.high, control.slider.step
        assert low - step <= float(control.value) <= high + step, control
        # Both ends are whole steps, so that places between them are as well.
        assert round(low / step) * step == pytest.approx(low, abs=1e-5)
        assert high > low


def test_boxes_are_in_the_reader_s_unit() -> None:
    mm, inch = controls("M18x0.75"), controls("M18x0.75", units=Units.INCH)
    assert (mm["hole.drill"].value, mm["hole.drill"].unit) == ("17.25", "mm")
    assert (inch["hole.drill"].value, inch["hole.drill"].unit) == ("0.67913", "in")
    assert inch["flutes.rake"].value == mm["flutes.rake"].value == "8"
    lists = ("shop.cutters", "shop.wires", "shop.wheels")
    assert [(mm[name].unit, inch[name].unit) for name in lists] == [("mm", "in")] * 3
    assert (mm["shop.drills"].unit, inch["shop.mill"].unit) == ("", "")
    # A pitch is no length that inches would be typed of.
    assert (mm["shop.leadscrew"].unit, inch["shop.leadscrew"].unit) == ("mm", "mm")


@pytest.mark.parametrize(
    ("thread", "offset", "side"),
    [
        ("M14x1.25", -2.193, "left"),
        ("M14x1.25", 1.5, "right"),
        ("M14x1.25-LH", -2.193, "right"),
        ("M14x1.25-LH", 1.5, "left"),
    ],
)
def test_beside_the_offset_stands_on_which_side_the_cutter_is(
    thread: str, offset: float, side: str
) -> None:
    sets = (f"flutes.offset={offset}", "flutes.depth_from_top=4.5")
    design = design_tap(job_for(thread, sets))
    for units in Units:
        number = as_text(Length(abs(offset)), units)
        control = controls(thread, *sets, units=units)["flutes.offset"]
        assert control.beside == f"{number} {side} of the centre line"
        # The same as the first numbers say.
        cutter = next(one for one in first_figures(design, units) if one.key == "cutter")
        words = f"cutter axis {side} of the centre line {number}, down"
        assert cutter.beside.replace("\u00a0", " ").startswith(words)


def test_a_cutter_over_the_axis_has_no_side() -> None:
    over = controls("M10", "flutes.offset=0", "flutes.depth_from_top=3")
    assert over["flutes.offset"].beside == "over the tap's axis"
    assert over["flutes.rake"].beside == ""


def test_steps_are_divisions_of_the_shop_s_dials() -> None:
    dials = ("shop.mill=0.05mm, 5mm a turn; down 0.001in, 100 divisions",)
    slide = ("shop.cross_slide=0.025mm, 100 divisions",)
    told = controls("M18x0.75", *dials, *slide)
    usual = controls("M18x0.75")
    steps = {
        field: (usual[field].slider.step, told[field].slider.step)
        for field in ("flutes.offset", "flutes.core_diameter", "thread.major")
        if usual[field].slider and told[field].slider
    }
    # A dial in inches does not divide mm; one that counts the radius moves a diameter twice as far.
    assert steps == {
        "flutes.offset": (0.02, 0.05),
        "flutes.core_diameter": (0.05, 0.05),
        "thread.major": (0.02, 0.05),
    }
    inch = controls("M18x0.75", *dials, units=Units.INCH)["flutes.depth_from_top"].slider
    assert inch is not None
    assert inch.step == pytest.approx(0.001)


@pytest.mark.parametrize("thread", THREADS)
def test_both_ways_to_give_the_flutes_leave_the_tap_as_it_is(thread: str) -> None:
    job: dict[str, object] = {"designation": thread}
    before = answered(Asked(job=job)).design
    for number in (1, 0):
        design = answered(Asked(job=job)).design
        ways = next(group.ways for group in fields_of(design, Units.MM) if group.ways)
        assert ways[1 - number].chosen
        job = {k: v for k, v in (job | dict(ways[number].values)).items() if v is not None}
        after = answered(Asked(job=job)).design
        assert after.tap.flutes.count == before.tap.flutes.count
        assert after.tap.flutes.cutter_diameter == before.tap.flutes.cutter_diameter
        assert after.figures.rake_crest == pytest.approx(before.figures.rake_crest, abs=0.06)
        assert after.tap.flutes.core_diameter == pytest.approx(
            before.tap.flutes.core_diameter, abs=0.006
        )


def test_what_the_setting_of_the_mill_holds_is_told_and_why() -> None:
    def notes(*sets: str) -> list[str]:
        groups = fields_of(settled_tap(job_for("M18x0.75", sets)), Units.MM)
        return [way.note for group in groups for way in group.ways]

    cutter, count = "flutes.cutter_diameter=8", "flutes.count=4"
    told = notes("flutes.offset=-2", cutter, count)
    assert told[0] == ""
    assert told[1].startswith("Number of flutes and cutter are held too, so that offset and depth")
    # Nothing is held of what the job does not give, nor for a wish.
    assert notes() == notes("flutes.offset=-2", cutter) == notes(cutter, count) == ["", ""]


def test_what_was_given_last_has_the_other_give_way() -> None:
    job: dict[str, object] = {
        "designation": "M18x0.75",
        "flutes.rake": 5,
        "flutes.offset": 1.0,
        "chamfer.form": "plug",
        "relief.chamfer.edge_angle": 5,
        "relief.chamfer.kind": "concentric",
    }
    changed = ("flutes.offset", "relief.chamfer.kind")
    told = answered(Asked(job=job, changed=changed))
    assert told.dropped == ("flutes.rake", "relief.chamfer.edge_angle")
    assert told.design.tap.flutes.offset == 1.0
    assert "flutes.rake" not in told.job.given()


def test_what_is_recommended_is_what_the_job_would_have_without_the_field() -> None:
    job: dict[str, object] = {"designation": "M18x0.75", "flutes.offset": 1.0, "flutes.count": 3}
    found = recommended(Asked(job=job, changed=("flutes.offset", "flutes.count", "hole.drill")))
    assert set(found) == {"flutes.offset", "flutes.count"}
    without = design_tap(job_for("M18x0.75", ["flutes.count=3"]))
    assert float(found["flutes.offset"].value.split()[0]) == pytest.approx(
        without.tap.flutes.offset, abs=6e-5
    )
    assert found["flutes.count"].value == "4"
    assert "4 up to 36 mm" in found["flutes.count"].why
    # The tool of a rounded root has no flat.
    job = {"designation": "1/4 BSW", "thread.root_flat": 0.2}
    found = recommended(Asked(job=job, changed=("thread.root_flat",)))
    assert found["thread.root_flat"].value == "none"


@pytest.mark.parametrize("units", list(Units))
def test_a_reason_does_not_say_again_what_its_box_shows(units: Units) -> None:
    ruled = controls("M18x0.75", units=units)
    assert ruled["flutes.rake"].why.startswith("8 to 12° suit low-carbon steel (")
    assert ruled["flutes.offset"].why.startswith(
        "follows from rake at the crest, 8°: 8 to 12° suit low-carbon steel ("
    )
    coarse = controls("Tr60x14", units=units)
    assert coarse["relief.chamfer.edge_angle"].why.startswith("the least of the usual 4 to 8° (")
    asked = Asked(job={"designation": "M18x0.75", "flutes.rake": 12}, changed=("flutes.rake",))
    found = recommended(asked)["flutes.rake"]
    assert (found.value, found.why[:9]) == ("8°", "8 to 12° ")


def test_what_a_control_follows_from_is_told_as_its_box_shows_it() -> None:
    shown = controls("M18x0.75", units=Units.INCH)
    drop, angle = shown["relief.chamfer.heel_drop"], shown["relief.chamfer.edge_angle"]
    assert angle.why.startswith(f"follows from drop at the heel, {drop.value} in: what 4° at ")


def test_a_cure_that_is_pressed_mends_its_finding() -> None:
    job: dict[str, object] = {"designation": "Tr16x4", "flutes.depth_from_top": 5.6}
    found = findings_of(answered(Asked(job=job)).design, Units.MM)
    cured = [(one, cure) for one in found if one.weight != "note" for cure in one.cures]
    assert len(cured) >= 2
    for one, cure in cured:
        laid = {k: v for k, v in (job | dict(cure.values)).items() if v is not None}
        after = findings_of(answered(Asked(job=laid)).design, Units.MM)
        left = {other.code for other in after if other.weight != "note"}
        assert one.code not in left, cure


def test_the_quick_answer_is_the_same_tap_with_the_same_findings() -> None:
    for thread in ("M18x0.75", "Tr16x4"):
        job = job_for(thread)
        quick, whole = settled_tap(job), design_tap(job)
        assert quick.tap == whole.tap
        assert quick.prediction == whole.prediction
        assert [f.code for f in quick.findings] == [f.code for f in whole.findings]
        assert all(not f.cures for f in quick.findings)
