"""`tapmodel design`: every number of a tap."""

import typer

from tapmodel.cli.ending import say
from tapmodel.cli.options import AsJson, Fix, JobArgument, Sets
from tapmodel.cli.settled import designed
from tapmodel.cli.telling import print_json


def design(
    job: JobArgument, sets: Sets = None, *, fix: Fix = False, as_json: AsJson = False
) -> None:
    """Print every number of a tap for the hole; no model is built."""
    from tapmodel.report.design_page import design_page
    from tapmodel.run.record.compose import design_record

    settled, _ = designed(job, sets, fix=fix)
    if as_json:
        print_json(design_record(settled))
    else:
        say(design_page(settled))
    if settled.errors:
        raise typer.Exit(1)
