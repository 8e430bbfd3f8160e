"""The teeth of the chamfer, seen on the cutting face of the first land."""

import math

from tapmodel.designing.record import TapDesign
from tapmodel.report.pictures.axes import axes, first_edge, lift
from tapmodel.report.pictures.toned import tones
from tapmodel.report.pictures.view import SIZE, View, Window

_FRONT = 15.0  # by which the camera stands before the teeth, towards the cutting end [deg]
_BEHIND, _BEFORE = 2.0, 0.8  # shown behind the chamfer and before the tap [pitches]
_TOP = 0.45  # share of the picture that the land's top may take
_LEVEL = 0.39  # of the land's highest line above the middle of the picture, of its height


def chamfer_teeth(design: TapDesign) -> View:
    """From before and above the cutting edges of the first land."""
    pitch, radius = design.tap.thread.pitch, design.tap.thread.major / 2
    start, end = -_BEFORE * pitch, design.tap.chamfer_length + _BEHIND * pitch
    height = (end - start) * math.cos(math.radians(_FRONT)) * SIZE[1] / SIZE[0]
    raised = lift(radius, _TOP * height, 12.0, 35.0)
    edge = axes(design, first_edge(design))
    above, front = math.radians(raised), math.tan(math.radians(_FRONT))
    # The top rises from the edge to the horizon, or to the heel where that comes first.
    short = math.radians(max(raised - design.figures.land_angle, 0.0))
    below = _LEVEL * height - radius * (math.cos(short) - math.cos(above))
    middle = edge.at(radius - below * math.cos(above), -below * math.sin(above), (start + end) / 2)
    return View(
        direction=edge.at(math.sin(above), -math.cos(above), -front),
        up=edge.at(math.cos(above), math.sin(above), 0.0),
        window=Window(middle, height),
        tones=tones(design),
        title="Teeth of the chamfer",
        alt=f"Close-up of the chamfer of {design.designation} on the cutting face of one land: "
        "the teeth grow from the front to the full thread.",
    )
