"""`tapmodel set`: the work of one tap shared among two or three."""

from enum import Enum
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from tapmodel.cli.ending import say
from tapmodel.cli.options import Fix, JobArgument, Sets, TextUnits
from tapmodel.cli.pen import pen
from tapmodel.cli.set_files import SetFiles, write_set
from tapmodel.cli.settled import designed, end
from tapmodel.errors import InputError
from tapmodel.file_names import refuse_strange
from tapmodel.words import Units

if TYPE_CHECKING:
    from tapmodel.designing.record import TapDesign
    from tapmodel.findings import Finding
    from tapmodel.spec.job import Job

EXAMPLES = (
    "tapmodel set Tr16x4 --set hole.material=1.4301",
    "tapmodel set my-tap.toml --taps 3 --out jobs",
)


class Taps(Enum):
    """Of how many taps a set can be."""

    TWO = "2"
    THREE = "3"


def set(  # noqa: A001, PLR0913  (the command's name; it has as many options as its user needs)
    job: JobArgument,
    sets: Sets = None,
    *,
    fix: Fix = False,
    taps: Annotated[Taps | None, typer.Option(help="Taps in the set, needed or not.")] = None,
    out: Annotated[Path, typer.Option(help="Folder for the job files.")] = Path(),
    units: TextUnits = None,
    overwrite: Annotated[bool, typer.Option("--overwrite", help="Replace the files.")] = False,
) -> None:
    """Share a tap's work between several, a job file for each.

    `--fix` leaves a tap that takes too much torque as it is: the set mends that.
    """
    from tapmodel.designing.codes import Code
    from tapmodel.designing.design import settled_tap
    from tapmodel.designing.sets.jobs import jobs_of
    from tapmodel.designing.sets.mending import cures_of_set
    from tapmodel.designing.sets.need import Reason, set_of
    from tapmodel.designing.sets.sharing import COUNTS, sharing_of
    from tapmodel.report.screen.chapter import wrapped
    from tapmodel.report.screen.findings import findings_lines
    from tapmodel.report.screen.sets import set_page
    from tapmodel.report.units_wanted import units_of
    from tapmodel.report.words.sets import need, tap_for
    from tapmodel.shop.judged import judged

    refuse_strange("--out", out)
    settled, asked = designed(
        job, sets, fix=fix, spared=frozenset({Code.TAP_OVERLOADED}), units=units, briefly=True
    )
    if settled.part is not None:
        raise InputError("set.number", str(settled.part.number), "a job of one tap, without [set]")
    told = units_of(asked, units)
    count = None if taps is None else int(taps.value)
    sharing = sharing_of(settled, count)
    if sharing is None:
        end(settled, told)
        raise InputError("JOB", job, "a thread whose earlier taps can still be turned")
    found = set_of(settled)
    hopeless = found.reason is Reason.TOO_MUCH_FOR_THREE
    cures = cures_of_set(asked, settled) if hopeless else ()
    say("\n".join(wrapped(need(settled, found, told, count, cures))))
    if found.reason is Reason.ONE_DOES and count is None:
        return
    jobs = _as_written(jobs_of(asked, settled, sharing), asked, units)
    designs = [judged(settled_tap(each)) for each in jobs]
    say("")
    say(set_page(sharing, designs, told, pen()))
    if not sharing.bears and count is None:
        raise typer.Exit(1)
    write_set(SetFiles(out, settled.name, COUNTS[-1]), jobs, designs, overwrite=overwrite)
    wrong = [_wrong(*each) for each in zip(jobs, designs, strict=True)]
    for design, findings in zip(designs, wrong, strict=True):
        if findings:
            say(f"{tap_for(design)}:", aside=True)
        for line in findings_lines(findings, pen(aside=True), told):
            say(line, aside=True)
    if any(wrong):
        raise typer.Exit(1)


def _as_written(jobs: "tuple[Job, ...]", asked: "Job", units: Units | None) -> "tuple[Job, ...]":
    """The jobs as `new` would write them: with the units wanted, and in inches for who reads those.

    They are designed as they are written, so that the page tells what the files give.
    """
    from tapmodel.report.job_lengths import found_in_inches
    from tapmodel.report.units_wanted import units_of

    if units is not None:
        jobs = tuple(job.model_copy(update={"units": units.value}) for job in jobs)
    if units_of(asked, units) is not Units.INCH:
        return jobs
    return tuple(found_in_inches(job, asked) for job in jobs)


def _wrong(job: "Job", design: "TapDesign") -> "list[Finding]":
    """What makes a tap of the set one that should not be used so, with cures.

    The page names the rest, and of that no cure is sought.
    """
    from tapmodel.designing.codes import Code
    from tapmodel.designing.design import cured

    wrong = {finding.code for finding in design.errors} | {Code.TAP_OVERLOADED}
    return [finding for finding in cured(design, job, wrong).findings if finding.code in wrong]
