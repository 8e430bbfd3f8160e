"""Rules on how deep the reliefs may go at the heel, where the land is widest: to web and root."""

from tapmodel.design.flute_limits import clearance
from tapmodel.design.judging import ERROR, Findings, at_least, finding
from tapmodel.design.legal_value import ceil_text, floor_text
from tapmodel.design.provenance import GEOMETRY, OWN_RULE
from tapmodel.design.rules_surface import Surface, largest_cure, least_nominal, spanned, stays_above
from tapmodel.design.tap_design import Relief, TapDesign
from tapmodel.words import ReliefPlace


def judge(design: TapDesign, surface: Surface) -> Findings:
    """Every finding on the depth of one relieved surface whose arc spans the land.

    Source: each names its own.
    """
    if stays_above(design, surface, surface.relief):
        return
    if surface.relief.applies_to is ReliefPlace.CHAMFER:
        yield from _point(design, surface)
    elif surface.nominal > surface.floor:  # else a rule on the flutes asks for a smaller core
        yield from _thread(design, surface)


def _point(design: TapDesign, surface: Surface) -> Findings:
    least = 2 * least_nominal(design, surface, surface.relief)
    cure = f"set chamfer.point_diameter at least {ceil_text(least)} mm, or a smaller core"
    if least >= design.drill:
        cure = _shallower(design, surface)
    what = f"At the heel the point reaches into the web between the flutes; {cure}."
    numbers = at_least(least, design.chamfer.point_diameter)
    yield finding("point-core", ERROR, what, numbers, OWN_RULE)


def _shallower(design: TapDesign, surface: Surface) -> str:
    """The cure where a point that stays above the web would not enter the drilled hole."""
    if surface.nominal <= surface.floor:
        core = 2 * (surface.nominal - clearance(design.thread.major))
        return f"set flutes.core_diameter below {floor_text(core)} mm"
    cure, _ = largest_cure(design, surface, lambda relief: _legal(design, surface, relief))
    return f"{cure}, or a smaller core"


def _legal(design: TapDesign, surface: Surface, relief: Relief) -> bool:
    return spanned(design, relief) and stays_above(design, surface, relief)


def _thread(design: TapDesign, surface: Surface) -> Findings:
    cure, numbers = largest_cure(design, surface, lambda relief: _legal(design, surface, relief))
    if surface.relief.applies_to is ReliefPlace.CREST:
        what = f"At the heel the crest would drop below the root of the thread; {cure}."
        yield finding("crest-drop", ERROR, what, numbers, GEOMETRY)
    else:
        what = f"At the heel the root of the thread would drop into the web; {cure}."
        yield finding("thread-drop", ERROR, what, numbers, OWN_RULE)
