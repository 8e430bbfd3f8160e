"""One self-contained HTML file of a tap: model, section, tables, drawings, pictures."""

import base64
import hashlib
import json
from collections.abc import Mapping
from dataclasses import asdict, dataclass, field
from pathlib import Path

from tapmodel.designing.record import TapDesign
from tapmodel.export.atomic import write_whole
from tapmodel.report.blocks import Chapter
from tapmodel.report.chapters import cautions, choices
from tapmodel.report.chapters.order import all_chapters
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.page.papers import without_sheets
from tapmodel.report.page.solid import Model, packed_model, squeezed_text
from tapmodel.report.page.templates import filled, markup, own_file
from tapmodel.report.units import Units
from tapmodel.report.view.chapter import shown_chapter
from tapmodel.report.view.section.sections import sections
from tapmodel.report.view.tap import view_of
from tapmodel.report.words.sets import tap_for


@dataclass(frozen=True, slots=True)
class Picture:
    """A still: heading, words for those who cannot see it, the PNG itself, words under it."""

    title: str
    alt: str
    png: bytes
    caption: str = ""


@dataclass(frozen=True, slots=True)
class PageContent:
    """What a page shows beside the numbers of the design.

    Attributes:
        drawings: by name.
        model: None where no mesh was made.
        pictures: in their order.
        proof: what was proved of the model, None where nothing was.
        stations: `packed_stations`, where there was time to make them before; they take long.
    """

    drawings: Mapping[str, Drawing] = field(default_factory=dict[str, Drawing])
    model: Model | None = None
    pictures: tuple[Picture, ...] = ()
    proof: Chapter | None = None
    stations: str | None = None


def write_page(
    path: Path, design: TapDesign, content: PageContent, units: Units = Units.MM
) -> None:
    """Write the page. It asks for nothing outside itself.

    Args:
        path: of the file.
        design: every number of the tap.
        content: what else it shows.
        units: of lengths; those of the choices are in mm, as a job has them, with inches behind.

    Raises:
        InputError: when nothing can be written there.
    """
    view = asdict(view_of(design, units))
    tables = [*all_chapters(design), cautions.chapter(design)]
    after = [*([content.proof] if content.proof else []), choices.chapter(design)]
    style, script = own_file("built/page.css"), own_file("built/page.js")
    text = filled(
        "page.html",
        live=False,
        policy=policy(style, script),
        title=tap_for(design),
        style=style,
        script=script,
        contents=contents_of(live=False, pictures=bool(content.pictures)),
        chapters=[(section.key, section.title) for section in (*tables, *after)],
        view=view,
        model_caption=content.model.caption if content.model else None,
        tables=[shown_chapter(section, units) for section in tables],
        drawings=[_drawing(drawing) for drawing in content.drawings.values()],
        pictures=[_picture(picture) for picture in content.pictures],
        after=[shown_chapter(section, units) for section in after],
        data=markup(_data(design, content, units, view)),
    )
    write_whole(path, text.encode())


def policy(style: str, script: str) -> str:
    """What the page may load and run: these two and nothing else, by what they hold."""
    style_is, script_is = (_sum(text) for text in (style, script))
    return f"default-src 'none'; img-src data:; style-src {style_is}; script-src {script_is}"


def _sum(text: str) -> str:
    digest = base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()
    return f"'sha256-{digest}'"


def contents_of(*, live: bool, pictures: bool = False) -> list[tuple[str, str]]:
    """Anchors and titles of the parts of a page; a live one hides those that it has not yet."""
    changing = [
        ("build", "Build"),
        ("variants", "Variants"),
        ("chart", "Chart"),
        ("bench", "At the machine"),
    ]
    begin = [("look", "The tap"), ("graphs", "In the hole"), ("findings", "Findings")]
    if live:
        return [*begin, *changing, ("papers", "Tables and drawings"), ("choices", "Reasons")]
    shown = [("pictures", "Pictures")] if pictures else []
    return [*begin, ("numbers", "Tables"), ("drawings", "Drawings"), *shown, ("choices", "Reasons")]


def _drawing(drawing: Drawing) -> dict[str, str]:
    named = markup('<svg role="img" aria-label="{}" ').format(drawing.title)
    svg = without_sheets(drawing.svg()).replace("<svg ", named, 1)
    return {"title": drawing.title, "svg": markup(svg)}


def _picture(picture: Picture) -> dict[str, str]:
    png = base64.b64encode(picture.png).decode()
    return {"title": picture.title, "alt": picture.alt, "png": png, "caption": picture.caption}


def packed_stations(design: TapDesign) -> str:
    """Sections of the tap along its axis, as the page carries them."""
    return squeezed_text(json.dumps([asdict(section) for section in sections(design)]))


def _data(design: TapDesign, content: PageContent, units: Units, view: Mapping[str, object]) -> str:
    """What the script shows; no text of it can end the element that holds it."""
    values = {
        "view": view,
        "stations": content.stations or packed_stations(design),
        "model": packed_model(content.model, design, units) if content.model else None,
        "live": None,
    }
    return data_text(values)


def data_text(values: Mapping[str, object]) -> str:
    """Values as the page's element for them holds them."""
    return json.dumps(values).replace("<", "\\u003c")
