"""The lead of the tap and how it shares out the cut."""

from functools import partial

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Angle, Block, Chapter, Length, Paragraphs, Row, Rows, Words
from tapmodel.report.units import in_words, shown
from tapmodel.report.words.compound import from_bed
from tapmodel.shop.set_over import MOST_LEAN, MOST_SET_OVER, between_centres, chamfer_set_over
from tapmodel.spec.measured.sizes import Size
from tapmodel.tap.tap import Tap
from tapmodel.words import Units


def chapter(design: TapDesign) -> Chapter:
    """Cone of the chamfer."""
    chamfer, several = design.tap.chamfer, design.tap.thread.starts > 1
    point = Length(chamfer.point_diameter)
    enters = Length(design.smallest_hole)
    in_leads = Row(
        "length in leads, turns of the tap, as chamfer.pitches counts several starts",
        _leads(design),
    )
    rows = (
        Row("angle to the axis", Angle(chamfer.angle), measured=True, size=Size.CHAMFER_ANGLE),
        Row("point diameter", point, high=enters, measured=True, size=Size.POINT_DIAMETER),
        Row("length, follows from these", Length(design.tap.chamfer_length)),
        Row("length in pitches", Words(f"{design.figures.chamfer_pitches:.2f}")),
        *((in_leads,) if several else ()),
        Row(
            "teeth with their crests in the chamfer",
            Words(str(design.figures.chamfer_teeth)),
        ),
        Row("chip of each, square to the cone", Length(design.figures.chip_thickness, 4)),
        _slide(chamfer.angle),
    )
    return Chapter("chamfer", "Chamfer", (Rows(rows), *_set_over(design.tap)))


def _slide(angle: float) -> Row:
    """The top slide along the cone, as either kind of slide reads that; common practice."""
    along, square = (shown(Angle(degrees))[0] for degrees in (angle, from_bed(angle)))
    return Row("top slide: zero along the bed; zero square to it", Words(f"{along}; {square}"))


def _set_over(tap: Tap) -> list[Block]:
    """The other way, with the carriage's own feed; nothing where it is out of reach.

    No row of a table: whether it is in reach follows from the tap's size, not from its form.
    """
    over = chamfer_set_over(tap)
    return [] if over is None else [Paragraphs((partial(_askew, over, between_centres(tap)),))]


def _askew(over: float, held: float, units: Units) -> str:
    """How far, what limits it, and what must follow; common practice."""
    way, length = in_words(over, ".2f", units), in_words(held, ".1f", units)
    most = in_words(MOST_SET_OVER, "g|.1f", units)
    return (
        f"Or set the tailstock over towards the tool by {way}, the {length} between the centres "
        f"times the sine of the angle: at most by {MOST_LEAN:g}°, beyond which the centres bear on "
        f"an edge, and by some {most}, as far as a small lathe's goes (both from memory). Set it "
        "back until work turns parallel."
    )


def _leads(design: TapDesign) -> Words:
    return Words(f"{design.figures.chamfer_leads:.2f}")
