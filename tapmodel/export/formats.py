"""The kinds of files that a build can write, and the text that chooses among them."""

from enum import StrEnum

from tapmodel.errors import InputError


class Format(StrEnum):
    """A kind of file by the word that asks for it; of a model it is also the suffix of its name."""

    STEP = "step"
    STL = "stl"
    THREEMF = "3mf"
    GLB = "glb"
    DXF = "dxf"
    PICTURES = "pictures"
    SHEET = "sheet"
    DRAWINGS = "drawings"
    PAGE = "page"


MESH_FORMATS = frozenset({Format.STL, Format.THREEMF, Format.GLB})
"""Files of triangles."""
DRAWN_FORMATS = frozenset({Format.PICTURES, Format.PAGE})
"""Files with pictures of the model."""
PAPER_FORMATS = frozenset({Format.DXF, Format.SHEET, Format.DRAWINGS, Format.PAGE})
"""Files with drawings, which need no model to be drawn."""

ALL_FORMATS: tuple[Format, ...] = tuple(Format)
DEFAULT_FORMATS = ",".join(ALL_FORMATS)


def parse_formats(text: str) -> tuple[Format, ...]:
    """Kinds named in a text such as `step,sheet`, in whatever order and letter case.

    Args:
        text: names with commas between them.

    Returns:
        Each kind once, in the order of `Format`.

    Raises:
        InputError: when a name is not a kind of file, or none is given.
    """
    asked = {word.strip().lower() for word in text.split(",")}
    if not asked <= set(ALL_FORMATS):
        allowed = f"one or more of {', '.join(ALL_FORMATS)}, with commas between them"
        raise InputError("--formats", text, allowed)
    return tuple(known for known in ALL_FORMATS if known in asked)
