"""Reads the printed tables that lie beside this module, one CSV file each."""

import csv
from functools import cache
from importlib import resources

from tapmodel.sources import Source
from tapmodel.words import Certainty

Row = dict[str, str]

READ_IN = {
    "threadlib": "as read in threadlib metric_thread.csv commit 3830919",
    "threadlib TR": "as read in threadlib TR.csv commit 5c82b1a",
    "ISO 228": "as read in threadlib BSPP_thread.csv commit 827723d and bd_warehouse iso_228_1.csv "
    "commit 7c98718",
    "MH27": "as read in Machinery's Handbook 27th ed. p. 1794",
    "MH31": "as read in Machinery's Handbook 31st ed. p. 2025",
    "MH31A": "as read in Machinery's Handbook 31st ed. p. 1001",
    "MH31A p. 986": "as read in Machinery's Handbook 31st ed. p. 986",
    "MH31A p. 1002": "as read in Machinery's Handbook 31st ed. p. 1002",
    "taps 2016": "as read in a tap maker's general catalogue 2016-17 p. 799",
    "taps 2022": "as read in a tool maker's catalogue of reamers and taps 2022 p. 56",
    "steel supplier O1": "as read on a steel supplier's page of O1, 1/2 in specimens",
    "shop book W2": "as read in a shop book quoting a steel stock list, disc 2 x 5/8 in",
    "knife maker A2": "as read on a knife maker's page of A2",
    "Industrial Heating A2": "as read in an answer of Industrial Heating",
    "supplier data O1": "as read on another supplier's page of O1, technical data",
    "water hardening": "as read on a page of water-hardening steels: a tough core beyond",
    "heat": "as read in a furnace maker's heat-treat guide",
    "book": "as read in a shop book quoting a steel stock list",
    "FreeCAD": "as read in FreeCAD FeatureHole.cpp commit 003e239",
}


@cache
def read_table(name: str) -> tuple[Row, ...]:
    """Read all rows of one printed table, cells as printed text.

    Args:
        name: file name in `tapmodel/standards/tables` without ".csv".
    """
    file = resources.files("tapmodel.standards") / "tables" / f"{name}.csv"
    lines = file.read_text(encoding="utf-8").splitlines()
    return tuple(csv.DictReader(line for line in lines if not line.startswith("#")))


def cell_source(document: str, place: str, read: str) -> Source:
    """Where one cell comes from: `read` is a key of `READ_IN`, or "memory"."""
    if read == "memory":
        return Source(document, place, Certainty.MEMORY)
    return Source(document, f"{place}, {READ_IN[read]}", Certainty.READ)
