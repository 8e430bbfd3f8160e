"""Sources that the design room's own rules share."""

from tapmodel.sources import Source
from tapmodel.words import Certainty

PRACTICE = Source("workshop practice", "", Certainty.PRACTICE)
PRACTICE_FROM_MEMORY = Source("workshop practice", "low certainty", Certainty.MEMORY)
OWN_RULE = Source("tapmodel", "rule of this program", Certainty.DERIVED)
GEOMETRY = Source("tapmodel", "from the geometry", Certainty.DERIVED)
ISO_68 = Source("ISO 68-1", "basic profile", Certainty.READ)
