"""What a tap will do in the hole: everything that this room can say of one tap, together."""

import math
from dataclasses import dataclass, replace
from functools import cached_property

from tapmodel.prediction.band import Band
from tapmodel.prediction.chips.record import Chips
from tapmodel.prediction.chips.room import Room, room_of
from tapmodel.prediction.chips.teeth import chips_of
from tapmodel.prediction.gauge import Gauge, gauge_of
from tapmodel.prediction.part import Part
from tapmodel.prediction.rubbing.record import Rubbing
from tapmodel.prediction.rubbing.rubbing import rubbing_of
from tapmodel.prediction.strength.record import Strength
from tapmodel.prediction.strength.strength import strength_of
from tapmodel.prediction.torque.record import HoleToTap, Torque
from tapmodel.prediction.torque.torque import torque_along, torque_of
from tapmodel.shape.flute_section import rake, section_of
from tapmodel.standards.limits import HoleLimits
from tapmodel.standards.materials.steels import TapSteel
from tapmodel.standards.materials.work import WorkMaterial
from tapmodel.tap.tap import Tap

WORN = 2.0
"""Torque of a tap at the end of its life in the greatest of a new one."""


@dataclass(frozen=True, slots=True)
class Task:
    """What a tap has to do.

    Attributes:
        limits: of the thread to be cut.
        hole: that is tapped.
        material: of the work.
        steel: of the tap.
        part: that it has in the work of a set; None for a tap that does all of it.
    """

    limits: HoleLimits
    hole: HoleToTap
    material: WorkMaterial
    steel: TapSteel
    part: Part | None = None


@dataclass(frozen=True)
class Prediction:
    """What a tap will do in its hole; what no rule asks for is worked out when it is asked for.

    Attributes:
        tap: of which it is told.
        task: that the tap has.
        chips: of every tooth.
        room: for them in the flutes.
        torque: that it takes.
        strength: that it has.
    """

    tap: Tap
    task: Task
    chips: Chips
    room: Room
    torque: Torque
    strength: Strength

    @property
    def load(self) -> float:
        """The likely torque, in what the tap bears; above 1 it is too much."""
        return self.torque.band.likely / self.strength.bears

    @property
    def margin(self) -> float:
        """Safety factor: what the tap bears over the most that it takes; below 1 it is short."""
        most = self.torque.band.high
        return self.strength.bears / most if most > 0 else math.inf

    @property
    def chips_held(self) -> float:
        """Length of thread whose chips the flutes hold, in a hole of the kind to be tapped [mm]."""
        return self.room.blind if self.task.hole.blind else self.room.through

    @property
    def stop_at(self) -> float:
        """Torque to stop turning at [N·m]: what the tap bears, or what tells of a fault.

        Source: rule of this program; a worn tap is allowed twice the greatest torque of a new one
        (16 N·m for M12x1.5 in grey iron, where the printed formulas give 4 to 8), so beyond that
        the edges are gone or chips are jammed.
        """
        return min(self.strength.bears, WORN * self.torque.band.high)

    @cached_property
    def rubbing(self) -> Rubbing:
        """Behind the edges."""
        return rubbing_of(self.tap, self.task.hole.drill)

    @cached_property
    def gauge(self) -> Gauge:
        """The thread that it leaves."""
        return gauge_of(self.tap, self.task.limits, self.task.hole.drill)

    @cached_property
    def course(self) -> Torque:
        """The torque with its course on the way in and back."""
        hole, material = self.task.hole, self.task.material
        turned = mean_rake(self.tap, hole.drill)
        share = share_of(self.tap, self.task)
        return torque_along(self.tap, self.chips, material, turned, hole, share)


def predicted(tap: Tap, task: Task) -> Prediction:
    """Everything that can be said of a tap at its task.

    Source: as the functions called here.
    """
    hole, drill, part = task.hole, task.hole.drill, task.part
    chips = chips_of(tap, drill, part.before if part else None)
    share = share_of(tap, task)
    torque = torque_of(tap, chips, task.material, mean_rake(tap, drill), hole, share)
    if part is not None and part.before is not None:
        # It starts in a thread that is cut already, which draws it in.
        torque = replace(torque, axial_force=Band(0.0, 0.0, 0.0))
    return Prediction(
        tap=tap,
        task=task,
        chips=chips,
        room=room_of(tap, drill, chips),
        torque=torque,
        strength=strength_of(tap, task.steel),
    )


def share_of(tap: Tap, task: Task) -> float:
    """Of the moment of all that is cut in the hole, what this tap cuts: 1 for one without a set.

    Source: as `Part.share`.
    """
    return 1.0 if task.part is None else task.part.share(tap.thread, task.hole.drill)


def mean_rake(tap: Tap, drill: float) -> float:
    """Rake half-way up the thread that is cut [deg]; `drill` diameter [mm].

    Source: derived here; the specific cutting force changes by a per cent and a half for a degree,
    and so evenly that the middle stands for all.
    """
    low = min(max(drill, tap.thread.minor), tap.thread.major)
    return rake(section_of(tap.flutes), (low + tap.thread.major) / 4)
