"""Kienzle's law of the specific cutting force, and constants fitted to a printed table of it."""

import math
from dataclasses import dataclass
from functools import cache

from tapmodel.sources import Source
from tapmodel.standards.tables import read_table
from tapmodel.words import Certainty

PER_DEGREE = 0.01
"""Share by which the force falls for a degree more of rake."""

PER_DEGREE_SOURCE = Source(
    "Tabellenbuch Metall", "p. 216, as read in the material cards of FreeCAD", Certainty.READ
)

FITTED = (0.16 * math.sin(math.pi / 4), 1.6 * math.sin(math.pi / 4))
"""Chips [mm] that the tests behind the constants cut (0.11 to 1.13); thinner ones are beyond."""


@dataclass(frozen=True, slots=True)
class Kienzle:
    """Constants of `kc = kc11 * h**-mc`, for one rake of the tool.

    Attributes:
        kc11: specific force of a chip 1 mm thick and wide [N/mm²].
        mc: exponent.
        rake: for which they hold [deg].
        source: who published them.
    """

    kc11: float
    mc: float
    rake: float
    source: Source

    def specific_force(self, thickness: float, rake: float) -> float:
        """Force per area of chip [N/mm²] at a thickness [mm] and rake [deg].

        Source: Kienzle; correction for the rake by `PER_DEGREE_SOURCE`.
        """
        return self.kc11 * thickness**-self.mc * self.of_rake(rake)

    def of_rake(self, rake: float) -> float:
        """Factor by which another rake [deg] changes the force.

        Source: `PER_DEGREE_SOURCE`.
        """
        return 1 - PER_DEGREE * (rake - self.rake)


@cache
def turning_forces(row: str) -> tuple[tuple[float, float], ...]:
    """A row of the printed table: chip [mm] and specific force [N/mm²].

    Raises:
        KeyError: no such row.

    Source: a lathe-chuck maker's manual RN-1391, p. 43, table 2; read.
    """
    cells = {found["row"]: found for found in read_table("turning_forces")}[row]
    lean = math.sin(math.radians(45))
    pairs = [(name, cell) for name, cell in cells.items() if name != "row"]
    return tuple((float(feed) * lean, 1000 * float(force)) for feed, force in pairs)


@cache
def fitted_constants(row: str) -> tuple[float, float]:
    """kc1.1 [N/mm²] and mc of a row, by least squares of the logarithms.

    Raises:
        KeyError: no such row.

    Source: derived here from `turning_forces`.
    """
    points = [(math.log(chip), math.log(force)) for chip, force in turning_forces(row)]
    middle_x = sum(x for x, _ in points) / len(points)
    middle_y = sum(y for _, y in points) / len(points)
    rise = sum((x - middle_x) * (y - middle_y) for x, y in points)
    slope = rise / sum((x - middle_x) ** 2 for x, _ in points)
    return math.exp(middle_y - slope * middle_x), -slope
