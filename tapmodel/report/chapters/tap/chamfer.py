"""The lead of the tap and how it shares out the cut."""

from functools import partial

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Angle, Chapter, Length, Paragraphs, Row, Rows, Words
from tapmodel.report.units import in_words, shown
from tapmodel.report.words.compound import from_bed
from tapmodel.shop.set_over import MOST_LEAN, MOST_SET_OVER, between_centres, chamfer_set_over
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
        Row("angle to the axis", Angle(chamfer.angle), measured=True),
        Row("point diameter", point, high=enters, measured=True),
        Row("length, follows from these", Length(design.tap.chamfer_length)),
        Row("length in pitches", Words(f"{design.figures.chamfer_pitches:.2f}")),
        *((in_leads,) if several else ()),
        Row(
            "teeth with their crests in the chamfer",
            Words(str(design.figures.chamfer_teeth)),
        ),
        Row("chip of each, square to the cone", Length(design.figures.chip_thickness, 4)),
        _slide(chamfer.angle),
        *_set_over(design.tap),
    )
    over = () if chamfer_set_over(design.tap) is None else (Paragraphs((_askew,)),)
    return Chapter("chamfer", "Chamfer", (Rows(rows), *over))


def _slide(angle: float) -> Row:
    """The top slide along the cone, as either kind of slide reads that; common practice."""
    along, square = (shown(Angle(degrees))[0] for degrees in (angle, from_bed(angle)))
    return Row("top slide: zero along the bed; zero square to it", Words(f"{along}; {square}"))


def _set_over(tap: Tap) -> list[Row]:
    """The other way, with the carriage's own feed; nothing where it is out of reach."""
    over = chamfer_set_over(tap)
    if over is None:
        return []
    label = partial(_over_length, between_centres(tap))
    return [Row(label, Length(over, 2))]


def _over_length(length: float, units: Units) -> str:
    return f"or tailstock over towards the tool, {in_words(length, '.1f', units)} of work held"


def _askew(units: Units) -> str:
    """What limits it, and what must follow; common practice."""
    most = in_words(MOST_SET_OVER, "g|.1f", units)
    return (
        "Set over by the length between the centres times the sine of the angle, at most by "
        f"{MOST_LEAN:g}°, beyond which the centres bear on an edge, and by some {most}, as far as "
        "a small lathe's tailstock goes (both from memory). Set it back until work turns parallel."
    )


def _leads(design: TapDesign) -> Words:
    return Words(f"{design.figures.chamfer_leads:.2f}")
