"""Controls of what the shop has."""

from tapmodel.report.view.controls.entry import Entry, EntryGroup, named
from tapmodel.report.view.controls.record import Kind

SHOP = EntryGroup(
    "shop",
    "Shop",
    (
        Entry("shop.tools", "sizes of tools", Kind.WORDS, options=named("metric", "inch")),
        Entry("shop.cutters", "ball-nose cutters", Kind.TEXT),
        Entry("shop.drills", "sets of drills", Kind.TEXT),
        Entry("shop.wires", "measuring wires", Kind.TEXT),
        Entry("shop.mill", "dials of the mill", Kind.TEXT),
        Entry("shop.cross_slide", "dial of the cross slide", Kind.TEXT),
        Entry("shop.top_slide", "dial of the top slide", Kind.TEXT),
        Entry("shop.plates", "dividing plates", Kind.TEXT),
        Entry("shop.dividing_ratio", "dividing head, turns", Kind.TEXT),
        Entry("shop.rotary_table", "rotary table", Kind.TEXT),
        Entry("shop.leadscrew", "leadscrew of the lathe", Kind.TEXT),
        Entry("shop.gears", "change wheels", Kind.TEXT),
        Entry(
            "shop.relief_by",
            "reliefs made by",
            Kind.WORDS,
            options=named("centres", "wheel", "file"),
        ),
        Entry("shop.wheels", "grinding wheels", Kind.TEXT),
        Entry("shop.steels", "steels in stock", Kind.TEXT),
        Entry("shop.furnace", "furnace reaches", Kind.TEXT),
        Entry("shop.mill_control", "mill is", Kind.WORDS, options=named("manual", "cnc")),
    ),
)
