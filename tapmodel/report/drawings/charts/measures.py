"""Torques and shears as a drawing writes them: N·m and MPa, or lbf·in and psi."""

from dataclasses import dataclass

from tapmodel.report.drawings.charts.axis import figure
from tapmodel.report.units import LBF_IN_PER_NM, PSI_PER_MPA, Units


@dataclass(frozen=True, slots=True)
class Measures:
    """The units of forces on a drawing.

    Attributes:
        torque, stress: their names.
        per_nm: torque in that unit, for 1 N·m.
        per_mpa: stress likewise, for 1 MPa.
    """

    torque: str
    stress: str
    per_nm: float
    per_mpa: float

    def told(self, newton_metres: float) -> str:
        """A torque without its unit."""
        return figure(newton_metres * self.per_nm)

    def shear(self, each: float) -> float:
        """A shear that is told for a torque of 1 N·m [MPa] for one of 1 in these units."""
        return each * self.per_mpa / self.per_nm


def measures_of(units: Units) -> Measures:
    """Those of a drawing lettered in mm or in inches."""
    if units is Units.INCH:
        return Measures("lbf·in", "psi", LBF_IN_PER_NM, PSI_PER_MPA)
    return Measures("N·m", "MPa", 1.0, 1.0)
