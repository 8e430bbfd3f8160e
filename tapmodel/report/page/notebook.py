"""A card for a notebook: the section, the numbers that follow from it, what the rules found."""

from html import escape

from tapmodel.designing.record import TapDesign
from tapmodel.report.chapters.tap import angles, chamfer
from tapmodel.report.design_page import findings_text
from tapmodel.report.drawings.views import cross_section
from tapmodel.report.page.html import chapter_html
from tapmodel.report.units import Units


def card(design: TapDesign) -> str:
    """The design as a piece of HTML that asks for nothing outside itself."""
    tables = "".join(chapter_html(part.chapter(design), Units.MM) for part in (angles, chamfer))
    found = "\n".join(findings_text(design.findings))
    drawing = _scalable(cross_section.draw(design).svg())
    return (
        f"<h3>Tap for {escape(design.designation)}</h3>"
        '<div style="display:flex;flex-wrap:wrap;gap:2em;align-items:start">'
        f'<div style="flex:1 1 30em;background:white">{drawing}</div><div>{tables}</div></div>'
        f'<pre style="white-space:pre-wrap">{escape(found)}</pre>'
    )


def _scalable(svg: str) -> str:
    """The drawing without the heading of a file of its own."""
    return svg[svg.index("<svg") :]
