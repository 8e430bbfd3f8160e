"""How the grammars refuse a text, and what they share in reading its numbers."""

from dataclasses import dataclass
from typing import NoReturn

from tapmodel.errors import InputError

MAX_STARTS = 8


@dataclass(frozen=True, slots=True)
class Refusal:
    """Refuses the designations of one family.

    Attributes:
        allowed: the family's general form, in words.
        examples: that show it.
    """

    allowed: str
    examples: str

    def __call__(self, text: str, allowed: str = "") -> NoReturn:
        """Say what is allowed in place of `text`: the general form, or what is given.

        Raises:
            InputError: always.
        """
        stated = allowed or self.allowed
        raise InputError("designation", text, f"{stated}; for instance {self.examples}")


def starts_of(lead: float, pitch: float) -> int | None:
    """Number of starts; None where the lead is no whole multiple of the pitch, 1 to 8 [mm]."""
    starts = round(lead / pitch)
    # Typed numbers have at most five decimals; a true multiple misses only by binary noise.
    fits = 1 <= starts <= MAX_STARTS and abs(lead - starts * pitch) <= 1e-6
    return starts if fits else None
