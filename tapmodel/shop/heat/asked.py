"""What may be asked of a hardening or a carburising, judged before anything is computed."""

from dataclasses import dataclass

from tapmodel.errors import InputError
from tapmodel.prediction.heat.record import CASE, LONGEST, SHORTEST, Carburising
from tapmodel.prediction.heat.saturation import saturation
from tapmodel.standards.materials.steels import CARBURISING


@dataclass(frozen=True, slots=True)
class Range:
    """What a number may be.

    Attributes:
        low, high: both may be.
        told: with the unit, for the message.
    """

    low: float
    high: float
    told: str

    def holds(self, field: str, value: float, typed: object = None) -> float:
        """The value.

        Args:
            field: in which it stands.
            value: that is judged.
            typed: as it was typed, if otherwise.

        Raises:
            InputError: it lies outside, or is no number.
        """
        if not self.low <= value <= self.high:
            raise InputError(field, value if typed is None else typed, self.told)
        return value


SECTION = Range(0.5, 1000.0, "0.5 to 1000 mm, with its unit if in inches: 1/2in")
HEAT = Range(
    CARBURISING,
    1050.0,
    "850 to 1050 °C (1562 to 1922 °F), where mild steel is austenite right through",
)
HOURS = Range(SHORTEST, LONGEST, f"{SHORTEST:g} to {LONGEST:g} hours")
STEEL = Range(0.0, 0.35, "0 to 0.35 % carbon: steels with more need no carburising")
DEPTH = Range(0.01, 10.0, "0.01 to 10 mm")


def surface_range(celsius: float) -> Range:
    """Carbon that a surface may have: from a case at all to what austenite holds [mass %].

    Args:
        celsius: at which it is carburised [deg C].

    Source: `saturation.SATURATION`, from memory, with a tenth more for what is not known of it.
    """
    held = 1.1 * saturation(celsius)
    return Range(CASE + 0.1, held, f"{CASE + 0.1:g} to {held:.2f} % carbon at {celsius:.0f} °C")


def usual_carburising(furnace: float | None = None) -> Carburising:
    """Mild steel in charcoal with an energiser, for an hour, where nobody asks for another.

    Args:
        furnace: the highest temperature that it reaches [deg C]; None where nobody said. One that
            does not reach the least of `HEAT` is taken for one that does: a finding says so.

    Source: common practice; carbon of the surface near what austenite holds.
    """
    heat = 925.0 if furnace is None else min(925.0, max(furnace, HEAT.low))
    return Carburising(steel=0.18, surface=1.1, celsius=heat, hours=1.0)


def asked_carburising(steel: float, surface: float, celsius: float, hours: float) -> Carburising:
    """A carburising whose every number may be.

    Raises:
        InputError: one may not.
    """
    HEAT.holds("--temperature", celsius)
    return Carburising(
        steel=STEEL.holds("--steel-carbon", steel),
        surface=surface_range(celsius).holds("--surface-carbon", surface),
        celsius=celsius,
        hours=HOURS.holds("--hours", hours),
    )
