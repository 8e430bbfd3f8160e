"""Numbers in the gaps of lines, at the place of each that lies furthest from all others."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.report.drawings.charts.stress_lines import StressLine
from tapmodel.report.drawings.sheet import Sheet
from tapmodel.shape.outlines.outline import Point

Floats = NDArray[np.float64]

_STEP = 0.25  # between points on paper by which lines are told apart [mm]
_AROUND = 0.55  # white around a number on paper [mm]
_ALIKE = 1e-6  # rooms that differ by less are alike
_HEIGHT = 2.5  # of a number on paper [mm]


@dataclass(frozen=True, slots=True)
class Labels:
    """Where the numbers of lines stand.

    Attributes:
        gaps: by the number of the line that one stands in, its middle and half its room [mm].
        tight: shares for whose number there is no room.
    """

    gaps: Mapping[int, tuple[Point, Floats]]
    tight: tuple[float, ...]


def placed_labels(sheet: Sheet, lines: Sequence[StressLine], rest: Sequence[Floats]) -> Labels:
    """A place for the number of each share, in a gap of one of its lines.

    Args:
        sheet: to be drawn on.
        lines: in the view.
        rest: points of everything else that numbers keep clear of, close together, (n, 2) [mm].
    """
    dense = [_dense(sheet, line) for line in lines]
    kept, tight = list(rest), list[float]()
    gaps = dict[int, tuple[Point, Floats]]()
    for share in dict.fromkeys(line.share for line in lines):
        mine = [n for n, line in enumerate(lines) if line.share == share]
        half = _half(sheet, f"{share:g}")
        found = _freest(dense, mine, np.concatenate(kept), half)
        if found is None:
            tight.append(share)
            continue
        which, at = found
        gaps[which] = at, half
        kept.append(_box(at, half))
    return Labels(gaps, tuple(tight))


def draw_labelled(sheet: Sheet, lines: Sequence[StressLine], labels: Labels, layer: str) -> None:
    """Draw lines with the numbers that have a place in them."""
    for number, line in enumerate(lines):
        if number not in labels.gaps:
            sheet.curve(line.points.tolist(), layer, closed=line.closed)
            continue
        gap = labels.gaps[number]
        sheet.text(gap[0], f"{line.share:g}", "centre")
        _draw_cut(sheet, _dense(sheet, line), gap, layer, closed=line.closed)


def _half(sheet: Sheet, words: str) -> Floats:
    """Half the room of a number, across and upwards [mm]."""
    size = np.array([sheet.width(words), _HEIGHT]) / 2 + _AROUND
    return size / sheet.scale


def _dense(sheet: Sheet, line: StressLine) -> Floats:
    """Points along a line, no further apart than `_STEP` on paper."""
    points = line.points
    if line.closed:
        points = np.concatenate([points, points[:1]])
    run = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(points, axis=0).T))])
    long = float(run[-1])
    at = np.linspace(0.0, long, max(int(long * sheet.scale / _STEP), 2) + 1)
    return np.stack([np.interp(at, run, points[:, 0]), np.interp(at, run, points[:, 1])], axis=1)


def _freest(
    lines: Sequence[Floats], among: Sequence[int], kept: Floats, half: Floats
) -> tuple[int, Point] | None:
    """Which of some lines, and where on it a number has the most room; None if nowhere enough."""
    best: tuple[float, int, Point] | None = None
    for which in among:
        points = lines[which]
        others = np.concatenate([kept, *(line for n, line in enumerate(lines) if n != which)])
        # Away from the ends, so that the line goes on at either side of its number.
        at = points[len(points) // 8 : len(points) - len(points) // 8 : 8]
        apart = np.abs(at[:, None, :] - others[None, :, :]) / half
        room = np.min(np.max(apart, axis=2), axis=1)
        most = int(np.argmax(room))
        # Of equal places the first is taken, whatever the last digits say.
        if room[most] > 1.0 and (best is None or room[most] > best[0] + _ALIKE):
            best = float(room[most]), which, (float(at[most, 0]), float(at[most, 1]))
    return None if best is None else best[1:]


def _box(at: Point, half: Floats) -> Floats:
    across, up = np.meshgrid(np.linspace(-1, 1, 9), np.linspace(-1, 1, 5))
    return np.stack([at[0] + across.ravel() * half[0], at[1] + up.ravel() * half[1]], axis=1)


def _draw_cut(
    sheet: Sheet, points: Floats, gap: tuple[Point, Floats], layer: str, *, closed: bool
) -> None:
    """Draw a line but for what lies in the room of its number."""
    at, half = gap
    outside = np.any(np.abs(points - np.array(at)) > half, axis=1)
    if closed:  # begun in the gap, it is not parted anywhere else
        first = int(np.argmin(outside))
        points, outside = (np.roll(part[:-1], -first, axis=0) for part in (points, outside))
    ends = np.flatnonzero(np.diff(np.concatenate([[False], outside, [False]]).astype(int)))
    for start, end in zip(ends[::2].tolist(), ends[1::2].tolist(), strict=True):
        if end - start > 1:
            sheet.curve(points[start:end].tolist(), layer)
