import numpy as np
import pytest

from tapmodel.geometry import bezier
from tapmodel.geometry.bezier import Indices


def _evaluate(poles: np.ndarray, at: np.ndarray) -> np.ndarray:
    """De Casteljau's scheme, which shares nothing with the fitting."""
    points = np.repeat(poles[None], len(at), axis=0)
    while points.shape[1] > 1:
        points = points[:, :-1] + at[:, None, None] * (points[:, 1:] - points[:, :-1])
    return points[:, 0]


def _helix(t: np.ndarray) -> np.ndarray:
    return np.stack([10 * np.cos(t), 10 * np.sin(t), 0.4 * t], axis=-1)


def _curves(i: Indices, t: np.ndarray) -> np.ndarray:
    """Curve 0 a gentle helix, curve 1 a tight one."""
    return np.where((i == 0)[..., None], _helix(t), _helix(6 * t))


def _miss(spans: bezier.Spans) -> float:
    """Largest distance of the polynomials from their curves, far more finely than they look."""
    at = np.linspace(0, 1, 101)
    found = [0.0]
    rows = zip(spans.owner, spans.ends, bezier.fit(spans.samples), strict=True)
    for owner, (a, b), poles in rows:
        t = a + (b - a) * at
        exact = _curves(np.full(t.shape, owner), t)
        found.append(float(np.abs(_evaluate(poles, at) - exact).max()))
    return max(found)


def test_curves_are_followed_as_closely_as_promised() -> None:
    spans = bezier.follow(_curves, np.array([0, 1]), np.array([[0.0, 0.5]] * 2))
    assert _miss(spans) < 1.5 * bezier.CLOSE


def test_spans_of_a_curve_rise_without_gaps() -> None:
    spans = bezier.follow(_curves, np.array([0, 1]), np.array([[0.0, 0.5]] * 2))
    for owner in (0, 1):
        mine = spans.ends[spans.owner == owner]
        assert (mine[0, 0], mine[-1, 1]) == (0.0, 0.5)
        assert np.array_equal(mine[1:, 0], mine[:-1, 1])
    assert np.sum(spans.owner == 1) > np.sum(spans.owner == 0)


def test_a_nearly_straight_curve_takes_the_least_degree_and_one_may_ask_for_more() -> None:
    owner, ends = np.array([0]), np.array([[0.0, 0.02]])
    assert bezier.follow(_curves, owner, ends).samples.shape == (1, 4, 3)
    assert bezier.follow(_curves, owner, ends, least_degree=7).samples.shape == (1, 8, 3)


@pytest.mark.parametrize("degree", [3, 5, 7])
def test_the_ends_of_a_span_are_met_to_the_last_bit(degree: int) -> None:
    samples = bezier.sample(_curves, np.array([0]), np.array([[0.2, 0.9]]), degree)[0]
    poles = bezier.fit(samples)
    assert np.array_equal(poles[[0, -1]], samples[[0, -1]])


@pytest.mark.parametrize("count", [1, 2, 3])
def test_joined_spans_keep_their_knots_and_have_the_poles_their_knots_ask_for(count: int) -> None:
    knots = np.linspace(0.0, 0.6, count + 1)
    ends = np.column_stack([knots[:-1], knots[1:]])
    spans = bezier.fit(bezier.sample(_curves, np.zeros(count, dtype=int), ends, 5))
    poles, multiplicities = bezier.join(knots, spans)
    assert len(poles) == sum(multiplicities) - 6
    # The pole left out at an inner knot lies where its neighbours put it: on the curve.
    for n in range(1, count):
        left, right = poles[4 * n], poles[4 * n + 1]
        assert (left + right) / 2 == pytest.approx(_helix(knots[n]), abs=1e-12)
