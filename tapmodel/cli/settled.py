"""From the words of a command to a design, and what becomes of one that breaks a rule."""

from pathlib import Path
from typing import TYPE_CHECKING

import typer

from tapmodel.cli.ending import say
from tapmodel.cli.job_words import is_file
from tapmodel.cli.measured_file import with_kept
from tapmodel.cli.pen import pen
from tapmodel.errors import InputError, NoTapError
from tapmodel.words import Severity, Units

if TYPE_CHECKING:
    from tapmodel.comparing.variants import Asked
    from tapmodel.designing.record import TapDesign
    from tapmodel.spec.job import Job


def designed(  # noqa: PLR0913  (what every command may ask of a design)
    text: str,
    sets: list[str] | None,
    *,
    fix: bool = False,
    spared: frozenset[str] = frozenset(),
    units: Units | None = None,
    foretold: bool = True,
    made: bool = False,
    at_once: bool = False,
    briefly: bool = False,
) -> "tuple[TapDesign, Job]":
    """The design of a designation or of a job file, and the job.

    With `fix` the cures of broken rules are applied first, one after the other, and each is told;
    those of `spared` codes are not. A refusal is told in `units`, by default those of the job.
    Unless `foretold`, nothing is said of what the tap will do in the hole. With `made` the design
    has what was measured of its tap, if that is kept beside the job file; not with values laid over
    the job, which make another tap. `at_once` leaves its runners-up to be weighed later. `briefly`
    is for who tells no runners-up, and of what is found only the errors: of those alone, but the
    `spared`, cures are sought.

    Raises:
        InputError: a word or value that cannot be used.
        NoTapError: values that leave no tap to describe.
    """
    from tapmodel.designing.design import design_at_once, design_tap, without_prediction
    from tapmodel.report.units_wanted import units_of
    from tapmodel.shop.judged import judged
    from tapmodel.spec.job_file import job_for, read_job

    job = read_job(Path(text), sets or []) if is_file(text) else job_for(text, sets or [])
    if fix:
        job = _fixed(job, spared)
    try:
        if briefly:
            design = judged(_brief(job, spared))
        else:
            design = judged(design_at_once(job) if at_once else design_tap(job))
        if made and not sets and not fix:
            design = with_kept(design, job, text)
    except NoTapError as error:
        error.units = units_of(job, units)
        raise
    return design if foretold else without_prediction(design), job


def _brief(job: "Job", spared: frozenset[str]) -> "TapDesign":
    """The design with cures of its errors alone."""
    from tapmodel.designing.design import cured, settled_tap

    design = settled_tap(job)
    return cured(design, job, {finding.code for finding in design.errors} - spared)


def is_job(text: str) -> bool:
    """Whether a text names a job file, or is a designation."""
    if is_file(text):
        return True
    from tapmodel.spec.designation import parse

    try:
        parse(text)
    except InputError:
        return False
    return True


def varied_job(text: str, vary: list[str] | None, sets: list[str] | None) -> "Asked":
    """What is to be compared: a designation or a job file, and the values for some fields.

    Raises:
        InputError: a file, a field or a value that cannot be used, no field that is varied, or one
            that is varied or set besides.
    """
    from tapmodel.comparing.variants import Asked
    from tapmodel.spec.job_file import read_job_table
    from tapmodel.spec.overrides import pairs_of
    from tapmodel.spec.variations import HOW, variation

    if not vary:
        raise InputError("--vary", "none", HOW)
    pairs = pairs_of(sets or [])
    held, varied = {key for key, _ in pairs}, dict[str, tuple[object, ...]]()
    for one in map(variation, vary):
        if one.field in varied:
            raise InputError("--vary", one.field, "each field once, with all its values")
        if one.field in held:
            raise InputError("--vary", one.field, "a field that --set does not hold at one value")
        varied[one.field] = one.values
    if is_file(text):
        return Asked(read_job_table(Path(text)), varied, pairs, text)
    return Asked({"designation": text}, varied, pairs)


def _fixed(job: "Job", spared: frozenset[str]) -> "Job":
    from tapmodel.designing.cures.fix import fixed
    from tapmodel.report.words.cures import applied

    mended, cures = fixed(job, spared)
    if not cures:
        _say_nothing_fixed(job, spared)
    for cure in cures:
        say(f"fixed: {applied(cure)}", aside=True)
    return mended


def _say_nothing_fixed(job: "Job", spared: frozenset[str]) -> None:
    """Say why no cure was applied, and what stays as it is."""
    from tapmodel.designing.settle import settle

    found = settle(job)
    if any(finding.code not in spared for finding in found.errors):
        say("fixed: nothing; no cure leaves fewer errors", aside=True)
        return
    left = sum(finding.severity is Severity.WARNING for finding in found.findings)
    stay = f"; {left} warning{'s stay' if left > 1 else ' stays'}" if left else ""
    say(f"fixed: nothing, for no rule is broken{stay}", aside=True)


def end(settled: "TapDesign", units: Units = Units.MM) -> None:
    """Say which rules the design breaks beside what was handed over, and in the exit code."""
    if not settled.errors:
        return
    from tapmodel.report.screen.findings import findings_lines

    for line in findings_lines(settled.errors, pen(aside=True), units):
        say(line, aside=True)
    raise typer.Exit(1)
