"""`tapmodel verify`: a STEP file against a job."""

from pathlib import Path
from typing import Annotated

import typer

from tapmodel.cli.ending import say
from tapmodel.cli.options import AsJson, JobArgument, Sets, TextUnits
from tapmodel.cli.progress import progress
from tapmodel.cli.settled import designed
from tapmodel.cli.telling import print_json, shell_word
from tapmodel.errors import InputError, KernelError
from tapmodel.run.workshop import inspect_with, inspectors

_STEP = {".step", ".stp"}

EXAMPLES = (
    "tapmodel verify back-from-cam.step M18x0.75",
    "tapmodel verify out/M10/M10.step my-tap.toml --units inch",
)


def verify(
    file: Annotated[
        Path, typer.Argument(metavar="FILE", help="A STEP file, for instance back from CAM.")
    ],
    job: JobArgument,
    sets: Sets = None,
    *,
    units: TextUnits = None,
    as_json: AsJson = False,
) -> None:
    """Compare the solid of a STEP file with the tap of a job."""
    if Path(job).suffix.lower() in _STEP:
        right = f"the STEP file first: tapmodel verify {shell_word(job)} {shell_word(str(file))}"
        raise InputError("JOB", job, right)
    with inspectors() as crew:
        from tapmodel.export.step.foreign import refuse_unreadable
        from tapmodel.report.screen.verify import verify_summary
        from tapmodel.report.units_wanted import units_of

        settled, asked = designed(job, sets, units=units, briefly=True)
        refuse_unreadable(file)
        with progress() as on_stage:
            try:
                measured = inspect_with(crew, settled, file, on_stage)
            except KernelError as error:
                # Whatever becomes of the kernel over a file from elsewhere, the file did it.
                allowed = f"a STEP file of a sound solid ({error})"
                raise InputError("FILE", str(file), allowed) from None
    if as_json:
        print_json(measured)
    else:
        say(verify_summary(measured, units_of(asked, units)))
    if measured["differences"]:
        raise typer.Exit(1)
