"""The reliefs, in the way in which the shop makes them."""

from dataclasses import dataclass

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Block, Paragraphs
from tapmodel.report.chapters import cautions
from tapmodel.report.chapters.machines.sequence import elsewhere, told_step
from tapmodel.report.chapters.tap import relief, relief_made
from tapmodel.report.route.operation import Operation
from tapmodel.report.route.parted import settings_of
from tapmodel.shop.order_of_work import Step, grinds_hard
from tapmodel.shop.relief.on_hand import way_of
from tapmodel.words import ReliefWay


@dataclass(frozen=True, slots=True)
class _Place:
    machine: str
    holding: str
    tool: str
    why: str


_GROUND = (
    "after tempering, for a wheel cuts hard steel, and scale would spoil what it leaves; before "
    "the faces are honed, which takes its burr off the edges"
)

_GROUND_SOFT = (
    "after the flutes, which make the edge that it counts from, and before carburising: ground "
    "after it, the land would lose its case"
)

_PLACES = {
    ReliefWay.CENTRES: _Place(
        "tool or cylindrical grinder",
        "between offset centres or in an eccentric holder, a dog on the shank",
        "a dressed wheel; an indicator",
        _GROUND,
    ),
    ReliefWay.WHEEL: _Place(
        "tool grinder",
        "between its own centres, the cutting face on a tooth rest",
        "a dressed wheel, straight or cup; an indicator",
        _GROUND,
    ),
    ReliefWay.FILE: _Place(
        "bench",
        "in a vice with soft jaws; between centres while it is read",
        "fine file or stone and layout dye; an indicator",
        "after the flutes, which make the edge that it counts from, and before hardening, as a "
        "file does not touch hard steel",
    ),
}


def relieve(design: TapDesign) -> Operation:
    """Both reliefs as designed, how they are made, and what they become."""
    words, place = told_step(Step.RELIEVE, design.tap), _PLACES[way_of(design)]
    return Operation(
        Step.RELIEVE,
        words[0].upper() + words[1:],
        place.machine,
        place.holding,
        place.tool,
        why=_why(design, place),
        settings=_settings(design),
        cautions=(cautions.GRINDING,),
        instead=elsewhere(design),
    )


def _why(design: TapDesign, place: _Place) -> str:
    ground = way_of(design) is not ReliefWay.FILE
    return _GROUND_SOFT if ground and not grinds_hard(design) else place.why


def _settings(design: TapDesign) -> tuple[Block, ...]:
    """Of a tap that breaks a rule, as the sheet has it: nothing of it is foreseen."""
    making = relief_made.making(design)
    if not making:
        return settings_of(relief.chapter(design))
    beside = [relief.SETTING] if way_of(design) is ReliefWay.CENTRES else []
    beside += relief.from_where(design)
    last = (Paragraphs(tuple(beside)),) if beside else ()
    return (*relief.described(design), *making, *last)
