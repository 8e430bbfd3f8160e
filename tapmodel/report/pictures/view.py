"""What a picture shows: where the camera stands, and what of the mesh it looks at."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.report.pictures.tones import Tones

Floats = NDArray[np.float64]
Integers = NDArray[np.int64]
Vector = tuple[float, float, float]

SIZE = (1280, 640)
"""Width and height of a picture [px]."""


@dataclass(frozen=True, slots=True)
class Window:
    """What a close-up shows: the point in its middle, and the height of the picture [mm]."""

    centre: Vector
    height: float


@dataclass(frozen=True, slots=True)
class Fine:
    """A part of the tap whose edges lie too close in a picture to be told apart, as lines.

    Attributes:
        start, end: along the axis [mm].
        radius: least one [mm].
    """

    start: float
    end: float
    radius: float


@dataclass(frozen=True, slots=True, eq=False)
class View:
    """Where the camera stands, in parallel projection.

    Attributes:
        direction: from the tap towards the camera.
        up: what points upwards in the picture.
        size: width and height [px].
        window: what is shown; None for the whole mesh.
        fine: part that is shaded only, its edges not drawn; None for no such part.
        references: lines drawn dashed where the solid does not hide them, each (n, 3) [mm].
        tones: whose tones the body has; None for plain steel.
        title, alt, caption: words for a page: a heading, what is to be seen, what its lines mean.
    """

    direction: Vector = (0.80, 0.50, -0.62)
    up: Vector = (-0.42, 0.90, 0.18)
    size: tuple[int, int] = SIZE
    window: Window | None = None
    fine: Fine | None = None
    references: tuple[Floats, ...] = ()
    tones: Tones | None = None
    title: str = ""
    alt: str = ""
    caption: str = ""
