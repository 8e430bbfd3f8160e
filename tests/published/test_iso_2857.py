"""Pitch-diameter zones of taps against worked rows.

Status: the fractions of t are those of ISO 2857 from memory and t = TD2 grade 5 is from memory too;
the rows were worked out by hand from them and are no reading of the standard.
"""

import pytest

from tapmodel.spec.designation import parse
from tapmodel.standards.metric.tap_limits import metric_tap_limits

HALF_DIGIT = 0.00005

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
    assert found.source.certainty == "from memory"
