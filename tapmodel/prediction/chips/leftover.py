"""What an earlier tap has left of a chip: strips along both flanks, and all above its crest."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.prediction.chips.pieces import HALF, RADIUS, Pieces

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Gap:
    """The thread that an earlier tap has cut, as it widens towards the drilled wall.

    Attributes:
        radius: rising from the wall to its crest, (n,) [mm].
        half: half its width there, (n,) [mm].
    """

    radius: Floats
    half: Floats

    @property
    def crest(self) -> float:
        """Radius of its crest [mm]."""
        return float(self.radius[-1])

    def outline(self) -> Floats:
        """Round it, from the wall in front over the crest to the wall behind, (2n, 2) [mm]."""
        front = np.stack([-self.half, self.radius], axis=1)
        return np.concatenate([front, front[::-1] * (-1.0, 1.0)])


def gap_of(pieces: Pieces) -> Gap:
    """The thread of the edge that `pieces` are of.

    Source: derived here.
    """
    seen = pieces.seen.reshape(-1, pieces.seen.shape[-1])
    radius, half = seen[:, RADIUS], seen[:, HALF]
    order = np.argsort(radius, kind="stable")
    return Gap(radius[order], half[order])


@dataclass(frozen=True, slots=True)
class _Strip:
    """Part of a chip between two lines, from its lowest radius to its highest."""

    radius: Floats
    front: Floats
    rear: Floats

    def up(self) -> Floats:
        return np.stack([self.front, self.radius], axis=1)

    def down(self) -> Floats:
        return np.stack([self.rear, self.radius], axis=1)[::-1]


def outside(chip: tuple[Floats, Floats, Floats], gap: Gap, touching: float) -> tuple[Floats, ...]:
    """Outlines of what of a chip lies outside the gap.

    Args:
        chip: radii, rising, and where its front and its rear lie there, each (n,) [mm].
        gap: that was cut before.
        touching: lines closer than this have nothing between them [mm].

    Source: derived here.
    """
    radius, front, rear = _looked_at(chip, gap)
    low, high = radius <= gap.crest, radius >= gap.crest
    half = np.interp(radius, gap.radius, gap.half)
    before = _strips(radius[low], front[low], np.minimum(rear, -half)[low], touching)
    behind = _strips(radius[low], np.maximum(front, half)[low], rear[low], touching)
    above = _strips(radius[high], front[high], rear[high], touching)
    return _joined(before, behind, above, gap.crest)


def _looked_at(chip: tuple[Floats, Floats, Floats], gap: Gap) -> tuple[Floats, Floats, Floats]:
    """The chip at the radii of both, and where a line of one crosses a line of the other."""
    radius, front, rear = chip
    most = radius[-1]
    every = np.unique(
        np.concatenate([radius, gap.radius[gap.radius < most], [min(gap.crest, most)]])
    )
    every = every[every >= radius[0]]
    half = np.interp(every, gap.radius, gap.half)
    crossings = [
        _crossings(every, np.interp(every, radius, line) - side * half)
        for line in (front, rear)
        for side in (-1.0, 1.0)
    ]
    every = np.unique(np.concatenate([every, *crossings]))
    return every, np.interp(every, radius, front), np.interp(every, radius, rear)


def _crossings(at: Floats, apart: Floats) -> Floats:
    """Where a distance that is known at some places passes nothing."""
    turn = np.nonzero(apart[:-1] * apart[1:] < 0)[0]
    share = apart[turn] / (apart[turn] - apart[turn + 1])
    return at[turn] + share * (at[turn + 1] - at[turn])


def _strips(radius: Floats, front: Floats, rear: Floats, touching: float) -> list[_Strip]:
    """Runs of radii at which there is something between front and rear."""
    wide = rear - front > touching
    # the radii next to a run close it in a point
    near = wide.copy()
    near[:-1] |= wide[1:]
    near[1:] |= wide[:-1]
    ends = np.flatnonzero(np.diff(np.concatenate([[False], near, [False]]).astype(int)))
    rear = np.maximum(front, rear)
    return [
        _Strip(radius[a:b], front[a:b], rear[a:b])
        for a, b in zip(ends[::2].tolist(), ends[1::2].tolist(), strict=True)
        if b - a > 1
    ]


def _joined(
    before: list[_Strip], behind: list[_Strip], above: list[_Strip], crest: float
) -> tuple[Floats, ...]:
    """Strips that reach the crest of the gap are one with what lies above it."""
    first = next((strip for strip in above if strip.radius[0] == crest), None)
    legs = [
        next((strip for strip in strips if first is not None and strip.radius[-1] == crest), None)
        for strips in (before, behind)
    ]
    alone = [strip for strip in (*before, *behind, *above) if all(strip is not s for s in legs)]
    rounds = [np.concatenate([s.up(), s.down()]) for s in alone if s is not first]
    if first is not None:
        left, right = legs
        way = [
            *([left.up()] if left else []),
            first.up(),
            first.down(),
            *([right.down(), right.up()] if right else []),
            *([left.down()] if left else []),
        ]
        rounds.append(np.concatenate(way))
    return tuple(rounds)
