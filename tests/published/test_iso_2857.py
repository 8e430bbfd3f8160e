"""Pitch-diameter zones of taps: rows that were read, and rows worked out.

Read: 20 rows of class 2, coarse pitch, in a tool maker's catalogue of reamers and taps 2022 p. 56
(taps for holes of 6H), the table `iso_2857_class_2`; six of fine pitch in a tap maker's general
catalogue 2016-17 p. 799 (class ISO2, micrometres over basic). The fractions 0.1, 0.3, 0.5 and 0.7
of t, and which class suits which hole, are drawn in a tap maker's catalogue 2021 p. 645, which
cites DIN EN 22857.

Worked out by hand: ROWS, from the same fractions and t = TD2 grade 5; no reading of the standard.
"""

import pytest

from tapmodel.spec.designation import parse
from tapmodel.standards.metric.tap_limits import metric_tap_limits
from tapmodel.standards.tables import read_table
from tapmodel.standards.thread_forms import METRIC
from tapmodel.words import Certainty

HALF_DIGIT = 0.00005
READ_ROWS = read_table("iso_2857_class_2")
READ_THREADS = {f"M{row['diameter']}x{row['pitch']}" for row in READ_ROWS}

# thread: class 1 min, class 1 max = class 2 min, class 2 max = class 3 min, class 3 max, major min
ROWS = {
    "M3x0.5": (2.6830, 2.6990, 2.7150, 2.7310, 3.0320),
    "M4x0.7": (3.5545, 3.5735, 3.5925, 3.6115, 4.0380),
    "M5x0.8": (4.4900, 4.5100, 4.5300, 4.5500, 5.0400),
    "M6x1": (5.3618, 5.3854, 5.4090, 5.4326, 6.0472),
    "M8x1.25": (7.2005, 7.2255, 7.2505, 7.2755, 8.0500),
    "M8x1": (7.3618, 7.3854, 7.4090, 7.4326, 8.0472),
    "M10x1.5": (9.0400, 9.0680, 9.0960, 9.1240, 10.0560),
    "M10x1": (9.3618, 9.3854, 9.4090, 9.4326, 10.0472),
    "M12x1.75": (10.8790, 10.9110, 10.9430, 10.9750, 12.0640),
    "M12x1.5": (11.0410, 11.0710, 11.1010, 11.1310, 12.0600),
    "M12x1": (11.3625, 11.3875, 11.4125, 11.4375, 12.0500),
    "M16x2": (14.7180, 14.7520, 14.7860, 14.8200, 16.0680),
    "M20x2.5": (18.3940, 18.4300, 18.4660, 18.5020, 20.0720),
    "M20x1.5": (19.0410, 19.0710, 19.1010, 19.1310, 20.0600),
    "M24x3": (22.0722, 22.1146, 22.1570, 22.1994, 24.0848),
}


@pytest.mark.parametrize("thread", ROWS)
@pytest.mark.parametrize("tap_class", [1, 2, 3])
def test_tap_zone(thread: str, tap_class: int):
    asked, row = parse(thread), ROWS[thread]
    found = metric_tap_limits(asked.diameter, asked.pitch, tap_class)
    zone = (found.pitch_min, found.pitch_max)
    assert zone == pytest.approx(row[tap_class - 1 : tap_class + 1], abs=HALF_DIGIT)
    assert found.major_min == pytest.approx(row[4], abs=HALF_DIGIT)
    assert found.tap_class == f"{tap_class} of ISO 2857"
    read = tap_class == 2 and thread in READ_THREADS
    assert found.source.certainty is (Certainty.READ if read else Certainty.MEMORY)


@pytest.mark.parametrize("row", READ_ROWS, ids=lambda row: f"M{row['diameter']}x{row['pitch']}")
def test_rows_that_were_read(row: dict[str, str]):
    found = metric_tap_limits(float(row["diameter"]), float(row["pitch"]), 2)
    for size, text in ((found.pitch_min, row["pitch_min"]), (found.pitch_max, row["pitch_max"])):
        # Half of the last printed digit; the catalogue rounds halves up.
        assert -0.0005 - 1e-9 <= float(text) - size <= 0.0005 + 1e-9
    assert found.source.certainty is Certainty.READ


# (D, P): upper and lower limit of class ISO2 over basic as printed [micrometre]
FINE = {
    (6, 0.75): ("53", "32"),
    (8, 0.75): ("53", "32"),
    (8, 1): ("59", "35"),
    (9, 1): ("59", "35"),
    (10, 1): ("59", "35"),
    (10, 1.25): ("63", "38"),
}


@pytest.mark.parametrize(("diameter", "pitch"), FINE)
def test_fine_pitches_that_were_read(diameter: float, pitch: float):
    found, basic = metric_tap_limits(diameter, pitch, 2), METRIC.pitch_diameter(diameter, pitch)
    over = [1000 * (size - basic) for size in (found.pitch_max, found.pitch_min)]
    assert over == pytest.approx([float(text) for text in FINE[diameter, pitch]], abs=0.5 + 1e-6)
