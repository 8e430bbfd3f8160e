"""What is lettered on a section, and the legend below it."""

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Length, small_length
from tapmodel.report.drawings.lettering import degrees
from tapmodel.report.tools import cutter_of, drill_of
from tapmodel.report.units import Units, as_text
from tapmodel.report.units_wanted import IN_INCHES
from tapmodel.report.view.section.places import beyond, land_ends, outside
from tapmodel.report.view.section.record import Line, Name
from tapmodel.shape.figures import ReliefFigures
from tapmodel.spec.designation import parse
from tapmodel.tap.tap import Relief
from tapmodel.words import ReliefKind


def names(design: TapDesign, units: Units) -> list[Name]:
    """What stands beside the marks, with its number."""
    flutes = design.tap.flutes
    start, end = land_ends(design)
    # two numbers would leave room for neither: that of the thread's own name stands
    named_in_inches = parse(design.designation).family in IN_INCHES
    units = (Units.INCH if named_in_inches else Units.MM) if units is Units.BOTH else units
    found = [
        Name("rake", "rake", degrees(design.figures.rake_crest), outside(design, flutes.angles[0])),
        Name(
            "land",
            "land",
            as_text(Length(design.figures.land_width), units),
            outside(design, (start + end) / 2),
        ),
        Name("offset", "offset", as_text(Length(flutes.offset), units), beyond(design)),
    ]
    drop = design.figures.thread_relief.heel_drop
    if drop > 0:
        told = as_text(small_length(drop), units)
        found.append(Name("drop", "heel drops", told, outside(design, end)))
    return found


def legend(design: TapDesign, units: Units) -> list[Line]:
    """What each kind of line means, and what else is told of the edge."""
    flutes, figures = design.tap.flutes, design.figures
    land = f"{degrees(figures.land_angle)}, {as_text(Length(figures.land_width), units)} wide"
    return [
        Line("", "rake at the crest (hook)", degrees(figures.rake_crest)),
        Line("", "rake at the pitch line", degrees(figures.rake_pitch)),
        Line("", "rake at the drilled wall", degrees(design.rake_at_wall)),
        Line("", "chordal hook", degrees(figures.chordal_hook)),
        Line("", "land", land),
        *(_relief(one, units) for one in design.reliefs),
        Line("crest", "crests", f"⌀{as_text(Length(design.tap.thread.major), units)}"),
        Line("drill", "tap drill", f"⌀{as_text(drill_of(design.drill), units)}"),
        Line("core", "core (web)", f"⌀{as_text(Length(flutes.core_diameter), units)}"),
        Line("cutter", "cutter", f"⌀{as_text(cutter_of(flutes.cutter_diameter), units)}"),
    ]


def _relief(pair: tuple[Relief, ReliefFigures], units: Units) -> Line:
    """Kind of a relief, its margin or its angle, and what it drops."""
    relief, figures = pair
    label = f"relief of the {relief.applies_to.value}"
    if relief.kind is ReliefKind.CONCENTRIC:
        return Line("", label, "concentric, no drop")
    drop = f"drop {as_text(small_length(figures.heel_drop), units)} at the heel"
    if relief.kind is ReliefKind.CON_ECCENTRIC:
        angle = f"none over {degrees(relief.margin_angle)}"
    else:
        angle = f"{degrees(figures.edge_angle)} at the edge"
    return Line("", label, f"{relief.kind.value}, {angle}, {drop}")
