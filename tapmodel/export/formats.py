"""The formats of files that a build can write, and the text that chooses among them."""

from enum import StrEnum

from tapmodel.errors import InputError


class Format(StrEnum):
    """A format of file; the value is also the suffix of its name."""

    STEP = "step"
    STL = "stl"
    THREEMF = "3mf"
    GLB = "glb"
    DXF = "dxf"


ALL_FORMATS: tuple[Format, ...] = tuple(Format)
DEFAULT_FORMATS = ",".join(ALL_FORMATS)


def parse_formats(text: str) -> tuple[Format, ...]:
    """Formats named in a text such as `step,stl`, in whatever order and letter case.

    Args:
        text: names with commas between them.

    Returns:
        Each format once, in the order of `Format`.

    Raises:
        InputError: when a name is not a format, or none is given.
    """
    asked = {word.strip().lower() for word in text.split(",")}
    if not asked <= set(ALL_FORMATS):
        allowed = f"one or more of {', '.join(ALL_FORMATS)}, with commas between them"
        raise InputError("--formats", text, allowed)
    return tuple(known for known in ALL_FORMATS if known in asked)
