"""The whole design of a tap with all that is found about it, and the cures."""

from collections.abc import Container
from dataclasses import replace

from tapmodel.designing.cures.advice import advised
from tapmodel.designing.cures.trials import Trials
from tapmodel.designing.record import TapDesign
from tapmodel.designing.rules.load import CODES
from tapmodel.designing.runners_up import with_runners_up
from tapmodel.designing.settle import settle
from tapmodel.errors import NoTapError
from tapmodel.spec.job import Job


def without_prediction(design: TapDesign) -> TapDesign:
    """The same tap for who wants nothing said of what it will do in the hole."""
    kept = tuple(finding for finding in design.findings if finding.code not in CODES)
    choices = tuple(replace(choice, runner_up=None) for choice in design.choices)
    made = design.made
    if isinstance(made, TapDesign):
        made = without_prediction(made)
    return replace(design, prediction=None, findings=kept, choices=choices, made=made)


def settled_tap(job: Job) -> TapDesign:
    """The same tap with the same findings, but neither cures nor runners-up, which take longest.

    Raises:
        InputError: as `design_tap`.
        NoTapError: the same.

    Source: as `design_tap`.
    """
    try:
        return settle(job)
    except NoTapError:
        # What to change is worth its time where nothing else can be shown.
        return design_at_once(job)


def design_tap(job: Job) -> TapDesign:
    """Settle every number of the tap that `job` asks for and judge it; seek cures and runners-up.

    Findings of severity error stand in the result; nothing is repaired.

    Raises:
        InputError: a value that cannot be used at all.
        NoTapError: values that leave no tap to describe; the message says what to change.

    Source: the functions called here name theirs, choice by choice.
    """
    trials = Trials(job)
    return with_runners_up(_with_cures(job, trials), trials)


def design_at_once(job: Job) -> TapDesign:
    """The same without its runners-up, for who waits for the tap; `weighed` adds them.

    Raises:
        InputError, NoTapError: as `design_tap`.

    Source: as `design_tap`.
    """
    return _with_cures(job, Trials(job))


def cured(design: TapDesign, job: Job, codes: Container[str]) -> TapDesign:
    """A settled tap, cures sought of some of its findings: each may take a second.

    Args:
        design: by `settled_tap`.
        job: that it was made of.
        codes: of the findings whose cures are to be told.

    Source: as `design_tap`.
    """
    meant = tuple(finding for finding in design.findings if finding.code in codes)
    found = iter(advised(meant, Trials(job)))
    told = (next(found) if finding.code in codes else finding for finding in design.findings)
    return replace(design, findings=tuple(told))


def weighed(design: TapDesign, job: Job) -> TapDesign:
    """What `design_at_once` made of a job, with runners-up; one without prediction has none."""
    return with_runners_up(design, Trials(job)) if design.prediction else design


def _with_cures(job: Job, trials: Trials) -> TapDesign:
    try:
        design = settle(job)
    except NoTapError as error:
        raise NoTapError(*advised(error.findings, trials)) from None
    return replace(design, findings=advised(design.findings, trials))
