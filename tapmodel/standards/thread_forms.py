"""Thread forms: the basic profile of each, as fractions of the pitch."""

from dataclasses import dataclass

from tapmodel.sources import Source
from tapmodel.words import Certainty


@dataclass(frozen=True, slots=True)
class ThreadForm:
    """Basic profile of a symmetric thread; every length as a multiple of the pitch.

    Attributes:
        name: as the trade calls it.
        flank_angle: between a flank and the plane square to the axis [deg].
        height: H of the sharp triangle.
        crest_flat: axial width of the flat at the basic major diameter, 0 where it is rounded.
        root_flat: axial width of the flat at the basic minor diameter of the hole, likewise.
        pitch_drop: D - D2, on diameter.
        minor_drop: D - D1, on diameter.
        source: where the profile is published.
        crest_radius, root_radius: of the basic profile, 0 for a flat.
    """

    name: str
    flank_angle: float
    height: float
    crest_flat: float
    root_flat: float
    pitch_drop: float
    minor_drop: float
    source: Source
    crest_radius: float = 0.0
    root_radius: float = 0.0

    def pitch_diameter(self, diameter: float, pitch: float) -> float:
        """Basic pitch diameter [mm], rounded to 0.001 mm as the tables of limits print it."""
        return round(diameter - self.pitch_drop * pitch, 3)

    def minor_diameter(self, diameter: float, pitch: float) -> float:
        """Basic minor diameter of the hole [mm], rounded to 0.001 mm as the tables print it."""
        return round(diameter - self.minor_drop * pitch, 3)


METRIC = ThreadForm(
    name="ISO metric",
    flank_angle=30.0,
    height=0.866025,
    crest_flat=0.125,
    root_flat=0.25,
    pitch_drop=0.649519,
    minor_drop=1.082532,
    source=Source(
        "ISO 68-1",
        "basic profile, as read in Machinery's Handbook 27th ed. p. 1786",
        Certainty.READ,
    ),
)
