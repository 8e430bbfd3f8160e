import pytest

from tapmodel.errors import InputError
from tapmodel.shop.compound import along_compound, compound_settings

# One mm of depth: the secant of the setting, from a table of functions.
SECANTS = [(0.0, 1.0), (29.0, 1.1433541), (29.5, 1.1489555), (30.0, 1.1547005), (60.0, 2.0)]


@pytest.mark.parametrize(("angle", "secant"), SECANTS)
def test_feed_for_a_depth(angle: float, secant: float):
    assert along_compound(0.25, angle) == pytest.approx(0.25 * secant, abs=1e-7)
    assert along_compound(-0.25, angle) == pytest.approx(-0.25 * secant, abs=1e-7)


@pytest.mark.parametrize("angle", [-0.1, 90.0, 150.0])
def test_slide_that_does_not_approach_the_work(angle: float):
    with pytest.raises(InputError, match="compound"):
        along_compound(1.0, angle)


def test_usual_settings():
    assert compound_settings(30.0) == (0.0, 29.0, 29.5, 30.0)
    assert compound_settings(14.5) == (0.0, 13.5, 14.0, 14.5)
