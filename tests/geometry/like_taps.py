"""Taps that are like another one but for their size, a turn about the axis, or their hand."""

from dataclasses import fields, is_dataclass, replace
from typing import Any, TypeVar

from tapmodel.designing.record import TapDesign
from tapmodel.prediction.prediction import predicted
from tapmodel.shape.figures import figures_of
from tapmodel.tap.tap import Tap
from tapmodel.words import Hand

ANGLES = {"flank_angle", "angle", "margin_angle", "shoulder_angle"}
RATIOS = {"back_taper"}

Record = TypeVar("Record")


def scaled(record: Record, times: float) -> Record:
    """A record of a tap or of limits, all lengths so many times as long; nothing else changes."""
    changed: dict[str, Any] = {}
    for field in fields(record):  # type: ignore[arg-type]
        value = getattr(record, field.name)
        if isinstance(value, float) and field.name not in ANGLES | RATIOS:
            changed[field.name] = value * times
        elif is_dataclass(value):
            changed[field.name] = scaled(value, times)
    return replace(record, **changed)  # type: ignore[type-var]


def scaled_design(design: TapDesign, times: float) -> TapDesign:
    """A design of so many times the size; choices and findings stay those of the first."""
    around = replace(
        design,
        hole=scaled(design.hole, times),
        basic_pitch_diameter=design.basic_pitch_diameter * times,
        drill=design.drill * times,
        work=replace(design.work, depth=design.work.depth * times),
        limits=scaled(design.limits, times),
    )
    return with_tap(around, scaled(design.tap, times))


def shifted(tap: Tap, along: float) -> Tap:
    """The tap with its thread shifted along the axis, as a rod is that its flutes are cut into."""
    return replace(tap, thread=replace(tap.thread, first_z=tap.thread.first_z + along))


def turned(tap: Tap, flutes: int) -> Tap:
    """The tap's thread and flutes turned on by so many flutes, which changes the thread alone.

    What stood at an angle t stands at t + a then, so the helix is behind by the advance over a.
    """
    return shifted(tap, -tap.thread.lead * flutes / tap.flutes.count)


def left_handed(tap: Tap) -> Tap:
    """The mirror image."""
    return replace(tap, thread=replace(tap.thread, hand=Hand.LEFT))


def with_tap(design: TapDesign, tap: Tap) -> TapDesign:
    """The design with another tap, and what follows from that."""
    made = replace(design, tap=tap, figures=figures_of(tap))
    return replace(made, prediction=made.prediction and predicted(tap, made.task))
