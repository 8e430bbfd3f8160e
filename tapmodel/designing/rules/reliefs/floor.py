"""Rules on how deep the reliefs may go at the heel, where the land is widest: to web and root."""

from tapmodel.designing.codes import Code
from tapmodel.designing.judging import ERROR, Findings, at_least, finding, less, more
from tapmodel.designing.limits.flutes import clearance
from tapmodel.designing.provenance import GEOMETRY, OWN_RULE
from tapmodel.designing.record import TapDesign
from tapmodel.designing.rules.reliefs.surface import Surface, less_relief
from tapmodel.words import ReliefPlace


def judge(design: TapDesign, surface: Surface) -> Findings:
    """Every finding on the depth of one relieved surface whose arc spans the land.

    Source: each names its own.
    """
    if surface.stays_above:
        return
    if surface.relief.applies_to is ReliefPlace.CHAMFER:
        yield from _point(design, surface)
    elif surface.nominal > surface.floor:  # else a rule on the flutes asks for a smaller core
        yield from _thread(design, surface)


def _point(design: TapDesign, surface: Surface) -> Findings:
    least, point = 2 * surface.least, 2 * surface.nominal
    core = design.tap.flutes.core_diameter
    field = "chamfer.point_diameter"
    levers = (
        more(field, point, least),
        less("chamfer.length", design.tap.chamfer_length),
        less(
            "flutes.core_diameter", core, min(core, point - 2 * clearance(design.tap.thread.major))
        ),
        *less_relief(design, surface),
        less("chamfer.angle", design.tap.chamfer.angle),
        less("chamfer.pitches", design.figures.chamfer_leads),
    )
    yield finding(Code.POINT_CORE, ERROR, field, point, at_least(least), OWN_RULE, levers=levers)


def _thread(design: TapDesign, surface: Surface) -> Findings:
    actual, levers = 2 * surface.nominal, less_relief(design, surface)
    limit = at_least(2 * surface.least)
    if surface.relief.applies_to is ReliefPlace.CREST:
        judged = ("thread.major", actual, limit, GEOMETRY)
        yield finding(Code.CREST_DROP, ERROR, *judged, levers=levers)
    else:
        judged = ("thread.minor", actual, limit, OWN_RULE)
        yield finding(Code.THREAD_DROP, ERROR, *judged, levers=levers)
