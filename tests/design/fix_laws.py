"""What must hold of a job that the rules refuse: of each cure offered, and of all applied."""

from typing import Any

from tapmodel.designing.cures.fix import cured, errors_of, fixed
from tapmodel.designing.design import design_at_once
from tapmodel.designing.settle import settle
from tapmodel.errors import InputError, NoTapError
from tapmodel.findings import Finding
from tapmodel.spec.job import Job
from tapmodel.spec.job_file import checked
from tapmodel.words import Severity

Table = dict[str, Any]


def refused(table: Table) -> Job | None:
    """The job where its design breaks rules; None where it breaks none or cannot be read."""
    try:
        job = checked(table)
        return job if errors_of(job) else None
    except InputError:
        return None


def cures_hold(table: Table) -> None:
    """Each cure makes its finding vanish; all that are needed leave no error."""
    job = refused(table)
    if job is None:
        return
    errors = offered(job)
    for finding in errors:
        for cure in finding.cures:
            assert finding.code not in troubles(cured(job, cure)), (finding.code, cure)
    mended, applied = fixed(job)
    left = errors_of(mended)
    assert len(left) + len(applied) <= len(errors)
    if all(finding.cures for finding in errors):
        assert left == ()
    else:
        assert not any(finding.cures for finding in offered(mended))


def offered(job: Job) -> list[Finding]:
    """The errors of a job with the cures that its user is shown."""
    try:
        found = design_at_once(job).findings
    except NoTapError as error:
        found = error.findings
    return [finding for finding in found if finding.severity is Severity.ERROR]


def troubles(job: Job) -> set[str]:
    """Codes of the errors and warnings of a job."""
    try:
        found = settle(job).findings
    except NoTapError as error:
        found = error.findings
    return {finding.code for finding in found if finding.severity is not Severity.NOTE}
