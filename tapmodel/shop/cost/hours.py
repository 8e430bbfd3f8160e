"""Hours of each operation: setting up by a rule, cutting by the route's own speeds and lengths."""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from tapmodel.designing.choose.tools import tools_of
from tapmodel.designing.record import TapDesign
from tapmodel.shop.bar import FACING, bar_for
from tapmodel.shop.cam import ball_paths
from tapmodel.shop.cutting_speed import (
    DRILLING,
    FINISHING,
    Cut,
    speed,
    table_feed,
    turning_feed,
)
from tapmodel.shop.end_mill import end_mill
from tapmodel.shop.gcode.program import depths
from tapmodel.shop.gcode.square import beside, lines
from tapmodel.shop.order_of_work import Step, order_of_work, relieved
from tapmodel.shop.tapping_speed import revolutions
from tapmodel.shop.threading.passes import thread_passes
from tapmodel.shop.threading.stopping import BY_HAND as CRANKED
from tapmodel.shop.threading.stopping import stopping

SETTING_UP: Mapping[Step, float] = {
    Step.SAW: 10,
    Step.CENTRE: 15,
    Step.SHANK: 15,
    Step.BODY: 10,
    Step.NECK: 10,
    Step.THREAD: 40,
    Step.CHAMFER: 10,
    Step.SQUARE: 30,
    Step.FLUTES: 45,
    Step.DEBURR: 2,
    Step.MARK: 3,
    Step.RELIEVE: 20,
    Step.CARBURISE: 30,
    Step.HARDEN: 20,
    Step.TEMPER: 10,
    Step.CLEAN: 5,
    Step.HONE: 5,
    Step.STUB: 10,
    Step.PROVE: 20,
}
"""Minutes until an operation is set up, its measuring with it. Rules of this program, for one tap
made by one who has made some."""

OTHER_SETTING_UP = 15.0
"""Minutes for an operation that the table does not know. Rule of this program."""

SAWN = 500.0
"""Section that a power saw parts in a minute [mm²]. Rule of this program."""

ROUGHING = 1.0
"""Depth of a roughing cut on the lathe [mm]. Rule of this program."""

RETURN = 0.25
"""Minutes to withdraw the threading tool, go back and set in again. Rule of this program."""

CHAMFER_PASSES = 4
"""Passes of the tool along the cone. Rule of this program."""

PLUNGE = 0.25
"""Feed of a grooving tool, of that of turning. Rule of this program."""

AT_MILL = 0.2
"""Minutes to go back and set deeper after a pass of the mill. Rule of this program."""

INDEXED = 2.0
"""Minutes to turn the work to the next flute or flat and clamp it. Rule of this program."""

BY_HAND: Mapping[Step, float] = {Step.DEBURR: 1.0, Step.RELIEVE: 6.0, Step.HONE: 2.0}
"""Minutes of each edge, of each relief of each land, of each cutting face. Rules of this
program."""

AT_BENCH: Mapping[Step, float] = {
    Step.MARK: 3.0,
    Step.CARBURISE: 15.0,
    Step.HARDEN: 20.0,
    Step.TEMPER: 10.0,
    Step.CLEAN: 15.0,
    Step.STUB: 5.0,
}
"""Minutes that somebody stands by; what lies in the furnace by itself costs none. Rules of this
program."""

DRILL_FEED = 1 / 80
"""Feed of a drill in a turn, of its diameter; common practice."""

BY_WRENCH = 5.0
"""Turns a minute of a tap that is turned on and back by hand. Rule of this program."""


@dataclass(frozen=True, slots=True)
class Minutes:
    """Of one operation.

    Attributes:
        step: that is meant.
        setting_up: by a rule.
        working: cutting, by speeds, feeds, lengths and passes; work of the hand by a rule.
        computed: whether `working` is.
    """

    step: Step
    setting_up: float
    working: float
    computed: bool

    @property
    def together(self) -> float:
        """Both."""
        return self.setting_up + self.working


def minutes_of(design: TapDesign) -> tuple[Minutes, ...]:
    """Every operation of the route, in its order.

    Source: rules of this program, each beside its number; cutting derived here.
    """
    return tuple(_minutes(design, step) for step in order_of_work(design))


def _minutes(design: TapDesign, step: Step) -> Minutes:
    setting_up = float(SETTING_UP.get(step, OTHER_SETTING_UP))
    cutting = _CUTTING.get(step)
    if cutting is not None:
        return Minutes(step, setting_up, cutting(design), computed=True)
    return Minutes(step, setting_up, _at_bench(design, step), computed=False)


def _at_bench(design: TapDesign, step: Step) -> float:
    lands = design.tap.flutes.count
    each = {
        Step.DEBURR: 2 * lands,
        Step.RELIEVE: lands * len(relieved(design.tap)),
        Step.HONE: lands,
    }
    return BY_HAND[step] * each[step] if step in BY_HAND else AT_BENCH.get(step, 0.0)


def _turned(design: TapDesign, diameter: float, length: float, share: float = 1.0) -> float:
    """Minutes of one pass of a turning tool; `share` of the feed of roughing, all [mm]."""
    turns = revolutions(speed(design.work.steel.name, Cut.TURNING), diameter)
    return length / (share * turning_feed(diameter) * turns)


def _passes(depth: float, each: float) -> int:
    """Passes that take a depth; none for none."""
    return max(math.ceil(depth / each - 1e-9), 0)


def _bar(design: TapDesign) -> float:
    return bar_for(design.tap, tools_of(design)).turned


def _saw(design: TapDesign) -> float:
    return math.pi * _bar(design) ** 2 / 4 / SAWN


def _centre(design: TapDesign) -> float:
    """Both ends faced, each with a roughing and a last cut to the middle."""
    bar = _bar(design)
    rough = _passes(FACING, ROUGHING) * _turned(design, bar, bar / 2)
    return 2 * (rough + _turned(design, bar, bar / 2, FINISHING))


def _shank(design: TapDesign) -> float:
    """All roughed, thread end and shank, and the last cut on the shank."""
    blank, bar = design.tap.blank, _bar(design)
    behind = blank.overall_length - blank.thread_length
    parts = (
        (blank.thread_length, design.tap.thread.major),
        (behind, blank.shank_diameter),
    )
    rough = sum(
        _passes((bar - finished) / 2, ROUGHING) * _turned(design, bar, length)
        for length, finished in parts
    )
    return rough + _turned(design, blank.shank_diameter, behind, FINISHING)


def _body(design: TapDesign) -> float:
    thread = design.tap.thread
    return _turned(design, thread.major, design.tap.blank.thread_length, FINISHING)


def _neck(design: TapDesign) -> float:
    """Plunged and drawn along, a roughing cut deep at a time."""
    blank, major = design.tap.blank, design.tap.thread.major
    depth = (max(major, blank.shank_diameter) - blank.neck_diameter) / 2
    return _passes(depth, ROUGHING) * _turned(design, major, blank.neck_length, PLUNGE)


def _thread(design: TapDesign) -> float:
    """All passes of all starts, no faster than a hand stops the spindle."""
    thread = design.tap.thread
    told, stop = thread_passes(thread), stopping(design.tap)
    turns = revolutions(speed(design.work.steel.name, Cut.THREADING), thread.major)
    # Where no hand is so quick the spindle itself is turned by hand.
    turns = turns if stop is None else min(turns, max(stop.turns, CRANKED))
    each = design.tap.blank.thread_length / (thread.lead * turns)
    return thread.starts * (len(told.passes) if told else 0) * (each + RETURN)


def _chamfer(design: TapDesign) -> float:
    tap = design.tap
    slant = tap.chamfer_length / math.cos(math.radians(tap.chamfer.angle))
    return CHAMFER_PASSES * _turned(design, tap.thread.major, slant)


def _square(design: TapDesign) -> float:
    """Each flat line by line and step by step, as its program does."""
    blank, radius = design.tap.blank, design.tap.blank.shank_diameter / 2
    flat = blank.square_across_flats / 2
    mill = end_mill(design)
    passes = len(depths(radius, flat, mill)) * len(list(lines(blank.square_length, mill)))
    each = 2 * beside(radius, flat, mill) / table_feed(design.work.steel.name, mill) + AT_MILL
    return 4 * (passes * each + INDEXED)


def _flutes(design: TapDesign) -> float:
    """Each flute step by step along its whole length, as its program does."""
    tap, cutter = design.tap, design.tap.flutes.cutter_diameter
    out, _, stop = ball_paths(tap)[0].last
    passes = len(depths(tap.thread.major / 2, out - cutter / 2, cutter))
    each = (stop + cutter / 2) / table_feed(design.work.steel.name, cutter) + AT_MILL
    return tap.flutes.count * (passes * each + INDEXED)


def _prove(design: TapDesign) -> float:
    """The hole drilled, and the tap turned in and out again by hand."""
    slow = DRILLING * min(design.work.material.group.speed)
    deep = design.work.depth
    drilled = deep / (DRILL_FEED * design.drill * revolutions(slow, design.drill))
    turns = (deep + design.tap.chamfer_length) / design.tap.thread.lead
    return drilled + 2 * turns / BY_WRENCH


_CUTTING: Mapping[Step, Callable[[TapDesign], float]] = {
    Step.SAW: _saw,
    Step.CENTRE: _centre,
    Step.SHANK: _shank,
    Step.BODY: _body,
    Step.NECK: _neck,
    Step.THREAD: _thread,
    Step.CHAMFER: _chamfer,
    Step.SQUARE: _square,
    Step.FLUTES: _flutes,
    Step.PROVE: _prove,
}
