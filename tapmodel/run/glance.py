"""What the process that makes a preview is told once the tap is designed."""

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from tapmodel.report.pictures.view import View
    from tapmodel.tap.tap import Tap


@dataclass(frozen=True, slots=True)
class Glance:
    """The tap and how it is looked at; not its design, which that process would load for nothing.

    Attributes:
        tap: every number of it.
        view: the picture.
        stem: folder and name of the files, without their endings.
    """

    tap: "Tap"
    view: "View"
    stem: Path

    def file(self, ending: str) -> Path:
        """The file with this ending."""
        return self.stem.with_name(f"{self.stem.name}{ending}")
