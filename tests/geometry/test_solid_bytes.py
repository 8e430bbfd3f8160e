import pytest

from tapmodel.designing.design import design_tap
from tapmodel.export.step.write import step_text
from tapmodel.geometry.kernel.build import build_solid
from tapmodel.geometry.kernel.solid_bytes import from_bytes, to_bytes
from tapmodel.geometry.kernel.step.likeness import departure
from tapmodel.geometry.kernel.topology import Solid
from tapmodel.spec.job_file import checked


@pytest.fixture(autouse=True)
def _one_moment(monkeypatch: pytest.MonkeyPatch) -> None:
    """Files of one text were not always written within one second."""
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "0")


def test_a_solid_arrives_as_it_was_sent(small_solid: Solid):
    arrived = from_bytes(to_bytes(small_solid))
    # Directions are made of length one anew; nothing else may change by a bit.
    assert departure(small_solid, arrived) < 1e-13
    assert step_text(arrived, "tap") == step_text(small_solid, "tap")


def test_so_does_a_rounded_one():
    design = design_tap(checked({"designation": "G 1/8", "flutes": {"count": 3}}))
    solid = build_solid(design.tap)
    arrived = from_bytes(to_bytes(solid))
    assert departure(solid, arrived) < 1e-13
    assert step_text(arrived, "tap") == step_text(solid, "tap")
