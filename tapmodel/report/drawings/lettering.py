"""How numbers are written on drawings: rounded here and nowhere earlier, and where they stand."""

from collections.abc import Iterable, Sequence
from statistics import fmean

from tapmodel.report.blocks import Length
from tapmodel.report.units import shown_high, shown_low


def mm(value: float, digits: int = 3) -> str:
    """A length without its unit, without idle zeros."""
    return f"{value:.{digits}f}".rstrip("0").rstrip(".")


def size(value: float) -> str:
    """A diameter with three decimals, so that it stands beside its limits."""
    return f"⌀{value:.3f}"


def at_least(value: float, digits: int = 3) -> str:
    """A lower limit without its unit, rounded into its zone as on the sheet."""
    return shown_low(Length(value, digits))[0].removesuffix(" mm")


def at_most(value: float, digits: int = 3) -> str:
    """An upper limit without its unit, rounded into its zone as on the sheet."""
    return shown_high(Length(value, digits))[0].removesuffix(" mm")


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


def past(start: float, width: float, marks: Iterable[float]) -> float:
    """Least place from `start` on where `width` of lettering stands clear of upright lines.

    Args:
        start: wanted beginning.
        width: of the lettering with what shall stay free on both sides.
        marks: where the lines stand.
    """
    for mark in sorted(marks):
        if start < mark < start + width:
            start = mark
    return start
