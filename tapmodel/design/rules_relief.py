"""Rules on the two reliefs."""

from tapmodel.design.judging import (
    CLEARANCE,
    ERROR,
    WARNING,
    Context,
    Findings,
    at_least,
    at_most,
    finding,
)
from tapmodel.design.legal_value import ceil_text, floor_text
from tapmodel.design.provenance import OWN_RULE
from tapmodel.design.relief_choice import chamfer_rub, needed_drop
from tapmodel.design.tap_design import TapDesign
from tapmodel.words import ReliefKind, ReliefPlace

LEAST_RUB = 1e-6
"""Below a thousandth of a micrometre [mm] the edge itself is meant, where drop and need are 0."""


def judge(design: TapDesign, context: Context) -> Findings:
    """Every finding on the reliefs.

    Source: each names its own.
    """
    del context  # the reliefs are judged by the design alone
    yield from _thread(design)
    yield from _chamfer(design)


def _thread(design: TapDesign) -> Findings:
    relief, thread = design.relief.thread, design.thread
    depth = (thread.major - thread.minor) / 2
    if relief.applies_to is ReliefPlace.CREST and relief.heel_drop > depth:
        what = (
            "The crest would drop below the root of the thread; set relief.thread.heel_drop at "
            f"most {floor_text(depth)} mm."
        )
        yield finding("crest-drop", ERROR, what, at_most(depth, relief.heel_drop))
    if relief.applies_to is not ReliefPlace.THREAD:
        return
    largest = (thread.minor - design.flutes.core_diameter) / 2 - CLEARANCE
    if relief.heel_drop > largest:
        what = (
            "The root of the thread would drop into the web; set relief.thread.heel_drop at most "
            f"{floor_text(max(0.0, largest))} mm or a smaller core."
        )
        yield finding("thread-drop", ERROR, what, at_most(largest, relief.heel_drop), OWN_RULE)


def _chamfer(design: TapDesign) -> Findings:
    relief, land = design.relief.chamfer, design.flutes.land_angle
    rub = chamfer_rub(design.thread, design.chamfer, relief, land)
    if rub < LEAST_RUB:
        return
    need = needed_drop(design.thread, design.chamfer, land)
    numbers = at_least(need, relief.heel_drop)
    if relief.kind is ReliefKind.CONCENTRIC:
        what = (
            f"A concentric chamfer always rubs, here by {rub:.4f} mm at the heel; set "
            "relief.chamfer.kind to eccentric, with a heel drop of at least "
            f"{ceil_text(need, 4)} mm."
        )
        yield finding("chamfer-concentric", WARNING, what, numbers)
        return
    cure = f"set relief.chamfer.heel_drop at least {ceil_text(need, 4)} mm"
    if relief.heel_drop >= need:
        cure = "set a smaller relief.chamfer.margin_angle, or eccentric relief"
    what = f"The chamfer rubs behind its edge, by up to {rub:.4f} mm; {cure}."
    yield finding("chamfer-rubs", WARNING, what, numbers)
