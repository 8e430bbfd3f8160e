"""`tapmodel poster`: one page to hang over the bench."""

from pathlib import Path
from typing import Annotated

import typer

from tapmodel.cli.ending import say
from tapmodel.cli.options import Fix, JobArgument, NoStrength, Out, Sets, TextUnits, View
from tapmodel.cli.settled import designed, end
from tapmodel.cli.telling import tell_delivery
from tapmodel.errors import escaped
from tapmodel.report.poster.paper import OF_SHEET, PosterPaper

EXAMPLES = (
    "tapmodel poster M18x0.75",
    "tapmodel poster 3/8-16 --units inch --paper Tabloid",
)


def poster(  # noqa: PLR0913  (a command has as many options as its user needs)
    job: JobArgument,
    out: Out = Path("out"),
    sets: Sets = None,
    *,
    fix: Fix = False,
    no_strength: NoStrength = False,
    paper: Annotated[
        PosterPaper | None,
        typer.Option(
            help="Size of the poster; by default the larger one that goes with the job's sheets.",
            case_sensitive=False,
        ),
    ] = None,
    units: TextUnits = None,
    projection: View = None,
) -> None:
    """Write a poster to hang over the bench, as PDF and PNG.

    Its large picture is of a preview model, which nothing was proved of; side view and cutting end
    are true to the scales that stand beside them.
    """
    from tapmodel.report.look_wanted import look_of
    from tapmodel.report.poster.write import write_poster
    from tapmodel.run.delivery.place import deliver
    from tapmodel.run.delivery.staging import staging
    from tapmodel.run.record.compose import design_record

    settled, asked = designed(job, sets, fix=fix, units=units, foretold=not no_strength, made=True)
    look = look_of(asked, units, projection=projection)
    with staging(out, settled.name) as staged:
        pdf = staged / f"{settled.name}-poster.pdf"
        write_poster(pdf, pdf.with_suffix(".png"), settled, look, paper or OF_SHEET[look.paper])
        record = deliver(staged, out / settled.name, design_record(settled))
    for path in record["delivery"]["written"]:
        say(escaped(str(out / settled.name / path)))
    tell_delivery(record)
    end(settled, look.units)
