"""The relief law for one angle is that for many."""

import numpy as np
import pytest

from tapmodel.shape import relief
from tapmodel.shape.relief import drop, heel_drop
from tapmodel.tap.tap import Relief
from tapmodel.words import ReliefPlace

MAJOR = 18.05
RELIEFS = (
    relief.concentric(ReliefPlace.THREAD),
    relief.eccentric_by_edge(ReliefPlace.CHAMFER, MAJOR, 6.0),
    relief.con_eccentric(ReliefPlace.THREAD, MAJOR, 62.0, 15.0, 0.04),
)


@pytest.mark.parametrize("law", RELIEFS, ids=lambda law: law.kind.value)
def test_an_angle_alone_drops_as_it_does_among_others(law: Relief) -> None:
    # before the edge, in the margin, at the heel, and where a ray misses the circle
    angles = np.array([-20.0, -1.0, 0.0, 3.0, 15.0, 15.5, 40.0, 62.0, 150.0])
    alone = [heel_drop(law, MAJOR, float(angle)) for angle in angles]
    assert alone == pytest.approx(drop(law, MAJOR, angles).tolist(), abs=1e-14)
