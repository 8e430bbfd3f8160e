"""Rules on the chamfer and the point."""

import math

from tapmodel.design.judging import (
    ERROR,
    Context,
    Findings,
    at_most,
    between,
    finding,
)
from tapmodel.design.legal_value import ceil_text, floor_text
from tapmodel.design.provenance import OWN_RULE
from tapmodel.design.tap_design import TapDesign

LEAST_ANGLE, LARGEST_ANGLE = 1.0, 50.0


def judge(design: TapDesign, context: Context) -> Findings:
    """Every finding on the chamfer.

    Source: each names its own.
    """
    del context  # the chamfer is judged by the design alone
    yield from _cone(design)
    yield from _point(design)


def _cone(design: TapDesign) -> Findings:
    chamfer, thread = design.chamfer, design.thread
    if not LEAST_ANGLE <= chamfer.angle <= LARGEST_ANGLE:
        rise = (thread.major - chamfer.point_diameter) / 2
        lengths = [rise / math.tan(math.radians(a)) for a in (LARGEST_ANGLE, LEAST_ANGLE)]
        low, high = ceil_text(lengths[0], 2), floor_text(lengths[1], 2)
        cure = f"set chamfer.length between {low} and {high} mm"
        if rise <= 0:
            cure = f"set chamfer.point_diameter below {floor_text(thread.major)} mm"
        what = f"The chamfer is no usable cone; {cure}."
        numbers = between(LEAST_ANGLE, LARGEST_ANGLE, chamfer.angle, "deg")
        yield finding("chamfer-angle", ERROR, what, numbers, OWN_RULE)
    longest = design.blank.thread_length - thread.pitch
    if chamfer.length > longest:
        what = (
            "The chamfer leaves no full thread; set chamfer.length at most "
            f"{floor_text(longest)} mm or blank.thread_length at least "
            f"{ceil_text(chamfer.length + thread.pitch)} mm."
        )
        yield finding("chamfer-length", ERROR, what, at_most(longest, chamfer.length), OWN_RULE)


def _point(design: TapDesign) -> Findings:
    point = design.chamfer.point_diameter
    if point >= design.drill:
        what = f"The tap will not start; set chamfer.point_diameter below {design.drill:g} mm."
        yield finding("point-drill", ERROR, what, at_most(design.drill, point))
