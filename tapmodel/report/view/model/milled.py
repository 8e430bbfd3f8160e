"""The flutes as they are milled one by one, as the page shows it."""

from dataclasses import dataclass

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Length
from tapmodel.report.tools import cutter_of
from tapmodel.report.units import Units, as_text
from tapmodel.report.view.bench.dividing import DividingView, Station, dividing_view
from tapmodel.shop.flute_setting import flute_setting


@dataclass(frozen=True, slots=True)
class MilledFlute:
    """One flute.

    Attributes:
        name: e.g. "flute 2 of 3".
        move: what is done before it, e.g. "index 120°, 13 turns + 13 holes on 39".
    """

    name: str
    move: str


@dataclass(frozen=True, slots=True)
class Milled:
    """The set-up and its stations.

    Attributes:
        side: "right" or "left" of the centre line, where the cutter stands as seen on the cutting
            end; "" for over the axis.
        told: cutter, offset and depth in one line.
        ratio: turns of the head's crank, or the table's handle, for one of the work.
        stations: the flutes in the order of the work.
    """

    side: str
    told: str
    ratio: int
    stations: tuple[MilledFlute, ...]


def milled(design: TapDesign, units: Units) -> Milled:
    """How the flutes are milled."""
    setting, flutes = flute_setting(design), design.tap.flutes
    cutter = as_text(cutter_of(flutes.cutter_diameter), units)
    offset = "over the axis"
    if setting.side:
        offset = f"{as_text(Length(setting.offset), units)} to the {setting.side}"
    depth = as_text(Length(design.figures.depth_from_top), units)
    dividing = dividing_view(design, flutes.count)
    return Milled(
        setting.side,
        f"seen on the cutting end: ball-nose cutter {cutter}, {offset}, {depth} deep",
        dividing.ratio,
        _stations(dividing),
    )


def _stations(dividing: DividingView) -> tuple[MilledFlute, ...]:
    """Each flute, and what crank or handle does between it and the one before."""
    count = len(dividing.stations)
    share = f"{360 / count:.4f}".rstrip("0").rstrip(".")
    return tuple(
        MilledFlute(f"flute {place.number} of {count}", _move(place, share))
        for place in dividing.stations
    )


def _move(place: Station, share: str) -> str:
    """Told from the flute before, or from the first where errors would add up."""
    if place.number == 1:
        return "start here"
    move = place.move or f"{place.reached} from the first"
    return f"index {share}°, {move}" + (f", off by {place.off}" if place.off else "")
