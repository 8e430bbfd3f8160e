"""A card for a notebook: the section, the numbers that follow from it, what the rules found."""

from tapmodel.designing.record import TapDesign
from tapmodel.report.chapters import key_numbers
from tapmodel.report.drawings.views import cross_section
from tapmodel.report.page.templates import filled, markup
from tapmodel.report.screen.findings import findings_lines
from tapmodel.report.units import Units
from tapmodel.report.view.chapter import shown_chapter


def card(design: TapDesign) -> str:
    """The design as a piece of HTML that asks for nothing outside itself."""
    return filled(
        "card.html",
        designation=design.designation,
        drawing=markup(_scalable(cross_section.draw(design).svg())),
        chapters=[shown_chapter(key_numbers.chapter(design), Units.MM)],
        findings="\n".join(findings_lines(design.findings)),
    )


def _scalable(svg: str) -> str:
    """The drawing without the heading of a file of its own."""
    return svg[svg.index("<svg") :]
