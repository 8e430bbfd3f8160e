"""The closed vocabularies of the trade that a job file may use, as enums."""

from enum import StrEnum


class Hand(StrEnum):
    """Hand of the thread."""

    RIGHT = "right"
    LEFT = "left"


class Family(StrEnum):
    """Families of threads, each with forms, sizes and limits of its own standards."""

    METRIC = "ISO metric"
    MINIATURE = "Unified miniature"
    UNIFIED = "Unified"
    WHITWORTH = "Whitworth"
    BA = "BA"
    TRAPEZOIDAL = "ISO trapezoidal"
    ACME = "Acme"
    PIPE = "parallel pipe"


class Units(StrEnum):
    """Units of length in what is written for people; a bare number of a job is mm in all three."""

    MM = "mm"
    INCH = "inch"
    BOTH = "both"


class ToolSizes(StrEnum):
    """Sizes in which a shop buys drills, cutters and bars."""

    METRIC = "metric"
    INCH = "inch"


class ReliefKind(StrEnum):
    """How the surface behind the cutting edge falls away from it."""

    CONCENTRIC = "concentric"
    CON_ECCENTRIC = "con-eccentric"
    ECCENTRIC = "eccentric"


class ReliefPlace(StrEnum):
    """Which surface carries the relief."""

    CHAMFER = "chamfer"
    CREST = "crest"
    THREAD = "thread"


class ReliefWay(StrEnum):
    """How a shop makes a relief: on offset centres, by a wheel on a tool rest, or by hand."""

    CENTRES = "centres"
    WHEEL = "wheel"
    FILE = "file"


class Severity(StrEnum):
    """Weight of a finding: an error refuses the build, a warning and a note do not."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


class Certainty(StrEnum):
    """How sure a published value is: read in the source, or recalled from memory of it."""

    READ = "read"
    MEMORY = "from memory"
    DERIVED = "derived here"
    PRACTICE = "common practice"


class Mill(StrEnum):
    """The mill of a shop."""

    MANUAL = "manual"
    CNC = "cnc"


class Index(StrEnum):
    """How the work is turned from one flute, or flat, to the next."""

    AXIS = "axis"
    BY_HAND = "by hand"
