"""Records as JSON: the same as if they were copied to tables first."""

import json
from dataclasses import asdict, dataclass

import pytest

from tapmodel.designing.design import design_tap
from tapmodel.report.units import Units
from tapmodel.report.view.changing import changing_view_of
from tapmodel.serve.written import Written
from tapmodel.spec.job_file import job_for


@dataclass(frozen=True, slots=True)
class Holds:
    """A record of anything."""

    what: object


@pytest.mark.parametrize("thread", ["M10", "Tr16x4"])
def test_a_view_is_written_as_its_copy_is(thread: str) -> None:
    view = changing_view_of(design_tap(job_for(thread)), Units.BOTH)
    written = Written({"view": view}).body
    assert json.loads(written) == {"view": json.loads(json.dumps(asdict(view)))}
    # Signs and degrees stand as they are.
    assert "°".encode() in written


def test_what_is_no_record_is_not_guessed_at() -> None:
    with pytest.raises(TypeError, match="set is no record"):
        Written(Holds({1}))
    with pytest.raises(ValueError, match="JSON"):
        Written(Holds(float("nan")))
