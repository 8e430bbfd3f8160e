"""The back taper: by how much the thread is thinner at a height than where the chamfer ends."""

from dataclasses import replace
from typing import TypeVar

import numpy as np
from numpy.typing import NDArray

from tapmodel.tap.tap import Tap, TapThread
from tapmodel.words import ReliefKind, ReliefPlace

Height = TypeVar("Height", float, NDArray[np.float64])


def narrowed(tap: Tap, z: Height) -> Height:
    """Radius that the whole profile has lost at z, negative in the chamfer [mm].

    It shears the profile along the axis and changes no axial offset: where two of its parts meet
    stays as it is. The cone of the chamfer and the blank are left alone.

    Args:
        tap: any.
        z: height above the front [mm].

    Source: by definition of the back taper.
    """
    return tap.thread.narrowing * (z - tap.chamfer_length)


def rises_before_edge(tap: Tap) -> bool:
    """Whether a crest may stand higher than stated in front of where its edge is as stated.

    Turns that have become thinner have their edges elsewhere on the face: in front of that place,
    if the rake is negative. The arc of an eccentric relief goes on there, rising by nanometres, and
    the flanks with it. Without a back taper no crest reaches there.

    Source: derived here.
    """
    relief = tap.relief.thread
    alone = relief.applies_to is ReliefPlace.CREST and relief.kind is ReliefKind.ECCENTRIC
    return alone and tap.thread.narrowing > 0


def narrowed_at_end(tap: Tap) -> float:
    """The same where the thread ends [mm]."""
    return narrowed(tap, tap.blank.thread_length)


def thinner(thread: TapThread, behind: float) -> TapThread:
    """The thread so far behind the end of the chamfer [mm].

    Source: by definition of the back taper.
    """
    lost = 2 * thread.narrowing * behind
    return replace(
        thread,
        major=thread.major - lost,
        pitch_diameter=thread.pitch_diameter - lost,
        minor=thread.minor - lost,
    )


def thread_at_end(tap: Tap) -> TapThread:
    """The thread as it is where it ends."""
    return thinner(tap.thread, tap.blank.thread_length - tap.chamfer_length)
