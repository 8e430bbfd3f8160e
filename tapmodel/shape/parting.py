"""Surfaces that round numbers bring together, and the lengths moved by nanometres to part them.

A neck as thick as the root, a shank as thick as the crests, a cutter that just leaves the shank at
its centre, a ball that ends where the neck does: jobs in round numbers do that, and no kernel can
hold an edge where two surfaces touch along a line. Or a corner of the thread comes to lie within
nanometres of the front or of the thread's end, and leaves a face too small to be meshed. The tap is
then made with turned radii, the full depth or the thread moved by less than its faces are held to.
"""

from dataclasses import dataclass

import numpy as np

from tapmodel.tap.tap import Tap

# Moves are this share of the shank's radius, so that its volume changes by less than half of what
# the proof allows, and never more than 10 nm, a tenth of what it allows a face [mm].
_SHARE = 2e-6
_MOST = 1e-5
# The full depth moves less: short sections of the run-out feel it most.
_DEPTH = 0.8


@dataclass(frozen=True, slots=True)
class Parting:
    """How far lengths of the model are moved [mm].

    Attributes:
        turned: added to the radii of neck and shank.
        depth: added to the full-depth length of the flutes.
        thread: by which the thread is moved along the axis.
    """

    turned: float = 0.0
    depth: float = 0.0
    thread: float = 0.0


AS_DESIGNED = Parting()


def shifts() -> list[Parting]:
    """The thread moved either way: where one of its corners comes within nanometres of an end."""
    return [Parting(thread=step) for step in (_MOST, -_MOST)]


def partings(tap: Tap) -> list[list[Parting]]:
    """Moves worth trying where surfaces meet, in groups of one size, the better ones first."""
    radius = min(tap.blank.shank_diameter, tap.blank.neck_diameter or np.inf) / 2
    most = min(_SHARE * radius, _MOST)
    signs = ((-1.0, -1.0), (1.0, 1.0), (-1.0, 1.0), (1.0, -1.0))
    return [
        [Parting(turned * step, depth * _DEPTH * step) for turned, depth in signs]
        for step in (most, most / 2)
    ]
