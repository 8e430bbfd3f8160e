"""Parallel pipe threads G: sizes, limits of the internal thread and of the tap."""

from collections.abc import Mapping
from dataclasses import replace
from functools import cache

from tapmodel.errors import InputError
from tapmodel.sources import Source
from tapmodel.spec.designations.record import Designation
from tapmodel.standards.cut_tap import cut_class, cut_limits_by
from tapmodel.standards.family_rules import FamilyRules, settled_pitch
from tapmodel.standards.inches import MM
from tapmodel.standards.limits import HoleLimits, HoleLimitsFound
from tapmodel.standards.tables import Row, cell_source, read_table
from tapmodel.standards.thread_forms import PIPE
from tapmodel.words import Certainty

DOCUMENT = "ISO 228-1:2000"


@cache
def pipe_rows() -> Mapping[str, Row]:
    """Printed rows by size, e.g. "1 1/4".

    Source: ISO 228-1:2000 table 1 (read in two transcriptions).
    """
    return {row["size"]: row for row in read_table("pipe_sizes")}


def pipe_hole_limits(designation: Designation) -> HoleLimitsFound:
    """Limits of an internal thread; the depth of thread rounded to 0.001 mm as the table prints it.

    Args:
        designation: settled.

    Source: ISO 228-1:2000 table 1 (read in two transcriptions).
    """
    row = pipe_rows()[designation.size]
    diameter = designation.diameter
    depth = round(PIPE.pitch_drop * settled_pitch(designation), 3)
    # Whole micrometres throughout: rounding only takes away the noise of binary fractions.
    limits = HoleLimits(
        major_min=diameter,
        pitch_min=round(diameter - depth, 3),
        pitch_max=round(diameter - depth + float(row["td2"]), 3),
        minor_min=round(diameter - 2 * depth, 3),
        minor_max=round(diameter - 2 * depth + float(row["td1"]), 3),
    )
    source = cell_source(DOCUMENT, "table 1", row["read"])
    return HoleLimitsFound(limits, listed=True, sources=(source, PIPE.source))


def _settle(designation: Designation) -> Designation:
    row = pipe_rows().get(designation.size)
    if row is None:
        sizes = ", ".join(pipe_rows())
        raise InputError("designation", designation.text, f"G and one of the sizes {sizes}")
    return replace(designation, diameter=float(row["major"]), pitch=MM / float(row["tpi"]))


RULES = FamilyRules(
    form=PIPE,
    settle=_settle,
    hole_limits=pipe_hole_limits,
    tap_class=cut_class,
    tap_limits=cut_limits_by(pipe_hole_limits),
    drop_to_drill=1.06,
    default_class=Source(DOCUMENT, "one tolerance for internal threads", Certainty.MEMORY),
)
