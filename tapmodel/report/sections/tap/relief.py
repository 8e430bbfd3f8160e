"""Relief of the thread and of the chamfer: drop behind the edge and the grinding arc."""

import math

import numpy as np

from tapmodel.report.sheet.blocks import (
    Angle,
    Block,
    Length,
    Paragraphs,
    Quantity,
    Row,
    Rows,
    Section,
    Table,
    Words,
    small_length,
)
from tapmodel.shape.relief import drop
from tapmodel.tap.design import Relief, TapDesign
from tapmodel.words import ReliefKind

SHARES = np.linspace(0, 1, 5)
"""Where along the land the drop is tabled: edge, quarters, heel."""


def section(design: TapDesign) -> Section:
    """Both reliefs."""
    reliefs = design.relief
    blocks = (*_one(design, reliefs.thread), *_one(design, reliefs.chamfer))
    return Section("relief", "Relieve", blocks)


def _one(design: TapDesign, relief: Relief) -> list[Block]:
    where = f"Relief of the {relief.applies_to.value}"
    if relief.kind is ReliefKind.CONCENTRIC:
        return [Paragraphs((f"{where}: concentric, no drop.",))]
    rows = [Row("kind", Words(relief.kind.value))]
    if relief.kind is ReliefKind.CON_ECCENTRIC:
        rows.append(Row("margin without drop", Angle(relief.margin_angle)))
    else:
        rows.append(Row("relief angle at the edge", Angle(relief.edge_angle)))
    rows += [
        Row("radial drop at the heel", small_length(relief.heel_drop), measured=True),
        Row("radius of the arc", Length(relief.arc_radius)),
        Row("arc's centre off the axis", small_length(relief.arc_offset)),
        Row("direction of that, behind the edge", Angle(relief.arc_direction)),
    ]
    return [Rows(tuple(rows), where), _drops(design, relief, f"{where}: drop along the land")]


def _drops(design: TapDesign, relief: Relief, caption: str) -> Table:
    land = design.flutes.land_angle
    drops = drop(relief, SHARES * land)
    radius = design.thread.major / 2
    lines: list[tuple[Quantity, ...]] = [
        (
            Angle(share * land, 1),
            Length(radius * math.radians(share * land), 2),
            Length(float(fall), small_length(relief.heel_drop).digits),
        )
        for share, fall in zip(SHARES, drops, strict=True)
    ]
    return Table(("behind the edge", "along the arc", "radial drop"), tuple(lines), caption)
