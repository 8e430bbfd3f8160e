"""How the papers of a job look: as the command line asks for, else the job, else as usual."""

from tapmodel.report.units import Look, Paper, Projection
from tapmodel.report.units_wanted import units_of
from tapmodel.spec.job import Job
from tapmodel.words import Units


def look_of(
    job: Job,
    units: Units | None = None,
    paper: Paper | None = None,
    projection: Projection | None = None,
) -> Look:
    """The look of the papers of a job, each part of it by its option where that is given."""
    asked, usual = job.report, Look()
    return Look(
        paper or (Paper(asked.paper) if asked.paper else usual.paper),
        units_of(job, units),
        projection or (Projection(asked.projection) if asked.projection else usual.projection),
    )
