"""In which units a job is tried where all three would take too long."""

from collections.abc import Iterable

from sweeps import in_part

from tapmodel.report.units import Units


def in_turn(texts: Iterable[str]) -> list[tuple[str, Units]]:
    """Each text in both units, where there is most to letter, and in one of the two in turn.

    In a run of all tests it is one of these in turn.
    """
    one = (Units.MM, Units.INCH)
    return [
        (text, units)
        for n, text in enumerate(texts)
        for units in in_part((Units.BOTH, one[n // 2 % 2]), n)
    ]
