"""Square and flutes, in the dividing head."""

from functools import partial

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Length, Paragraphs
from tapmodel.report.chapters import cautions
from tapmodel.report.chapters.machines import dividing, milling, over_wires
from tapmodel.report.chapters.tap import angles
from tapmodel.report.chapters.tap import square as square_chapter
from tapmodel.report.route.giving_way import at_flutes
from tapmodel.report.route.held import indexed
from tapmodel.report.route.operation import Operation
from tapmodel.report.route.parted import measured_in, settings_of
from tapmodel.report.route.speeds import milled
from tapmodel.report.units import as_text
from tapmodel.report.words.dials import ONE_WAY
from tapmodel.shop.cam import cutter_reach
from tapmodel.shop.end_mill import end_mill
from tapmodel.shop.gcode.wanted import index_of, mill_of
from tapmodel.shop.order_of_work import Step, wires_after_flutes
from tapmodel.words import Index, Mill, Units


def square(design: TapDesign) -> Operation:
    """Flats of the drive."""
    told, mill = square_chapter.chapter(design), end_mill(design)
    return Operation(
        Step.SQUARE,
        "Mill the square",
        _mill(design),
        "the shank in the collet or chuck of the dividing head, the square sticking out, the rear "
        "centre free; index by a quarter turn",
        "end mill; touch the shank, go down by the depth of a flat, mill two opposite flats, "
        "measure, then the others",
        why="before the flutes, while the blank is stiff and little is lost if a flat goes wrong, "
        "and before hardening, as no end mill cuts it after",
        settings=settings_of(told),
        speeds=milled(design, mill, "of an end mill"),
        measure=measured_in(told),
        instead="file it between hardened rollers, or grind it last of all.",
    )


def flutes(design: TapDesign) -> Operation:
    """All flutes in one clamping."""
    cut, faces = milling.chapter(design), angles.chapter(design)
    again = measured_in(over_wires.chapter(design)) if wires_after_flutes(design.tap) else ()
    cutter = design.tap.flutes.cutter_diameter
    return Operation(
        Step.FLUTES,
        "Mill the flutes",
        _mill(design),
        f"{indexed(design.tap)}; clock it, the same at both ends",
        partial(_cutter, design),
        why="last of the machined cuts, for they take the stiffness and make every other cut an "
        "interrupted one; before hardening, while a cutter bites",
        settings=(
            *settings_of(cut, dividing.chapter(design), faces),
            *(() if milling.dials_of(design) else (Paragraphs((ONE_WAY,)),)),
            *at_flutes(design),
        ),
        speeds=milled(design, cutter, "of the cutter"),
        measure=(*measured_in(cut, faces), *again),
        cautions=(cautions.CUTTER,),
        instead="a programmed mill follows the path of the ball that the chapter on CAM in the "
        "sheet tells.",
    )


def _mill(design: TapDesign) -> str:
    """The mill, and what turns the work in it."""
    if mill_of(design) is not Mill.CNC:
        return "mill with dividing head"
    turned = {Index.AXIS: "its A axis", Index.BY_HAND: "a dividing head at each stop"}
    return f"mill under its program, the work turned by {turned[index_of(design)]}"


def _cutter(design: TapDesign, units: Units) -> str:
    free = as_text(Length(cutter_reach(design.tap).over_thread, 1), units)
    return (
        f"ball-nose cutter, sticking out {free} at least, so that its holder clears the thread; "
        "plenty of oil"
    )
