"""The pictures that hold the whole tap: three-quarter, and on its cutting end."""

from dataclasses import replace

from tapmodel.designing.record import TapDesign
from tapmodel.report.pictures.axes import axes
from tapmodel.report.pictures.toned import tones
from tapmodel.report.pictures.view import SIZE, Fine, View, Window

_SLIM = 2.5  # shanks of more thread diameters than this are cut off around the cutting end

_LEAST_PITCH = 6.0  # in the picture, below which the thread is shaded without lines [px]


def three_quarter(design: TapDesign, size: tuple[int, int] = SIZE) -> View:
    """The whole tap, its cutting end nearest; the same camera for both hands.

    Args:
        design: of the tap.
        size: of the picture [px].
    """
    count, hand = design.tap.flutes.count, design.tap.thread.hand.value
    return replace(
        View(),
        size=size,
        fine=_fine(design, size[0]),
        tones=tones(design),
        title="The tap from its cutting end",
        alt=f"The whole {hand}-hand tap {design.designation}, cutting end in front: "
        f"chamfer, thread with {count} flutes, their run-outs, shank and drive square.",
    )


def end_on(design: TapDesign) -> View:
    """On the cutting end, the first flute upwards, as the drawings show it."""
    slim = _SLIM * design.tap.thread.major
    return View(
        window=Window((0.0, 0.0, 0.0), slim) if design.tap.blank.shank_diameter > slim else None,
        direction=(0.0, 0.0, -1.0),
        up=axes(design, design.tap.flutes.angles[0]).at(1.0, 0.0, 0.0),
        size=(800, 800),
        tones=tones(design),
        title="On the cutting end",
        alt=f"The tap {design.designation} seen along its axis from the front, first flute on "
        f"top: front face, {design.tap.flutes.count} flutes and the teeth of the chamfer.",
    )


def _fine(design: TapDesign, width: int) -> Fine | None:
    """The thread, where a picture as wide as the tap is long leaves too few pixels for a pitch."""
    thread, blank = design.tap.thread, design.tap.blank
    if width * thread.pitch >= _LEAST_PITCH * blank.overall_length:
        return None
    inside = thread.minor / 2 - design.figures.thread_relief.heel_drop - thread.pitch / 2
    return Fine(0.0, blank.thread_length - thread.pitch / 100, inside)
