"""The tap at work in its hole, as the page shows it: the hole, and the chip of every tooth."""

from dataclasses import dataclass

from tapmodel.designing.record import TapDesign
from tapmodel.prediction.chips.record import Tooth
from tapmodel.prediction.prediction import Prediction
from tapmodel.report.blocks import Area, Length
from tapmodel.report.units import Units, as_text
from tapmodel.report.view.model.shape import Profile, profile_of


@dataclass(frozen=True, slots=True)
class Chip:
    """What one tooth cuts.

    Attributes:
        number: from 1, as the teeth meet the work.
        land: from 0.
        z: of the middle of the tooth's crest at the cutting edge [mm].
        radius: at which the middle of the chip lies [mm].
        width: of the chip along the cone [mm].
        thickness: greatest [mm].
        text: thickness and area with their units.
    """

    number: int
    land: int
    z: float
    radius: float
    width: float
    thickness: float
    text: str


@dataclass(frozen=True, slots=True)
class InHole:
    """The hole and the way of the tap into it.

    Attributes:
        drill: diameter [mm].
        depth: of the work where the hole goes through, else of the drilled hole [mm].
        blind: whether the hole has a bottom.
        way: how far the front goes below the face of the work [mm].
        before: thread that an earlier tap of a set has cut; None where none has.
        told: what is cut, in one line.
        chips: of every tooth that cuts.
    """

    drill: float
    depth: float
    blind: bool
    way: float
    before: Profile | None
    told: str
    chips: tuple[Chip, ...]


def in_hole(design: TapDesign, units: Units) -> InHole | None:
    """The tap in its hole; None where nothing is foreseen of it."""
    foreseen, work = design.prediction, design.work
    if foreseen is None:
        return None
    part = foreseen.task.part
    before = part.before if part else None
    behind = design.tap.chamfer_length + (0.0 if work.blind else design.tap.thread.pitch)
    return InHole(
        drill=design.drill,
        depth=design.hole_depth if work.blind else work.depth,
        blind=work.blind,
        way=work.depth + behind,
        before=profile_of(before) if before else None,
        told=_told(design, foreseen, units),
        chips=tuple(_chip(n, tooth, units) for n, tooth in enumerate(foreseen.chips.teeth, 1)),
    )


def _told(design: TapDesign, foreseen: Prediction, units: Units) -> str:
    chips, kind = foreseen.chips, "blind" if design.work.blind else "through"
    depth = as_text(Length(design.work.depth, 1), units)
    drill = as_text(Length(design.drill, 2), units)
    words = f"{kind} hole, drill {drill}, thread {depth} deep; {foreseen.task.material.told}"
    if not chips.teeth:
        return f"{words}; no tooth cuts"
    thick = " to ".join(
        dict.fromkeys(
            as_text(Length(size), units) for size in (chips.thickness_min, chips.thickness_max)
        )
    )
    return f"{words}; {len(chips.teeth)} teeth cut chips {thick} thick"


def _chip(number: int, tooth: Tooth, units: Units) -> Chip:
    words = f"{as_text(Length(tooth.thickness), units)} thick, {as_text(Area(tooth.area), units)}"
    return Chip(number, tooth.land, tooth.height, tooth.radius, tooth.width, tooth.thickness, words)
