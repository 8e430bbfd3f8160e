"""Hardening, tempering, and the tap measured again after both."""

from dataclasses import replace

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Block, Paragraphs, Row, Rows, Words
from tapmodel.report.chapters import cautions
from tapmodel.report.chapters.machines import hardening, over_wires, turning
from tapmodel.report.chapters.tap import square, thread
from tapmodel.report.route.operation import Operation
from tapmodel.report.route.parted import measured, measured_in, table
from tapmodel.shop.order_of_work import Step, wires_after_flutes, wires_when_finished

_ODD = (
    "Over the crests of an odd number of lands a micrometer with a vee anvil measures, not a "
    "plain one."
)
"""Common practice."""


def harden(design: TapDesign) -> Operation:
    """Heated through, and quenched."""
    quench = design.work.steel.quench
    return Operation(
        Step.HARDEN,
        "Harden",
        "furnace, or a hearth with a pyrometer",
        "hung by wire round the shank, so that nothing touches the thread; wrapped or coated where "
        "there is air",
        f"the quench, ready beforehand: {quench}",
        why="after all that cuts soft steel and before all that only hard steel needs",
        settings=_quenched(design),
        measure=(Row("a file on the shank", Words("glides off"), measured=True),),
        cautions=(cautions.HARDENING,),
        instead="a shop that hardens for others does this and the next two, by the steel's name.",
    )


def temper(design: TapDesign) -> Operation:
    """At once, to the hardness told."""
    heat, hardness = hardening.tempering_rows(design.work.steel)
    return Operation(
        Step.TEMPER,
        "Temper",
        "oven with a thermometer of its own, or hot oil",
        "lying free, the thread touching nothing",
        "none; heat it through and let it cool in air",
        why="at once after the quench, when it can just be held in the hand: left hard it cracks",
        settings=table((heat,)),
        measure=(replace(hardness, measured=True),),
        instead="twice is better than once, and needed by steels that harden in air; a tap that "
        "has bent is straightened while it is warm.",
    )


def clean(design: TapDesign) -> Operation:
    """Scale off, and what has grown found."""
    tap = design.tap
    wires = measured_in(over_wires.chapter(design)) if wires_when_finished(tap) else ()
    crest = measured_in(thread.chapter(design))[:1]
    return Operation(
        Step.CLEAN,
        "Clean, and measure again",
        "bench",
        "by hand, with gloves against acid and solvent",
        "hot water and a brush against the quench, then fine abrasive cloth or citric acid against "
        "scale; oil at once",
        why="before anything is honed or ground: scale spoils stone and reading, and steel that "
        "has been hardened is no longer of the same size",
        settings=() if wires_after_flutes(tap) else (Paragraphs((_ODD,)),),
        measure=(
            *crest,
            *measured(turning.shank_rows(design)),
            *measured_in(square.chapter(design)),
            *wires,
        ),
        instead="what has grown is lapped on the thread, ground on shank and square.",
    )


def _quenched(design: TapDesign) -> tuple[Block, ...]:
    """The chapter without what tells of tempering."""
    tempering = tuple(hardening.tempering_rows(design.work.steel))
    blocks: list[Block] = []
    for block in hardening.chapter(design).blocks:
        if isinstance(block, Rows):
            blocks += table((row for row in block.rows if row not in tempering), block.caption)
        else:
            blocks.append(block)
    return tuple(blocks)
