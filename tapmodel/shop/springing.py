"""How far the blank gives way under the threading tool and under the flutes' cutter.

A model: round sections, thinnest where they are threaded or fluted, on supports that do not give.
"""

import math
from dataclasses import dataclass

import numpy as np

from tapmodel.designing.record import TapDesign
from tapmodel.errors import InputError
from tapmodel.shop.cutting_speed import STEP_SHARE, tooth_feed
from tapmodel.shop.threading.passes import finishing
from tapmodel.standards.materials.kienzle import Kienzle
from tapmodel.standards.materials.steels import TapSteel
from tapmodel.standards.materials.work import work_material
from tapmodel.tap.tap import Tap, TapThread

YOUNG = 206_000.0
"""Of steel, hard or soft [N/mm²]; from memory."""

THRUST = 0.5
"""Force that pushes the blank away from a lathe tool, of the cutting force; common practice."""

GRIP = 2.0
"""Of the shank, held in a collet or chuck, in its diameters, but at most half of the blank behind
the thread. Rule of this program."""

_PIECES, _PLACES = 2000, 8


@dataclass(frozen=True, slots=True)
class Beam:
    """The blank between its supports.

    Attributes:
        ends: of pieces of one diameter, from the front support on [mm].
        diameters: of these pieces [mm].
        held: whether the far end is gripped, so that it cannot turn, or runs on a centre.
    """

    ends: tuple[float, ...]
    diameters: tuple[float, ...]
    held: bool

    def sag(self, load: float, at: float) -> float:
        """How far a load [N] moves the place where it acts, `at` [mm] from the front support.

        Source: virtual work in a beam of pieces; the front's force, where the far end is held, by
        its support's standing still.
        """
        length = self.ends[-1]
        places = (np.arange(_PIECES) + 0.5) * length / _PIECES
        pieces = np.searchsorted(self.ends, places, side="right").clip(max=len(self.ends) - 1)
        stiff = YOUNG * math.pi / 64 * np.asarray(self.diameters)[pieces] ** 4
        behind = np.maximum(places - at, 0.0)
        if self.held:
            front = float(np.sum(behind * places / stiff) / np.sum(places**2 / stiff))
        else:
            front = (length - at) / length
        moment = front * places - behind
        return load * float(np.sum(moment**2 / stiff)) * length / _PIECES


def last_pass(thread: TapThread) -> float:
    """Infeed of the last pass of a thread that takes a chip [mm].

    Source: `finishing`.
    """
    return finishing((thread.major - thread.minor) / 2)[-1]


def threading_sag(design: TapDesign) -> float:
    """How far the blank is pushed away in the last pass, where it gives most [mm].

    Source: Kienzle's law on both flanks at once, `THRUST` of it; `Beam.sag`.
    """
    thread = design.tap.thread
    slope = math.radians(thread.flank_angle)
    chip = last_pass(thread) * math.sin(slope)
    edge = (thread.major - thread.minor) / math.cos(slope)
    cutting = _annealed(design.work.steel).specific_force(chip, 0.0) * chip * edge
    centred = design.tap.blank.rear_centre > 0
    return _most(_beam(design.tap, thread.minor, held=not centred), THRUST * cutting, design.tap)


def milling_sag(design: TapDesign) -> float:
    """How far the blank is pushed down by a tooth in the last steps of the flutes [mm].

    Its section there is taken as the round of the core, the lands left aside.

    Source: Kienzle's law on one tooth, `STEP_SHARE` deep; `Beam.sag`.
    """
    cutter, law = design.tap.flutes.cutter_diameter, _annealed(design.work.steel)
    chip = tooth_feed(cutter)
    cutting = law.specific_force(chip, law.rake) * chip * STEP_SHARE * cutter
    # A core of no size is a broken rule, and still to be told of.
    core = max(design.tap.flutes.core_diameter, chip)
    return _most(_beam(design.tap, core, held=True), cutting, design.tap)


def _beam(tap: Tap, front: float, *, held: bool) -> Beam:
    """The blank, `front` thick where it is threaded [mm]; a male point is not reckoned."""
    blank = tap.blank
    thread, neck = blank.thread_length, blank.thread_length + blank.neck_length
    behind = blank.overall_length - neck
    end = blank.overall_length - (min(GRIP * blank.shank_diameter, behind / 2) if held else 0.0)
    if not blank.has_neck:
        return Beam((thread, end), (front, blank.shank_diameter), held)
    neck_too = min(front, blank.neck_diameter)
    return Beam((thread, neck, end), (front, neck_too, blank.shank_diameter), held)


def _most(beam: Beam, load: float, tap: Tap) -> float:
    places = tap.blank.thread_length * np.arange(1, _PLACES + 1) / _PLACES
    return max(beam.sag(load, float(at)) for at in places)


def _annealed(steel: TapSteel) -> Kienzle:
    """Specific force of the steel as bought; of one without constants that of a plain one."""
    try:
        return work_material(steel.name).kienzle
    except InputError:
        plain = "mild steel" if steel.case_depth else "tool steel"
        return work_material(plain).kienzle
