"""British Association (BA) threads: sizes, limits of the nut and of the tap."""

from dataclasses import replace

from tapmodel.sources import Source
from tapmodel.spec.designations.record import Designation
from tapmodel.standards.cut_tap import cut_class, cut_limits_by
from tapmodel.standards.family_rules import FamilyRules, settled_pitch
from tapmodel.standards.limits import HoleLimits, HoleLimitsFound
from tapmodel.standards.tables import read_table
from tapmodel.standards.thread_forms import BA
from tapmodel.words import Certainty

SIZES = Source("BS 93:2008", "basic sizes", Certainty.MEMORY)
TOLERANCES = Source(
    "BS 93:2008",
    "annex B: nuts effective diameter 0.12 p + 0.03 mm, minor diameter 0.375 p, no limit above the "
    "major diameter; as read in an excerpt on the web. The standard's tables round them",
    Certainty.READ,
)


def ba_sizes() -> dict[str, tuple[float, float]]:
    """Diameter and pitch [mm] by number.

    Source: BS 93:2008 (from memory).
    """
    rows = read_table("ba_sizes")
    return {row["number"]: (float(row["diameter"]), float(row["pitch"])) for row in rows}


def ba_hole_limits(designation: Designation) -> HoleLimitsFound:
    """Limits of an internal thread, the same for all classes of bolts; to 0.001 mm.

    Args:
        designation: settled.

    Source: BS 93:2008: formulas of annex B (read in an excerpt), basic sizes from memory.
    """
    diameter, pitch = designation.diameter, settled_pitch(designation)
    pitch_min, minor_min = BA.pitch_diameter(diameter, pitch), BA.minor_diameter(diameter, pitch)
    limits = HoleLimits(
        major_min=diameter,
        pitch_min=pitch_min,
        pitch_max=round(pitch_min + 0.12 * pitch + 0.03, 3),
        minor_min=minor_min,
        minor_max=round(minor_min + 0.375 * pitch, 3),
    )
    return HoleLimitsFound(limits, listed=True, sources=(TOLERANCES, SIZES, BA.source))


def _settle(designation: Designation) -> Designation:
    diameter, pitch = ba_sizes()[designation.size]
    return replace(designation, diameter=diameter, pitch=pitch)


RULES = FamilyRules(
    form=BA,
    settle=_settle,
    hole_limits=ba_hole_limits,
    tap_class=cut_class,
    tap_limits=cut_limits_by(ba_hole_limits),
    drop_to_drill=0.9,
    default_class=Source("BS 93:2008", "one tolerance for all nuts", Certainty.MEMORY),
)
