"""Short sentences of a poster beside its drawings."""

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Length, Pitch
from tapmodel.report.chapters.in_the_hole.turning_it import hardness_told
from tapmodel.report.tools import cutter_of
from tapmodel.report.units import Units, shown
from tapmodel.shop.flute_setting import flute_setting
from tapmodel.tap.tap import TapThread
from tapmodel.words import Hand


def _text(texts: tuple[str, ...]) -> str:
    return " = ".join(texts)


def subtitle(design: TapDesign, units: Units) -> str:
    """Hand, pitch, flutes and steel in a line."""
    thread, steel = design.tap.thread, design.work.steel
    parts = [
        f"{thread.hand.value} hand",
        *_starts(thread, units),
        f"pitch {_text(shown(Pitch(thread.pitch), units))}",
        f"{design.tap.flutes.count} flutes",
        f"{steel.told}, {hardness_told(steel)}",
    ]
    return "  ·  ".join(parts)


def _starts(thread: TapThread, units: Units) -> list[str]:
    if thread.starts == 1:
        return []
    return [f"{thread.starts} starts, lead {_text(shown(Pitch(thread.lead), units))}"]


def milling(design: TapDesign, units: Units) -> tuple[str, ...]:
    """The set-up for the flutes, a line each."""
    flutes, setting = design.tap.flutes, flute_setting(design)
    wall = "right" if design.tap.thread.hand is Hand.RIGHT else "left"
    offset = "cutter on the centre line"
    if setting.side:
        offset = f"offset {_text(shown(Length(setting.offset), units))} to the {setting.side}"
    turn = f"{360 / flutes.count:.4f}".rstrip("0").rstrip(".")
    return (
        f"ball-nose cutter {_text(shown(cutter_of(flutes.cutter_diameter), units))}",
        offset,
        f"depth {_text(shown(Length(design.figures.depth_from_top), units))} from the top",
        f"index {flutes.count} × {turn}°",
        f"core (web) {_text(shown(Length(flutes.core_diameter), units))}",
        f"cutting face: the {wall} wall",
    )


def chips(design: TapDesign, units: Units) -> tuple[str, ...]:
    """How many teeth cut, and how thick their chips are."""
    foreseen = design.prediction
    if foreseen is None:
        return ("not foreseen",)
    found = foreseen.chips
    thick, thin = (
        _text(shown(Length(value, 4), units))
        for value in (found.thickness_max, found.thickness_min)
    )
    return (
        f"{len(found.teeth)} teeth cut, in the order of their numbers",
        f"chips {thin} to {thick} thick",
    )
