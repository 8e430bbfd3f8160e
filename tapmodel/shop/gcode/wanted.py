"""Whether programs are wanted unasked, and how the mill turns the work between its cuts."""

from tapmodel.designing.record import TapDesign
from tapmodel.words import Index, Mill


def mill_of(design: TapDesign) -> Mill | None:
    """The mill that the shop has; None where nothing says."""
    word = design.text("shop.mill_control")
    return None if word is None else Mill(word)


def index_of(design: TapDesign) -> Index:
    """How the mill of the shop turns the work; by its axis where nothing says."""
    return Index(design.text("shop.index") or Index.AXIS)


def programs_wanted(design: TapDesign) -> bool:
    """Whether a shop takes programs: its mill reads them, or nothing at all is said of it.

    Source: rule of this program; who says nothing sees what there is.
    """
    told = any(choice.given and choice.field.startswith("shop.") for choice in design.choices)
    return mill_of(design) is Mill.CNC or not told
