"""What one run is to write beside record and pictures."""

from dataclasses import dataclass, field

from tapmodel.export.formats import ALL_FORMATS, Format
from tapmodel.report.units import Look


@dataclass(frozen=True, slots=True)
class Wish:
    """The files wanted.

    Attributes:
        formats: of the model.
        look: of sheet, drawings and page.
    """

    formats: tuple[Format, ...] = ALL_FORMATS
    look: Look = field(default_factory=Look)
