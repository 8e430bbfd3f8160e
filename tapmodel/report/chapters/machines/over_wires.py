"""The tap's pitch diameter measured over wires."""

from functools import partial

from tapmodel.designing.record import TapDesign
from tapmodel.errors import NoWireError
from tapmodel.report.blocks import Chapter, Growth, Length, Paragraphs, Row, Rows
from tapmodel.report.words.no_wire import no_wire
from tapmodel.report.words.wires import sentence
from tapmodel.shop.wires.answer import WiresAnswer, answer_for
from tapmodel.shop.wires.notes import Heed
from tapmodel.spec.measured.sizes import Size
from tapmodel.words import Units

TITLE = "Measure over wires"

_ON_PAPER = (
    Heed.THIN_WIRE,
    Heed.ODD_FLUTES,
    Heed.EVEN_FLUTES,
    Heed.EVEN_STARTS,
    Heed.NONE_ON_HAND,
    Heed.NOT_THE_BEST,
    Heed.CRESTS_TOO_LOW,
    Heed.OFF_THE_PITCH_LINE,
)
"""Whether and when a tap can be measured so, and over which wire; the rest the command tells."""


def chapter(design: TapDesign) -> Chapter:
    """Limits over the wire to use; for other wires the program has a command."""
    try:
        answer = answer_for(design)
    except NoWireError as error:
        return Chapter("wires", TITLE, (Paragraphs((partial(_no_wire, error),)),))
    heeded = tuple(partial(sentence, note) for note in answer.notes if note.code in _ON_PAPER)
    blocks = (Rows(_rows(answer)), *((Paragraphs(heeded),) if heeded else ()))
    return Chapter("wires", TITLE, blocks)


def _no_wire(error: NoWireError, units: Units) -> str:
    return f"{no_wire(error, units)}."


def wire_name(answer: WiresAnswer) -> str:
    """What the wire that is offered is called: the best only where it is."""
    return "wire to use, the best" if answer.is_best else "wire to use"


def _place(answer: WiresAnswer) -> list[Row]:
    """Where the wires lie, which matters on a thread with a back taper alone."""
    place = answer.asked.place
    if place is None:
        return []
    return [
        Row("middle of the wires, from the front", Length(place.z)),
        Row("each turn behind that reads less by", Length(place.each_turn, 4)),
    ]


def wire_row(answer: WiresAnswer) -> Row:
    """The wire that is offered, and between which those lie that serve as well."""
    name = wire_name(answer)
    if not answer.allowed:
        return Row(name, Length(answer.wire, 4))
    low, high = Length(answer.allowed.least, 4), Length(answer.allowed.greatest, 4)
    return Row(f"{name}, and those that suit", Length(answer.wire, 4), low, high)


def _more_of_wire(units: Units) -> str:
    """The steps that a `Growth` counts in."""
    step = {Units.MM: "1 µm", Units.INCH: "0.0001 in", Units.BOTH: "1 µm (0.0001 in)"}
    return f"{step[units]} more of wire adds"


def _rows(answer: WiresAnswer) -> tuple[Row, ...]:
    rows = [wire_row(answer)]
    if not answer.is_best:
        rows.append(Row("best wire, lead allowed for", Length(answer.best_wire, 4)))
    rows.append(Row("conventional best wire", Length(answer.conventional_wire, 4)))
    if answer.measurement_min is not None and answer.measurement_max is not None:
        zone = (Length(answer.measurement_min, 4), Length(answer.measurement_max, 4))
        aim = Length(answer.measurement_target, 4)
        rows += _place(answer)
        rows.append(Row("over the wire to use", aim, *zone, True, Size.OVER_WIRES))
    rows.append(Row(_more_of_wire, Growth(answer.wire_counts)))
    return tuple(rows)
