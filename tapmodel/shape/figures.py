"""The figures of a tap: everything that is said about it and follows from its definition."""

import math
from dataclasses import dataclass

from tapmodel.shape.flute_section import (
    chordal_hook,
    crest_edge_angle,
    flute_area,
    land_angle,
    rake,
    section_of,
)
from tapmodel.shape.relief import arc_of, edge_angle, heel_drop
from tapmodel.shape.turned import runout_end, turned_lengths
from tapmodel.tap.tap import Chamfer, Relief, Tap, TapThread


@dataclass(frozen=True, slots=True)
class ReliefFigures:
    """What follows from a relief.

    Attributes:
        edge_angle: relief angle at the edge, 0 but for eccentric relief [deg].
        heel_drop: drop at the heel, measured at the major diameter [mm].
        arc_radius: of the arc [mm].
        arc_direction: of its centre from the axis [deg], counted from the crest edge of the land
            in the sense of phi.
    """

    edge_angle: float
    heel_drop: float
    arc_radius: float
    arc_direction: float


@dataclass(frozen=True, slots=True)
class Figures:
    """What follows from the definition of a tap.

    Attributes:
        chamfer_length: until the cone reaches the major diameter [mm]; `chamfer_pitches` the
            same in pitches, `chamfer_leads` in leads: the turns in which each of several threads
            is cut, by teeth of its own. With one start both are the same.
        chamfer_teeth: number of teeth that cut in the chamfer, all lands together.
        chip_thickness: uncut chip thickness of one of them, square to the cone [mm].
        depth_from_top: setting of the mill below the top of the blank (turned to the major
            diameter) [mm].
        core_diameter: of the web between the flutes [mm].
        rake_crest, rake_pitch, rake_root: rake of the cutting face at the crest edge (the
            tangential hook), at the pitch line and at the root [deg].
        chordal_hook: between the radius through the crest edge and the chord from there to the
            root of the tooth [deg].
        land_angle: angle of a land at the major diameter [deg]; `land_width` its arc [mm].
        flute_area: of one flute inside the major circle [mm²].
        runout_end: z where the ball leaves the blank: the first z of sound shank [mm].
        thread_relief, chamfer_relief: of the two reliefs.
    """

    chamfer_length: float
    chamfer_pitches: float
    chamfer_leads: float
    chamfer_teeth: int
    chip_thickness: float
    depth_from_top: float
    core_diameter: float
    rake_crest: float
    rake_pitch: float
    rake_root: float
    chordal_hook: float
    land_angle: float
    land_width: float
    flute_area: float
    runout_end: float
    thread_relief: ReliefFigures
    chamfer_relief: ReliefFigures


def figures_of(tap: Tap) -> Figures:
    """All figures of a tap.

    Source: derived here by the other files of this room.
    """
    thread, flutes = tap.thread, tap.flutes
    section, crest, root = section_of(flutes), thread.major / 2, thread.minor / 2
    land = land_angle(section, flutes.count, crest)
    lengths = turned_lengths(tap.blank, thread.major)
    return Figures(
        chamfer_length=tap.chamfer_length,
        chamfer_pitches=tap.chamfer_length / thread.pitch,
        chamfer_leads=tap.chamfer_length / thread.lead,
        chamfer_teeth=sum(_teeth_in_chamfer(tap, land) for land in range(flutes.count)),
        chip_thickness=chip_thickness(thread, tap.chamfer, flutes.count),
        depth_from_top=crest - (flutes.centre_radius - flutes.cutter_diameter / 2),
        core_diameter=flutes.core_diameter,
        rake_crest=rake(section, crest),
        rake_pitch=rake(section, thread.pitch_diameter / 2),
        rake_root=rake(section, root),
        chordal_hook=chordal_hook(section, crest, root),
        land_angle=land,
        land_width=math.radians(land) * crest,
        flute_area=flute_area(section, crest),
        runout_end=runout_end(section, flutes.full_depth_length, lengths),
        thread_relief=_relief_figures(tap.relief.thread, thread.major, land),
        chamfer_relief=_relief_figures(tap.relief.chamfer, thread.major, land),
    )


def _relief_figures(relief: Relief, major: float, land: float) -> ReliefFigures:
    arc = arc_of(relief, major)
    dropped = heel_drop(relief, major, land)
    return ReliefFigures(edge_angle(relief, major), dropped, arc.radius, arc.direction)


def _teeth_in_chamfer(tap: Tap, land: int) -> int:
    """A tooth cuts there when the middle of its crest, at the edge, lies before the cone's end."""
    thread = tap.thread
    turn = tap.flutes.angles[land] + crest_edge_angle(tap.flutes, thread.major)
    first = (thread.first_z + thread.lead * turn / 360) % thread.pitch
    return max(0, math.ceil((tap.chamfer_length - first) / thread.pitch))


def chip_thickness(thread: TapThread, chamfer: Chamfer, count: int) -> float:
    """Uncut chip thickness of a tooth in the chamfer, square to the cone [mm].

    The feed of one of `count` lands is lead/count along the axis, times sin(angle) square to the
    cone. Each of several starts is cut by teeth of its own, which advance by the lead in a turn.

    Source: derived here.
    """
    return thread.lead / count * math.sin(math.radians(chamfer.angle))
