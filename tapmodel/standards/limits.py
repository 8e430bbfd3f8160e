"""Records of the limits that the standards room hands out."""

from dataclasses import dataclass
from enum import StrEnum

from tapmodel.sources import Source
from tapmodel.values import NO_VALUES, Values


class Unlisted(StrEnum):
    """What about a thread no printed table gives."""

    METRIC_TOLERANCES = "iso-965-tolerances"
    METRIC_SCOPE = "iso-965-scope"
    TRAPEZOIDAL_PITCH = "iso-2902-pitch"
    TRAPEZOIDAL_TOLERANCES = "iso-2903-tolerances"
    UNIFIED_SERIES = "b1.1-series"
    UNIFIED_SCOPE = "b1.1-scope"
    ACME_STARTS = "b1.5-starts"
    ACME_PAIRING = "b1.5-pairing"
    WHITWORTH_SERIES = "bs-84-series"


@dataclass(frozen=True, slots=True)
class HoleLimits:
    """Limits of the internal thread that the tap is to cut [mm, diameters]."""

    major_min: float
    pitch_min: float
    pitch_max: float
    minor_min: float
    minor_max: float

    @property
    def nested(self) -> bool:
        """Whether the zones of minor, pitch and major diameter lie one outside the other."""
        return self.minor_max < self.pitch_min and self.pitch_max < self.major_min


@dataclass(frozen=True, slots=True)
class HoleLimitsFound:
    """Hole limits with their origin.

    Attributes:
        limits: the limits themselves.
        listed: True when every tolerance stands in a printed table; False when any was computed
            by the standard's formula because the pair is not listed.
        sources: where they come from, most important first.
        note: what no table gives when `listed` is False, as codes of `Unlisted` under "why", with
            the numbers that a sentence on them needs; else empty.
        deviation: by how much the least sizes lie above the basic ones [mm].
        beyond_scope: True when the formula was carried on to sizes that its standard is not meant
            for.
    """

    limits: HoleLimits
    listed: bool
    sources: tuple[Source, ...]
    note: Values = NO_VALUES
    deviation: float = 0.0
    beyond_scope: bool = False

    @property
    def basic_pitch_diameter(self) -> float:
        """Pitch diameter of the basic profile [mm]."""
        return round(self.limits.pitch_min - self.deviation, 9)


@dataclass(frozen=True, slots=True)
class TapLimits:
    """Limits of the tap's own thread [mm, diameters].

    Attributes:
        tap_class: with the standard that defines it, e.g. "2 of ISO 2857".
        pitch_min, pitch_max: zone of the pitch diameter.
        major_min: least major diameter; the standard sets no upper limit.
        source: where the rule comes from.
    """

    tap_class: str
    pitch_min: float
    pitch_max: float
    major_min: float
    source: Source
