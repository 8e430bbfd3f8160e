"""D numbers of ground metric taps.

ASME B94.9: "D" and a number n mean a pitch diameter that ends n times 0.013 mm over basic; read in
a public text that cites Machinery's Handbook 25th ed. p. 893. Width of the zone: read in a tap
maker's general catalogue 2016-17 p. 799, tap thread limits in micrometres over basic, M5 to M10;
the others are from memory. Basic pitch diameters: ISO 724.
"""

import pytest
from asked import settled_of

from tapmodel.errors import InputError
from tapmodel.standards.metric.tap_limits import d_number_limits
from tapmodel.standards.tables import read_table
from tapmodel.standards.thread_forms import METRIC
from tapmodel.words import Certainty

# thread: (D, P, basic pitch diameter printed, number, largest pitch diameter)
ROWS = {
    "M6x1 D5": (6, 1, "5.350", 5, 5.415),
    "M10x1.5 D6": (10, 1.5, "9.026", 6, 9.104),
    "M20x2.5 D7": (20, 2.5, "18.376", 7, 18.467),
}

# thread: (D, P, number, upper and lower limit over basic as printed [micrometre])
ZONES = {
    "M5x0.8 D4": (5, 0.8, 4, "52", "32"),
    "M6x1 D5": (6, 1, 5, "65", "40"),
    "M7x1 D5": (7, 1, 5, "65", "40"),
    "M8x1 D5": (8, 1, 5, "65", "40"),
    "M8x1.25 D5": (8, 1.25, 5, "65", "34"),
    "M10x1.25 D5": (10, 1.25, 5, "65", "34"),
    "M10x1.5 D6": (10, 1.5, 6, "78", "47"),
}


@pytest.mark.parametrize("name", ROWS)
def test_the_number_counts_steps_over_basic(name: str) -> None:
    diameter, pitch, basic, number, largest = ROWS[name]
    assert float(basic) + number * 0.013 == pytest.approx(largest, abs=1e-9)
    found = d_number_limits(diameter, pitch, number)
    assert found.pitch_max == pytest.approx(largest, abs=5e-5)


@pytest.mark.parametrize("name", ZONES)
def test_the_zone_is_as_wide_as_printed(name: str) -> None:
    diameter, pitch, number, upper, lower = ZONES[name]
    found, basic = d_number_limits(diameter, pitch, number), METRIC.pitch_diameter(diameter, pitch)
    over = [1000 * (size - basic) for size in (found.pitch_max, found.pitch_min)]
    assert over == pytest.approx([float(upper), float(lower)], abs=0.05)
    assert found.source.certainty is Certainty.READ


# From memory of ASME B94.9: (D, P, width [micrometre]), narrow column to 6.3 mm, wide to 25 mm.
REMEMBERED = [
    (3, 0.5, 15),
    (4, 0.7, 20),
    (12, 1.75, 31),
    (16, 2, 41),
    (20, 2.5, 41),
    (18, 0.75, 25),
]


@pytest.mark.parametrize(("diameter", "pitch", "width"), REMEMBERED)
def test_the_other_widths_are_said_to_be_from_memory(diameter: float, pitch: float, width: float):
    found = d_number_limits(diameter, pitch, 6)
    assert 1000 * (found.pitch_max - found.pitch_min) == pytest.approx(width, abs=0.05)
    assert found.source.certainty is Certainty.MEMORY


def test_widths_never_shrink_with_pitch_or_diameter() -> None:
    rows = read_table("d_number_widths")
    for column in ("small", "large"):
        widths = [float(row[column]) for row in rows]
        assert widths == sorted(widths)
    assert all(float(row["small"]) <= float(row["large"]) for row in rows)
    # Between two listed pitches, and beyond the last: the next coarser one, or the coarsest.
    for pitch, width in ((1.1, 0.031), (0.2, 0.015), (3.5, 0.041)):
        found = d_number_limits(24, pitch, 9)
        assert found.pitch_max - found.pitch_min == pytest.approx(width, abs=5e-5)


def test_a_job_may_ask_for_ground_or_lathe_cut_limits() -> None:
    ground = settled_of("M10", ["thread.tap_class=D6"]).limits
    assert ground.tap_class == "D6 of ASME B94.9"
    cut = settled_of("M10", ["thread.tap_class=cut"]).limits
    # a fifth to a half of TD2(6H) = 0.180 over 9.026
    assert (cut.pitch_min, cut.pitch_max) == pytest.approx((9.062, 9.116), abs=1e-9)
    allowed = r"cut, .*; of ground taps 1, 2 or 3 of ISO 2857, or D1 to D12 of ASME B94\.9"
    for wrong in ("D13", "H3", "4"):
        with pytest.raises(InputError, match=allowed):
            settled_of("M10", [f"thread.tap_class={wrong}"])
    with pytest.raises(InputError, match="up to 25 mm"):
        settled_of("M30", ["thread.tap_class=D5"])
