"""Controls of the flutes, and the two ways to give their place."""

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Length
from tapmodel.report.units import as_text
from tapmodel.report.view.controls.entry import Entry, EntryGroup, always, named, of_diameter
from tapmodel.report.view.controls.record import Way
from tapmodel.report.view.controls.steps import Step
from tapmodel.shop.flute_setting import flute_setting
from tapmodel.words import Units


def _standing(design: TapDesign, units: Units) -> str:
    """On which side the cutter stands, in the words of the papers."""
    setting = flute_setting(design)
    if not setting.side:
        return "over the tap's axis"
    return f"{as_text(Length(setting.offset), units)} {setting.side} of the centre line"


FLUTES = EntryGroup(
    "flutes",
    "Flutes",
    (
        Entry("flutes.count", "number of flutes", step=Step.WHOLE, span=always(2, 12)),
        Entry(
            "flutes.cutter_diameter",
            "ball-nose cutter",
            step=Step.BAR,
            span=of_diameter(0.15, 0.9),
            follows=lambda design: design.tap.flutes.cutter_diameter,
            options=lambda design: named(
                *(f"{size:.6g}" for size in design.numbers("shop.cutters"))
            )(design),
        ),
        Entry(
            "flutes.rake",
            "rake at the crest",
            step=Step.HALF,
            span=always(-10.0, 25.0),
            follows=lambda design: design.figures.rake_crest,
            by="flutes.offset",
        ),
        Entry(
            "flutes.core_diameter",
            "core (web)",
            step=Step.DOWN,
            span=of_diameter(0.25, 0.75),
            follows=lambda design: design.tap.flutes.core_diameter,
            by="flutes.depth_from_top",
        ),
        Entry(
            "flutes.offset",
            "offset of the cutter",
            step=Step.SIDEWAYS,
            span=of_diameter(-0.35, 0.45),
            follows=lambda design: design.tap.flutes.offset,
            by="flutes.rake",
            beside=_standing,
        ),
        Entry(
            "flutes.depth_from_top",
            "down from the top",
            step=Step.DOWN,
            span=of_diameter(0.08, 0.42),
            follows=lambda design: design.figures.depth_from_top,
            by="flutes.core_diameter",
        ),
        Entry(
            "flutes.land_share",
            "land, of the spacing",
            step=Step.SHARE,
            span=always(0.15, 0.7),
        ),
        Entry(
            "flutes.full_depth_length",
            "full depth to",
            step=Step.BAR,
            span=lambda design: (
                0.5 * design.tap.blank.thread_length,
                design.tap.blank.thread_length + 2 * design.tap.thread.major,
            ),
            follows=lambda design: design.tap.flutes.full_depth_length,
        ),
    ),
)

_WISH = ("flutes.rake", "flutes.core_diameter")
_SETTING = ("flutes.offset", "flutes.depth_from_top")
_HELD = ("flutes.count", "flutes.cutter_diameter")

_WHY_HELD = (
    "Number of flutes and cutter are held too, so that offset and depth alone move: rules might "
    "choose others as they do. The button at each gives it back to the rules."
)


def flute_ways(design: TapDesign) -> tuple[Way, Way]:
    """By what is wanted of the tap, or by how the mill is set; each leaves the tap as it is.

    Rake and core are rounded to what can be seen of a tap, 0.1 degree and 0.01 mm, offset and
    depth to 0.001 mm: hardly moved, and no number of many digits stands in the job.
    """
    given = {choice.field for choice in design.choices if choice.given}
    by_setting = bool(given & set(_SETTING))
    note = _WHY_HELD if by_setting and given.issuperset(_HELD) else ""
    tap, figures = design.tap, design.figures
    wish = {
        "flutes.rake": round(figures.rake_crest, 1) + 0.0,
        "flutes.core_diameter": round(tap.flutes.core_diameter, 2),
    }
    setting = {
        "flutes.offset": round(tap.flutes.offset, 3) + 0.0,
        "flutes.depth_from_top": round(figures.depth_from_top, 3),
        # Who sets a mill has the cutter in it and the head divided; rules would choose others as
        # the offset moves.
        "flutes.count": tap.flutes.count,
        "flutes.cutter_diameter": round(tap.flutes.cutter_diameter, 6),
    }
    return (
        Way("rake and core", _WISH, not by_setting, {**wish, **dict.fromkeys(_SETTING)}),
        Way("offset and depth", _SETTING, by_setting, {**setting, **dict.fromkeys(_WISH)}, note),
    )
