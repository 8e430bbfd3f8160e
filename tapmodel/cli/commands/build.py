"""`tapmodel build`: the solid, proved, and every file."""

from dataclasses import replace
from pathlib import Path
from typing import Annotated

import typer

from tapmodel.cli.ending import say
from tapmodel.cli.options import (
    USUAL,
    AsJson,
    Fix,
    JobArgument,
    Megabytes,
    NoStrength,
    Out,
    PaperSize,
    Seconds,
    Sets,
    TextUnits,
    View,
)
from tapmodel.cli.pen import pen
from tapmodel.cli.progress import foreseen_for, limits_of, progress
from tapmodel.cli.settled import designed
from tapmodel.cli.telling import print_json, tell_delivery, tell_preview
from tapmodel.errors import escaped
from tapmodel.export.formats import DEFAULT_FORMATS, parse_formats
from tapmodel.run.admitted import refuse_broken
from tapmodel.run.wish import Wish
from tapmodel.run.workshop import builders, preview_with, previewers, produce_with

EXAMPLES = (
    "tapmodel build M18x0.75",
    "tapmodel build my-tap.toml --formats step,sheet",
    "tapmodel build M10 --preview",
)


def build(  # noqa: PLR0913  (a command has as many options as its user needs)
    job: JobArgument,
    out: Out = Path("out"),
    sets: Sets = None,
    formats: Annotated[
        str, typer.Option(help="Kinds of files to write, with commas; no others are written.")
    ] = DEFAULT_FORMATS,
    *,
    fix: Fix = False,
    no_strength: NoStrength = False,
    force: Annotated[bool, typer.Option("--force", help="Build what breaks a rule.")] = False,
    preview: Annotated[bool, typer.Option("--preview", help="A quick look, not verified.")] = False,
    as_json: AsJson = False,
    paper: PaperSize = None,
    units: TextUnits = None,
    projection: View = None,
    seconds: Seconds = USUAL.seconds,
    megabytes: Megabytes = USUAL.memory_mb,
) -> None:
    """Build and verify the solid, and write every file.

    Files and record go to OUT/NAME.

    With --force a design that breaks a rule is built all the same and the exit code is 0; one that
    leaves no tap to describe cannot be forced.
    """
    wanted = Wish(parse_formats(formats))
    limits = limits_of(seconds, megabytes)
    with previewers(limits) if preview else builders(wanted, limits) as crew:
        settled, asked = designed(
            job,
            sets,
            fix=fix,
            units=units,
            foretold=not no_strength,
            made=True,
            at_once=preview,
        )
        from tapmodel.report.look_wanted import look_of
        from tapmodel.report.screen.build import build_summary
        from tapmodel.report.screen.findings import findings_lines

        wanted = replace(wanted, look=look_of(asked, units, paper, projection))
        for line in findings_lines(settled.findings, pen(aside=True), wanted.look.units):
            say(line, aside=True)
        refuse_broken(settled, force=force, units=wanted.look.units)
        foreseen = foreseen_for(settled, limits, preview=preview)
        with progress(foreseen) as on_stage:
            if preview:
                record = preview_with(crew, settled, out, on_stage, of_job=asked)
                tell_preview(record, out, err=as_json)
                return
            record = produce_with(crew, settled, out, wanted, on_stage)
    if as_json:
        print_json(record)
    else:
        folder = Path(escaped(str(out / settled.name)))
        say(build_summary(record, folder, wanted.look.units))
    tell_delivery(record)
