"""The surfaces of a tap as numbers, from which the page's script draws what no mesh holds."""

import math
from dataclasses import dataclass

from tapmodel.designing.record import TapDesign
from tapmodel.shape.flute_section import crest_edge_angle
from tapmodel.shape.profile import Segment, segments
from tapmodel.shape.turned import turned_lengths
from tapmodel.tap.tap import TapThread
from tapmodel.words import Hand


@dataclass(frozen=True, slots=True)
class Flat:
    """Crest or root of a profile [mm].

    Attributes:
        half: half its width along the axis.
        radius: where the flanks meet it.
        arc: radius of its arc; 0 for a flat.
        centre: of that arc from the axis.
    """

    half: float
    radius: float
    arc: float
    centre: float


@dataclass(frozen=True, slots=True)
class Profile:
    """The profile of a thread."""

    crest: Flat
    root: Flat


@dataclass(frozen=True, slots=True)
class Shape:
    """A tap in its right-hand frame, lengths in mm and angles in radians.

    Attributes:
        hand: 1 for right, -1 for left: the mirror image in the plane y = 0.
        pitch, lead, first_z: of the helix.
        major: diameter over the crests.
        profile: of the thread.
        lands: how many.
        edge: polar angle of the first crest edge.
        centre, offset, ball: of the cutter in a flute: its middle outwards and along +theta, and
            its radius.
        full_depth: from the front to where the middle of the ball stops.
        runout: from the front to where the flutes end.
        point: radius of the chamfer cone at the front.
        cone: tangent of its angle to the axis.
        thread_end: from the front.
        turned: height and radius at each corner of the blank behind the thread.
        shank: diameter.
        square: across its flats.
        square_start: from the front.
        front_centre: diameter of its rim, 0 for none.
    """

    hand: int
    pitch: float
    lead: float
    first_z: float
    major: float
    profile: Profile
    lands: int
    edge: float
    centre: float
    offset: float
    ball: float
    full_depth: float
    runout: float
    point: float
    cone: float
    thread_end: float
    turned: tuple[tuple[float, float], ...]
    shank: float
    square: float
    square_start: float
    front_centre: float


def shape_of(design: TapDesign) -> Shape:
    """The surfaces of a design."""
    tap = design.tap
    thread, flutes, blank = tap.thread, tap.flutes, tap.blank
    behind = turned_lengths(blank, thread.major)[1:]
    corners = [(piece.start, piece.start_radius) for piece in behind]
    corners += [(piece.end, piece.end_radius) for piece in behind]
    return Shape(
        hand=1 if thread.hand is Hand.RIGHT else -1,
        pitch=thread.pitch,
        lead=thread.lead,
        first_z=thread.first_z,
        major=thread.major,
        profile=profile_of(thread),
        lands=flutes.count,
        edge=math.radians(crest_edge_angle(flutes, thread.major)),
        centre=flutes.centre_radius,
        offset=flutes.offset,
        ball=flutes.cutter_diameter / 2,
        full_depth=flutes.full_depth_length,
        runout=design.figures.runout_end,
        point=tap.chamfer.point_diameter / 2,
        cone=math.tan(math.radians(tap.chamfer.angle)),
        thread_end=blank.thread_length,
        turned=tuple(sorted(set(corners), key=lambda corner: corner[0])),
        shank=blank.shank_diameter,
        square=blank.square_across_flats,
        square_start=blank.square_start,
        front_centre=blank.front_centre,
    )


def profile_of(thread: TapThread) -> Profile:
    """Crest and root of a thread; the flanks run from the one to the other."""
    crest, _, root, _ = segments(thread)
    return Profile(_flat(crest), _flat(root))


def _flat(segment: Segment) -> Flat:
    half = (segment.end - segment.start) / 2
    centre = segment.arc_centre if segment.is_arc else 0.0
    return Flat(half, segment.start_radius, segment.arc, centre)
