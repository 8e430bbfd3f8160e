"""One self-contained HTML file of a tap: model, section, tables, drawings, pictures."""

import base64
import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from html import escape
from importlib import resources
from pathlib import Path
from string import Template

from tapmodel.designing.record import TapDesign
from tapmodel.export.atomic import write_whole
from tapmodel.findings import Finding, gravest_first
from tapmodel.report.chapters import cautions, choices
from tapmodel.report.chapters.order import OPERATIONS
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.page.html import chapter_html
from tapmodel.report.page.solid import Model, packed_model, squeezed_text
from tapmodel.report.page.stations import stations
from tapmodel.report.sheet.blocks import Chapter
from tapmodel.report.units import Units
from tapmodel.report.words.findings import what
from tapmodel.report.words.limits import actual, allowed
from tapmodel.words import Severity

_SIGNS = {Severity.ERROR: "✖", Severity.WARNING: "▲", Severity.NOTE: "•"}


@dataclass(frozen=True, slots=True)
class Picture:
    """A still: heading, words for those who cannot see it, and the PNG itself."""

    title: str
    alt: str
    png: bytes


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
        units: of lengths in its tables.

    Raises:
        InputError: when nothing can be written there.
    """
    tables = [*(section(design) for section in OPERATIONS), cautions.chapter(design)]
    after = [*([content.proof] if content.proof else []), choices.chapter(design)]
    text = _template("page.html").substitute(
        title=escape(f"Tap for {design.designation}"),
        under=escape(_under(design, units)),
        style=_read("page.css"),
        script=_read("page.js"),
        contents=_contents(tables, after, content),
        findings=_findings(design.findings),
        look=_look(content.model),
        sections="\n".join(chapter_html(section, units) for section in tables),
        drawings="\n".join(map(_drawing, content.drawings.values())),
        pictures=_pictures(content.pictures),
        after="\n".join(chapter_html(section, units) for section in after),
        data=_data(design, content),
    )
    write_whole(path, text.encode())


def _under(design: TapDesign, units: Units) -> str:
    text = f"{design.name}; {design.tap.thread.hand.value} hand; z counts from the front"
    shown = {Units.MM: "", Units.INCH: "; tables in inch", Units.BOTH: "; tables in mm and inch"}
    rest = "" if units is Units.MM else ", sentences and drawings in mm"
    return text + shown[units] + rest


def _read(name: str) -> str:
    return (resources.files("tapmodel.report.page") / name).read_text(encoding="utf-8")


def _template(name: str) -> Template:
    return Template(_read(name))


def _contents(tables: Iterable[Chapter], after: Iterable[Chapter], content: PageContent) -> str:
    links = [("findings", "Findings"), ("look", "The tap")]
    links += [(section.key, section.title) for section in tables]
    links += [("drawings", "Drawings")]
    links += [("pictures", "Pictures")] if content.pictures else []
    links += [(section.key, section.title) for section in after]
    return " ".join(f'<a href="#{escape(key)}">{escape(title)}</a>' for key, title in links)


def _findings(found: Iterable[Finding]) -> str:
    items = (
        "".join(map(_finding, gravest_first(found)))
        or "<li>None: the design keeps every rule.</li>"
    )
    return f'<section id="findings" class="findings"><h2>Findings</h2><ul>{items}</ul></section>'


def _finding(finding: Finding) -> str:
    weight = finding.severity.value
    detail = f"is {actual(finding)}; allowed {allowed(finding)}; {finding.source}"
    return (
        f'<li class="{weight}"><span class="weight">{_SIGNS[finding.severity]} {weight}</span> '
        f"{escape(what(finding))}<small>[{escape(finding.code)}] {escape(detail)}</small></li>"
    )


def _look(model: Model | None) -> str:
    pane = ""
    if model is not None:
        pane = _template("model.html").substitute(caption=escape(model.caption))
    return _template("look.html").substitute(model=pane)


def _drawing(drawing: Drawing) -> str:
    title = escape(drawing.title)
    svg = drawing.svg().replace("<svg ", f'<svg role="img" aria-label="{title}" ', 1)
    return f'<figure class="card"><h3>{title}</h3>{svg}</figure>'


def _pictures(pictures: Iterable[Picture]) -> str:
    cards = "".join(
        f'<figure class="card"><h3>{escape(picture.title)}</h3>'
        f'<img alt="{escape(picture.alt)}" src="data:image/png;base64,{_base64(picture.png)}">'
        "</figure>"
        for picture in pictures
    )
    if not cards:
        return ""
    return f'<section id="pictures"><h2>Pictures</h2><div class="gallery">{cards}</div></section>'


def _base64(content: bytes) -> str:
    return base64.b64encode(content).decode()


def packed_stations(design: TapDesign) -> str:
    """Sections of the tap along its axis, as the page carries them."""
    return squeezed_text(json.dumps(stations(design)))


def _data(design: TapDesign, content: PageContent) -> str:
    """Numbers for the script; no text of it can end the element that holds it."""
    blank = design.tap.blank
    values = {
        "reach": max(design.tap.thread.major, blank.shank_diameter, blank.neck_diameter) / 2,
        "circles": [design.tap.thread.major, design.tap.flutes.core_diameter],
        "stations": content.stations or packed_stations(design),
        "model": packed_model(content.model) if content.model else None,
    }
    return json.dumps(values).replace("<", "\\u003c")
