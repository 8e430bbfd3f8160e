"""Thread forms: the basic profile of each, as fractions of the pitch."""

from dataclasses import dataclass, replace

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

UNIFIED = ThreadForm(
    name="Unified",
    flank_angle=30.0,
    height=0.866025,
    crest_flat=0.125,
    root_flat=0.25,
    pitch_drop=0.649519,
    minor_drop=1.082532,
    source=Source(
        "ASME B1.1",
        "basic profile, as read in Machinery's Handbook 31st ed. p. 1996 ff.",
        Certainty.READ,
    ),
)

# The flat at the minor diameter is what the flanks leave there: 1/2 - (1.04 - 0.649519)*tan(30).
MINIATURE = ThreadForm(
    name="Unified miniature",
    flank_angle=30.0,
    height=0.866025,
    crest_flat=0.125,
    root_flat=0.274556,
    pitch_drop=0.649519,
    minor_drop=1.04,
    source=Source(
        "ASME B1.10M",
        "60 degrees, basic height 0.52 p; every least diameter of its table, as read, follows",
        Certainty.MEMORY,
    ),
)

ACME = ThreadForm(
    name="Acme",
    flank_angle=14.5,
    height=1.933357,
    crest_flat=0.3707,
    root_flat=0.3707,
    pitch_drop=0.5,
    minor_drop=1.0,
    source=Source(
        "ASME B1.5",
        "basic profile, as read in Machinery's Handbook 27th ed. p. 1831",
        Certainty.READ,
    ),
)

WHITWORTH = ThreadForm(
    name="Whitworth",
    flank_angle=27.5,
    height=0.960491,
    crest_flat=0.0,
    root_flat=0.0,
    pitch_drop=0.640327,
    minor_drop=1.280654,
    source=Source(
        "BS 84", "basic form, as read in Machinery's Handbook 31st ed. p. 2087", Certainty.READ
    ),
    crest_radius=0.137329,
    root_radius=0.137329,
)

TRAPEZOIDAL = ThreadForm(
    name="ISO trapezoidal",
    flank_angle=15.0,
    height=1.866025,
    crest_flat=0.366025,
    root_flat=0.366025,
    pitch_drop=0.5,
    minor_drop=1.0,
    source=Source("ISO 2901:1977", "basic profile", Certainty.MEMORY),
)

# BS 93 names 2p/11 = 0.181818p as the radius, rounded; an arc that touches the flanks and leaves
# the depth at 0.6p has 0.180834p.
BA = ThreadForm(
    name="British Association",
    flank_angle=23.75,
    height=1.136336,
    crest_flat=0.0,
    root_flat=0.0,
    pitch_drop=0.6,
    minor_drop=1.2,
    source=Source(
        "BS 93:2008",
        "47.5 degrees, depth 0.6 p, as read in a chart of BA threads on the web; radius derived",
        Certainty.READ,
    ),
    crest_radius=0.180834,
    root_radius=0.180834,
)

PIPE = replace(
    WHITWORTH,
    name="Whitworth pipe",
    source=Source("ISO 228-1:2000", "Whitworth form of 55 degrees", Certainty.MEMORY),
)
