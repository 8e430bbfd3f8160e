"""The flutes as they are milled one by one, as the page shows it."""

from dataclasses import dataclass

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Length, Quantity, Table
from tapmodel.report.chapters.machines import dividing
from tapmodel.report.tools import cutter_of
from tapmodel.report.units import Units, shown
from tapmodel.shop.flute_setting import flute_setting


@dataclass(frozen=True, slots=True)
class Milled:
    """The set-up and its stations.

    Attributes:
        side: "right" or "left" of the centre line, where the cutter stands as seen on the cutting
            end; "" for over the axis.
        told: cutter, offset and depth in one line.
        stations: where each flute is milled, e.g. "flute 2 of 3, 120.0000°: 13 turns + 13 holes
            on 39".
    """

    side: str
    told: str
    stations: tuple[str, ...]


def milled(design: TapDesign, units: Units) -> Milled:
    """How the flutes are milled."""
    setting, flutes = flute_setting(design), design.tap.flutes
    cutter = _text(cutter_of(flutes.cutter_diameter), units)
    offset = "over the axis"
    if setting.side:
        offset = f"{_text(Length(setting.offset), units)} to the {setting.side}"
    depth = _text(Length(design.figures.depth_from_top), units)
    return Milled(
        setting.side,
        f"seen on the cutting end: ball-nose cutter {cutter}, {offset}, {depth} deep",
        tuple(_stations(design, units)),
    )


def _stations(design: TapDesign, units: Units) -> list[str]:
    """Each flute with its angle, and what crank or handle does for it from the first."""
    count = design.tap.flutes.count
    told: list[str] = []
    for block in dividing.chapter(design).blocks:
        if isinstance(block, Table):
            for flute, line in enumerate(block.lines, 1):
                words = [_text(cell, units) for cell in line]
                told.append(f"flute {flute} of {count}, {words[1]}: {words[3]}")
    return told


def _text(quantity: Quantity, units: Units) -> str:
    return " = ".join(shown(quantity, units))
