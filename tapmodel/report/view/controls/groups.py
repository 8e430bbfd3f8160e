"""What can be changed on the page, in groups, and what each field is called there."""

from collections.abc import Mapping

from tapmodel.report.view.controls.blank import BLANK
from tapmodel.report.view.controls.chamfer import CHAMFER
from tapmodel.report.view.controls.entry import Entry, EntryGroup
from tapmodel.report.view.controls.flutes import FLUTES
from tapmodel.report.view.controls.hole import HOLE
from tapmodel.report.view.controls.relief import CHAMFER_RELIEF, THREAD_RELIEF
from tapmodel.report.view.controls.shop import SHOP
from tapmodel.report.view.controls.steel import STEEL
from tapmodel.report.view.controls.thread import THREAD

GROUPS: tuple[EntryGroup, ...] = (
    HOLE,
    THREAD,
    FLUTES,
    CHAMFER,
    THREAD_RELIEF,
    CHAMFER_RELIEF,
    BLANK,
    STEEL,
    SHOP,
)
"""In the order in which a maker thinks of them."""

ENTRIES: Mapping[str, Entry] = {entry.field: entry for group in GROUPS for entry in group.entries}
"""By field."""


def named_in_full(field: str) -> str:
    """What a field is called where its group does not stand over it; its own name for others."""
    for group in GROUPS:
        for entry in group.entries:
            if entry.field == field:
                return f"{group.title.lower()}: {entry.label}"
    return field
