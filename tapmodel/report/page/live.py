"""The page that is served: the same as the file, but for what can be changed on it."""

from collections.abc import Mapping
from dataclasses import asdict

from tapmodel.designing.record import TapDesign
from tapmodel.report.page.templates import filled, markup
from tapmodel.report.page.write import data_text
from tapmodel.report.units import Units
from tapmodel.report.view.tap import view_of


def live_page(design: TapDesign, job: Mapping[str, object], units: Units) -> str:
    """The page as HTML; style and script are asked for beside it.

    Args:
        design: that it opens with.
        job: of that design, by the dotted names of its fields.
        units: of every text.
    """
    values = {
        "view": asdict(view_of(design, units)),
        "stations": None,
        "model": None,
        "live": {"job": dict(job), "units": units.value},
    }
    return filled("live.html", title=f"tapmodel: {design.name}", data=markup(data_text(values)))
