"""A thread with a back taper on the bench: where it is measured, and how it is cut."""

import dataclasses
from dataclasses import replace

import numpy as np
import pytest
from asked import settled_of

from tapmodel.checks.ideal.deviation import distance_to_ideal
from tapmodel.checks.ideal.laws import from_crest
from tapmodel.designing.record import TapDesign
from tapmodel.geometry.kernel.build import build_solid
from tapmodel.geometry.kernel.measure.sampling import sample_faces
from tapmodel.geometry.kernel.measure.trimmed import TrimmedFaces
from tapmodel.shop.set_over import tailstock_set_over
from tapmodel.shop.wires import over_wires
from tapmodel.shop.wires.answer import Wires, WiresAnswer, answer_for, answer_wires
from tapmodel.shop.wires.asked import Overrides, thread_of_design
from tapmodel.shop.wires.over_wires import at_pitch_diameter
from tapmodel.shop.wires.place import Place
from tapmodel.shop.wires.reading import Verdict
from tapmodel.shop.wires.record import wires_record

SHORT = ["blank.thread_length=12"]


def design(*sets: str) -> TapDesign:
    return settled_of("M10", [*SHORT, *sets])


def measured(tapered: TapDesign, over: float) -> WiresAnswer:
    asked = thread_of_design(tapered, tapered.basic_pitch_diameter, Overrides())
    return answer_wires(asked, Wires(measured=over))


def place(answer: WiresAnswer) -> Place:
    assert answer.asked.place is not None
    return answer.asked.place


def test_wires_lie_one_turn_behind_the_chamfer_and_read_so_much_less() -> None:
    """The chamfer ends at 6 mm; 1.5 mm of 0.1 in 100 are 1.5 µm of diameter."""
    plain, tapered = answer_for(design()), answer_for(design("thread.back_taper=0.1"))
    assert dataclasses.astuple(place(tapered)) == pytest.approx((7.5, 0.0015, 0.0015))
    less = plain.measurement_target - tapered.measurement_target
    assert less == pytest.approx(0.0015, rel=1e-3)
    assert plain.measurement_min is not None
    assert tapered.measurement_min is not None
    assert plain.measurement_min - tapered.measurement_min == pytest.approx(0.0015, rel=1e-3)
    assert plain.asked.place is None


def test_on_a_short_thread_they_lie_in_its_middle() -> None:
    tap = design("thread.back_taper=0.2").tap
    short = replace(tap, blank=replace(tap.blank, thread_length=8.0))
    found = place(answer_for(replace(design(), tap=short)))
    assert (found.z, found.lost) == pytest.approx((7.0, 0.002))


def test_what_is_read_there_is_told_as_the_diameter_behind_the_chamfer() -> None:
    tapered = design("thread.back_taper=0.4")
    answer = answer_for(tapered)
    read = measured(tapered, answer.measurement_target).reading
    assert read is not None
    assert read.pitch_diameter == pytest.approx(tapered.tap.thread.pitch_diameter, abs=1e-9)
    assert read.infeed == pytest.approx(0.0, abs=1e-9)
    assert answer.measurement_max is not None
    assert measured(tapered, answer.measurement_max - 1e-5).reading.verdict is Verdict.IN_LIMITS
    assert measured(tapered, answer.measurement_max + 1e-5).reading.verdict is Verdict.TOO_LARGE


def test_the_solid_has_under_the_wires_what_they_are_said_to_read() -> None:
    """Pitch diameters of its flanks point by point, and of those the line along the axis."""
    tapered = design("thread.back_taper=0.1")
    tap = tapered.tap
    points = sample_faces(TrimmedFaces(build_solid(tap), None), 3, 4000).points
    points = points[distance_to_ideal(tap, points).surface == "thread"]
    radius, z = np.hypot(points[:, 0], points[:, 1]), points[:, 2]
    w = from_crest(tap.thread, np.degrees(np.arctan2(points[:, 1], points[:, 0])), z)
    # clear of the crest's drop, and of the root
    flank = (np.abs(w) > 0.3) & (np.abs(w) < 0.6) & (z > tap.chamfer_length)
    beyond = (tap.thread.pitch / 4 - np.abs(w)) / np.tan(np.radians(30.0))
    pitch_diameters = 2 * (radius - beyond)[flank]
    assert len(pitch_diameters) > 100
    slope, at_front = np.polyfit(z[flank], pitch_diameters, 1)
    assert slope == pytest.approx(-0.001, rel=1e-4)
    answer = answer_for(tapered)
    there = at_front + slope * place(answer).z
    groove = at_pitch_diameter(answer.asked.groove, float(there))
    assert over_wires.measurement(groove, answer.wire) == pytest.approx(
        answer.measurement_target, abs=1e-7
    )
    behind = at_pitch_diameter(groove, float(at_front + slope * (place(answer).z + 1.5)))
    falls = answer.measurement_target - over_wires.measurement(behind, answer.wire)
    assert falls == pytest.approx(place(answer).each_turn, rel=2e-3)


def test_the_record_of_wires_tells_the_place_only_where_there_is_one() -> None:
    plain = wires_record(answer_for(design()), ())
    tapered = wires_record(answer_for(design("thread.back_taper=0.1")), ())
    assert set(tapered) - set(plain) == {
        "measured_at",
        "diameter_lost_there",
        "reading_falls_per_turn",
    }
    assert tapered["measured_at"] == pytest.approx(7.5)


def test_the_tailstock_is_set_over_by_half_the_taper_of_the_whole_length() -> None:
    tap = design("thread.back_taper=0.1", "blank.overall_length=80").tap
    assert tailstock_set_over(tap) == pytest.approx(0.04)
    assert tailstock_set_over(design().tap) == 0.0
