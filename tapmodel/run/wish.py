"""What one run is to write beside its record, and where."""

from collections.abc import Set as AbstractSet
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

from tapmodel.export.formats import ALL_FORMATS, DRAWN_FORMATS, MESH_FORMATS, PAPER_FORMATS, Format
from tapmodel.report.units import Look

if TYPE_CHECKING:
    # What a run is to write is wished before anything of the design is loaded.
    from tapmodel.designing.record import TapDesign
    from tapmodel.tap.tap import Tap


@dataclass(frozen=True, slots=True)
class Wish:
    """The files wanted.

    Attributes:
        formats: the kinds of files, in the order of `Format`.
        look: of sheet, drawings and page.
    """

    formats: tuple[Format, ...] = ALL_FORMATS
    look: Look = field(default_factory=Look)

    def any_of(self, formats: AbstractSet[Format]) -> bool:
        """Whether a file of one of these kinds is wanted."""
        return not formats.isdisjoint(self.formats)

    @property
    def step_at_desk(self) -> bool:
        """Whether the desk makes the STEP file, because it has little else to do."""
        busy = self.any_of(PAPER_FORMATS) and self.any_of(MESH_FORMATS)
        return Format.STEP in self.formats and not busy and not self.any_of(DRAWN_FORMATS)


@dataclass(frozen=True, slots=True)
class SolidOrder:
    """What the kernel's process is told once the tap is designed; all else it would only load.

    Attributes:
        tap: to be built.
        name: of the tap, for its files.
        folder: an empty one that the files are written to.
        wish: the files wanted.
    """

    tap: "Tap"
    name: str
    folder: Path
    wish: Wish

    def file(self, ending: str) -> Path:
        """The file of the run's folder that bears the tap's name and this ending."""
        return self.folder / f"{self.name}{ending}"


@dataclass(frozen=True, slots=True)
class Order:
    """What the desk is told once the tap is designed.

    Attributes:
        design: every number of the tap.
        folder: an empty one that the files are written to.
        wish: the files wanted.
    """

    design: "TapDesign"
    folder: Path
    wish: Wish

    @property
    def of_solid(self) -> SolidOrder:
        """What the kernel's process needs of it."""
        return SolidOrder(self.design.tap, self.design.name, self.folder, self.wish)

    def file(self, ending: str) -> Path:
        """As `SolidOrder.file`."""
        return self.of_solid.file(ending)


@dataclass(frozen=True, slots=True)
class Papers:
    """The papers wanted where no model is made.

    Attributes:
        wish: of it only what needs no model is made.
        route: the way through the shop too, with programs where the shop reads some.
        poster: the one to hang over the bench too.
    """

    wish: Wish
    route: bool = False
    poster: bool = False
