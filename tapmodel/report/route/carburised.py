"""Carburising mild steel in a box, before it is hardened: how long, and what the teeth become."""

from dataclasses import replace

from tapmodel.designing.record import TapDesign
from tapmodel.prediction.heat.record import CASE, Carburised, Carburising
from tapmodel.report.blocks import (
    Length,
    Paragraphs,
    Quantity,
    Row,
    Rows,
    Table,
    Telling,
    Temperature,
    Words,
)
from tapmodel.report.route.operation import Operation
from tapmodel.report.words.carburising import CAUSTIC, CAUTION, COMPUTED, heeded
from tapmodel.shop.heat.asked import usual_carburising
from tapmodel.shop.heat.carburised import carburised_of, heeds
from tapmodel.shop.order_of_work import Step

_HOURS = 0.25, 0.5, 1.0, 2.0
"""Told beside the time for the depth wanted."""

_SCALE = (
    "On the second heat a coat of flux keeps scale off (common practice). Oil that is baked on "
    "comes off in a solution of caustic soda."
)


def carburise(design: TapDesign) -> Operation:
    """Carbon into mild steel, as deep as the strength of the tap reckons with."""
    thread, depth = design.tap.thread, design.work.steel.case_depth
    asked = usual_carburising(design.number("shop.furnace"))
    wanted = carburised_of(asked, thread, depth)
    others = [carburised_of(replace(asked, hours=hours), thread, None) for hours in _HOURS]
    told = sorted([wanted, *others], key=lambda found: found.asked.hours)
    return Operation(
        Step.CARBURISE,
        "Carburise in a box",
        "furnace",
        "upright in a box of sheet steel, two fingers of pack all round it and over it, the lid "
        "luted with clay; a length of wire beside it through the lid, drawn to see the colour",
        "charcoal in pieces like peas, with one part in twenty of sodium carbonate "
        "(common practice)",
        why="after all that cuts soft steel: what is cut later takes the case off again",
        settings=(
            Rows(_rows(asked, wanted, depth)),
            Table(_HEAD, tuple(_line(found) for found in told), _CAPTION),
            Paragraphs((*_heeded(wanted), _SCALE, COMPUTED)),
        ),
        measure=_measured(wanted),
        cautions=(CAUTION, CAUSTIC),
        instead="a hardening shop carburises in gas or salt, to a depth that it is told.",
    )


_HEAD = ("hours at heat", "case under the root", "carbon in the middle of a tooth", "quenched")
_CAPTION = "What the time at heat makes of these teeth"


def _rows(asked: Carburising, wanted: Carburised, depth: float) -> tuple[Row, ...]:
    return (
        Row("at", Temperature((asked.celsius,))),
        Row(f"case, to {CASE:g} % carbon, under the root", Length(depth, 2)),
        Row("hours for that, from when the pack's middle is hot", Words(_hours(wanted))),
    )


def _line(found: Carburised) -> tuple[Quantity, ...]:
    tooth, case = found.tooth, found.case
    middle = tooth.middle if tooth else found.flat.places[0]
    return (
        Words(_hours(found)),
        Words("no tough core") if case is None else Length(case, 2),
        Words(f"{middle.carbon:.2f} %"),
        Words(f"{middle.hardness:.0f} HRC"),
    )


def _hours(found: Carburised) -> str:
    return f"{found.asked.hours:.2f}".rstrip("0").rstrip(".")


def _heeded(found: Carburised) -> list[Telling]:
    return [lambda units, heed=heed: heeded(heed, found, units) for heed in heeds(found)]


def _measured(wanted: Carburised) -> tuple[Row, ...]:
    """A piece of the same bar goes into the box too: quenched and broken it shows its case."""
    case = wanted.flat.case
    label = "case of a flat test piece, quenched and broken"
    return (Row(label, Length(case, 2), measured=True),) if case else ()
