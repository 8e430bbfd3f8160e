"""Records of the limits that the standards room hands out."""

from dataclasses import dataclass

from tapmodel.sources import Source


@dataclass(frozen=True, slots=True)
class HoleLimits:
    """Limits of the internal thread that the tap is to cut [mm, diameters]."""

    major_min: float
    pitch_min: float
    pitch_max: float
    minor_min: float
    minor_max: float


@dataclass(frozen=True, slots=True)
class HoleLimitsFound:
    """Hole limits with their origin.

    Attributes:
        limits: the limits themselves.
        listed: True when every tolerance stands in a printed table; False when any was computed
            by the standard's formula because the pair is not listed.
        sources: where they come from, most important first.
        note: one sentence for the user when `listed` is False, else "".
        deviation: by how much the least sizes lie above the basic ones [mm].
        beyond_scope: True when the formula was carried on to sizes that its standard is not meant
            for.
    """

    limits: HoleLimits
    listed: bool
    sources: tuple[Source, ...]
    note: str
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
