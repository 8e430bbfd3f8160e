"""What stands below the model; asked for when the page is idle."""

from tapmodel.report.look_wanted import look_of
from tapmodel.report.page.papers import page_papers
from tapmodel.report.view.controls.on_page import on_page
from tapmodel.serve.asked import Asked, answered


def papers(asked: Asked) -> dict[str, list[dict[str, str]]]:
    """Chapters and drawings; see `page_papers`."""
    told = answered(asked, in_full=True)
    return on_page(page_papers(told.design, look_of(told.job, told.units)))
