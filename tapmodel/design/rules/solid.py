"""Which broken rules leave no solid at all: what `--force` cannot build, and why.

Most limits of this program stand well before that; a web that is too thin to drive the tap is
still a web. Here stand the places where a surface ends, turns inside out or is not there.
"""

from collections.abc import Callable, Mapping

from tapmodel.design.limits.flutes import clearance, land_width
from tapmodel.design.limits.neighbours import least_wall
from tapmodel.design.record import TapDesign
from tapmodel.design.rules.reliefs.surface import least_nominal, spanned, surfaces
from tapmodel.shape.flute_section import section_of
from tapmodel.shape.turned import (
    cone_length,
    largest_radius_cut,
    smallest_radius_cut,
    turned_lengths,
)
from tapmodel.words import ReliefPlace

Judge = Callable[[TapDesign], str]


def no_solid(code: str, design: TapDesign) -> str:
    """Why a design that breaks the rule `code` has no solid; "" when it has one.

    Source: derived here, case by case.
    """
    return HARD[code](design) if code in HARD else ""


def _always(reason: str) -> Judge:
    return lambda _design: reason


def _crest(design: TapDesign) -> str:
    thread = design.tap.thread
    if max(thread.crest_flat, thread.crest_radius) > 0:
        return ""
    return f"the flanks of a ridge meet below the major diameter of {thread.major:.3f} mm"


def _front_centre(design: TapDesign) -> str:
    widest = min(design.tap.flutes.core_diameter, design.tap.chamfer.point_diameter)
    if design.tap.blank.front_centre < widest:
        return ""
    return f"the front centre opens into the flutes, which leave {widest:.3f} mm between them"


def _rear_centre(design: TapDesign) -> str:
    blank = design.tap.blank
    face = blank.shank_diameter - 2 * blank.rear_chamfer
    if blank.rear_centre < min(face, blank.square_across_flats):
        return ""
    return f"the rear centre is wider than the rear face of {face:.3f} mm"


def _rear_chamfer(design: TapDesign) -> str:
    blank = design.tap.blank
    widest = min(blank.shank_diameter / 2, blank.square_length)
    if blank.rear_chamfer < widest:
        return ""
    return f"a rear chamfer of {widest:.3f} mm or more leaves no rear face"


def _square_length(design: TapDesign) -> str:
    return "" if design.tap.blank.square_length > 0 else "the square begins behind the rear face"


def _overall_length(design: TapDesign) -> str:
    blank = design.tap.blank
    shank = blank.thread_length + blank.neck_length + cone_length(blank)
    if blank.square_start > shank:
        return ""
    return f"the square begins in front of the shank, which begins at {shank:.3f} mm"


def _runout_square(design: TapDesign) -> str:
    end, start = design.figures.runout_end, design.tap.blank.square_start
    return "" if end < start else f"the flutes run out at {end:.3f} mm, inside the square"


def _flute_length(design: TapDesign) -> str:
    if design.tap.flutes.full_depth_length > design.tap.blank.thread_length:
        return ""
    return "the last thread ends in no flute, so it has no face and no heel there"


def _core_behind(design: TapDesign) -> str:
    flutes = design.tap.flutes
    lengths = turned_lengths(design.tap.blank, design.tap.thread.major)
    slim = 2 * smallest_radius_cut(
        lengths, max(flutes.full_depth_length, design.figures.runout_end)
    )
    if slim > flutes.core_diameter:
        return ""
    return f"the flutes end in the air over a neck or shank of {slim:.3f} mm"


def _neighbours(design: TapDesign) -> str:
    lengths = turned_lengths(design.tap.blank, design.tap.thread.major)
    cut = largest_radius_cut(lengths, design.figures.runout_end)
    wall = least_wall(section_of(design.tap.flutes), design.tap.flutes.count, cut)
    return "" if wall > 0 else "neighbouring flutes cut into each other"


def _land(design: TapDesign) -> str:
    section, count = section_of(design.tap.flutes), design.tap.flutes.count
    if land_width(section, count, design.tap.thread.minor / 2) > 0:
        return ""
    return "the lands are cut off at the root of the thread"


def _cone(design: TapDesign) -> str:
    rising = design.tap.chamfer.point_diameter < design.tap.thread.major
    return "" if rising else "the chamfer does not rise from the point to the crests"


def _needle(design: TapDesign) -> str:
    return "" if design.tap.chamfer.point_diameter > 0 else "the cone ends before the front face"


def _too_deep(design: TapDesign) -> str:
    """A relieved surface that falls below the web, or the crest below the root."""
    gap = clearance(design.tap.thread.major)
    for surface in surfaces(design):
        if not spanned(design, surface.relief):
            return "the relief has no surface over the whole land"
        spare = 0.0 if surface.relief.applies_to is ReliefPlace.CREST else gap
        if least_nominal(design, surface, surface.relief) - spare > surface.nominal:
            return f"the surface of {surface.key} falls below what lies under it"
    return ""


HARD: Mapping[str, Judge] = {
    "crest-flat": _crest,
    "chamfer-angle": _cone,
    "point-slim": _needle,
    "point-core": _too_deep,
    "crest-drop": _too_deep,
    "thread-drop": _too_deep,
    "relief-arc": _always("the relief has no surface over the whole land"),
    "flute-neighbours": _neighbours,
    "land-crest": _land,
    "land-root": _land,
    "flute-length": _flute_length,
    "core-behind": _core_behind,
    "runout-square": _runout_square,
    "runout-shoulder": _always("the flutes run out in two pieces, which no face here describes"),
    "step-root": _always("the thread would end in a face without width"),
    "square-flats": _always("the flats of the square lie outside the shank"),
    "square-length": _square_length,
    "overall-length": _overall_length,
    "front-centre": _front_centre,
    "rear-centre": _rear_centre,
    "rear-centre-size": _always("a rear centre so small is lost among the kernel's tolerances"),
    "neck-length-size": _always("a neck so short is lost among the tolerances of the mesh"),
    "rear-chamfer": _rear_chamfer,
}
"""By the code of the rule."""
