"""The look of the tap wherever it is pictured: stills, poster, and the model of the page.

Tempered steel whose colour runs to straw at the cutting edges, flutes in the brighter tone of
ground faces, hollows darker. Each tone has another lightness, so that a grey print tells them
apart: ground faces are the lightest, then straw, then steel. Colours are sRGB from 0 to 1.
"""

Colour = tuple[float, float, float]

STEEL: Colour = (0.700, 0.735, 0.770)
"""Of the blank, and of lands away from their edges: cool, the darkest of the three."""

GROUND: Colour = (0.940, 0.945, 0.950)
"""Of faces that the cutter left bright: the flutes."""

STRAW: Colour = (0.930, 0.800, 0.520)
"""To which tempered steel runs at a cutting edge."""

INK: Colour = (0.08, 0.08, 0.09)
"""Of lines."""

PAPER: Colour = (1.0, 1.0, 1.0)
"""Behind the tap."""

STRAW_ON_LAND = 0.60
"""Share of a land, behind its edge, over which the straw fades into steel."""

STRAW_ON_FACE = 1.5
"""Depth on the cutting face, from the crest, over which it fades, in heights of the thread."""

STRAW_BEHIND = 0.45
"""Of the straw at the front, that is left where the thread ends."""

IN_ROOT, IN_FLUTE = 0.70, 0.74
"""Share of the light that reaches the bottom of a root, and of a flute; at the crests all does."""

AMBIENT, DIFFUSE, SPECULAR, SHININESS = 0.24, 0.82, 0.22, 28.0
"""How steel answers the lamps."""


def lightness(colour: Colour) -> float:
    """How light a colour is in grey print, from 0 to 1.

    Source: ITU-R BT.601, weights of luma (from memory).
    """
    red, green, blue = colour
    return 0.299 * red + 0.587 * green + 0.114 * blue
