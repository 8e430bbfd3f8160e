"""The state of the page as a job file, and back."""

from tapmodel.report.job_file import commented_job
from tapmodel.serve.asked import Asked, Request, answered, checked_job
from tapmodel.spec.toml_file import table_of_text


class Dropped(Request):
    """The text of a job file that was dropped into the page."""

    text: str


def job_text(asked: Asked) -> dict[str, object]:
    """The job file of what is on the page, as `tapmodel new` writes it, with a name for it.

    Raises:
        InputError: as `answered`.
        NoTapError: the same.
    """
    told = answered(asked, in_full=True)
    job = told.job
    if asked.units is not None:
        job = job.model_copy(update={"units": asked.units.value})
    return {"name": f"{told.design.name}.toml", "text": commented_job(job, told.design)}


def job_read(dropped: Dropped) -> dict[str, object]:
    """The job in the text, by dotted names; it points to no file of the shop.

    Raises:
        InputError: naming line or field, value and what is allowed.
    """
    job = checked_job(table_of_text(dropped.text, "job file"))
    return {"job": job.typed()}
