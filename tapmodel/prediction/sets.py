"""The work of one tap shared between two or three.

All taps of a set have the pitch and the flank angle of the last one. The earlier ones have a
smaller major diameter, so that their crests end lower in the thread, in a flat also where the last
one is rounded, and a profile that lies a little nearer to the axis, so that the last one cuts new
flanks on both sides. Each profile lies inside the next, so a tap takes the section of its own
thread above the hole less that of the tap before it.

That the earlier ones have flat crests and the last one finishes the flanks: Institut für Berufliche
Entwicklung, *Manual Thread Cutting*, trainees' handbook, section 3 (nzdl.org), read.
"""

from dataclasses import dataclass, replace

import numpy as np

from tapmodel.numerics import rising_root
from tapmodel.prediction.part import earlier
from tapmodel.prediction.thread_section import section_above
from tapmodel.shape.profile import segments
from tapmodel.tap.tap import TapThread

SHARES = {2: (0.7, 0.3), 3: (0.6, 0.3, 0.1)}
"""Shares of the cutting that the taps of a set do, first to last, by their number.

Source of three: about 60 and 30 % for the first two, the third cuts to size, *Manual Thread
Cutting* as above, read. Of two: from memory.
"""

CHAMFER_LEADS = {2: (7.0, 2.0), 3: (8.0, 4.0, 2.0)}
"""Chamfers in leads: taper, plug and bottoming. Source: common practice."""

RINGS = {2: (1, 0), 3: (1, 2, 0)}
"""Rings engraved on the shank below the square; the last tap has none.

Source: that taps of a set are told apart by rings there, *Manual Thread Cutting* as above, read;
how many each has, from memory.
"""

FLANK_ALLOWANCE = 0.02
"""What the last tap finishes, in pitches on the pitch diameter.

At pitch 1.75 that is 9 µm of chip square to a flank of 30 degrees, two or three times what an edge
needs to cut rather than rub. Source: rule of this program.
"""

# Diameters [mm] and areas [mm²] are found to this; the finest thread has a section of 0.003 mm².
_SHARP = 1e-13


@dataclass(frozen=True, slots=True)
class Plan:
    """How the taps of a set share the work, each sequence first to last.

    Attributes:
        shares: of the section that each cuts, of any sum.
        chamfer_leads: length of each chamfer in leads.
        rings: marks on each shank.
        flank_allowance: by which the earlier taps are thinner, on the pitch diameter [mm].
    """

    shares: tuple[float, ...]
    chamfer_leads: tuple[float, ...]
    rings: tuple[int, ...]
    flank_allowance: float


def usual_plan(thread: TapThread, count: int) -> Plan:
    """The plan of `SHARES` and the other tables for a set of 2 or 3 taps.

    Raises:
        ValueError: another count.

    Source: common practice, see the tables.
    """
    if count not in SHARES:
        raise ValueError(f"a set has 2 or 3 taps, not {count}")
    allowance = FLANK_ALLOWANCE * thread.pitch
    return Plan(SHARES[count], CHAMFER_LEADS[count], RINGS[count], allowance)


@dataclass(frozen=True, slots=True)
class TapOfSet:
    """One tap of a set.

    Attributes:
        number: 1 for the tap that goes first.
        major, pitch_diameter, minor: of its thread [mm].
        chamfer_leads: length of its chamfer in leads.
        share: of the whole section that it cuts.
        area: that it cuts, across the helix in the axial plane, all starts together [mm²].
        rings: marks on its shank.
    """

    number: int
    major: float
    pitch_diameter: float
    minor: float
    chamfer_leads: float
    share: float
    area: float
    rings: int


def split(thread: TapThread, bore: float, plan: Plan) -> tuple[TapOfSet, ...]:
    """Taps that share the work of one whose thread is `thread`, first to last.

    Args:
        thread: of the last tap.
        bore: diameter of the drilled hole [mm].
        plan: how they share it.

    Raises:
        ValueError: a plan that is not of as many positive numbers for all taps, a negative
            allowance, or so much work for the earlier taps that none smaller than the last can do
            it.

    Source: derived here.
    """
    _check(plan)
    whole, done = section_above(thread, bore), 0.0
    taps: list[TapOfSet] = []
    for index, (leads, rings) in enumerate(zip(plan.chamfer_leads, plan.rings, strict=True)):
        last = index == len(plan.shares) - 1
        aim = whole * sum(plan.shares[: index + 1]) / sum(plan.shares)
        own = thread if last else _rough(thread, bore, aim, plan.flank_allowance)
        area = section_above(own, bore) - done
        done += area
        sizes = own.major, own.pitch_diameter, own.minor
        taps.append(TapOfSet(index + 1, *sizes, leads, area / whole, area, rings))
    return tuple(taps)


class TooMuchError(ValueError):
    """No earlier tap smaller than the last can do so much of the work."""

    def __init__(self) -> None:
        """Say so."""
        super().__init__("no earlier tap smaller than the last can do so much of the work")


def _check(plan: Plan) -> None:
    if not len(plan.shares) == len(plan.chamfer_leads) == len(plan.rings) > 0:
        raise ValueError("every tap of a set needs a share, a chamfer and its rings")
    if min(*plan.shares, *plan.chamfer_leads) <= 0:
        raise ValueError("no tap of a set can have a share or a chamfer of nothing")
    if plan.flank_allowance < 0:
        raise ValueError("an earlier tap cannot be thicker than the last")


def _rough(thread: TapThread, bore: float, aim: float, allowance: float) -> TapThread:
    """The thread of an earlier tap, whose section above the hole is `aim` [mm²]."""
    pitch_diameter = thread.pitch_diameter - allowance

    def crested(major: float) -> TapThread:
        return earlier(thread, major, pitch_diameter)

    tallest = tallest_before(thread, pitch_diameter)
    if bore >= tallest or section_above(crested(tallest), bore) < aim:
        raise TooMuchError
    return crested(
        rising_root(lambda major: section_above(crested(major), bore) - aim, bore, tallest, _SHARP)
    )


def tallest_before(thread: TapThread, pitch_diameter: float) -> float:
    """Largest diameter over the crests of a tap that goes before one of `thread` [mm].

    Its crest is no narrower than that one's; under a rounded crest its corners lie on the arc.

    Args:
        thread: of the tap that follows.
        pitch_diameter: of the tap that goes before, not above that of `thread` [mm].

    Source: derived here.
    """
    crest = segments(thread)[0]
    inside = 2 * crest.start_radius - (thread.pitch_diameter - pitch_diameter)
    if not crest.is_arc:
        return inside
    flanks = replace(thread, pitch_diameter=pitch_diameter).flanks

    def proud(major: float) -> float:
        corner = flanks.flat(major - pitch_diameter) / 2
        return major / 2 - float(crest.radius(np.asarray(corner)))

    return rising_root(proud, inside, thread.major, _SHARP)
