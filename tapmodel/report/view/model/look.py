"""Colours and lamps of the model on the page: the tones of all pictures, and a few of its own."""

from dataclasses import dataclass

from tapmodel.report.pictures.look import GROUND, STEEL, STRAW, Colour

Direction = tuple[float, float, float]
"""Towards a lamp, in the picture: to the right, up, and towards who looks."""


@dataclass(frozen=True, slots=True)
class Look:
    """Colours (sRGB, from 0 to 1) and lamps.

    Attributes:
        turned: threads and lands, hardened and tempered.
        ground: flutes, cut brighter than what was turned.
        plain: end faces, square and centres.
        straw: what steel is tinted with toward a cutting edge.
        cap: where the model is cut open.
        work: that is tapped.
        cutter: of the mill.
        head: dividing head and tailstock.
        thin, thick: chips, from the thinnest to the thickest.
        key, fill: where the two lamps stand.
        key_strength, fill_strength: of the lamps.
        sky, floor: what the steel sees above and below it.
        gleam, sharpness: strength of a lamp's reflection, and how narrow it is.
    """

    turned: Colour = STEEL
    ground: Colour = GROUND
    plain: Colour = (0.760, 0.785, 0.810)
    straw: Colour = STRAW
    cap: Colour = (0.800, 0.640, 0.480)
    work: Colour = (0.560, 0.610, 0.650)
    cutter: Colour = (0.520, 0.550, 0.600)
    head: Colour = (0.430, 0.480, 0.510)
    thin: Colour = (0.960, 0.800, 0.360)
    thick: Colour = (0.560, 0.180, 0.100)
    key: Direction = (-0.45, 0.62, 0.64)
    fill: Direction = (0.75, -0.12, 0.48)
    key_strength: float = 0.86
    fill_strength: float = 0.28
    sky: Colour = (0.58, 0.61, 0.65)
    floor: Colour = (0.30, 0.29, 0.28)
    gleam: float = 0.36
    sharpness: float = 26.0


LOOK = Look()
"""The one look."""
