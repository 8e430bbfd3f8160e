"""What a chapter of the report is made of, before anyone lays it out.

Lengths stay in mm here; `tapmodel.report.units` writes them in the reader's units.
"""

from collections.abc import Callable
from dataclasses import dataclass

from tapmodel.spec.measured.sizes import Size
from tapmodel.words import Units


@dataclass(frozen=True, slots=True)
class Length:
    """A length [mm] and its decimals.

    Attributes:
        mm: the length.
        digits: decimals that it is shown with in mm.
        inch_digits: in inches; None for one more than in mm.
    """

    mm: float
    digits: int = 3
    inch_digits: int | None = None


SMALL = 0.02
"""A micrometre matters to flats, radii and drops below this [mm]."""


def small_length(mm: float) -> Length:
    """A flat, radius or drop: to a micrometre, a small one to a tenth of it."""
    return Length(mm, 4 if abs(mm) < SMALL else 3)


def hole_depth(mm: float) -> Length:
    """How deep a hole or its thread is: a tenth of a mm does, but a drawing has 3/8 in as 0.375."""
    return Length(mm, 1, inch_digits=3)


@dataclass(frozen=True, slots=True)
class Angle:
    """An angle [deg] and its decimals."""

    degrees: float
    digits: int = 2


@dataclass(frozen=True, slots=True)
class Area:
    """An area [mm²] and the significant digits it is shown with, three decimals at most."""

    mm2: float
    figures: int = 4


@dataclass(frozen=True, slots=True)
class Pitch:
    """A pitch or lead [mm], which is threads per inch to whoever thinks in inches."""

    mm: float


@dataclass(frozen=True, slots=True)
class Tool:
    """A drill or cutter [mm] with its decimals in mm, and the names that inch sizes are called."""

    mm: float
    digits: int = 2
    names: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Growth:
    """How much a length grows for each µm (in inches: 0.0001 in) that another does, as a factor."""

    factor: float


@dataclass(frozen=True, slots=True)
class Torque:
    """A torque, or a band of torques from the first to the last [N·m]; lbf·in in inches."""

    newton_metres: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Force:
    """A force [N]; lbf in inches."""

    newtons: float


@dataclass(frozen=True, slots=True)
class Temperature:
    """A temperature, or a range from the first to the last [°C]; °F in inches."""

    celsius: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Words:
    """Anything that is not converted: a count, a name, a sentence."""

    text: str


Telling = Callable[[Units], str]
"""What tells a sentence in the reader's units."""


@dataclass(frozen=True, slots=True)
class Told:
    """What is written in the reader's units in a way of its own."""

    text: Telling


Quantity = (
    Length | Angle | Area | Pitch | Tool | Growth | Torque | Force | Temperature | Words | Told
)


@dataclass(frozen=True, slots=True)
class Row:
    """One number of the tap.

    Attributes:
        label: what it is, in the trade's words; told in the reader's units where it holds a length
            or a force.
        value: as aimed at.
        low, high: limits, None where there is none.
        measured: whether the sheet leaves a field to write what was measured.
        size: what is measured, where it may have been handed over.
        found: what was measured; None leaves the field empty.
    """

    label: str | Telling
    value: Quantity
    low: Length | None = None
    high: Length | None = None
    measured: bool = False
    size: Size | None = None
    found: Quantity | None = None


@dataclass(frozen=True, slots=True)
class Rows:
    """Numbers under each other.

    Attributes:
        rows: in reading order.
        caption: over them, may be empty.
        head: over the values; empty for "target" where any is limited or measured, else "value".
    """

    rows: tuple[Row, ...]
    caption: str = ""
    head: str = ""

    @property
    def value_head(self) -> str:
        """What stands over the values."""
        aimed = any(row.low or row.high or row.measured for row in self.rows)
        # nothing is aimed at where nothing is held or measured
        return self.head or ("target" if aimed else "value")


@dataclass(frozen=True, slots=True)
class Table:
    """Lines with as many cells as the head."""

    head: tuple[str, ...]
    lines: tuple[tuple[Quantity, ...], ...]
    caption: str = ""


@dataclass(frozen=True, slots=True)
class Paragraphs:
    """Sentences, each on its own line; one that holds lengths is told in the reader's units."""

    texts: tuple[str | Telling, ...]


Block = Rows | Table | Paragraphs


@dataclass(frozen=True, slots=True)
class Chapter:
    """One part of the sheet.

    Attributes:
        key: short name for links, letters and dashes.
        title: heading.
        blocks: in reading order.
    """

    key: str
    title: str
    blocks: tuple[Block, ...]
