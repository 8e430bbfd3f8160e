"""Cross-section and turned profile for CAD and CAM programs: DXF with true arcs, 1:1 in mm."""

# pyright: reportUnknownMemberType=false
# The library leaves the type of its attribute dictionaries open.

from collections.abc import Iterable
from pathlib import Path

# Before any name of the library.
import tapmodel.export.dxf.library  # noqa: F401  # pyright: ignore[reportUnusedImport]

# isort: split
from ezdxf.document import Drawing
from ezdxf.enums import TextEntityAlignment
from ezdxf.layouts.layout import Modelspace

from tapmodel.designing.record import TapDesign
from tapmodel.export.atomic import write_whole
from tapmodel.export.dxf.document import (
    CENTRE,
    LETTERS,
    TEXT_STYLE,
    THIN,
    VISIBLE,
    dxf_bytes,
    new_document,
)
from tapmodel.shape.outlines.blank_profile import blank_profile
from tapmodel.shape.outlines.outline import Arc, Line, Piece, Point
from tapmodel.shape.outlines.section import full_thread_height, section_outline

_LETTERS = 1 / 40  # height of the words in a file, of the tap's diameter


def write_section_dxf(design: TapDesign, path: Path) -> None:
    """Write the cross-section through the full thread, seen from +z, as LINE and ARC.

    Args:
        design: the tap.
        path: of the file.

    Raises:
        InputError: when nothing can be written there.
    """
    document = new_document()
    height = full_thread_height(design.tap)
    for loop in section_outline(design.tap, height).loops:
        add_pieces(document.modelspace(), loop, VISIBLE)
    major = design.tap.thread.major
    words = f"section {height:.3f} mm from the cutting end,"
    _told(document, words, (0.0, -0.56 * major), _LETTERS * major)
    _told(document, "seen from the square's end; mm, 1:1", (0.0, -0.61 * major), _LETTERS * major)
    save(document, path)


def write_profile_dxf(design: TapDesign, path: Path) -> None:
    """Write the upper half of the turned profile: z along x, radius along y.

    The outline runs over the crests; the root of the thread is a thin line, the axis a chain.

    Args:
        design: the tap.
        path: of the file.

    Raises:
        InputError: when nothing can be written there.
    """
    document, profile = new_document(), blank_profile(design.tap)
    space = document.modelspace()
    add_pieces(space, profile.lines(), VISIBLE)
    (r0, z0), (r1, z1) = profile.root
    add_pieces(space, [Line((z0, r0), (z1, r1))], THIN)
    add_pieces(space, [Line((0.0, 0.0), (design.tap.blank.overall_length, 0.0))], CENTRE)
    words = "turned profile, upper half; cutting end at x = 0, radius along y; mm, 1:1"
    length, height = design.tap.blank.overall_length, _LETTERS * design.tap.thread.major
    _told(document, words, (length / 2, -2 * height), height)
    save(document, path)


def _told(document: Drawing, words: str, middle: Point, height: float) -> None:
    """A line of what the file shows, on a layer of its own; sizes in mm."""
    letters = {"layer": LETTERS, "style": TEXT_STYLE}
    text = document.modelspace().add_text(words, height=height, dxfattribs=letters)
    text.set_placement(middle, align=TextEntityAlignment.MIDDLE_CENTER)


def add_pieces(space: Modelspace, pieces: Iterable[Piece], layer: str) -> None:
    """Add pieces of an outline to a drawing as LINE, ARC and CIRCLE on `layer`."""
    attributes = {"layer": layer}
    for piece in pieces:
        if isinstance(piece, Line):
            space.add_line(piece.start, piece.end, dxfattribs=attributes)
        elif abs(piece.end_angle - piece.start_angle) >= 360.0:
            space.add_circle(piece.centre, piece.radius, dxfattribs=attributes)
        else:
            start, end = _counter_clockwise(piece)
            space.add_arc(piece.centre, piece.radius, start, end, dxfattribs=attributes)


def save(document: Drawing, path: Path) -> None:
    """Write a drawing whole or not at all.

    Raises:
        InputError: when nothing can be written there.
    """
    write_whole(path, dxf_bytes(document))


def _counter_clockwise(arc: Arc) -> tuple[float, float]:
    ends = sorted((arc.start_angle, arc.end_angle))
    return ends[0] % 360.0, ends[1] % 360.0
