"""Rules on the small features of the blank: centres, rear chamfer, neck; each whole or left out."""

import math

from tapmodel.designing.codes import Code
from tapmodel.designing.judging import (
    ERROR,
    Findings,
    at_least,
    at_most,
    exactly,
    finding,
    less,
    more,
    over,
    under,
)
from tapmodel.designing.limits.flutes import clearance
from tapmodel.designing.provenance import OWN_RULE
from tapmodel.designing.record import TapDesign

LEAST_LENGTH = 0.02
"""Least length of a feature [mm]; less can be neither turned nor seen."""

CENTRE_WALL = 0.1
"""Metal round a centre at its rim [mm]."""


def judge(design: TapDesign) -> Findings:
    """Every finding on the small features.

    Source: each names its own.
    """
    yield from _least(design)
    yield from _front_centre(design)
    yield from _rear(design)


def _least(design: TapDesign) -> Findings:
    """A feature that is wanted must be large enough to be made."""
    blank = design.tap.blank
    for code, name, size in (
        (Code.NECK_LENGTH_SIZE, "neck_length", blank.neck_length),
        (Code.REAR_CHAMFER_SIZE, "rear_chamfer", blank.rear_chamfer),
        (Code.FRONT_CENTRE_SIZE, "front_centre", blank.front_centre),
        (Code.REAR_CENTRE_SIZE, "rear_centre", blank.rear_centre),
    ):
        if size > 0 and under(size, LEAST_LENGTH):
            field, limit = f"blank.{name}", at_least(LEAST_LENGTH)
            levers = (more(field, size, LEAST_LENGTH), exactly(field, 0.0))
            yield finding(code, ERROR, field, size, limit, OWN_RULE, levers=levers)


def _front_centre(design: TapDesign) -> Findings:
    rim, point = design.tap.blank.front_centre, design.tap.chamfer.point_diameter
    widest = min(design.tap.flutes.core_diameter, point) - 2 * clearance(design.tap.thread.major)
    if rim > 0 and over(rim, widest):
        field, limit = "blank.front_centre", at_most(widest)
        levers = (less(field, rim, widest), exactly(field, 0.0))
        yield finding(Code.FRONT_CENTRE, ERROR, field, rim, limit, OWN_RULE, levers=levers)


def _rear(design: TapDesign) -> Findings:
    blank = design.tap.blank
    rim, edge = blank.rear_centre, blank.rear_chamfer
    depth = math.tan(math.radians(60)) / 2
    widest = min(
        blank.square_across_flats - 2 * edge - 2 * CENTRE_WALL, blank.square_length / depth
    )
    if rim > 0 and over(rim, widest):
        field, limit = "blank.rear_centre", at_most(widest)
        levers = (less(field, rim, widest), exactly(field, 0.0))
        yield finding(Code.REAR_CENTRE, ERROR, field, rim, limit, OWN_RULE, levers=levers)
    widest = min(blank.shank_diameter / 4, blank.square_length / 2)
    if over(edge, widest):
        field, limit = "blank.rear_chamfer", at_most(widest)
        levers = (less(field, edge, widest), exactly(field, 0.0))
        yield finding(Code.REAR_CHAMFER, ERROR, field, edge, limit, OWN_RULE, levers=levers)
