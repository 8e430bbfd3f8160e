"""What a cure costs: rules that it breaks anew, or breaks further than they are broken."""

from tapmodel.designing.cures.trials import Outcome
from tapmodel.findings import Finding
from tapmodel.words import Severity

WORSE = 1.05
"""So many times further beyond its limit a finding is a graver one; less is nothing to tell."""


def worsened(mended: Finding, before: Outcome, after: Outcome) -> tuple[Finding, ...]:
    """The findings of `after` that ask for a change and are new or graver than `before`.

    What is left of the error that was mended, a warning of the same number, is no worsening.

    Source: rule of this program.
    """
    found = (each for each in after.troubles.values() if each is not None)
    return tuple(
        each
        for each in found
        if each.field != mended.field and _worse(before.troubles.get(each.code), each)
    )


def _worse(was: Finding | None, now: Finding) -> bool:
    if was is None:
        return True
    if was.severity is not now.severity:
        return now.severity is Severity.ERROR
    return _beyond(now) > WORSE * _beyond(was)


def _beyond(finding: Finding) -> float:
    """How far the number lies beyond its limit, as a share of that; 0 for a word."""
    limit, actual = finding.limit, finding.actual
    if isinstance(actual, str):
        return 0.0
    beyond = 0.0
    for sign, end in ((-1, limit.low), (1, limit.high)):
        if end is not None:
            beyond = max(beyond, sign * (actual - end) / (abs(end) or 1.0))
    return beyond
