"""`tapmodel page`: a page with an unproved mesh."""

from pathlib import Path

from tapmodel.cli.options import (
    USUAL,
    Fix,
    JobArgument,
    Megabytes,
    NoStrength,
    Out,
    Seconds,
    Sets,
    TextUnits,
    View,
)
from tapmodel.cli.progress import foreseen_for, limits_of, progress
from tapmodel.cli.settled import designed, end
from tapmodel.cli.telling import tell_preview
from tapmodel.run.workshop import preview_with, previewers

EXAMPLES = ("tapmodel page M18x0.75",)


def page(  # noqa: PLR0913  (a command has as many options as its user needs)
    job: JobArgument,
    out: Out = Path("out"),
    sets: Sets = None,
    *,
    fix: Fix = False,
    no_strength: NoStrength = False,
    units: TextUnits = None,
    projection: View = None,
    seconds: Seconds = USUAL.seconds,
    megabytes: Megabytes = USUAL.memory_mb,
) -> None:
    """Write a page to turn the tap about in, not verified."""
    limits = limits_of(seconds, megabytes)
    with previewers(limits, page=True) as crew:
        settled, asked = designed(
            job, sets, fix=fix, units=units, foretold=not no_strength, made=True
        )
        from tapmodel.report.look_wanted import look_of

        look = look_of(asked, units, projection=projection)
        with progress(foreseen_for(settled, limits, preview=True)) as on_stage:
            record = preview_with(crew, settled, out, on_stage, look=look)
    tell_preview(record, out)
    end(settled, look.units)
