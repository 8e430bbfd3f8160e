"""The fields of the job, of which choices and findings speak."""

from functools import cache


@cache
def fields_of_job() -> frozenset[str]:
    """Their dotted names."""
    # Processes that only draw a design load no job, which takes them a tenth of a second.
    from tapmodel.spec.job import field_names  # noqa: PLC0415

    return frozenset(field_names())
