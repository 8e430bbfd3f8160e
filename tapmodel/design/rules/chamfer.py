"""Rules on the chamfer and the point."""

import math

from tapmodel.design.choose.chamfer import LARGEST_ANGLE, LEAST_ANGLE
from tapmodel.design.judging import (
    ERROR,
    Findings,
    at_least,
    at_most,
    between,
    finding,
    less,
    more,
    over,
    under,
)
from tapmodel.design.provenance import OWN_RULE
from tapmodel.design.record import TapDesign
from tapmodel.design.rules.context import Context

LEAST_POINT_SHARE = 0.1
"""Least diameter of the point as a share of the major diameter; less is a needle."""


def judge(design: TapDesign, context: Context) -> Findings:
    """Every finding on the chamfer.

    Source: each names its own.
    """
    del context  # the chamfer is judged by the design alone
    yield from _cone(design)
    yield from _full_thread(design)
    yield from _point(design)


def _cone(design: TapDesign) -> Findings:
    chamfer, major = design.tap.chamfer, design.tap.thread.major
    rise = (major - chamfer.point_diameter) / 2
    numbers = between(LEAST_ANGLE, LARGEST_ANGLE, chamfer.angle, "deg")
    what = "The chamfer is no usable cone."
    if under(chamfer.angle, LEAST_ANGLE):
        levers = (
            less(
                "chamfer.length",
                design.tap.chamfer_length,
                rise / math.tan(math.radians(LEAST_ANGLE)),
            ),
            less("chamfer.pitches", design.figures.chamfer_pitches),
            more("chamfer.angle", chamfer.angle, LEAST_ANGLE),
            less("chamfer.point_diameter", chamfer.point_diameter),
        )
        levers = levers if rise > 0 else levers[3:]
        yield finding("chamfer-angle", ERROR, what, numbers, OWN_RULE, levers=levers)
    elif over(chamfer.angle, LARGEST_ANGLE):
        levers = (
            more(
                "chamfer.length",
                design.tap.chamfer_length,
                rise / math.tan(math.radians(LARGEST_ANGLE)),
            ),
            more("chamfer.pitches", design.figures.chamfer_pitches),
            less("chamfer.angle", chamfer.angle, LARGEST_ANGLE),
            more("chamfer.point_diameter", chamfer.point_diameter),
        )
        yield finding("chamfer-angle", ERROR, what, numbers, OWN_RULE, levers=levers)


def _full_thread(design: TapDesign) -> Findings:
    chamfer, thread, length = design.tap.chamfer, design.tap.thread, design.tap.blank.thread_length
    longest = length - thread.pitch
    if over(design.tap.chamfer_length, longest):
        levers = (
            less("chamfer.length", design.tap.chamfer_length, longest),
            more("blank.thread_length", length, design.tap.chamfer_length + thread.pitch),
            more("chamfer.angle", chamfer.angle),
            less("chamfer.pitches", design.figures.chamfer_pitches, longest / thread.pitch),
        )
        what = "The chamfer leaves no full thread."
        numbers = at_most(longest, design.tap.chamfer_length)
        yield finding("chamfer-length", ERROR, what, numbers, OWN_RULE, levers=levers)


def _point(design: TapDesign) -> Findings:
    chamfer, major = design.tap.chamfer, design.tap.thread.major
    point, least = chamfer.point_diameter, LEAST_POINT_SHARE * major
    if point >= design.drill:
        what = "The tap will not start: its point is as thick as the drilled hole."
        numbers = at_most(design.drill, point)
        levers = (
            less("chamfer.point_diameter", point, design.drill),
            more("chamfer.angle", chamfer.angle),
            more("chamfer.length", design.tap.chamfer_length),
        )
        yield finding("point-drill", ERROR, what, numbers, levers=levers)
    elif under(point, least):
        what = "The point is a needle."
        levers = (
            more("chamfer.point_diameter", point, least),
            less("chamfer.length", design.tap.chamfer_length),
            less("chamfer.angle", chamfer.angle),
        )
        yield finding("point-slim", ERROR, what, at_least(least, point), OWN_RULE, levers=levers)
