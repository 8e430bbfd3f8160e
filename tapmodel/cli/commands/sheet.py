"""`tapmodel sheet`: the papers without a model."""

from pathlib import Path

from tapmodel.cli.ending import say
from tapmodel.cli.options import Fix, JobArgument, NoStrength, Out, PaperSize, Sets, TextUnits, View
from tapmodel.cli.settled import designed, end
from tapmodel.cli.telling import tell_delivery
from tapmodel.errors import escaped

EXAMPLES = (
    "tapmodel sheet M18x0.75",
    "tapmodel sheet 1/2-12 --units both --paper Letter",
)


def sheet(  # noqa: PLR0913  (a command has as many options as its user needs)
    job: JobArgument,
    out: Out = Path("out"),
    sets: Sets = None,
    *,
    fix: Fix = False,
    no_strength: NoStrength = False,
    paper: PaperSize = None,
    units: TextUnits = None,
    projection: View = None,
) -> None:
    """Write the sheet for the machine, and all drawings."""
    from tapmodel.export.formats import Format
    from tapmodel.report.look_wanted import look_of
    from tapmodel.report.page.write import PageContent, write_page
    from tapmodel.report.sheet.papers import write_papers
    from tapmodel.run.delivery.place import deliver
    from tapmodel.run.delivery.staging import staging
    from tapmodel.run.record.compose import design_record

    settled, asked = designed(job, sets, fix=fix, units=units, foretold=not no_strength, made=True)
    look = look_of(asked, units, paper, projection)
    with staging(out, settled.name) as staged:
        drawings = write_papers(settled, staged, (Format.SHEET, Format.DRAWINGS), look)
        page = staged / f"{settled.name}-sheet.html"
        write_page(page, settled, PageContent(drawings), look.units)
        record = deliver(staged, out / settled.name, design_record(settled))
    for path in record["delivery"]["written"]:
        say(escaped(str(out / settled.name / path)))
    tell_delivery(record)
    end(settled, look.units)
