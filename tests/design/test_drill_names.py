"""Drills that a job gives by name."""

import pytest

from tapmodel.designing.design import design_tap
from tapmodel.designing.settle import settle
from tapmodel.errors import InputError
from tapmodel.report.job_file import commented_job
from tapmodel.spec.job_file import checked, job_for


@pytest.mark.parametrize(
    ("typed", "inches"),
    [
        *(("Z", 0.413), ("z", 0.413), ("letter Z", 0.413), ("#7", 0.201), ("No. 7", 0.201)),
        *(("no 80", 0.0135), ("27/64in", 27 / 64), ("A", 0.234)),
    ],
)
def test_letter_and_number_drills_are_given_by_name(typed: str, inches: float) -> None:
    """Diameters as ASME B94.11M lists them."""
    job = job_for("1/2 BSW", [f"hole.drill={typed}"])
    assert settle(job).drill == pytest.approx(25.4 * inches, rel=1e-6)


def test_a_named_drill_stays_named_in_the_file_and_can_be_cured() -> None:
    job = job_for("1/2 BSW", ["hole.drill=#7"])
    assert 'drill = "#7"' in commented_job(job, settle(job))
    wide = next(f for f in design_tap(job).findings if f.code == "drill-size")
    assert wide.actual == pytest.approx(5.1054)
    assert wide.cures
    table = {"designation": "1/2 BSW", "hole": {"drill": "letter Z"}}
    assert checked(table).typed()["hole.drill"] == "letter Z"


@pytest.mark.parametrize("typed", ["ZZ", "#81", "#0", "no", "letter", "27/63"])
def test_what_names_no_drill_is_refused(typed: str) -> None:
    with pytest.raises(InputError, match=r"hole\.drill"):
        job_for("1/2 BSW", [f"hole.drill={typed}"])
