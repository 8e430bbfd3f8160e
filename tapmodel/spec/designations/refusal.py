"""How the grammars refuse a text, and what they share in reading its numbers."""

from dataclasses import dataclass
from typing import NoReturn

from tapmodel.errors import InputError

MAX_STARTS = 8

NOISE = 1e-6
"""By which a true multiple may miss [mm]: typed numbers have at most five decimals."""


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
    fits = 1 <= starts <= MAX_STARTS and abs(lead - starts * pitch) <= NOISE
    return starts if fits else None


def no_starts(lead: float, pitch: float, lead_sign: str = "lead") -> str:
    """What is allowed of a lead and a pitch [mm] that make no starts, and why these do not."""
    allowed = f"a {lead_sign} that is 1 to {MAX_STARTS} times the pitch P"
    if lead < pitch:
        return f"{allowed}: {lead:g} is less than {pitch:g}"
    times = round(lead / pitch)
    if abs(lead - times * pitch) > NOISE:
        return f"{allowed}: {lead:g} is no multiple of {pitch:g}"
    return f"{allowed}: {lead:g} is {times} times {pitch:g}"
