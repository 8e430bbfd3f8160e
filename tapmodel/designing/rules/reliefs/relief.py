"""Rules on the two reliefs."""

from tapmodel.designing.choose.relief import CHAMFER_EDGE_ANGLE
from tapmodel.designing.codes import Code
from tapmodel.designing.judging import (
    NOTE,
    WARNING,
    Findings,
    at_least,
    exactly,
    finding,
    less,
    more,
    under,
)
from tapmodel.designing.provenance import OWN_RULE
from tapmodel.designing.record import TapDesign
from tapmodel.designing.rules.context import Context
from tapmodel.designing.rules.reliefs import arc as rules_arc
from tapmodel.designing.rules.reliefs import floor as rules_floor
from tapmodel.designing.rules.reliefs.surface import surfaces
from tapmodel.prediction.rubbing.need import chamfer_rub, needed_drop
from tapmodel.values import Values
from tapmodel.words import ReliefKind

LEAST_RUB = 1e-6
"""Below a thousandth of a micrometre [mm] the edge itself is meant, where drop and need are 0."""


LEAST_EDGE = 2.0
"""Relief of the chamfer at its edge [deg] below which it is told: half the least of the usual."""


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
    yield from _slight(design)


def _slight(design: TapDesign) -> Findings:
    """A chamfer whose drop a rule cut short, so that little relief is left at its edge."""
    thread, figures = design.tap.thread, design.figures.chamfer_relief
    drop, eccentric = (
        design.choice("relief.chamfer.heel_drop"),
        design.tap.relief.chamfer.kind is ReliefKind.ECCENTRIC,
    )
    if drop is None or drop.given or not eccentric or not under(figures.edge_angle, LEAST_EDGE):
        return
    values = Values(
        usual=CHAMFER_EDGE_ANGLE,
        height=(thread.major - thread.minor) / 2,
        land=design.figures.land_width,
        drop=figures.heel_drop,
    )
    field, limit = "relief.chamfer.edge_angle", at_least(LEAST_EDGE, "deg")
    yield finding(
        Code.CHAMFER_SLIGHT, NOTE, field, figures.edge_angle, limit, OWN_RULE, values=values
    )


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
