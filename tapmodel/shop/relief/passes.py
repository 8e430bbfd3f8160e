"""A wheel that passes a land again and again, the tap turned and the wheel fed in between.

The tap lies between its own centres, its axis beside the wheel's; the land's edge lies on the tooth
rest, level with the axis, and the wheel's centre stands over that level by `height`. Seen across
the axis the wheel is a circle that touches the arc of the relief from outside, so that its centre
is as far from the arc's as both radii together: turned by `turn` the arc's centre stands at
`offset*(cos, sin)(direction - begin - turn)`, and the wheel's is

    x = cx + sqrt((wheel + arc)**2 - (height - cy)**2)

from the tap's axis. A cup wheel is the same with a radius without end.

Source: derived here.
"""

import math
from dataclasses import dataclass

import numpy as np

from tapmodel.designing.choose.steps import down
from tapmodel.shape.relief import Floats
from tapmodel.shop.relief.span import Span
from tapmodel.words import ReliefKind

RIDGE = 0.002
"""Height of the ridges between passes that is left [mm]: about what the work springs back by. Rule
of this program."""

_SHARE = 0.01
"""Of a step that may be left to the heel."""

TURNS = (5.0, 3.0, 2.0, 1.0, 0.5, 0.25)
"""Turns from pass to pass to choose from [deg]."""


@dataclass(frozen=True, slots=True)
class Rest:
    """The wheel beside a tap whose edge lies on the rest.

    Attributes:
        span: the relief.
        radius: of the wheel [mm].
        until: angle behind the crest edge up to which it may touch [deg].
    """

    span: Span
    radius: float
    until: float

    @property
    def height(self) -> float:
        """Of the wheel's centre over the tap's axis, towards the heel [mm]."""
        return self.radius * math.sin(math.radians(self.span.lean))

    def stands(self, turn: float) -> float:
        """Distance of the wheel's centre from the tap's axis, level with it [mm]."""
        arc = self.span.arc
        centre = math.radians(arc.direction - self.span.begin - turn)
        aside = self.height - arc.offset * math.sin(centre)
        return arc.offset * math.cos(centre) + math.sqrt((self.radius + arc.radius) ** 2 - aside**2)

    def infeed(self, turn: float) -> float:
        """How far the wheel has come in since it touched where the drop begins [mm]."""
        return self.stands(0.0) - self.stands(turn)

    def touches(self, turn: float) -> float:
        """Angle behind the crest edge at which the wheel then touches the arc [deg]."""
        arc, turned = self.span.arc, self.span.begin + turn
        x, y = self.stands(turn), self.height
        across, away = math.hypot(x, y), math.radians(turned) + math.atan2(y, x)
        centre = math.radians(arc.direction)
        cx, cy = arc.offset * math.cos(centre), arc.offset * math.sin(centre)
        wx, wy = across * math.cos(away) - cx, across * math.sin(away) - cy
        share = arc.radius / math.hypot(wx, wy)
        return math.degrees(math.atan2(cy + share * wy, cx + share * wx))

    @property
    def step(self) -> float:
        """Greatest turn from pass to pass that leaves ridges of `RIDGE` at most [deg].

        Source: derived here; half-way between two contacts both circles have left the arc.
        """
        arc = self.span.arc.radius
        for turn in TURNS:
            if (arc * math.radians(turn)) ** 2 / 8 * (1 / arc + 1 / self.radius) <= RIDGE:
                return turn
        return TURNS[-1]

    @property
    def turns(self) -> Floats:
        """Turn of each pass, (n,) [deg].

        From the first to the one that reaches the heel, or, where the wheel may not come so far,
        to the last before the next land is touched.
        """
        step, heel = self.step, self.span.heel
        # A flat face has turned by the arc's own swing, a small wheel by the angle of the land.
        count = math.ceil(max(self.span.swing, heel - self.span.begin) / step) + 1
        found = np.array([number * step for number in range(count + 1)])
        touched = np.array([self.touches(float(turn)) for turn in found])
        if self.until < heel:
            return found[: max(int(np.sum(touched <= self.until)), 1)]
        return found[: int(np.sum(touched < heel - step * _SHARE)) + 1]


@dataclass(frozen=True, slots=True)
class Passes:
    """What the wheel leaves.

    Attributes:
        rest: how it stands.
        turns: of the tap, pass by pass, (n,) [deg].
        infeeds: of the wheel in each, (n,) [mm].
    """

    rest: Rest
    turns: Floats
    infeeds: Floats

    @property
    def kinks(self) -> Floats:
        """The ridges, half-way between the passes."""
        touched = np.array([self.rest.touches(float(turn)) for turn in self.turns])
        return np.concatenate([touched, (touched[1:] + touched[:-1]) / 2])

    def drop(self, phi: Floats) -> Floats:
        """Of the innermost of all passes.

        Source: derived here; a ray and the near side of a circle.
        """
        rest, fallen = self.rest, np.full(np.shape(phi), -np.inf)
        for turn, infeed in zip(self.turns, self.infeeds, strict=True):
            x, y = rest.stands(0.0) - infeed, rest.height
            away = np.radians(phi - rest.span.begin - turn) - math.atan2(y, x)
            across = math.hypot(x, y)
            under = rest.radius**2 - (across * np.sin(away)) ** 2
            near = across * np.cos(away) - np.sqrt(np.maximum(under, 0.0))
            fallen = np.maximum(fallen, np.where(under > 0, rest.span.major / 2 - near, -np.inf))
        ahead = 0.0 if rest.span.relief.kind is ReliefKind.CON_ECCENTRIC else fallen
        # Where no pass comes the land stays round.
        return np.where(phi <= rest.span.begin, ahead, np.maximum(fallen, 0.0))


def passes(rest: Rest, step: float = 0.0) -> Passes:
    """All passes over a land.

    Args:
        rest: how the wheel stands.
        step: division of the feed: it is set to the last that is reached, so that no pass takes
            the edge before it [mm]; 0 sets it exactly.

    Source: derived here.
    """
    turns = rest.turns
    exact = [rest.infeed(float(turn)) for turn in turns]
    return Passes(rest, turns, np.array([down(one, step) if step else one for one in exact]))
