"""Clearance behind the edges of a tap: of crest, flanks and chamfer, along the land."""

import numpy as np

from tapmodel.prediction.rubbing.back_taper import flank_clearance_behind
from tapmodel.prediction.rubbing.contact import UM, contact_of, trace_of
from tapmodel.prediction.rubbing.cures import cure_of
from tapmodel.prediction.rubbing.record import Rubbing, Threshold, Traces
from tapmodel.prediction.rubbing.surfaces import land_of, surfaces_of
from tapmodel.shape.flute_section import land_angle, section_of
from tapmodel.shape.relief import heel_drop
from tapmodel.tap.tap import Tap
from tapmodel.words import ReliefPlace

AS_USUAL = Threshold()


def rubbing_of(tap: Tap, bore: float = 0.0, threshold: Threshold = AS_USUAL) -> Rubbing:
    """How the lands of a tap touch the work behind their edges.

    Args:
        tap: any; a left-hand tap gives what its mirror image gives.
        bore: diameter of the drilled hole, below which nothing is cut [mm]; 0 looks at all that the
            tap has, down to its root.
        threshold: below which clearance a surface touches.

    Source: derived here by the other files of this room.
    """
    found = surfaces_of(tap, bore)
    on_crest, on_chamfer = land_of(found.crest), land_of(found.chamfer)
    heel = land_angle(section_of(tap.flutes), tap.flutes.count, tap.thread.major / 2)
    full = tap.blank.thread_length - tap.chamfer_length
    behind = flank_clearance_behind(tap, np.array([tap.thread.lead, full])) * UM
    return Rubbing(
        crest=contact_of(found.crest, on_crest, threshold),
        flank=contact_of(found.flank, land_of(found.flank), threshold),
        chamfer=contact_of(found.chamfer, on_chamfer, threshold),
        crest_width=tap.thread.crest_flat,
        heel_crest_width=_heel_crest(tap, float(on_crest.phi[0, -1])),
        cure=cure_of(found.chamfer, on_chamfer, heel, threshold),
        threshold=threshold,
        flank_clears_each_turn=float(behind[0]),
        flank_clears_at_end=float(behind[1]),
    )


def _heel_crest(tap: Tap, heel: float) -> float:
    """A crest that drops alone meets the flanks lower down, where they are further apart."""
    thread, relief = tap.thread, tap.relief.thread
    if thread.rounded_crest or relief.applies_to is ReliefPlace.THREAD:
        return thread.crest_flat
    fallen = 2 * heel_drop(relief, thread.major, heel)
    return thread.flanks.flat(thread.major - fallen - thread.pitch_diameter)


def clearance_along(tap: Tap, count: int, bore: float = 0.0) -> Traces:
    """Clearance along a land for a picture, at `count` angles or, with a margin, one more.

    Args:
        tap: any.
        count: number of angles, edge and heel among them.
        bore: as for `rubbing_of`.

    Source: derived here by the other files of this room.
    """
    found = surfaces_of(tap, bore)
    return Traces(
        crest=trace_of(found.crest, count),
        flank=trace_of(found.flank, count),
        chamfer=trace_of(found.chamfer, count),
    )
