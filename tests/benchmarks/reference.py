"""The tap that the benchmarks measure, and the job file that asks the program for it."""

import tempfile
from pathlib import Path

from tapmodel.designing.design import design_tap
from tapmodel.designing.record import TapDesign
from tapmodel.spec.job_file import read_job

TURNS, FLUTES = 25, 5
"""Of the reference, M20x1.25: con-eccentric thread relief, relieved plug chamfer, neck, square."""

_TEXT = """\
designation = "M20x1.25"
flutes.count = {flutes}
chamfer.form = "plug"
relief.thread = {{ kind = "con-eccentric", applies_to = "thread" }}

[blank]
thread_length = {length}
neck_diameter = 18.0
neck_length = 4.0
overall_length = {overall}
"""


def write_job(folder: Path, turns: int = TURNS, flutes: int = FLUTES) -> Path:
    """The job of the reference with other numbers of turns and flutes, as a file."""
    length = 1.25 * turns
    file = folder / "reference.toml"
    file.write_text(_TEXT.format(flutes=flutes, length=length, overall=length + 80))
    return file


def reference(turns: int = TURNS, flutes: int = FLUTES) -> TapDesign:
    """The design of the same."""
    with tempfile.TemporaryDirectory() as folder:
        return design_tap(read_job(write_job(Path(folder), turns, flutes)))
