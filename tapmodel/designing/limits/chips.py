"""How thick the chip of a tooth in the chamfer may be."""

MOST_CHIP = 0.12
"""Thicker chips [mm] tear the thread and overload the teeth of a tap made in the shop."""

LEAST_CHIP = 0.01
"""Thinner chips [mm] are rubbed off rather than cut by an edge that a shop can hone."""

FINE = 1 / 30
"""Least chip in pitches: so fine a thread has no depth for thicker ones."""

KEEN = 0.005
"""Below this chip [mm] the rounding of the edge decides whether the tap cuts at all."""

EDGE_TO_CHIP = 0.3
"""Thinnest chip that an edge cuts, in radii of its rounding (0.2 to 0.4 for steels)."""

BOTTOMING = 2.0
"""Turns up to which a chamfer is a bottoming one, whose tap follows another."""


def least_chip(pitch: float) -> float:
    """Thinnest chip of a tooth that is no fault of the chamfer at that pitch, both [mm].

    Source: rule of this program: 0.01 mm, below a pitch of 0.3 mm a thirtieth of the pitch.
    """
    return min(LEAST_CHIP, FINE * pitch)
