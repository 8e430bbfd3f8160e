"""Rows of sizes that are held by general tolerances, and what is said of those."""

from tapmodel.report.blocks import Length, Row
from tapmodel.shop.core_zone import CORE_SHARE, core_zone
from tapmodel.spec.measured.sizes import Size
from tapmodel.standards.general_tolerances import (
    GENERAL,
    SHAFTS,
    Zone,
    general_zone,
    shaft_zone,
)

HOW = (
    "Limits: shank h9 and overall length h16, as ISO 529 has them; square and neck h12; sizes of h "
    f"by {SHAFTS}. Other lengths, and the core within {100 * CORE_SHARE:g} % of itself, by "
    f"{GENERAL}."
)
"""Which sizes are held by which tolerances."""

HARDENING = (
    "All limits are those of the finished tap. In hardening steel grows or shrinks: measure "
    "thread, shank and square again, and lap or grind what has grown (common practice)."
)
"""No allowance is made."""


def shank_row(
    label: str, size: float, grade: str, digits: int = 3, *, of: Size | None = None
) -> Row:
    """A size that may be less, of tolerance h in a grade of ISO 286-1, to be measured."""
    return _row(label, size, shaft_zone(size, grade), digits, of)


def general_row(label: str, size: float, digits: int = 2, *, of: Size | None = None) -> Row:
    """A size held by the general tolerances, to be measured."""
    return _row(label, size, general_zone(size), digits, of)


def core_row(label: str, size: float) -> Row:
    """The core, which the rake hangs on: held more closely where it is small."""
    return _row(label, size, core_zone(size), 3, Size.CORE)


def _row(label: str, size: float, zone: Zone | None, digits: int, of: Size | None) -> Row:
    low, high = zone or (None, None)
    ends = (None if end is None else Length(end, digits) for end in (low, high))
    return Row(label, Length(size, digits), *ends, measured=True, size=of)
