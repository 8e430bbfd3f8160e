"""How numbers are written on drawings: rounded here and nowhere earlier, and where they stand."""

from collections.abc import Sequence
from statistics import fmean

from tapmodel.report.blocks import Length
from tapmodel.report.units import Units, shown


def lettered(value: float, digits: int, units: Units, *, whole: bool = False) -> str:
    """A length [mm] without its unit, in mm or in inches, which keep idle zeros.

    Args:
        value: [mm].
        digits: decimals in mm; inches have one more.
        units: of the drawing.
        whole: keeps idle zeros in mm, too.
    """
    number = bare(shown(Length(value, digits), units))
    return number if whole or units is Units.INCH else plain(number)


def bare(texts: Sequence[str]) -> str:
    """The number of a length in one unit, without it."""
    return texts[0].partition(" ")[0]


def plain(number: str) -> str:
    """A decimal number without idle zeros."""
    return number.rstrip("0").rstrip(".") if "." in number else number


def drawn_in(units: Units) -> Units:
    """Units of the numbers that stand first on a drawing, and alone where it plots them."""
    return Units.INCH if units is Units.INCH else Units.MM


def degrees(value: float) -> str:
    """An angle to a hundredth of a degree."""
    return f"{value:.2f}°"


def scale_text(scale: float) -> str:
    """A scale as drawings state it, e.g. "2:1" or "1:2"."""
    return f"{scale:g}:1" if scale >= 1 else f"1:{1 / scale:g}"


_SCALES = [step * 10.0**power for power in (-2, -1, 0, 1, 2) for step in (1, 2, 5)]


def fitting_scale(length: float, paper: float) -> float:
    """Largest scale at which `length` [mm] of the part is at most `paper` mm long.

    Source: ISO 5455, the scales 1, 2 and 5 times powers of ten (from memory).
    """
    return max((s for s in _SCALES if s * length <= paper), default=_SCALES[0])


def spread(heights: Sequence[float], gap: float) -> list[float]:
    """Places for labels at `heights` (ascending) that are at least `gap` apart, near to them.

    Labels that would crowd stand about the mean of their heights; the rest stay where they are.
    """
    groups: list[list[float]] = []
    for number, height in enumerate(heights):
        # Without the room that the labels before need, crowding shows as falling numbers.
        groups.append([height - number * gap])
        while len(groups) > 1 and fmean(groups[-2]) > fmean(groups[-1]):
            last = groups.pop()
            groups[-1] += last
    means = [fmean(group) for group in groups for _ in group]
    return [mean + number * gap for number, mean in enumerate(means)]
