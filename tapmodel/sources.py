"""Where a value comes from."""

from dataclasses import dataclass

from tapmodel.words import Certainty


@dataclass(frozen=True, slots=True)
class Source:
    """Where a value comes from.

    Attributes:
        document: standard, handbook or "tapmodel" with edition where it matters.
        place: clause, table or page; empty for a rule of our own.
        certainty: read, from memory, derived here, or common practice.
    """

    document: str
    place: str
    certainty: Certainty

    def __str__(self) -> str:
        """One line for sheets and records, e.g. "ISO 965-1:2013, table 1 (read)"."""
        where = f"{self.document}, {self.place}" if self.place else self.document
        return f"{where} ({self.certainty.value})"
