"""Rules on the small features of the blank: centres, rear chamfer, neck; each whole or left out."""

import math

from tapmodel.design.judging import (
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
from tapmodel.design.limits.flutes import clearance
from tapmodel.design.provenance import OWN_RULE
from tapmodel.design.record import TapDesign

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
    for name, size in (
        ("neck_length", blank.neck_length),
        ("rear_chamfer", blank.rear_chamfer),
        ("front_centre", blank.front_centre),
        ("rear_centre", blank.rear_centre),
    ):
        if size > 0 and under(size, LEAST_LENGTH):
            field, code = f"blank.{name}", f"{name.replace('_', '-')}-size"
            what = f"A {name.replace('_', ' ')} of {size:.3g} mm is too small to be made."
            levers = (more(field, size, LEAST_LENGTH), exactly(field, 0.0))
            yield finding(code, ERROR, what, at_least(LEAST_LENGTH, size), OWN_RULE, levers=levers)


def _front_centre(design: TapDesign) -> Findings:
    rim, point = design.tap.blank.front_centre, design.tap.chamfer.point_diameter
    widest = min(design.tap.flutes.core_diameter, point) - 2 * clearance(design.tap.thread.major)
    if rim > 0 and over(rim, widest):
        what = "The front centre cuts into the flutes, or through the point."
        levers = (
            less("blank.front_centre", rim, widest),
            exactly("blank.front_centre", 0.0),
        )
        yield finding("front-centre", ERROR, what, at_most(widest, rim), OWN_RULE, levers=levers)


def _rear(design: TapDesign) -> Findings:
    blank = design.tap.blank
    rim, edge = blank.rear_centre, blank.rear_chamfer
    depth = math.tan(math.radians(60)) / 2
    widest = min(
        blank.square_across_flats - 2 * edge - 2 * CENTRE_WALL, blank.square_length / depth
    )
    if rim > 0 and over(rim, widest):
        what = "The rear centre breaks out of the square."
        levers = (less("blank.rear_centre", rim, widest), exactly("blank.rear_centre", 0.0))
        yield finding("rear-centre", ERROR, what, at_most(widest, rim), OWN_RULE, levers=levers)
    widest = min(blank.shank_diameter / 4, blank.square_length / 2)
    if over(edge, widest):
        what = "The rear edge is gone."
        levers = (less("blank.rear_chamfer", edge, widest), exactly("blank.rear_chamfer", 0.0))
        yield finding("rear-chamfer", ERROR, what, at_most(widest, edge), OWN_RULE, levers=levers)
