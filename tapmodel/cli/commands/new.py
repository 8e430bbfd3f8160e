"""`tapmodel new`: a commented job file."""

from pathlib import Path
from typing import Annotated

import typer

from tapmodel.cli.ending import say
from tapmodel.cli.new_file import refuse_taken, refuse_unread
from tapmodel.cli.options import Fix, JobArgument, Sets, TextUnits
from tapmodel.cli.settled import designed, end
from tapmodel.cli.telling import shell_word
from tapmodel.errors import escaped
from tapmodel.file_names import refuse_strange

EXAMPLES = (
    "tapmodel new M18x0.75 my-tap.toml",
    "tapmodel new 1/2-12-LH left.toml --set flutes.count=4",
)


def new(  # noqa: PLR0913  (a command has as many options as its user needs)
    designation: JobArgument,
    file: Annotated[Path, typer.Argument(metavar="FILE", help="The job file to write.")],
    sets: Sets = None,
    *,
    fix: Fix = False,
    units: TextUnits = None,
    overwrite: Annotated[bool, typer.Option("--overwrite", help="Replace the file.")] = False,
) -> None:
    """Write a job file to edit: the usual edits, all else with why."""
    from tapmodel.export.atomic import write_whole
    from tapmodel.report.job_file import commented_job
    from tapmodel.report.units_wanted import units_of

    refuse_strange("FILE", file)
    refuse_unread(file)
    settled, job = designed(designation, sets, fix=fix, units=units, briefly=True)
    if units is not None:
        job = job.model_copy(update={"units": units.value})
    refuse_taken(file, overwrite=overwrite)
    write_whole(file.resolve(), commented_job(job, settled, file.parent).encode())
    written = f"wrote {file}; edit it, then: tapmodel build {shell_word(str(file))}"
    say(escaped(written), aside=True)
    end(settled, units_of(job))
