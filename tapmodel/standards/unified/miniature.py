"""Unified miniature threads, 0.30 to 1.40 mm, as the design room asks for them."""

from dataclasses import replace
from functools import cache

from tapmodel.errors import InputError
from tapmodel.sources import Source
from tapmodel.spec.designations.record import Designation
from tapmodel.standards.cut_tap import cut_class, cut_limits_by
from tapmodel.standards.family_rules import FamilyRules
from tapmodel.standards.limits import HoleLimits, HoleLimitsFound
from tapmodel.standards.tables import read_table
from tapmodel.standards.thread_forms import MINIATURE
from tapmodel.words import Certainty

LIMITS = Source(
    "ASME B1.10M",
    "limits of internal threads, as read in Machinery's Handbook 31st ed., table 5 of the section "
    "on Unified miniature screw threads",
    Certainty.READ,
)


@cache
def miniature_sizes() -> dict[float, tuple[float, HoleLimits]]:
    """Pitch [mm] and limits of the internal thread by size [mm].

    Source: `LIMITS`.
    """
    ends = ("major_min", "pitch_min", "pitch_max", "minor_min", "minor_max")
    return {
        float(row["size"]): (float(row["pitch"]), HoleLimits(*(float(row[end]) for end in ends)))
        for row in read_table("miniature")
    }


def miniature_hole_limits(designation: Designation) -> HoleLimitsFound:
    """Limits of an internal thread; its least major diameter stands over the nominal one.

    Args:
        designation: settled.

    Source: `LIMITS`.
    """
    _, limits = miniature_sizes()[designation.diameter]
    return HoleLimitsFound(limits, listed=True, sources=(LIMITS, MINIATURE.source))


def _settle(designation: Designation) -> Designation:
    sizes = miniature_sizes()
    if designation.diameter not in sizes:
        listed = ", ".join(f"{size:.2f}" for size in sizes)
        allowed = f"a size of ASME B1.10M: {listed} UNM; any other as M with its pitch"
        raise InputError("designation", designation.text, allowed)
    return replace(designation, pitch=sizes[designation.diameter][0])


RULES = FamilyRules(
    form=MINIATURE,
    settle=_settle,
    hole_limits=miniature_hole_limits,
    tap_class=cut_class,
    tap_limits=cut_limits_by(miniature_hole_limits),
    drop_to_drill=0.85,
    default_class=Source("ASME B1.10M", "one tolerance for all nuts", Certainty.READ),
)
