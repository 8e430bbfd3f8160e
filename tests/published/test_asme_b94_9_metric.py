"""D numbers of ground metric taps.

ASME B94.9: "D" and a number n mean a pitch diameter that ends n times 0.013 mm over basic; read in
a public text that cites Machinery's Handbook 25th ed. p. 893. Basic pitch diameters: ISO 724.
"""

import pytest

from tapmodel.designing.design import design_tap
from tapmodel.errors import InputError
from tapmodel.spec.job_file import job_for
from tapmodel.standards.metric.tap_limits import d_number_limits

# thread: (D, P, basic pitch diameter printed, number, largest pitch diameter)
ROWS = {
    "M6x1 D5": (6, 1, "5.350", 5, 5.415),
    "M10x1.5 D6": (10, 1.5, "9.026", 6, 9.104),
    "M20x2.5 D7": (20, 2.5, "18.376", 7, 18.467),
}


@pytest.mark.parametrize("name", ROWS)
def test_the_number_counts_steps_over_basic(name: str) -> None:
    diameter, pitch, basic, number, largest = ROWS[name]
    assert float(basic) + number * 0.013 == pytest.approx(largest, abs=1e-9)
    found = d_number_limits(diameter, pitch, number)
    assert found.pitch_max == pytest.approx(largest, abs=5e-5)
    assert found.pitch_max - found.pitch_min == pytest.approx(0.013, abs=5e-5)


def test_a_job_may_ask_for_ground_or_lathe_cut_limits() -> None:
    ground = design_tap(job_for("M10", ["thread.tap_class=D6"])).limits
    assert ground.tap_class == "D6 of ASME B94.9"
    cut = design_tap(job_for("M10", ["thread.tap_class=cut"])).limits
    # a fifth to a half of TD2(6H) = 0.180 over 9.026
    assert (cut.pitch_min, cut.pitch_max) == pytest.approx((9.062, 9.116), abs=1e-9)
    for wrong in ("D13", "H3", "4"):
        with pytest.raises(InputError, match="ISO 2857; D1 to D12"):
            design_tap(job_for("M10", [f"thread.tap_class={wrong}"]))
    with pytest.raises(InputError, match="up to 25 mm"):
        design_tap(job_for("M30", ["thread.tap_class=D5"]))
