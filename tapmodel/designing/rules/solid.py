"""Which broken rules leave no solid at all: what `--force` cannot build, and why.

Most limits of this program stand well before that; a web that is too thin to drive the tap is
still a web. Here stand the places where a surface ends, turns inside out or is not there.
"""

from collections.abc import Callable, Mapping

from tapmodel.designing.codes import Code, Lost
from tapmodel.designing.limits.flutes import clearance, land_width
from tapmodel.designing.limits.neighbours import least_wall
from tapmodel.designing.record import TapDesign
from tapmodel.designing.rules.reliefs.surface import surfaces
from tapmodel.findings import NoSolid
from tapmodel.shape.back_taper import thread_at_end
from tapmodel.shape.flute_section import section_of
from tapmodel.shape.turned import (
    cone_length,
    largest_radius_cut,
    smallest_radius_cut,
    turned_lengths,
)
from tapmodel.values import Values
from tapmodel.words import ReliefPlace

Reason = NoSolid | None
Judge = Callable[[TapDesign], Reason]


def no_solid(code: str, design: TapDesign) -> Reason:
    """Why a design that breaks the rule `code` has no solid; None when it has one.

    Source: derived here, case by case.
    """
    return HARD[code](design) if code in HARD else None


def _always(code: Lost) -> Judge:
    return lambda _design: NoSolid(code)


def _crest(design: TapDesign) -> Reason:
    thread = design.tap.thread
    if max(thread.crest_flat, thread.crest_radius) > 0:
        return None
    return NoSolid(Lost.CREST, Values(major=thread.major))


def _front_centre(design: TapDesign) -> Reason:
    widest = min(design.tap.flutes.core_diameter, design.tap.chamfer.point_diameter)
    if design.tap.blank.front_centre < widest:
        return None
    return NoSolid(Lost.FRONT_CENTRE_OPEN, Values(between=widest))


def _rear_centre(design: TapDesign) -> Reason:
    blank = design.tap.blank
    face = blank.shank_diameter - 2 * blank.rear_chamfer
    if blank.rear_centre < min(face, blank.square_across_flats):
        return None
    return NoSolid(Lost.REAR_CENTRE_WIDE, Values(face=face))


def _rear_chamfer(design: TapDesign) -> Reason:
    blank = design.tap.blank
    widest = min(blank.shank_diameter / 2, blank.square_length)
    if blank.rear_chamfer < widest:
        return None
    return NoSolid(Lost.REAR_FACE, Values(widest=widest))


def _square_length(design: TapDesign) -> Reason:
    return None if design.tap.blank.square_length > 0 else NoSolid(Lost.SQUARE_BEHIND_REAR)


def _overall_length(design: TapDesign) -> Reason:
    blank = design.tap.blank
    shank = blank.thread_length + blank.neck_length + cone_length(blank)
    if blank.square_start > shank:
        return None
    return NoSolid(Lost.SQUARE_BEFORE_SHANK, Values(shank=shank))


def _runout_square(design: TapDesign) -> Reason:
    end, start = design.figures.runout_end, design.tap.blank.square_start
    return None if end < start else NoSolid(Lost.RUNOUT_IN_SQUARE, Values(end=end))


def _flute_length(design: TapDesign) -> Reason:
    if design.tap.flutes.full_depth_length > design.tap.blank.thread_length:
        return None
    return NoSolid(Lost.LAST_THREAD)


def _core_behind(design: TapDesign) -> Reason:
    flutes = design.tap.flutes
    lengths = turned_lengths(design.tap.blank, design.tap.thread.major)
    slim = 2 * smallest_radius_cut(
        lengths, max(flutes.full_depth_length, design.figures.runout_end)
    )
    if slim > flutes.core_diameter:
        return None
    return NoSolid(Lost.FLUTE_ENDS, Values(slim=slim))


def _neighbours(design: TapDesign) -> Reason:
    lengths = turned_lengths(design.tap.blank, design.tap.thread.major)
    cut = largest_radius_cut(lengths, design.figures.runout_end)
    wall = least_wall(section_of(design.tap.flutes), design.tap.flutes.count, cut)
    return None if wall > 0 else NoSolid(Lost.FLUTES_MEET)


def _land(design: TapDesign) -> Reason:
    section, count = section_of(design.tap.flutes), design.tap.flutes.count
    if land_width(section, count, thread_at_end(design.tap).minor / 2) > 0:
        return None
    return NoSolid(Lost.LANDS)


def _cone(design: TapDesign) -> Reason:
    rising = design.tap.chamfer.point_diameter < design.tap.thread.major
    return None if rising else NoSolid(Lost.CHAMFER_FALLS)


def _needle(design: TapDesign) -> Reason:
    return None if design.tap.chamfer.point_diameter > 0 else NoSolid(Lost.POINT)


def _too_deep(design: TapDesign) -> Reason:
    """A relieved surface that falls below the web, or the crest below the root."""
    gap = clearance(design.tap.thread.major)
    for surface in surfaces(design):
        if not surface.spans:
            return NoSolid(Lost.RELIEF_SURFACE)
        spare = 0.0 if surface.relief.applies_to is ReliefPlace.CREST else gap
        if surface.least - spare > surface.nominal:
            return NoSolid(Lost.RELIEF_DEPTH, Values(section=surface.key))
    return None


HARD: Mapping[str, Judge] = {
    Code.CREST_FLAT: _crest,
    Code.CHAMFER_ANGLE: _cone,
    Code.POINT_SLIM: _needle,
    Code.POINT_CORE: _too_deep,
    Code.CREST_DROP: _too_deep,
    Code.THREAD_DROP: _too_deep,
    Code.RELIEF_ARC: _always(Lost.RELIEF_SURFACE),
    Code.FLUTE_NEIGHBOURS: _neighbours,
    Code.LAND_CREST: _land,
    Code.LAND_ROOT: _land,
    Code.FLUTE_LENGTH: _flute_length,
    Code.CORE_BEHIND: _core_behind,
    Code.RUNOUT_SQUARE: _runout_square,
    Code.RUNOUT_SHOULDER: _always(Lost.RUNOUT_PARTED),
    Code.STEP_ROOT: _always(Lost.THREAD_END),
    Code.SQUARE_FLATS: _always(Lost.FLATS_OUTSIDE),
    Code.SQUARE_LENGTH: _square_length,
    Code.OVERALL_LENGTH: _overall_length,
    Code.FRONT_CENTRE: _front_centre,
    Code.REAR_CENTRE: _rear_centre,
    Code.REAR_CENTRE_SIZE: _always(Lost.REAR_CENTRE_SMALL),
    Code.NECK_LENGTH_SIZE: _always(Lost.NECK_SHORT),
    Code.REAR_CHAMFER: _rear_chamfer,
}
"""By the code of the rule."""
