"""`tapmodel design`: every number of a tap."""

from typing import Annotated

import typer

from tapmodel.cli.ending import say
from tapmodel.cli.options import AsJson, Fix, JobArgument, NoStrength, Sets, TextUnits
from tapmodel.cli.pen import pen
from tapmodel.cli.settled import designed
from tapmodel.cli.telling import print_json

EXAMPLES = (
    "tapmodel design M18x0.75",
    "tapmodel design 7/16-26 --all --units both",
    "tapmodel design M10 --set flutes.count=4 --set flutes.rake=12",
)


def design(  # noqa: PLR0913  (a command has as many options as its user needs)
    job: JobArgument,
    sets: Sets = None,
    *,
    fix: Fix = False,
    no_strength: NoStrength = False,
    every: Annotated[bool, typer.Option("--all", help="Every number, as on the sheet.")] = False,
    sources: Annotated[
        bool, typer.Option("--sources", help="Also why each value was chosen.")
    ] = False,
    units: TextUnits = None,
    as_json: AsJson = False,
) -> None:
    """Print the numbers of a tap and what the rules find."""
    from tapmodel.report.screen.design import design_page
    from tapmodel.report.units_wanted import units_of
    from tapmodel.run.record.compose import design_record

    # Runners-up, each a design of its own, stand by the reasons alone.
    settled, asked = designed(
        job,
        sets,
        fix=fix,
        units=units,
        foretold=not no_strength,
        made=True,
        at_once=not (sources or as_json),
    )
    if as_json:
        print_json(design_record(settled))
    else:
        say(design_page(settled, units_of(asked, units), pen(), every=every, sources=sources))
    if settled.errors:
        raise typer.Exit(1)
