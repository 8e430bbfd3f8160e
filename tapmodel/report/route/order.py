"""The operations of a tap, in the order of the work. A new one: its step, its function, a line."""

from collections.abc import Callable, Mapping

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Chapter
from tapmodel.report.chapters.in_the_hole import symptoms
from tapmodel.report.route import (
    bench,
    carburised,
    finish,
    heat,
    milled,
    relieved,
    stock,
    threaded,
    turned_blank,
)
from tapmodel.report.route.operation import Operation, chapter_of
from tapmodel.shop.order_of_work import Step, order_of_work

OPERATIONS: Mapping[Step, Callable[[TapDesign], Operation]] = {
    Step.SAW: stock.saw,
    Step.CENTRE: stock.centre,
    Step.SHANK: turned_blank.shank,
    Step.BODY: turned_blank.body,
    Step.NECK: turned_blank.neck,
    Step.THREAD: threaded.thread,
    Step.CHAMFER: threaded.chamfer,
    Step.SQUARE: milled.square,
    Step.FLUTES: milled.flutes,
    Step.DEBURR: bench.deburr,
    Step.MARK: bench.mark,
    Step.RELIEVE: relieved.relieve,
    Step.CARBURISE: carburised.carburise,
    Step.HARDEN: heat.harden,
    Step.TEMPER: heat.temper,
    Step.CLEAN: heat.clean,
    Step.HONE: bench.hone,
    Step.STUB: finish.stub,
    Step.PROVE: finish.prove,
}


def route_of(design: TapDesign) -> tuple[Operation, ...]:
    """From bar to finished tap."""
    return tuple(OPERATIONS[step](design) for step in order_of_work(design))


def afterwards(design: TapDesign) -> tuple[Chapter, ...]:
    """What is told behind the operations: what to look for when the tap does not do."""
    told = symptoms.chapter(design)
    return (told,) if told.blocks else ()


def chapters_of(operations: tuple[Operation, ...]) -> tuple[Chapter, ...]:
    """The operations as chapters, numbered from 1."""
    return tuple(chapter_of(number, one) for number, one in enumerate(operations, start=1))
