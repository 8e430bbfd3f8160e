"""How far the numbers of a measurement over wires go; beyond them are slips of the keyboard."""

from tapmodel.errors import InputError
from tapmodel.spec.designations.refusal import MAX_STARTS

Range = tuple[float, float, str]

LENGTH: Range = (1e-3, 2000.0, "mm")
FLANK_ANGLE: Range = (1.0, 80.0, "deg")
LEAD_ANGLE: Range = (0.0, 80.0, "deg")
COMPOUND: Range = (0.0, 80.0, "deg")
STARTS: Range = (1, MAX_STARTS, "threads side by side")


def demand(option: str, value: float | None, allowed: Range) -> None:
    """Refuse a value outside a range; None stands for a value not given.

    Raises:
        InputError: naming the option, the value and the range.
    """
    least, most, unit = allowed
    # Not a number is in no range.
    if value is not None and not least <= value <= most:
        raise InputError(option, value, f"{least:g} to {most:g} {unit}")
