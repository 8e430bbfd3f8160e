"""Which wires a thread can be measured over, and which of those on hand is best."""

from collections.abc import Sequence
from dataclasses import dataclass

from tapmodel.errors import InputError
from tapmodel.numerics import rising_root
from tapmodel.shape.profile import segments
from tapmodel.shop.wires.groove import Groove
from tapmodel.shop.wires.over_wires import best_wire, measurement, seated, wire_touching_at
from tapmodel.tap.tap import TapThread

_NO_WIRE = 1e-6
"""A wire of this share of the thickest counts as none: a sharp root holds every thin wire."""


@dataclass(frozen=True, slots=True)
class WireRange:
    """Diameters of wires that suit a thread [mm].

    Attributes:
        least: stands level with the crests, or just clears the root.
        best: touches the flanks at the pitch diameter.
        greatest: touches the flanks at the very crest.
    """

    least: float
    best: float
    greatest: float

    @property
    def nearest_to_best(self) -> float:
        """The best wire; at very large lead angles it may lie below the crests, then the least."""
        return min(max(self.best, self.least), self.greatest)

    def __str__(self) -> str:
        """The range as an error message tells it."""
        span = f"{self.least:.3f} to {self.greatest:.3f} mm"
        return f"{span} for this thread, the best being {self.best:.3f} mm"


def wire_range(groove: Groove, thread: TapThread) -> WireRange:
    """The wires that touch straight flank only, clear the root and stand proud of the crests.

    A rounded crest shortens the straight flank. A wire that clears the root also touches above it:
    in a ring groove its underside meets the bottom before its contacts meet a flat, and together
    with them where the root is a round.

    Args:
        groove: the thread as the wire meets it.
        thread: where flanks end, and diameters over crests and roots.

    Source: derived here. For the basic profiles at lead 0 it gives the printed 0.487263 P and
    0.650013 P of Acme threads, Machinery's Handbook 31st ed. p. 2135 (read).
    """
    greatest = wire_touching_at(groove, segments(thread)[1].start_radius)
    none = greatest * _NO_WIRE
    least = max(
        rising_root(lambda wire: measurement(groove, wire) - thread.major, none, greatest),
        rising_root(lambda wire: _underside(groove, wire) - thread.minor / 2, none, greatest),
    )
    return WireRange(least, best_wire(groove), greatest)


def _underside(groove: Groove, wire: float) -> float:
    """Radius of the wire's nearest point to the tap's axis [mm]."""
    return seated(groove, wire).axis_radius - wire / 2


def check_wire(wire: float, allowed: WireRange) -> None:
    """Refuse a wire [mm] that cannot measure the thread.

    Raises:
        InputError: too thin or too thick.

    Source: as `wire_range`.
    """
    if not allowed.least <= wire <= allowed.greatest:
        raise InputError("wire", wire, str(allowed))


def choose_wire(on_hand: Sequence[float], allowed: WireRange) -> float:
    """The wire on hand nearest to the best, of those that suit [mm].

    Args:
        on_hand: diameters of the set [mm].
        allowed: for the thread.

    Raises:
        InputError: none suits.

    Source: common practice.
    """
    suited = [wire for wire in on_hand if allowed.least <= wire <= allowed.greatest]
    if not suited:
        raise InputError("wires on hand", list(on_hand), f"at least one of {allowed}")
    return min(suited, key=lambda wire: abs(wire - allowed.best))
