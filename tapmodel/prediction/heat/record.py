"""What is asked of a carburising, and what is answered."""

from dataclasses import dataclass

from tapmodel.prediction.heat.diffusion import Diffused
from tapmodel.prediction.heat.martensite import martensite_hardness, retained_austenite

CASE = 0.4
"""Carbon at which a case ends [mass %]: some 56 HRC as quenched (common practice)."""

GLASS_HARD = 0.6
"""Carbon from which martensite is glass hard, some 62 HRC [mass %] (`martensite.HARDNESS`)."""

LONGEST = 100.0
"""Hours that are computed at most: no box stays hot for longer."""

SHORTEST = 0.01
"""Hours below which no box has reached its heat."""


@dataclass(frozen=True, slots=True)
class Carburising:
    """How a steel is carburised.

    Attributes:
        steel: its carbon [mass %].
        surface: carbon at the surface [mass %].
        celsius: temperature [deg C].
        hours: of time at it.
    """

    steel: float
    surface: float
    celsius: float
    hours: float

    @property
    def seconds(self) -> float:
        """Of time at the temperature."""
        return 3600 * self.hours


@dataclass(frozen=True, slots=True)
class Place:
    """A place of a section.

    Attributes:
        depth: below the surface there [mm].
        carbon: [mass %].
    """

    depth: float
    carbon: float

    @property
    def hardness(self) -> float:
        """Of its martensite as quenched [HRC]."""
        return martensite_hardness(self.carbon)

    @property
    def retained(self) -> float:
        """Share of austenite that a quench from the box leaves, 0 to 1."""
        return retained_austenite(self.carbon)


@dataclass(frozen=True, slots=True)
class Profile:
    """Carbon straight down from a surface.

    Attributes:
        places: from the surface down.
        case: depth at which carbon falls to `CASE`; None where it does so nowhere [mm].
    """

    places: tuple[Place, ...]
    case: float | None


@dataclass(frozen=True, slots=True)
class Tooth:
    """Carbon in half a pitch of a thread, in the middle of a land.

    Attributes:
        found: carbon all over the section.
        height: of the tooth, from root to crest [mm].
        pitch: of the thread [mm].
        under_crest, under_root: straight down from their middles.
        middle: on the tooth's middle line, at half its height.
    """

    found: Diffused
    height: float
    pitch: float
    under_crest: Profile
    under_root: Profile
    middle: Place

    @property
    def through(self) -> bool:
        """Whether it is glass hard right through."""
        return self.middle.carbon >= GLASS_HARD


@dataclass(frozen=True, slots=True)
class Carburised:
    """What a carburising makes.

    Attributes:
        asked: how it is done.
        flat: under a flat surface.
        tooth: in the tap's own thread; None where none was named.
        harris: total case by the trade's table [mm].
        saturation: most carbon that austenite holds at the temperature [mass %].
        gained: carbon taken up by a flat surface [g/m²].
    """

    asked: Carburising
    flat: Profile
    tooth: Tooth | None
    harris: float
    saturation: float
    gained: float

    @property
    def case(self) -> float | None:
        """Depth at which carbon falls to `CASE`: under the root of a thread, else the flat [mm]."""
        return (self.tooth.under_root if self.tooth else self.flat).case
