"""The groove of a thread with straight flanks, and how a wire lies in it.

Frame: the tap's axis is z, the wire lies over the x axis. On the x axis the groove is widest
outwards, centred on z = 0. With k = lead/(2*pi), flank angle a and pitch radius R, the flank
that bounds it towards +z is the surface

    z = k*theta + pitch/4 + (r - R)*tan(a)

and the other flank is its image under a half turn about the x axis. The thread is straight in the
axial plane, as a lathe tool set on centre cuts it. The unit normal out of the metal is
`(tan(a)*e_r + (k/r)*e_theta - e_z)/n` with `n = sqrt(1 + tan(a)**2 + (k/r)**2)`.

A wire is a straight cylinder between parallel anvils; its axis crosses the x axis at a right angle
and is free to lean until it lies deepest. A ball of the wire's diameter w, centred on the x
axis, that touches the flank at (r, theta) has its centre at the contact plus w/2 times the normal.
The ball touches both flanks, at contacts that are images under the half turn, with normals
(nx, ny, nz) and (nx, -ny, -nz). The cylinder about the ball in the direction (0, nz, -ny), square
to both normals, touches the flanks at those same two points; as a wire contains the ball, none can
lie deeper. So the wire's axis is as far from the tap's axis as the ball's centre. That the flanks
turn away from the wire beside the contacts is not proved here: the tests press a wire into the
groove numerically, up to lead angles of 45 degrees, and `crest_clearance` looks for the one place
where a straight wire can touch first, the corner of the crest.
"""

import math
from dataclasses import dataclass

from tapmodel.errors import InputError


@dataclass(frozen=True, slots=True)
class Groove:
    """A symmetric groove with straight flanks; hand does not matter to a wire.

    Attributes:
        flank_angle: between a flank and the plane square to the axis [deg].
        pitch: of the thread [mm].
        lead: advance in one turn [mm]; 0 is a ring groove.
        pitch_diameter: where the groove is half a pitch wide along the axis [mm].

    Raises:
        InputError: a value is out of range.
    """

    flank_angle: float
    pitch: float
    lead: float
    pitch_diameter: float

    def __post_init__(self) -> None:
        """Refuse what is no thread."""
        if not 0 < self.flank_angle < 90:
            raise InputError("flank angle", self.flank_angle, "more than 0, less than 90 deg")
        for field, size in (("pitch", self.pitch), ("pitch diameter", self.pitch_diameter)):
            if not 0 < size < math.inf:
                raise InputError(field, size, "more than 0 mm")
        if not 0 <= self.lead < math.inf:
            raise InputError("lead", self.lead, "0 mm or more")

    @property
    def slope(self) -> float:
        """Axial way of a flank for each mm outwards: the tangent of the flank angle."""
        return math.tan(math.radians(self.flank_angle))

    @property
    def rise(self) -> float:
        """Advance of the helix per radian [mm]."""
        return self.lead / math.tau

    @property
    def lead_angle(self) -> float:
        """Between the helix at the pitch diameter and the plane square to the axis [deg].

        Source: definition, tan(lead angle) = lead/(pi*pitch diameter).
        """
        return math.degrees(math.atan(self.lead / (math.pi * self.pitch_diameter)))

    def half_width(self, radius: float) -> float:
        """Half the axial width of the groove at a radius from the tap's axis [mm]."""
        return self.pitch / 4 + (radius - self.pitch_diameter / 2) * self.slope


@dataclass(frozen=True, slots=True)
class Seat:
    """How a wire lies on two flanks.

    Attributes:
        contact_radius: of the points where it touches, from the tap's axis [mm].
        axis_radius: between the wire's axis and the tap's [mm].
        lean: of the wire from the plane square to the tap's axis; a little less than the lead
            angle [deg].
        pitch_diameter: of the groove that holds it so [mm].
    """

    contact_radius: float
    axis_radius: float
    lean: float
    pitch_diameter: float


def seat(groove: Groove, wire: float, contact_radius: float) -> Seat:
    """The seat of a wire that touches at a given radius, whatever groove is needed for it.

    Form, pitch and lead are those of `groove`; its pitch diameter is not used.

    Args:
        groove: the thread.
        wire: diameter [mm].
        contact_radius: of the contacts, from the tap's axis [mm].

    Source: derived here, see the head of this module.
    """
    outwards, sideways, half_width = _reach(groove, wire, contact_radius)
    pitch_radius = contact_radius + (groove.pitch / 4 - half_width) / groove.slope
    axis_radius = math.hypot(outwards, sideways)
    helix = groove.rise / contact_radius
    lean = math.atan((helix * outwards - groove.slope * sideways) / axis_radius)
    return Seat(contact_radius, axis_radius, math.degrees(lean), 2 * pitch_radius)


def groove_width_needed(groove: Groove, wire: float, contact_radius: float) -> float:
    """Half the axial width of a groove, at the contacts, in which a wire touches there [mm].

    Arguments as in `seat`.

    Source: derived here, see the head of this module.
    """
    return _reach(groove, wire, contact_radius)[2]


def _reach(groove: Groove, wire: float, radius: float) -> tuple[float, float, float]:
    """The ball's centre from the contact's meridian, out and across, and half the width [mm]."""
    helix = groove.rise / radius
    axial = wire / 2 / math.sqrt(1 + groove.slope**2 + helix**2)
    outwards, sideways = radius + axial * groove.slope, axial * helix
    # The contact lies this far round from the x axis, where the groove has moved along.
    turn = math.atan2(sideways, outwards)
    return outwards, sideways, axial + groove.rise * turn
