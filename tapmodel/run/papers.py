"""The papers of a tap in a process of their own, for a program that goes on answering meanwhile."""

from tapmodel.designing.record import TapDesign
from tapmodel.report.chapters.measured import filled
from tapmodel.report.poster.paper import OF_SHEET
from tapmodel.report.poster.write import write_poster
from tapmodel.report.route.cost import chapter as cost_chapter
from tapmodel.report.route.order import afterwards, chapters_of, route_of
from tapmodel.report.sheet.papers import write_papers
from tapmodel.run.crew import Line
from tapmodel.run.route import write_route_files
from tapmodel.run.wish import Order, Papers
from tapmodel.shop.cost.cost import Prices, cost_of
from tapmodel.shop.gcode.wanted import index_of, programs_wanted
from tapmodel.stages import Stage


def write(line: Line) -> None:
    """Write the papers.

    Args:
        line: on which comes the order.

    Raises:
        InputError: when nothing can be written there.
    """
    heard: tuple[Order, Papers] = line.hear()
    order, papers = heard
    line.stage(Stage.PAPERS)
    write_papers(order.design, order.folder, order.wish.formats, order.wish.look)
    if papers.route:
        _write_route(order.design, order)
    if papers.poster:
        look, pdf = order.wish.look, order.file("-poster.pdf")
        paper = OF_SHEET[look.paper]
        write_poster(pdf, pdf.with_suffix(".png"), order.design, look, paper)


def _write_route(design: TapDesign, order: Order) -> None:
    operations = route_of(design)
    cost = cost_chapter(cost_of(design, Prices()), operations)
    chapters = tuple(filled(chapters_of(operations), design)), (cost, *afterwards(design))
    programs = index_of(design) if programs_wanted(design) else None
    write_route_files(design, chapters, order.folder, order.wish.look, programs)
