"""Rules on how deep the reliefs may go at the heel, where the land is widest: to web and root."""

from tapmodel.design.judging import ERROR, Findings, at_least, finding
from tapmodel.design.legal_value import ceil_text
from tapmodel.design.provenance import GEOMETRY, OWN_RULE
from tapmodel.design.rules_reach import lowest_nominal, walls
from tapmodel.design.rules_surface import Surface, largest_cure, spanned, stays_above
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
    least = 2 * lowest_nominal(surface.relief, walls(design, surface.floor))
    what = (
        "The point reaches into the web between the flutes; set chamfer.point_diameter at "
        f"least {ceil_text(least)} mm, or a smaller core or relief.chamfer.heel_drop."
    )
    numbers = at_least(least, design.chamfer.point_diameter)
    yield finding("point-core", ERROR, what, numbers, OWN_RULE)


def _thread(design: TapDesign, surface: Surface) -> Findings:
    def legal(relief: Relief) -> bool:
        return spanned(design, relief) and stays_above(design, surface, relief)

    cure, numbers = largest_cure(design, surface, legal)
    if surface.relief.applies_to is ReliefPlace.CREST:
        what = f"At the heel the crest would drop below the root of the thread; {cure}."
        yield finding("crest-drop", ERROR, what, numbers, GEOMETRY)
    else:
        what = f"At the heel the root of the thread would drop into the web; {cure}."
        yield finding("thread-drop", ERROR, what, numbers, OWN_RULE)
