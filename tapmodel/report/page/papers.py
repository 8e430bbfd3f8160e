"""The papers of a tap as parts of a page that is open: chapters as HTML, drawings as SVG."""

import re
from collections.abc import Iterator

from tapmodel.designing.record import TapDesign
from tapmodel.report.chapters import cautions, choices
from tapmodel.report.chapters.order import all_chapters
from tapmodel.report.drawings.catalogue import all_drawings
from tapmodel.report.page.html import chapter_html
from tapmodel.report.units import Look

_SHEET = re.compile(r"<style>\.([\w-]+) \{(.*?)\}</style>")
_LINE = re.compile(r'(<[^<>]*?) class="([\w-]+)"([^<>]*/>)')
_RULE = re.compile(r"([\w-]+): ([^;]+);")


def page_papers(design: TapDesign, look: Look) -> dict[str, list[dict[str, str]]]:
    """What stands below the model.

    Args:
        design: every number of the tap.
        look: how the reader wants it.

    Returns:
        `chapters`, each with its `key`, `title` and `html`; and `drawings`, each with its `name`,
        `title` and `svg`.
    """
    chapters = [*all_chapters(design), cautions.chapter(design), choices.chapter(design)]
    drawings = all_drawings(design, look.projection, look.units)
    return {
        "chapters": [
            {"key": one.key, "title": one.title, "html": chapter_html(one, look.units)}
            for one in chapters
        ],
        "drawings": [
            {"name": name, "title": one.title, "svg": without_sheets(one.svg())}
            for name, one in drawings.items()
        ],
    }


def without_sheets(svg: str) -> str:
    """A drawing with its looks at groups of lines: a page may allow no style sheet in it."""
    looks = {found[1]: " ".join(_attributes(found[2])) for found in _SHEET.finditer(svg)}
    text = _SHEET.sub("", svg)
    parts: list[str] = []
    place, looked = 0, ""
    for line in _LINE.finditer(text):
        between = text[place : line.start()]
        if looked and (between or line[2] != looked):
            parts.append("</g>")
            looked = ""
        parts.append(between)
        if not looked:
            looked = line[2]
            parts.append(f"<g {looks[looked]}>")
        parts.append(f"{line[1]}{line[3]}")
        place = line.end()
    return "".join([*parts, "</g>" if looked else "", text[place:]])


def _attributes(rules: str) -> Iterator[str]:
    for name, value in _RULE.findall(rules):
        if not (name.endswith("-opacity") and float(value) == 1):
            yield f'{name}="{value}"'
