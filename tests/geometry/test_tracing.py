import numpy as np
import pytest

from tapmodel.geometry.trace import keys
from tapmodel.geometry.trace.keys import FacePair
from tapmodel.geometry.trace.loci import Loci
from tapmodel.geometry.trace.tracing import Function, Indices, trace

LEFT, RIGHT = keys.ring(1), keys.ring(2)


class Wave(Loci):
    """Loci along x; each shows where its own function is positive."""

    def __init__(self, functions: list[Function], cut: float | None = None) -> None:
        self.functions, self.cut = functions, cut
        self.lower = np.zeros(len(functions))
        self.upper = np.ones(len(functions))

    def at(self, i: Indices, t: np.ndarray) -> np.ndarray:
        return np.stack([t, i + np.ones_like(t), np.zeros_like(t)], axis=-1)

    def conditions(self, i: Indices, t: np.ndarray) -> np.ndarray:
        values = np.stack([function(i, t) for function in self.functions])
        return np.take_along_axis(values, i[None], axis=0)

    def cuts(self) -> list[Function]:
        return [] if self.cut is None else [lambda _i, t: t - self.cut]

    def carriers(self, i: Indices, t: np.ndarray) -> list[FacePair]:
        rows = zip(i.tolist(), t.tolist(), strict=True)
        return [(keys.cone(n), LEFT if x < (self.cut or 2) else RIGHT) for n, x in rows]


def _ends(wave: Wave) -> list[tuple[float, float]]:
    return [(edge.start[0], edge.end[0]) for edge in trace(wave, "spline")]


def test_edges_are_the_intervals_of_positive_margin() -> None:
    wave = Wave([lambda _i, t: (t - 0.3) * (0.8 - t)])
    (ends,) = _ends(wave)
    assert ends == pytest.approx((0.3, 0.8), abs=1e-15)


def test_a_feature_narrower_than_the_cells_is_found_where_it_grazes_zero() -> None:
    width = 1e-4
    wave = Wave([lambda _i, t: width**2 - (t - 0.4321) ** 2])
    (ends,) = _ends(wave)
    assert ends == pytest.approx((0.4321 - width, 0.4321 + width), abs=1e-12)


def test_a_gap_narrower_than_the_cells_divides_the_edge() -> None:
    wave = Wave([lambda _i, t: (t - 0.4321) ** 2 - 1e-8])
    assert len(_ends(wave)) == 2


def test_loci_do_not_disturb_each_other() -> None:
    wave = Wave([lambda _i, t: t - 0.25, lambda _i, t: -np.ones_like(t), lambda _i, t: 0.5 - t])
    assert _ends(wave) == [pytest.approx((0.25, 1.0)), pytest.approx((0.0, 0.5))]


def test_an_edge_is_divided_where_its_neighbour_changes() -> None:
    edges = trace(Wave([lambda _i, t: t + 1], cut=0.6), "spline")
    assert [edge.carriers[1] for edge in edges] == [LEFT, RIGHT]
    assert edges[0].end[0] == edges[1].start[0] == pytest.approx(0.6, abs=1e-15)
