"""No zero is passed over: features far narrower than the first cells, several functions at once."""

import numpy as np
import pytest

from tapmodel.geometry.trace.zeros import zeros

PLACES = (0.0317, 0.25, 0.4321, 0.7071, 0.999)
WIDTHS = (1e-2, 1e-4, 1e-6, 1e-8)


def _on_unit(*functions: object) -> list[float]:
    one = np.zeros(1), np.ones(1)

    def together(_i: np.ndarray, t: np.ndarray) -> np.ndarray:
        return np.stack([function(t) for function in functions])  # type: ignore[operator]

    (found,) = zeros(together, np.zeros(1, dtype=np.intp), *one)
    return found


# Narrower, the dip would be no deeper than rounding.
@pytest.mark.parametrize("place", PLACES)
@pytest.mark.parametrize("width", WIDTHS[:3])
def test_a_smooth_dip_is_found(place: float, width: float) -> None:
    found = _on_unit(lambda t: (t - place) ** 2 - width**2)
    inside = [end for end in (place - width, place + width) if end <= 1]
    assert found == pytest.approx(inside, abs=1e-3 * width)


@pytest.mark.parametrize("place", PLACES)
@pytest.mark.parametrize("width", WIDTHS)
def test_a_tent_with_a_kink_is_found(place: float, width: float) -> None:
    found = _on_unit(lambda t: 3 * (width - np.abs(t - place)))
    inside = [end for end in (place - width, place + width) if end <= 1]
    assert found == pytest.approx(inside, abs=1e-3 * width)


@pytest.mark.parametrize("slope", [1.0, 40.0])
@pytest.mark.parametrize("place", PLACES)
def test_two_functions_that_are_positive_together_for_a_moment_are_told_apart(
    place: float, slope: float
) -> None:
    """The least of them rises, falls and rises within one cell; of each alone that is plain."""
    width = 1e-4

    def rising(t: np.ndarray) -> np.ndarray:
        return slope * (t - place)

    def folded(t: np.ndarray) -> np.ndarray:
        return np.maximum(place + width - t, 37 * (t - place - 3 * width))

    found = _on_unit(rising, folded)
    assert {round(root, 9) for root in found} >= {round(place, 9), round(place + width, 9)}


def test_zeros_where_another_function_is_negative_do_not_matter_and_cost_nothing() -> None:
    asked = 0

    def wavy(t: np.ndarray) -> np.ndarray:
        nonlocal asked
        asked += t.size
        return np.sin(200 * t) ** 2 * (t - 0.5)

    # Negative but for the last thousandth, where the wave has no zero.
    found = _on_unit(wavy, lambda t: 1000 * t - 999)
    assert found == [pytest.approx(0.999, abs=1e-15)]
    assert asked < 500


def test_the_work_does_not_grow_with_the_number_of_rows_beyond_them() -> None:
    points = 0

    def lines(i: np.ndarray, t: np.ndarray) -> np.ndarray:
        nonlocal points
        points += t.size
        return (t - (i + 0.5) / 1000)[None]

    rows = np.arange(1000)
    found = zeros(lines, rows, np.zeros(1000), np.ones(1000))
    assert [root for (root,) in found] == pytest.approx((rows + 0.5) / 1000, abs=1e-15)
    assert points < 1000 * 45
