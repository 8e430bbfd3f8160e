"""Where a tap is ground, straw or plain steel: the numbers that its tones follow from."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Tones:
    """The tap in the frame of its record, as far as its tones ask for it.

    Attributes:
        hand: by which y of the right-hand tap is multiplied.
        sector: angle of a flute and its land [deg].
        edge, land: of the first land, where its crest begins, and how far it reaches [deg].
        cutter: radius of the cutter, its offset, and the radius at which its ball runs [mm].
        stop: where the ball stops [mm].
        crest, root, core: radii of thread and web [mm].
        point: radius of the chamfer at the front [mm].
        slope: by which it grows along the axis.
        end: of the thread [mm].
    """

    hand: float
    sector: float
    edge: float
    land: float
    cutter: tuple[float, float, float]
    stop: float
    crest: float
    root: float
    core: float
    point: float
    slope: float
    end: float
