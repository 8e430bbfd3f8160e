"""Rules on the chamfer and the point."""

import math

from tapmodel.designing.codes import Code
from tapmodel.designing.judging import (
    ERROR,
    NOTE,
    WARNING,
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
from tapmodel.designing.limits.chips import (
    BOTTOMING,
    EDGE_TO_CHIP,
    KEEN,
    chip_range,
)
from tapmodel.designing.provenance import OWN_RULE, PRACTICE_FROM_MEMORY
from tapmodel.designing.record import TapDesign
from tapmodel.designing.rules.context import Context
from tapmodel.values import Values

LEAST_ANGLE, LARGEST_ANGLE = 1.0, 50.0
"""Of the cone of one start [deg]; several rise as much in a lead with as much less of a slope."""

LEAST_POINT_SHARE = 0.1
"""Least diameter of the point as a share of the major diameter; less is a needle."""


def judge(design: TapDesign, context: Context) -> Findings:
    """Every finding on the chamfer.

    Source: each names its own.
    """
    del context  # the chamfer is judged by the design alone
    yield from _cone(design)
    yield from _full_thread(design)
    yield from _in_blind_hole(design)
    yield from _point(design)
    yield from _chip(design)


def _cone(design: TapDesign) -> Findings:
    chamfer, major = design.tap.chamfer, design.tap.thread.major
    rise = (major - chamfer.point_diameter) / 2
    least = least_angle(design.tap.thread.starts)
    field, limit = "chamfer.angle", between(least, LARGEST_ANGLE, "deg")
    if under(chamfer.angle, least):
        levers = (
            less(
                "chamfer.length",
                design.tap.chamfer_length,
                rise / math.tan(math.radians(least)),
            ),
            less("chamfer.pitches", design.figures.chamfer_leads),
            more("chamfer.angle", chamfer.angle, least),
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
            more("chamfer.pitches", design.figures.chamfer_leads),
            less("chamfer.angle", chamfer.angle, LARGEST_ANGLE),
            more("chamfer.point_diameter", chamfer.point_diameter),
        )
        yield finding(
            Code.CHAMFER_ANGLE, ERROR, field, chamfer.angle, limit, OWN_RULE, levers=levers
        )


def least_angle(starts: int) -> float:
    """Least angle of the cone to the axis on a thread of so many starts [deg].

    Source: rule of this program: the rise in a lead that 1 deg gives a single start.
    """
    return math.degrees(math.atan(math.tan(math.radians(LEAST_ANGLE)) / starts))


def _full_thread(design: TapDesign) -> Findings:
    chamfer, thread, length = design.tap.chamfer, design.tap.thread, design.tap.blank.thread_length
    longest = length - thread.pitch
    if over(design.tap.chamfer_length, longest):
        levers = (
            less("chamfer.length", design.tap.chamfer_length, longest),
            more("blank.thread_length", length, design.tap.chamfer_length + thread.pitch),
            more("chamfer.angle", chamfer.angle),
            less("chamfer.pitches", design.figures.chamfer_leads, longest / thread.lead),
        )
        field, actual = "chamfer.length", design.tap.chamfer_length
        limit = at_most(longest)
        yield finding(Code.CHAMFER_LENGTH, ERROR, field, actual, limit, OWN_RULE, levers=levers)


def _in_blind_hole(design: TapDesign) -> Findings:
    """As much thread as the chamfer is long stays unfinished at the bottom of a blind hole."""
    length, depth = design.tap.chamfer_length, design.work.depth
    if design.work.blind and over(length, depth):
        values = Values(depth=depth, drilled=design.hole_depth)
        levers = (
            less("chamfer.length", length, depth),
            less("chamfer.pitches", design.figures.chamfer_leads),
        )
        yield finding(
            Code.CHAMFER_BLIND,
            WARNING,
            "chamfer.length",
            length,
            at_most(depth),
            OWN_RULE,
            values=values,
            levers=levers,
        )


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


def _chip(design: TapDesign) -> Findings:
    """Chips that are too thick or too thin; in a bottoming tap, which follows another, a note."""
    figures = design.figures
    chip, leads = figures.chip_thickness, figures.chamfer_leads
    wanted = chip_range(design.work.material.group, design.tap.thread.pitch)
    field, limit = "chamfer.chip_thickness", at_most(wanted.most)
    angle, count = design.tap.chamfer.angle, design.tap.flutes.count
    sloped = design.choice("chamfer.angle") is not None
    if over(chip, wanted.most) and leads <= BOTTOMING:
        values = Values(leads=leads)
        yield finding(Code.CHIP_THICK, NOTE, field, chip, limit, OWN_RULE, values=values)
    elif over(chip, wanted.most):
        levers = (
            less("chamfer.angle", angle, angle * wanted.most / chip)
            if sloped
            else more("chamfer.pitches", leads, leads * chip / wanted.most),
            more("flutes.count", count, count * chip / wanted.most),
        )
        yield finding(Code.CHIP_THICK, WARNING, field, chip, limit, OWN_RULE, levers=levers)
    elif under(chip, wanted.least):
        levers = (
            more("chamfer.angle", angle, angle * wanted.least / chip)
            if sloped
            else less("chamfer.pitches", leads, leads * chip / wanted.least),
            less("flutes.count", count, count * chip / wanted.least),
        )
        limit = at_least(wanted.least)
        yield finding(Code.CHIP_THIN, WARNING, field, chip, limit, OWN_RULE, levers=levers)
    elif chip < KEEN:
        values, limit = Values(rounding=chip / EDGE_TO_CHIP), at_least(wanted.least)
        source = PRACTICE_FROM_MEMORY
        yield finding(Code.CHIP_KEEN, NOTE, field, chip, limit, source, values=values)
