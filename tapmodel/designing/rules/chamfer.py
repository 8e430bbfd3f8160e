"""Rules on the chamfer and the point."""

import math

from tapmodel.designing.codes import Code
from tapmodel.designing.judging import (
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
from tapmodel.designing.provenance import OWN_RULE
from tapmodel.designing.record import TapDesign
from tapmodel.designing.rules.context import Context

LEAST_ANGLE, LARGEST_ANGLE = 1.0, 50.0

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
    field, limit = "chamfer.angle", between(LEAST_ANGLE, LARGEST_ANGLE, "deg")
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
        yield finding(
            Code.CHAMFER_ANGLE, ERROR, field, chamfer.angle, limit, OWN_RULE, levers=levers
        )
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
        yield finding(
            Code.CHAMFER_ANGLE, ERROR, field, chamfer.angle, limit, OWN_RULE, levers=levers
        )


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
        field, actual = "chamfer.length", design.tap.chamfer_length
        limit = at_most(longest)
        yield finding(Code.CHAMFER_LENGTH, ERROR, field, actual, limit, OWN_RULE, levers=levers)


def _point(design: TapDesign) -> Findings:
    chamfer, major = design.tap.chamfer, design.tap.thread.major
    point, least = chamfer.point_diameter, LEAST_POINT_SHARE * major
    field = "chamfer.point_diameter"
    if point >= design.drill:
        levers = (
            less(field, point, design.drill),
            more("chamfer.angle", chamfer.angle),
            more("chamfer.length", design.tap.chamfer_length),
        )
        yield finding(Code.POINT_DRILL, ERROR, field, point, at_most(design.drill), levers=levers)
    elif under(point, least):
        levers = (
            more(field, point, least),
            less("chamfer.length", design.tap.chamfer_length),
            less("chamfer.angle", chamfer.angle),
        )
        limit = at_least(least)
        yield finding(Code.POINT_SLIM, ERROR, field, point, limit, OWN_RULE, levers=levers)
