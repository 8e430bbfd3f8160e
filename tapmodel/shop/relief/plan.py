"""Each relief of a tap with the way in which the shop makes it, and what it becomes."""

import math
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from tapmodel.designing.record import TapDesign
from tapmodel.shape.relief import Floats, heel_drop
from tapmodel.shop.relief.clears import Touching, touching
from tapmodel.shop.relief.made import Flats, Made, OnCentres, flat_departs, flats, on_centres
from tapmodel.shop.relief.on_hand import OnHand, on_hand
from tapmodel.shop.relief.passes import Passes, Rest, passes
from tapmodel.shop.relief.reach import Reach, reach_of
from tapmodel.shop.relief.span import Span, span_of
from tapmodel.words import ReliefKind, ReliefWay

FLAT_DEPARTS = 0.02
"""How far a filed flat may lie below the arc [mm]; rule of this program."""

_SLICES = 2001


@dataclass(frozen=True)
class Plan:
    """A relief, and how it is made.

    Attributes:
        design: of the tap.
        span: the relief on its land.
        shop: what it is made with.
        wheel: diameter of the wheel taken where one passes a tooth rest [mm].
        reach: how far wheels may come.
    """

    design: TapDesign
    span: Span
    shop: OnHand
    wheel: float
    reach: Reach

    @cached_property
    def centres(self) -> OnCentres:
        """On offset centres."""
        return on_centres(self.span, self.shop.offset_step)

    @cached_property
    def rest(self) -> Rest:
        """The wheel beside the tooth rest."""
        if self.wheel <= self.reach.largest:
            return Rest(self.span, self.wheel / 2, self.span.heel)
        end = self.reach.goes_to(self.wheel)
        return Rest(self.span, self.wheel / 2, self.span.begin if end is None else end)

    @cached_property
    def passes(self) -> Passes:
        """What it leaves."""
        return passes(self.rest, self.shop.indicator_step)

    @cached_property
    def flats(self) -> Flats:
        """By hand: so many that none lies further below the arc than `FLAT_DEPARTS`."""
        count = 1
        while flat_departs(self.span, count) > FLAT_DEPARTS:
            count += 1
        return flats(self.span, count, self.shop.indicator_step)

    @property
    def made(self) -> Made:
        """The surface that the shop's own way leaves."""
        match self.shop.way:
            case ReliefWay.CENTRES:
                return self.centres
            case ReliefWay.WHEEL:
                return self.passes
            case ReliefWay.FILE:
                return self.flats

    @cached_property
    def touching(self) -> tuple[Touching, ...]:
        """Where that touches the work."""
        return self.touches(self.made)

    @cached_property
    def one_flat(self) -> tuple[Touching, ...]:
        """Where a single flat from where the drop begins to the heel would."""
        return self.touches(flats(self.span, 1))

    def touches(self, made: Made) -> tuple[Touching, ...]:
        """Where any surface in place of the relief would."""
        design = self.design
        return touching(design.tap, design.drill, self.span.relief.applies_to, made)

    @property
    def stations(self) -> Floats:
        """Where an indicator reads: edge, margin's end, quarters of what drops, heel [deg]."""
        inner = np.linspace(self.span.begin, self.span.heel, 5)
        return np.concatenate([[0.0], inner]) if self.span.begin > 0 else inner

    @property
    def taken(self) -> float:
        """Section that comes off each land [mm²].

        Source: derived here; half the integral of what the square of the radius loses.
        """
        full = self.span.major / 2
        phi = np.linspace(self.span.begin, self.span.heel, _SLICES)
        lost = full**2 - (full - self.made.drop(phi)) ** 2
        return float(np.trapezoid(lost, np.radians(phi))) / 2


def edge_angle_made(made: Made, span: Span) -> float:
    """Relief angle at the very edge of a surface as made [deg]; none before a margin.

    Source: derived here, over a thousandth of a degree.
    """
    if span.relief.kind is not ReliefKind.ECCENTRIC:
        return 0.0
    first, last = made.drop(np.array([0.0, _NEAR]))
    return math.degrees(math.atan2(float(last - first), math.radians(_NEAR) * span.major / 2))


_NEAR = 1e-3


def plans_of(design: TapDesign) -> tuple[Plan, ...]:
    """The reliefs of a tap that drop, of thread and chamfer; none of a tap that breaks a rule."""
    if design.prediction is None and design.errors:
        return ()
    tap, shop, land = design.tap, on_hand(design), design.figures.land_angle
    found = (span_of(relief, tap.thread.major, land) for relief, _ in design.reliefs)
    spans = [span for span in found if span is not None]
    reaches = [reach_of(tap, span) for span in spans]
    largest = min((one.largest for one in reaches), default=math.inf)
    wheel = next((size for size in shop.wheels if size <= largest), shop.wheels[-1])
    return tuple(
        Plan(design, span, shop, wheel, reach) for span, reach in zip(spans, reaches, strict=True)
    )


def heel_made(plan: Plan) -> float:
    """Drop at the heel as made [mm]."""
    return float(plan.made.drop(np.asarray(plan.span.heel)))


def heel_wanted(plan: Plan) -> float:
    """Drop at the heel as designed [mm]."""
    return heel_drop(plan.span.relief, plan.span.major, plan.span.heel)
