"""Relief of the thread and of the chamfer: drop behind the edge and the grinding arc."""

import math
from collections.abc import Sequence

import numpy as np

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import (
    Angle,
    Block,
    Chapter,
    Length,
    Paragraphs,
    Row,
    Rows,
    Table,
    Words,
    small_length,
)
from tapmodel.report.chapters.tap.relief_made import made_in_short
from tapmodel.shape.figures import ReliefFigures
from tapmodel.shape.flute_section import crest_edge_angle, face_angle, section_of
from tapmodel.shape.relief import Floats, drop
from tapmodel.spec.measured.sizes import Size
from tapmodel.tap.tap import Relief
from tapmodel.words import ReliefKind, ReliefPlace

SHARES = np.linspace(0, 1, 5)
"""Where along the land the drop is tabled: edge, quarters, heel."""


def chapter(design: TapDesign) -> Chapter:
    """Both reliefs."""
    blocks = described(design)
    dropping = [relief for relief, _ in design.reliefs if relief.kind is not ReliefKind.CONCENTRIC]
    if dropping:
        told = (*from_where(design), SETTING, MAKING, *made_in_short(design))
        blocks += [_drops(design, dropping), Paragraphs(told)]
    return Chapter("relief", "Relieve", tuple(blocks))


def described(design: TapDesign) -> list[Block]:
    """What either relief is, as designed."""
    return [block for relief, figures in design.reliefs for block in _one(relief, figures)]


SETTING = (
    "Each land's arc has its own centre: seen on the cutting end, turn from the cutting edge about "
    "the tap's axis by the angle told, and go out by the offset."
)
"""Where the centre of an arc lies."""

MAKING = (
    "Grind it between centres that are offset to that point, rocking the one land, as the others "
    "stand in the way; or file it by the table of drops (common practice)."
)
"""How a shop without a relieving lathe makes it."""

_KINDS = {
    ReliefKind.ECCENTRIC: "eccentric: it drops from the edge on",
    ReliefKind.CON_ECCENTRIC: "con-eccentric: round as the tap, then an arc that drops",
}


def _one(relief: Relief, figures: ReliefFigures) -> list[Block]:
    where = f"Relief of the {relief.applies_to.value}"
    chamfer = relief.applies_to is ReliefPlace.CHAMFER
    of = Size.HEEL_DROP if chamfer else Size.THREAD_HEEL_DROP
    if relief.kind is ReliefKind.CONCENTRIC:
        return [Paragraphs((f"{where}: concentric, no drop.",))]
    rows = [Row("kind", Words(_KINDS[relief.kind]))]
    if relief.kind is ReliefKind.CON_ECCENTRIC:
        rows.append(Row("margin without drop, behind the edge", Angle(relief.margin_angle)))
    else:
        rows.append(Row("relief angle at the edge", Angle(figures.edge_angle)))
    way = "back over its land" if figures.arc_direction >= 0 else "ahead, over its flute"
    rows += [
        Row("radial drop at the heel", small_length(figures.heel_drop), measured=True, size=of),
        Row("radius of the arc", Length(figures.arc_radius)),
        Row("arc's centre off the axis", small_length(relief.arc_offset)),
        Row(f"turned from the edge, {way}, by", Angle(abs(figures.arc_direction))),
    ]
    return [Rows(tuple(rows), where)]


def _drops(design: TapDesign, reliefs: Sequence[Relief]) -> Table:
    """Of each relief that drops, side by side."""
    land, major = design.figures.land_angle, design.tap.thread.major
    angles = SHARES * land
    columns = [_fallen(drop(relief, major, angles)) for relief in reliefs]
    lines = tuple(
        (Angle(angle, 1), Length(major / 2 * math.radians(angle), 2), *falls)
        for angle, *falls in zip(map(float, angles), *columns, strict=True)
    )
    names = (f"drop of the {relief.applies_to.value}" for relief in reliefs)
    return Table(("behind the edge", "along the arc", *names), lines, "Radial drop along the land")


MOST_ASIDE = 0.5
"""An edge that stands no further aside than that [deg] is told nothing of."""


def from_where(design: TapDesign) -> list[str]:
    """Where the table counts from, if the edges of the chamfer's teeth stand aside of that."""
    flutes, section = design.tap.flutes, section_of(design.tap.flutes)
    front = design.tap.chamfer.point_diameter / 2
    if front <= abs(flutes.core_diameter) / 2:
        return []  # against a rule: no flute reaches the point, which has no edge
    aside = face_angle(section, front) - crest_edge_angle(flutes, design.tap.thread.major)
    if abs(aside) <= MOST_ASIDE:
        return []
    way = "ahead of" if aside < 0 else "behind"
    words = (
        "The table counts from the edge of the full thread. The cutting face is no radius: in "
        f"front the edge stands {abs(aside):.1f}° {way} that. Take the drop of the same place "
        "round the tap, not that of the same way from the edge."
    )
    return [words]


def _fallen(drops: Floats) -> list[Length]:
    """With the digits that the drop at the heel is told with."""
    digits = small_length(float(drops[-1])).digits
    return [Length(float(fall), digits) for fall in drops]
