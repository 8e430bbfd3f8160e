"""Whether a length that makes no sense was meant in the other unit."""

from collections.abc import Callable, Iterable

from tapmodel.errors import InputError
from tapmodel.spec.designations.reading.inches import MM

_INCH = float(MM)


def meant(values: Iterable[float], fits: Callable[[float], bool]) -> str | None:
    """How the first length is written that makes sense only in the other unit.

    Args:
        values: lengths as they were read [mm].
        fits: tells a length that makes sense [mm].

    Returns:
        The length with its unit, e.g. "0.433mm"; None where one makes sense as it is, or none
        does in either unit.
    """
    given = tuple(values)
    if any(map(fits, given)):
        return None
    for value in given:
        if fits(value * _INCH):
            # Inches without their unit were read as mm.
            return f"{value:.6g}in"
        if fits(value / _INCH):
            return f"{value / _INCH:.6g}mm"
    return None


def refuse_slip(
    option: str, values: Iterable[float], what: str, fits: Callable[[float], bool]
) -> None:
    """Refuse lengths of which none makes sense, but some do if read in the other unit.

    Args:
        option: that gave them.
        values: as they were read [mm].
        what: is allowed, for the message.
        fits: tells a length that makes sense [mm].

    Raises:
        InputError: saying how the first that makes sense is written.
    """
    given = tuple(values)
    written = meant(given, fits)
    if written is not None:
        unit = "inches" if written.endswith("in") else "mm"
        value = given[0] if len(given) == 1 else list(given)
        raise InputError(option, value, f"{what}; this looks like {unit}: write {written}")
