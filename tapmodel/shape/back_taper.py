"""The back taper: by how much the thread is thinner at a height than where the chamfer ends."""

from typing import TypeVar

import numpy as np
from numpy.typing import NDArray

from tapmodel.tap.tap import Tap

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


def narrowed_at_end(tap: Tap) -> float:
    """The same where the thread ends [mm]."""
    return narrowed(tap, tap.blank.thread_length)
