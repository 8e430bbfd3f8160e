"""Which wires a thread can be measured over, and which of those on hand is best."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from tapmodel.designing.choose.steps import step_for, up
from tapmodel.numerics import border, rising_root
from tapmodel.shape.profile import segments
from tapmodel.shop.wires.crest_clearance import fouls_crest
from tapmodel.shop.wires.groove import Groove
from tapmodel.shop.wires.over_wires import (
    at_pitch_diameter,
    best_wire,
    measurement,
    seated,
    wire_touching_at,
)
from tapmodel.shop.wires.told import length_told, span_told
from tapmodel.tap.tap import TapThread
from tapmodel.words import Units

AIR = 0.1
"""How far a wire stands proud of the crests, both sides together, so that the anvils clear them
[mm]; a rule of this program, as is the next."""

AIR_OF_FINE_THREADS = 0.1
"""The same in pitches, where that is less: pitches below 1 mm."""

INSIDE = 0.0005
"""A wire is offered no closer than this to the ends of its range [mm], so that it lies inside the
range as that is printed."""

CORNER = 0.1
"""Share of its range that a wire keeps away from the greatest, which touches at the very corner of
the crest: a burr or an edge honed off there spoils the reading. Rule of this program."""

_NO_WIRE = 1e-6
"""A wire of this share of the thickest counts as none: a sharp root holds every thin wire."""

_REMEMBERED = 16
"""Threads."""

_STEEP = 15.0
"""No crest is fouled by a straight wire below this lead angle [deg]; those found are beyond 40."""


@dataclass(frozen=True, slots=True)
class WireRange:
    """Diameters of wires that suit a thread [mm].

    Attributes:
        least: stands clear of the crests, and just clears the root.
        best: touches the flanks at the pitch diameter; may lie outside.
        greatest: touches the flanks at the very crest.
    """

    least: float
    best: float
    greatest: float

    @property
    def meets_corner(self) -> bool:
        """Whether the best wire touches at the corner of the crest, all but there, or beyond."""
        return self.best > self.greatest - max(CORNER * (self.greatest - self.least), INSIDE)

    @property
    def wanted(self) -> float:
        """To which wires on hand should be near [mm]: the best, clear of the crests' corners."""
        return (self.least + self.greatest) / 2 if self.meets_corner else self.best

    @property
    def is_empty(self) -> bool:
        """Whether no wire suits."""
        return self.greatest - self.least < 2 * INSIDE

    def told(self, units: Units) -> str:
        """The range as a message tells it, rounded into itself, the reader's unit first."""
        span, best = span_told(self.least, self.greatest, units), length_told(self.best, units)
        why = ""
        if self.best < self.least:
            why = (
                ", which is too thin: it would not hold the anvils clear of the crests, or rest "
                "on the root"
            )
        elif self.best > self.greatest:
            why = ", which is too thick: it would rest on the corners of the crests"
        touching = "so that it touches the flanks of this thread and stands clear of its crests"
        return f"a wire of {span}, {touching}, the best being {best}{why}"

    def holds(self, wire: float) -> bool:
        """Whether a wire suits."""
        return self.least <= wire <= self.greatest

    def offered(self, pitch: float) -> float:
        """The wire to use [mm]: the best one, or the next size towards it that suits.

        Where crests are cut down so far that the best would touch at their corners or not at all,
        a size in the middle of the range.

        Args:
            pitch: of the thread, to which the steps between sizes are fitted [mm].

        Source: rule of this program: hundredths, finer steps for pitches below 0.5 mm.
        """
        low, high = self.least + INSIDE, self.greatest - INSIDE
        if self.meets_corner:
            middle, step = (low + high) / 2, step_for(0.01, 0.02 * pitch)
            size = up(middle - step / 2, step)
            return size if low <= size <= high else middle
        if low <= self.best:
            return self.best
        size = up(low, step_for(0.01, 0.02 * pitch))
        return size if size <= high else (low + high) / 2


def air_for(pitch: float) -> float:
    """Least by which the wires stand proud of the crests, both sides together [mm].

    Source: rule of this program. The conventional best wire of a 60-degree thread stands some
    0.2 pitch proud of the basic profile, and a tap's crests lie higher than that.
    """
    return min(AIR, AIR_OF_FINE_THREADS * pitch)


def wire_range(groove: Groove, thread: TapThread, air: float = 0.0) -> WireRange:
    """The wires that touch straight flank only, clear the root and stand proud of the crests.

    A rounded crest shortens the straight flank. A wire that clears the root also touches above it:
    in a ring groove its underside meets the bottom before its contacts meet a flat, and together
    with them where the root is a round.

    Args:
        groove: the thread as the wire meets it.
        thread: where flanks end, and diameters over crests and roots.
        air: by which the measurement exceeds the major diameter at least [mm].

    Source: derived here. For the basic profiles at lead 0 it gives the printed 0.487263 P and
    0.650013 P of Acme threads, Machinery's Handbook 31st ed. p. 2135 (read).
    """
    greatest = wire_touching_at(groove, segments(thread)[1].start_radius)
    none = greatest * _NO_WIRE
    proud = thread.major + air
    least = max(
        rising_root(lambda wire: measurement(groove, wire) - proud, none, greatest),
        rising_root(lambda wire: _underside(groove, wire) - thread.minor / 2, none, greatest),
    )
    return WireRange(least, best_wire(groove), greatest)


# A page asks for it again with each move of a slider, of which few change the thread.
@lru_cache(_REMEMBERED)
def zone_range(groove: Groove, thread: TapThread, low: float, high: float) -> WireRange:
    """The wires that suit a thread wherever in its zone the pitch diameter lies.

    At the lower limit they lie deepest, and have to stand clear of the crests; at the upper one
    they lie highest, and have to touch below the crests' corners. Where steep flanks of a large
    lead make a straight wire rest on the crests' corners, the least is thicker than for the air.

    Args:
        groove: gives form, pitch and lead; its pitch diameter is not used.
        thread: at its aimed pitch diameter.
        low: limit of the pitch diameter [mm].
        high: limit of the pitch diameter [mm].

    Source: as `wire_range`, with the air of `air_for`.
    """
    low, high = min(low, thread.pitch_diameter), max(high, thread.pitch_diameter)
    deep, shallow = (
        wire_range(
            at_pitch_diameter(groove, diameter),
            replace(thread, pitch_diameter=diameter),
            air_for(groove.pitch),
        )
        for diameter in (low, high)
    )
    corner = segments(thread)[1].start_radius
    least = max(
        _clear_of_corners(at_pitch_diameter(groove, diameter), corner, found)
        for diameter, found in ((low, deep), (high, shallow))
    )
    best = best_wire(at_pitch_diameter(groove, thread.pitch_diameter))
    return WireRange(least, best, shallow.greatest)


def _clear_of_corners(groove: Groove, corner: float, found: WireRange) -> float:
    """The least wire of a range that meets no corner of a crest [mm]; none does if beyond it."""
    if groove.lead_angle < _STEEP or not fouls_crest(groove, found.least, corner):
        return found.least
    if fouls_crest(groove, found.greatest, corner):
        return found.greatest
    _, clear = border(
        lambda wire: fouls_crest(groove, wire, corner), found.least, found.greatest, INSIDE / 10
    )
    return clear


def _underside(groove: Groove, wire: float) -> float:
    """Radius of the wire's nearest point to the tap's axis [mm]."""
    return seated(groove, wire).axis_radius - wire / 2


def nearest_to_best(on_hand: Sequence[float], allowed: WireRange) -> float | None:
    """The wire on hand nearest to the best, of those that suit [mm]; None where none does.

    Where the best would touch at the crests' corners, nearest to the middle of the range.

    Args:
        on_hand: diameters of the set [mm].
        allowed: for the thread.

    Source: common practice.
    """
    suited = [wire for wire in on_hand if allowed.holds(wire)]
    return min(suited, key=lambda wire: abs(wire - allowed.wanted), default=None)
