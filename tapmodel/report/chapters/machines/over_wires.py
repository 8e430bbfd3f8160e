"""The tap's pitch diameter measured over wires."""

from tapmodel.designing.record import TapDesign
from tapmodel.errors import InputError
from tapmodel.report.blocks import Chapter, Length, Paragraphs, Row, Rows
from tapmodel.shop.wires.answer import Wires, WiresAnswer, answer_wires
from tapmodel.shop.wires.asked import Overrides, thread_of_design

TITLE = "Measure over wires"


def chapter(design: TapDesign) -> Chapter:
    """Limits over the best wire; for other wires the program has a command."""
    asked = thread_of_design(design, design.basic_pitch_diameter, Overrides())
    try:
        answer = answer_wires(asked, Wires())
    except InputError as error:
        return Chapter("wires", TITLE, (Paragraphs((f"No wire suits: {error.allowed}.",)),))
    # The first note says when a fluted tap can be measured; the others the command prints.
    return Chapter("wires", TITLE, (Rows(_rows(answer)), Paragraphs(answer.notes[:1])))


def _rows(answer: WiresAnswer) -> tuple[Row, ...]:
    rows = [Row("best wire", Length(answer.wire, 4))]
    if answer.allowed:
        low, high = Length(answer.allowed.least), Length(answer.allowed.greatest)
        rows[0] = Row("best wire, and those that suit", Length(answer.wire, 4), low, high)
    if answer.measurement_min is not None and answer.measurement_max is not None:
        zone = (Length(answer.measurement_min, 4), Length(answer.measurement_max, 4))
        aim = Length(answer.measurement_target, 4)
        rows.append(Row("over the best wire", aim, *zone, True))
    return tuple(rows)
