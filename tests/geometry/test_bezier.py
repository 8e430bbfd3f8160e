import numpy as np
import pytest

from tapmodel.geometry import bezier


def _evaluate(poles: np.ndarray, at: np.ndarray) -> np.ndarray:
    """De Casteljau's scheme, which shares nothing with the fitting."""
    points = np.repeat(poles[None], len(at), axis=0)
    while points.shape[1] > 1:
        points = points[:, :-1] + at[:, None, None] * (points[:, 1:] - points[:, :-1])
    return points[:, 0]


def _helix(t: np.ndarray) -> np.ndarray:
    return np.stack([10 * np.cos(t), 10 * np.sin(t), 0.4 * t], axis=-1)


def test_a_helix_of_45_degrees_is_met_as_closely_as_promised() -> None:
    start, end = np.array([0.2]), np.array([0.2 + np.pi / 4])
    poles = bezier.fit(_helix(bezier.span_parameters(start, end)))[0]
    at = np.linspace(0, 1, 101)
    miss = _evaluate(poles, at) - _helix(start + (end - start) * at)
    assert np.abs(miss).max() < bezier.CLOSE


def test_the_ends_of_a_span_are_met_to_the_last_bit() -> None:
    samples = _helix(bezier.span_parameters(np.array([0.2]), np.array([0.9])))
    poles = bezier.fit(samples)[0]
    assert np.array_equal(poles[[0, -1]], samples[0][[0, -1]])


def test_refining_halves_only_what_is_coarse() -> None:
    def curve(i: np.ndarray, t: np.ndarray) -> np.ndarray:
        return np.where((i == 0)[..., None], _helix(t), _helix(6 * t))

    owner, knots, samples = bezier.refined(curve, np.array([0, 1]), np.array([[0.0, 0.5]] * 2))
    assert owner.tolist().count(0) == 1
    assert owner.tolist().count(1) > 1
    mine = knots[owner == 1]
    assert mine[0, 0] == 0.0
    assert mine[-1, 1] == 0.5
    assert np.array_equal(mine[1:, 0], mine[:-1, 1])
    for (a, b), poles in zip(mine, bezier.fit(samples[owner == 1]), strict=True):
        at = np.linspace(0, 1, 33)
        assert np.abs(_evaluate(poles, at) - _helix(6 * (a + (b - a) * at))).max() < 2e-8


@pytest.mark.parametrize("spans", [1, 2, 3])
def test_joined_spans_have_as_many_poles_as_their_knots_ask_for(spans: int) -> None:
    knots = np.linspace(0, 1, spans + 1)
    fitted = bezier.fit(_helix(bezier.span_parameters(knots[:-1], knots[1:])))
    poles, multiplicities = bezier.join(knots, fitted)
    assert len(poles) == sum(multiplicities) - bezier.DEGREE - 1
