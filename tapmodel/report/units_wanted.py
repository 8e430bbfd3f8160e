"""In which units a job is written for people."""

from tapmodel.spec.designation import parse
from tapmodel.spec.job import Job
from tapmodel.words import Family, Units

IN_INCHES = frozenset({Family.UNIFIED, Family.WHITWORTH, Family.ACME, Family.PIPE})
"""Families whose sizes are told in inches: whether the shop's dials are, nobody can tell."""


def units_of(job: Job, option: Units | None = None) -> Units:
    """The units of what is written for people: the option, else the job's, else by rule.

    By rule both for a thread whose size is told in inches, which may be cut on a lathe of either
    kind, else mm.
    """
    if option is not None:
        return option
    if job.units is not None:
        return Units(job.units)
    return Units.BOTH if parse(job.designation).family in IN_INCHES else Units.MM
