"""The poster to hang over the bench: one page, as PDF and as PNG.

A wide column has title, picture and side view, with the cutting end as large as it is and the
chips; a narrow one the numbers that matter, the thread, the milling and the title block.
"""

import os
from pathlib import Path

import typst

from tapmodel.designing.record import TapDesign
from tapmodel.export.atomic import write_whole
from tapmodel.export.clock import VARIABLE, stamp
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.drawings.lettering import scale_text
from tapmodel.report.drawings.views import chips, cross_section, milling, side, thread_form
from tapmodel.report.drawings.views.end_view import true_end
from tapmodel.report.poster import page, words
from tapmodel.report.poster.hero import Hero, hero
from tapmodel.report.poster.limits import limit_rows
from tapmodel.report.poster.paper import SIZES, PosterPaper
from tapmodel.report.sheet.style import fonts
from tapmodel.report.units import Look
from tapmodel.report.view.first import first_figures, verdict_of
from tapmodel.report.words.sets import tap_for
from tapmodel.words import Units

DOTS = 150
"""Of the PNG to an inch of paper."""

_UNITS = {Units.MM: "mm", Units.INCH: "inch", Units.BOTH: "mm and inch"}
_GROOVE = 46.0, 26.0
"""Width and height of the chips, at most [mm]."""


def write_poster(pdf: Path, png: Path, design: TapDesign, look: Look, paper: PosterPaper) -> None:
    """Write the poster twice.

    Args:
        pdf: the one file.
        png: the other.
        design: every number of the tap.
        look: units and projection.
        paper: its size.

    Raises:
        InputError: when nothing can be written there.
    """
    text = poster_text(design, look, paper, hero(design)).encode()
    write_whole(pdf, typst.compile(text, font_paths=fonts(), timestamp=stamp()))
    write_whole(png, typst.compile(text, format="png", ppi=DOTS, font_paths=fonts()))


def poster_text(design: TapDesign, look: Look, paper: PosterPaper, shown: Hero) -> str:
    """The page in the typesetter's words.

    Args:
        design: every number of the tap.
        look: units and projection.
        paper: its size.
        shown: the large picture.
    """
    size, units, tap = SIZES[paper], look.units, tap_for(design)
    view = side.draw(design, look.projection, units)
    left = (
        page.head(tap, words.subtitle(design, units), verdict_of(design, units)),
        page.picture(shown, cross_section.draw(design, units)),
        page.beside(
            (page.panel("Side view", _scale(view), page.drawn(view)), _right_of_it(design, look)),
            (f"{page.SIDE}mm", "1fr"),
        ),
    )
    right = (
        page.panel("At the machine", "", page.numbers(first_figures(design, units), units)),
        _thread(design, units, size.pitch),
        _milling(design, units, size.blank),
        page.title_block(_cells(design, look, view), look.projection, tap),
    )
    return page.style(f"{tap} ({design.name})", size) + page.columns(left, right, size)


def _scale(drawing: Drawing) -> str:
    return f"scale {scale_text(drawing.scale)}"


def _right_of_it(design: TapDesign, look: Look) -> str:
    """The cutting end as large as it is, and the chips under it."""
    end = true_end(design, look.units)
    parts = [page.panel("Cutting end", "true to scale, 1:1", page.centred(page.drawn(end)))]
    if design.prediction:
        groove = chips.groove_alone(design.prediction, look.units, _GROOVE)
        told = page.told(words.chips(design, look.units))
        parts.append(
            page.panel("Chips by tooth", _scale(groove), page.centred(page.drawn(groove)), told)
        )
    return page.under(parts)


def _thread(design: TapDesign, units: Units, room: float) -> str:
    form = thread_form.form_alone(design, units, room)
    inside = page.centred(page.drawn(form)), page.limits(limit_rows(design, units))
    return page.panel("Thread form", _scale(form), *inside)


def _milling(design: TapDesign, units: Units, room: float) -> str:
    view = milling.view_alone(design, units, room)
    lines = words.milling(design, units)
    half = (len(lines) + 1) // 2
    told = page.beside((page.told(lines[:half]), page.told(lines[half:])), ("1fr", "1fr"))
    note = f"{_scale(view)}, seen on the cutting end"
    return page.panel("Milling the flutes", note, page.centred(page.drawn(view)), told)


def _cells(design: TapDesign, look: Look, view: Drawing) -> list[tuple[str, str]]:
    """Of the title block; a date only where the run was given one."""
    cells = [
        ("name", design.name),
        ("scale", f"side view {scale_text(view.scale)}, cutting end 1:1"),
        ("units", _UNITS[look.units]),
    ]
    dated = stamp().strftime("%Y-%m-%d") if VARIABLE in os.environ else ""
    return [*cells, ("date", dated)]
