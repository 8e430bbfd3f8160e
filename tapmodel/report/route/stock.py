"""From the bar to a piece with centres."""

from tapmodel.designing.choose.tools import tools_of
from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Length, Paragraphs, Row, Rows, Words
from tapmodel.report.chapters import cautions
from tapmodel.report.chapters.machines import turning
from tapmodel.report.route.operation import Operation
from tapmodel.report.route.parted import table
from tapmodel.report.route.speeds import RULE, speed_row, turned, turns_row
from tapmodel.report.tools import bar_of
from tapmodel.report.units import in_words
from tapmodel.shop.bar import FACING, LEAST, SHARE, Bar, bar_for
from tapmodel.shop.cutting_speed import Cut
from tapmodel.shop.order_of_work import Step
from tapmodel.words import ToolSizes, Units


def saw(design: TapDesign) -> Operation:
    """The bar and the piece, with every allowance."""
    tools = tools_of(design)
    bar = bar_for(design.tap, tools)
    rows = (
        Row("steel, annealed", Words(design.work.steel.told)),
        Row("largest finished diameter, thread or shank", Length(bar.largest)),
        _bar_row(bar, tools),
        Row("allowance in the length, facing both ends", Length(bar.facing, 1)),
        *((Row("in front, stub with its male point", Length(bar.stub, 2)),) if bar.stub else ()),
        Row("of the bar besides, the saw's cut", Length(bar.kerf, 1)),
    )
    length = Row("length of the piece", Words("–"), Length(bar.length, 1), measured=True)
    thick = Row("bar, diameter", Words("–"), Length(bar.least, 2), measured=True)
    return Operation(
        Step.SAW,
        "Saw the bar",
        "band saw or power hacksaw",
        "the bar in the vice of the saw, its long end on a stand",
        "blade with three teeth or more in the cut, coolant",
        why="first, for all else is counted from the piece, and nothing can be added to it",
        settings=(Rows(rows), Paragraphs((_allowed, RULE))),
        speeds=(speed_row(design, Cut.SAWING),),
        measure=(thick, length),
        cautions=(cautions.EYES, cautions.RULES),
        instead="where the bar goes through the spindle, turn from it and part off.",
    )


def _bar_row(bar: Bar, tools: ToolSizes) -> Row:
    if bar.diameter is None:
        return Row("no bar so thick is stocked: forged or cut, at least", Length(bar.least, 1))
    return Row("next stocked bar, diameter", bar_of(bar.diameter, tools))


def _allowed(units: Units) -> str:
    least, faced = in_words(LEAST, ".1f", units), in_words(FACING, ".1f", units)
    return (
        f"The bar is thicker than what is turned from it by {100 * SHARE:g} % of that, at least "
        f"{least}, for the skin that has lost its carbon and for centring; each end is faced by "
        f"{faced} (rules of this program)."
    )


def centre(design: TapDesign) -> Operation:
    """Both ends: to length, with a centre or a male point."""
    tap = design.tap
    thick = bar_for(tap, tools_of(design)).turned
    drilled = turning.centre_rows(design)
    rims = [rim for rim in (tap.blank.front_centre, tap.blank.rear_centre) if rim > 0]
    drill = (turns_row(design, Cut.CENTRING, min(rims), "of the centre drill"),) if rims else ()
    return Operation(
        Step.CENTRE,
        "Face and centre",
        "lathe",
        "the bar in the chuck, sticking out as little as can be; turned end for end for the second",
        "facing tool" + (", centre drill" if rims else ""),
        why="ends before diameters: lengths count from the front one, and later clampings run on "
        "what is made here",
        settings=(*table(drilled), *turning.male_point_blocks(tap)),
        speeds=(*turned(design, thick, "on the bar"), *drill),
        measure=(turning.length_row(design),),
        instead="a shop with collets turns all of one end before it lets go, and needs no dog.",
    )
