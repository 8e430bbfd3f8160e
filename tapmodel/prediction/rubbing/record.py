"""How much room there is behind the cutting edge, as numbers.

Clearance is counted from the surface that the land's own edge has just cut: positive into the open,
negative where the land stands proud of it. Crest and chamfer are measured along the radius, as the
drop of a relief is; flanks square to the flank.
"""

from dataclasses import dataclass

from numpy import float64
from numpy.typing import NDArray

from tapmodel.words import Certainty

Floats = NDArray[float64]


@dataclass(frozen=True, slots=True)
class Threshold:
    """How much clearance it takes until a surface no longer touches the work.

    Attributes:
        noise: below this nobody can grind or measure a difference [mm].
        spring_back: by how much the wall of the hole swells back once the edge has passed [mm]. No
            published figure for taps was found. An edge of 10 µm radius leaves a few micrometres in
            steel, less in brass and cast iron, more in what is hard and limp (titanium).
        spring_back_certainty: how sure `spring_back` is.
        reserve: clearance that the heel of a chamfer is to have beyond clearing [mm]; the default
            is three times the default threshold, a rule of this program.
    """

    noise: float = 0.001
    spring_back: float = 0.002
    spring_back_certainty: Certainty = Certainty.MEMORY
    reserve: float = 0.009

    @property
    def clearance(self) -> float:
        """Below this a surface touches [mm]."""
        return self.noise + self.spring_back


@dataclass(frozen=True, slots=True)
class Contact:
    """One surface of a land behind its edge.

    Attributes:
        radius: where `rubbing_length`, `land_width` and `heel_clearance_um` are told: of the
            crest for the crest, of the pitch line for flanks and chamfer (the nearest radius of the
            cone, where the cone does not pass the pitch line) [mm].
        clearance_min_um: the least on the whole surface, its edge included, so never above 0 [µm].
        heel_clearance_um: at the heel [µm].
        rubbing_length: along the helix, where the clearance is below the threshold [mm].
        land_width: along the helix from edge to heel [mm].
        binds: whether it stands proud of what its edge cut.
    """

    radius: float
    clearance_min_um: float
    heel_clearance_um: float
    rubbing_length: float
    land_width: float
    binds: bool


@dataclass(frozen=True, slots=True)
class ChamferCure:
    """Values of which each alone clears the chamfer; None where that one cannot.

    Attributes:
        heel_drop: least drop of an eccentric relief at the heel of the crest with which the chamfer
            clears on its whole land, at every height of the cone [mm]; `edge_angle` [deg] and
            `arc_offset` [mm] are the settings that make it.
        safe_heel_drop, safe_edge_angle, safe_arc_offset: the same with the threshold's reserve at
            the heel.
        land_angle: widest land, behind the edge, that the present relief clears, or exceeds by no
            more than the noise [deg]; `land_width` its arc at the crest [mm]. None where it clears.
        margin_angle: widest margin of the present con-eccentric relief, heel drop kept, with which
            the chamfer stands proud by no more than the noise [deg]. None for other kinds, where it
            clears, and where no margin is narrow enough.
    """

    heel_drop: float | None
    edge_angle: float | None
    arc_offset: float | None
    safe_heel_drop: float | None
    safe_edge_angle: float | None
    safe_arc_offset: float | None
    land_angle: float | None
    land_width: float | None
    margin_angle: float | None


@dataclass(frozen=True, slots=True)
class Rubbing:
    """Clearance behind the edges of a tap.

    Attributes:
        crest: of the full thread, in the middle of the crest.
        flank: of both flanks, in chamfer and full thread alike: a tooth of the chamfer has the
            flanks of the full thread, shorter by the cone.
        chamfer: of the cone.
        crest_width, heel_crest_width: axial width of the crest's flat at the edge, and at the heel,
            where a crest relieved alone has become wider [mm]; 0 for a rounded crest.
        cure: what clears the chamfer.
        threshold: by which contact was judged.
        flank_clears_each_turn, flank_clears_at_end: clearance that a back taper gives the flanks in
            each turn behind the chamfer, and where the thread ends; 0 without [µm].
    """

    crest: Contact
    flank: Contact
    chamfer: Contact
    crest_width: float
    heel_crest_width: float
    cure: ChamferCure
    threshold: Threshold
    flank_clears_each_turn: float = 0.0
    flank_clears_at_end: float = 0.0


@dataclass(frozen=True, slots=True)
class Trace:
    """Clearance along one surface, from edge to heel, each (n,).

    Attributes:
        phi: behind the crest edge [deg].
        along: arc length behind the surface's own edge, along the helix [mm].
        clearance_um: [µm].
    """

    phi: Floats
    along: Floats
    clearance_um: Floats


@dataclass(frozen=True, slots=True)
class Traces:
    """Clearance along crest, flank and chamfer, at the radii that `Contact.radius` names."""

    crest: Trace
    flank: Trace
    chamfer: Trace
