"""`tapmodel compare`: the same tap with other values, side by side."""

from pathlib import Path

import typer

from tapmodel.cli.ending import say
from tapmodel.cli.options import AsJson, JobArgument, Out, Sets, TextUnits, Varied
from tapmodel.cli.pen import pen
from tapmodel.cli.progress import counted
from tapmodel.cli.settled import varied_job
from tapmodel.cli.telling import print_json, tell_delivery
from tapmodel.errors import escaped

EXAMPLES = (
    "tapmodel compare M18x0.75 --vary flutes.offset=-1:3:9",
    "tapmodel compare M10 --vary flutes.count=3,4 --vary chamfer.form=plug,taper",
    "tapmodel compare my-tap.toml --vary flutes.rake=4:16:7 --set hole.material=brass",
)


def compare(  # noqa: PLR0913  (a command has as many options as its user needs)
    job: JobArgument,
    vary: Varied = None,
    sets: Sets = None,
    out: Out = Path("out"),
    *,
    units: TextUnits = None,
    as_json: AsJson = False,
) -> None:
    """Compare the tap with other values, and say which is best.

    Every combination of the values is settled, ranked, and written to a folder of its own, such as
    OUT/NAME-compare-flutes.count: all numbers as CSV (lengths in mm), and the cross-sections over
    each other as a picture.

    The best breaks no rule, does not bind, has the fewest warnings, then the greatest safety
    factor of torque, then the least rubbing. The exit code is 1 where each breaks a rule.
    """
    from tapmodel.comparing.variants import compare_taps
    from tapmodel.report.screen.comparison import comparison_page
    from tapmodel.report.units_wanted import units_of
    from tapmodel.run.comparison import deliver_comparison
    from tapmodel.spec.variations import number_of

    asked = varied_job(job, vary, sets)
    with counted(number_of(asked.varied)) as on_done:
        compared = compare_taps(asked, on_done)
    wanted = units_of(compared.job, units)
    record = deliver_comparison(compared, out, wanted)
    if as_json:
        print_json(record)
    else:
        say(comparison_page(compared, wanted, pen()))
    for path in record["delivery"]["written"]:
        say(escaped(str(out / record["name"] / path)), aside=as_json)
    tell_delivery(record, "comparison")
    if compared.verdict.best is None:
        raise typer.Exit(1)
