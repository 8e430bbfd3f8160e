"""How deep each pass of the threading tool goes, so that all take the same area of chip."""

import math
from dataclasses import dataclass
from enum import StrEnum

from tapmodel.numerics import rising_root
from tapmodel.sources import Source
from tapmodel.tap.tap import TapThread
from tapmodel.words import Certainty

AREA_SOURCE = Source(
    "workshop practice",
    "tools of high-speed steel in annealed tool steel on a small lathe: some ten passes for each "
    "mm of pitch, none deeper than 0.2 mm, the last ones light, one without infeed",
    Certainty.MEMORY,
)

CHIP = 0.035
"""Greatest area of a chip, of the pitch times 1 mm; the work of a pass grows with the pitch, its
number of passes too. Rule of this program, after `AREA_SOURCE`."""

DEEPEST = 0.2
"""No pass goes deeper than this [mm]; `AREA_SOURCE`."""

LAST_PASS, _LAST_SHARE, _TWO_FROM = 0.02, 1 / 8, 0.4
"""Infeed of a light pass, at most so much of the whole; from so deep on there are two [mm]. Common
practice, the shares a rule of this program."""

MOST = 60
"""Passes beyond which nobody goes: a coarser groove is roughed with a narrower tool first."""

_NOISE = 1e-9


class Kind(StrEnum):
    """A kind of pass."""

    DEEPEST = "as deep as any"
    EQUAL = "equal chip"
    LIGHT = "light"
    SPRING = "without infeed"


@dataclass(frozen=True, slots=True)
class Nose:
    """The threading tool as the groove sees it, fed square to the axis.

    Attributes:
        flat: width of its tip, 0 where that is round [mm].
        radius: of its tip, 0 where that is flat [mm].
        flank_angle: of each edge, to the direction of the feed [deg].
    """

    flat: float
    radius: float
    flank_angle: float

    def area(self, depth: float) -> float:
        """What it takes from the blank's section when it stands so deep [mm, mm²].

        Source: the truncated V, or the arc that touches both flanks and the V above (derived here).
        """
        rounded = self._round_depth
        if depth <= rounded:
            return self._segment(depth)
        above = depth - rounded
        return self._segment(rounded) + self._width * above + self._slope * above**2

    def depth_of(self, area: float) -> float:
        """How deep it stands when it has taken an area [mm², mm]; the inverse of `area`.

        Source: of a V the root of its quadratic; within the arc found to the last bit.
        """
        below = self._segment(self._round_depth)
        if area <= below:
            return rising_root(lambda depth: self._segment(depth) - area, 0.0, self._round_depth)
        width, left = self._width, area - below
        return self._round_depth + 2 * left / (width + math.sqrt(width**2 + 4 * self._slope * left))

    @property
    def _slope(self) -> float:
        return math.tan(math.radians(self.flank_angle))

    @property
    def _width(self) -> float:
        """Where the flanks begin."""
        return self.flat + 2 * self.radius * math.cos(math.radians(self.flank_angle))

    @property
    def _round_depth(self) -> float:
        """Up to where the tip is round."""
        return self.radius * (1 - math.sin(math.radians(self.flank_angle)))

    def _segment(self, depth: float) -> float:
        """Of the tip's circle."""
        if not self.radius:
            return 0.0
        half = math.sqrt(max(depth * (2 * self.radius - depth), 0.0))
        beside = self.radius - depth
        return self.radius**2 * math.atan2(half, beside) - beside * half


@dataclass(frozen=True, slots=True)
class Pass:
    """One pass of the tool.

    Attributes:
        kind: what sets its infeed.
        infeed: in all, square to the axis, from touching the blank [mm].
        area: of its chip in the thread's section [mm²].
    """

    kind: Kind
    infeed: float
    area: float


@dataclass(frozen=True, slots=True)
class Passes:
    """All passes of a thread; of each of its starts.

    Attributes:
        passes: first to last.
        greatest: area that a chip is meant to have at most [mm²].
    """

    passes: tuple[Pass, ...]
    greatest: float

    @property
    def chip(self) -> float:
        """Area of the chips that are alike [mm²]."""
        return next(one.area for one in self.passes if one.kind is Kind.EQUAL)

    @property
    def heavy(self) -> bool:
        """Whether even so many passes leave a chip that is too thick for a small lathe."""
        return self.chip > self.greatest * (1 + _NOISE)

    def count(self, *kinds: Kind) -> int:
        """How many are of these kinds."""
        return sum(one.kind in kinds for one in self.passes)


def nose_of(thread: TapThread) -> Nose:
    """The tool that leaves the root of a thread."""
    # Flanks that meet above the root are a broken rule: they leave a sharp tool.
    return Nose(max(thread.root_flat, 0.0), max(thread.root_radius, 0.0), thread.flank_angle)


def deeper_by(thread: TapThread) -> float:
    """How much deeper a tool goes for each mm that its flat or radius is smaller [mm].

    Source: definition; the flanks come to stand where they do.
    """
    angle = math.radians(thread.flank_angle)
    return 1 / math.sin(angle) - 1 if thread.rounded_root else 1 / (2 * math.tan(angle))


def finishing(depth: float) -> tuple[float, ...]:
    """Infeeds of the light passes at the end of a thread so deep [mm].

    Source: common practice, as `LAST_PASS` says.
    """
    # A thread of no depth is a broken rule, and still to be told of.
    light = min(LAST_PASS, _LAST_SHARE * depth) if depth > 0 else LAST_PASS
    return (light, light) if depth >= _TWO_FROM else (light,)


def thread_passes(thread: TapThread) -> Passes | None:
    """The passes from the blank's major diameter to the root.

    A sharp V goes in with the square root of the number of the pass, a flat nose deeper at first;
    the first passes are as deep as any may be where they would be deeper, the light ones and one
    without infeed come last. A crest that is rounded later changes none of them. None for a thread
    of no depth, which is a broken rule.

    Source: equal areas of `Nose` (derived here); limits by `AREA_SOURCE`.
    """
    nose, depth = nose_of(thread), (thread.major - thread.minor) / 2
    if depth <= 0:
        return None
    greatest, light = CHIP * thread.pitch, finishing(depth)
    roughed = depth - sum(light)
    most = MOST - len(light) - 1
    found = _roughed(nose, roughed, greatest)
    if len(found) > most:
        found = _equal(nose, 0.0, roughed, most)
    found += [(depth - sum(light[number:]), Kind.LIGHT) for number in range(1, len(light) + 1)]
    infeeds = [0.0, *(infeed for infeed, _ in found)]
    passes = [
        Pass(kind, infeed, nose.area(infeed) - nose.area(before))
        for (infeed, kind), before in zip(found, infeeds, strict=False)
    ]
    return Passes((*passes, Pass(Kind.SPRING, depth, 0.0)), greatest)


def _roughed(nose: Nose, depth: float, greatest: float) -> list[tuple[float, Kind]]:
    """Passes before the light ones.

    Each is less deep than the one before, so that `DEEPEST` limits only those at the beginning.
    """
    begun: list[tuple[float, Kind]] = []
    while True:
        at = begun[-1][0] if begun else 0.0
        left = nose.area(depth) - nose.area(at)
        equal = _equal(nose, at, depth, math.ceil(left / greatest - _NOISE))
        if equal[0][0] - at <= DEEPEST:
            return begun + equal
        begun.append((at + DEEPEST, Kind.DEEPEST))


def _equal(nose: Nose, at: float, depth: float, count: int) -> list[tuple[float, Kind]]:
    """So many passes of one area from one depth to another."""
    before, after = nose.area(at), nose.area(depth)
    depths = [
        nose.depth_of(before + (after - before) * number / count) for number in range(1, count)
    ]
    return [(infeed, Kind.EQUAL) for infeed in (*depths, depth)]
