"""Rules on the two reliefs."""

from tapmodel.designing.choose.relief import chamfer_rub, needed_drop
from tapmodel.designing.codes import Code
from tapmodel.designing.judging import WARNING, Findings, at_least, exactly, finding, less, more
from tapmodel.designing.record import TapDesign
from tapmodel.designing.rules.context import Context
from tapmodel.designing.rules.reliefs import arc as rules_arc
from tapmodel.designing.rules.reliefs import floor as rules_floor
from tapmodel.designing.rules.reliefs.surface import surfaces
from tapmodel.values import Values
from tapmodel.words import ReliefKind

LEAST_RUB = 1e-6
"""Below a thousandth of a micrometre [mm] the edge itself is meant, where drop and need are 0."""


def judge(design: TapDesign, context: Context) -> Findings:
    """Every finding on the reliefs.

    Source: each names its own.
    """
    del context  # the reliefs are judged by the design alone
    thread, chamfer = surfaces(design)
    for surface in (thread, chamfer):
        yield from rules_arc.judge(design, surface)
        if surface.spans:
            yield from rules_floor.judge(design, surface)
    if chamfer.spans:
        yield from _chamfer(design)


def _chamfer(design: TapDesign) -> Findings:
    relief, figures = design.tap.relief.chamfer, design.figures.chamfer_relief
    land = design.figures.land_angle
    rub = chamfer_rub(design.tap.thread, design.tap.chamfer, relief, land)
    if rub < LEAST_RUB:
        return
    need = needed_drop(design.tap.thread, design.tap.chamfer, land)
    key, field, fall = "relief.chamfer", "relief.chamfer.heel_drop", figures.heel_drop
    by_drop, to_eccentric = more(field, fall, need), exactly(f"{key}.kind", "eccentric")
    levers = (
        by_drop,
        more(f"{key}.edge_angle", figures.edge_angle),
        less(f"{key}.margin_angle", relief.margin_angle),
        to_eccentric,
        more("chamfer.length", design.tap.chamfer_length),
    )
    if relief.kind is ReliefKind.ECCENTRIC:
        levers = (*levers[:2], levers[4])
    elif relief.kind is ReliefKind.CONCENTRIC:
        levers = (to_eccentric, by_drop)
    values = Values(rub=rub, kind=relief.kind.value)
    yield finding(
        Code.CHAMFER_RUBS, WARNING, field, fall, at_least(need), values=values, levers=levers
    )
