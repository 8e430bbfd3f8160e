"""Fields of a job that can run along a chart: what each is, and how far it is varied."""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from tapmodel.designing.record import TapDesign
from tapmodel.report.view.controls.flutes import flute_ways

Number = Callable[[TapDesign], float]


@dataclass(frozen=True, slots=True)
class ChartField:
    """A field that holds a number, in the unit of the field [mm, deg ...].

    Attributes:
        label: its name.
        present: what it is in a design, be it chosen or derived.
        reach: by how much it is varied to both sides, more than 0.
        least, most: beyond which nothing is tried.
        whole: whether it counts.
    """

    label: str
    present: Number
    reach: Number
    least: float = 0.0
    most: float = 2000.0
    whole: bool = False

    def ends(self, design: TapDesign) -> tuple[float, float]:
        """From where to where it is varied about what it is, rounded by a twentieth at the most."""
        middle, reach = self.present(design), self.reach(design)
        digits = 1 - math.floor(math.log10(reach))
        low, high = max(middle - reach, self.least), min(middle + reach, self.most)
        return round(low, digits), round(max(high, low + reach / 10), digits)


@dataclass(frozen=True, slots=True)
class Held:
    """What a chart holds while a field runs along it.

    Attributes:
        values: of other fields, as a job takes them; None for those that it gives no more.
        note: what is held, in words; empty where nothing is.
    """

    values: Mapping[str, float | str | None]
    note: str


def held_by(design: TapDesign, field: str) -> Held:
    """Of a setting where rake and core are given, or the other way round, the whole of its way.

    Were a rake or a core still chosen or given, rules would have another cutter or another depth
    for each value, and no line would be that of the value alone.
    """
    ways = flute_ways(design)
    for way, other in (ways, ways[::-1]):
        if field in way.fields and not way.chosen:
            values = {name: value for name, value in way.values.items() if name != field}
            kept = [FIELDS[name].label for name, value in values.items() if value is not None]
            are, them = ("are", "them") if len(kept) > 1 else ("is", "it")
            note = (
                f"Drawn as if {way.label} were given, not {other.label}: {' and '.join(kept)} "
                f"{are} held as now, and a value that is taken brings {them} along."
            )
            return Held(values, note)
    return Held({}, "")


_SHARE = 0.4
"""By which a length is varied, of itself. Rule of this program."""


def _share(present: Number) -> Number:
    return lambda design: max(_SHARE * abs(present(design)), 0.05)


def _always(reach: float) -> Number:
    return lambda _design: reach


def _length(label: str, present: Number) -> ChartField:
    return ChartField(label, present, _share(present), least=0.01)


def _core_offset(design: TapDesign) -> float:
    return design.tap.flutes.cutter_diameter / 2


def _land_share(design: TapDesign) -> float:
    return design.figures.land_angle * design.tap.flutes.count / 360


FIELDS: Mapping[str, ChartField] = {
    "flutes.offset": ChartField(
        "offset of the cutter", lambda d: d.tap.flutes.offset, _core_offset, least=-1000.0
    ),
    "flutes.depth_from_top": _length("depth below the top", lambda d: d.figures.depth_from_top),
    "flutes.core_diameter": _length("core (web)", lambda d: d.tap.flutes.core_diameter),
    "flutes.rake": ChartField(
        "rake at the crest", lambda d: d.figures.rake_crest, _always(12.0), -45.0, 45.0
    ),
    "flutes.cutter_diameter": _length("cutter", lambda d: d.tap.flutes.cutter_diameter),
    "flutes.count": ChartField(
        "flutes", lambda d: float(d.tap.flutes.count), _always(3.0), 2.0, 12.0, whole=True
    ),
    "flutes.land_share": ChartField("land, of the spacing", _land_share, _always(0.25), 0.05, 0.95),
    "chamfer.pitches": ChartField(
        "chamfer in pitches",
        lambda d: d.figures.chamfer_leads,
        lambda d: 0.75 * d.figures.chamfer_leads,
        0.5,
        100.0,
    ),
    "chamfer.angle": ChartField(
        "chamfer, to the axis",
        lambda d: d.tap.chamfer.angle,
        lambda d: 0.6 * d.tap.chamfer.angle,
        0.5,
        60.0,
    ),
    "chamfer.point_diameter": ChartField(
        "point diameter",
        lambda d: d.tap.chamfer.point_diameter,
        lambda d: 0.1 * d.tap.chamfer.point_diameter,
        0.01,
    ),
    "relief.chamfer.edge_angle": ChartField(
        "chamfer, relief at the edge",
        lambda d: d.figures.chamfer_relief.edge_angle,
        _always(5.0),
        0.25,
        45.0,
    ),
    "relief.chamfer.heel_drop": _length(
        "chamfer, drop at the heel", lambda d: d.figures.chamfer_relief.heel_drop
    ),
    "relief.thread.heel_drop": _length(
        "thread, drop at the heel", lambda d: d.figures.thread_relief.heel_drop
    ),
    "relief.thread.margin_angle": ChartField(
        "margin behind the edge",
        lambda d: d.tap.relief.thread.margin_angle,
        _always(12.0),
        0.0,
        179.0,
    ),
    "thread.pitch_diameter": ChartField(
        "pitch diameter",
        lambda d: d.tap.thread.pitch_diameter,
        lambda d: 0.05 * d.tap.thread.pitch,
        0.01,
    ),
    "thread.major": ChartField(
        "major diameter", lambda d: d.tap.thread.major, lambda d: 0.1 * d.tap.thread.pitch, 0.01
    ),
    "hole.drill": ChartField(
        "tap drill", lambda d: d.drill, lambda d: 0.25 * d.tap.thread.pitch, 0.01
    ),
    "hole.depth": _length("depth of the thread", lambda d: d.work.depth),
    "tap.hardness": ChartField(
        "hardness of the tap", lambda d: d.work.steel.hardness, _always(6.0), 40.0, 68.0
    ),
}
"""In the order of a list."""
