"""A drawing to stand in a page: scaled by it, and without style sheets of its own."""

import re

from tapmodel.report.drawings.drawing import Drawing

_SHEET = re.compile(r"<style>\.([\w-]+) \{(.*?)\}</style>")
_RULE = re.compile(r"([\w-]+): ([^;]+);")
_DRAWN = re.compile(r'(<[^<>]*?) class="([\w-]+)"([^<>]*/>)')


def standing_svg(drawing: Drawing) -> str:
    """The drawing as SVG, its looks at groups of lines, as a page may forbid style sheets in it."""
    text = drawing.svg()
    looks = {found[1]: _attributes(found[2]) for found in _SHEET.finditer(text)}
    text = _SHEET.sub("", text)
    parts: list[str] = []
    place, open_as = 0, ""
    for found in _DRAWN.finditer(text):
        between = text[place : found.start()]
        if open_as and (between or found[2] != open_as):
            parts.append("</g>")
            open_as = ""
        parts.append(between)
        if not open_as:
            open_as = found[2]
            parts.append(f"<g {looks[open_as]}>")
        parts.append(f"{found[1]}{found[3]}")
        place = found.end()
    return "".join(parts) + ("</g>" if open_as else "") + text[place:]


def _attributes(rules: str) -> str:
    told = (
        f'{name}="{value}"'
        for name, value in _RULE.findall(rules)
        if not (name.endswith("-opacity") and float(value) == 1) and (name, value) != ("stroke-width", "none")
    )
    return " ".join(told)
