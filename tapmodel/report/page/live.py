"""The page that is served: the same as the file, but for what can be changed on it."""

from collections.abc import Mapping
from dataclasses import asdict

from tapmodel.designing.record import TapDesign
from tapmodel.report.page.templates import filled, markup
from tapmodel.report.page.write import contents_of, data_text
from tapmodel.report.units import Units
from tapmodel.report.view.changing import changing_view_of
from tapmodel.report.words.sets import tap_for


def live_page(
    design: TapDesign,
    job: Mapping[str, object],
    units: Units,
    wanted: Units | None,
    measured: str = "",
) -> str:
    """The page as HTML; style and script are asked for beside it.

    Args:
        design: that it opens with.
        job: of that design, by the dotted names of its fields.
        units: of every text.
        wanted: those that were asked for; None for those of the job, which change with it.
        measured: text of the file of its measured sizes; empty for none.
    """
    view = asdict(changing_view_of(design, units))
    values = {
        "view": view,
        "stations": None,
        "model": None,
        "live": {
            "job": dict(job),
            "units": wanted.value if wanted else None,
            "measured": measured,
        },
    }
    return filled(
        "page.html",
        live=True,
        title=tap_for(design),
        contents=contents_of(live=True),
        chapters=[],
        view=view,
        model_caption="Preview, not verified",
        data=markup(data_text(values)),
    )
