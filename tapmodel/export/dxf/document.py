"""An empty DXF drawing in millimetres whose header says the same as its dimension style.

Some programs read the header's dimension variables, others the style; both are set to the same
values here, or the first kind shows dimensions at a hundred times their size.
"""

# pyright: reportUnknownMemberType=false
# The library leaves the type of its attribute dictionaries open.

import hashlib
import io
import re
import uuid
from collections.abc import Generator
from contextlib import contextmanager

# Before any name of the library.
from tapmodel.export.dxf.library import FONT

# isort: split
from ezdxf import __version__, new, options, units  # pyright: ignore[reportPrivateImportUsage]
from ezdxf.document import CONST_GUID, CONST_MARKER_STRING, Drawing
from ezdxf.enums import InsertUnits
from ezdxf.tools.juliandate import juliandate

from tapmodel.export.clock import stamp

STYLE = "TAPMODEL"
TEXT_STYLE = "LETTERING"

VISIBLE, THIN, HIDDEN, CENTRE, HATCH, PHANTOM, DOTTED = (
    "VISIBLE",
    "THIN",
    "HIDDEN",
    "CENTRE",
    "HATCH",
    "PHANTOM",
    "DOTTED",
)
LETTERS = "TEXT"

_DATE = re.compile(r"(\$TDU?(?:CREATE|UPDATE)\n *40\n)[^\n]*\n")

# Line widths of ISO 128 [1/100 mm], and dash patterns on paper [mm]; the names of the patterns
# are those that programs draw even when they do not read the pattern.
_LAYERS = {
    VISIBLE: (50, "CONTINUOUS"),
    THIN: (18, "CONTINUOUS"),
    HIDDEN: (25, "DASHED"),
    CENTRE: (18, "CENTER"),
    HATCH: (13, "CONTINUOUS"),
    PHANTOM: (18, "DIVIDE"),
    DOTTED: (35, "DOT"),
    LETTERS: (25, "CONTINUOUS"),
}
_PATTERNS = {
    "DASHED": (2.5, -0.8),
    "CENTER": (6.0, -0.8, 0.4, -0.8),
    "DIVIDE": (6.0, -0.8, 0.4, -0.8, 0.4, -0.8),
    "DOT": (0.4, -0.8),
}


def new_document(scale: float = 1.0) -> Drawing:
    """An empty drawing in mm, with layers for the lines of ISO 128 and one dimension style.

    Args:
        scale: paper mm to one mm of the part; lettering and dashes keep their size on paper.
    """
    with _fixed_metadata():
        document = new("R2010", units=InsertUnits.Millimeters)
    document.header["$MEASUREMENT"] = 1
    document.header["$LUNITS"], document.header["$LUPREC"] = 2, 4
    document.header["$LTSCALE"] = 1.0
    document.units = units.MM
    for name, pattern in _PATTERNS.items():
        lengths = [length / scale for length in pattern]
        document.linetypes.add(name, [sum(map(abs, lengths)), *lengths])
    for name, (width, line) in _LAYERS.items():
        document.layers.add(name, color=7, lineweight=width, linetype=line)
    document.styles.add(TEXT_STYLE, font=FONT)
    _dimension_style(document, 1 / scale)
    return document


def dxf_bytes(document: Drawing) -> bytes:
    """The file of a drawing; its date is `clock.stamp`, its identity follows from its content."""
    # The library lists them as a set gives them, in another order each time.
    document.classes.add_required_classes(document.dxfversion)
    document.classes.classes = dict(sorted(document.classes.classes.items()))
    with _fixed_metadata():
        stream = io.StringIO()
        document.write(stream)
    text, made = stream.getvalue(), stamp()
    identity = uuid.uuid5(uuid.NAMESPACE_OID, hashlib.sha256(text.encode()).hexdigest())
    text = text.replace(CONST_GUID, f"{{{str(identity).upper()}}}")
    text = text.replace(CONST_MARKER_STRING, f"{__version__} @ {made.isoformat()}")
    text = _DATE.sub(rf"\g<1>{juliandate(made)}\n", text)
    return document.encode(text)


@contextmanager
def _fixed_metadata() -> Generator[None]:
    """The library writes constants in place of dates and of identities drawn at random."""
    before = options.write_fixed_meta_data_for_testing
    options.write_fixed_meta_data_for_testing = True
    try:
        yield
    finally:
        options.write_fixed_meta_data_for_testing = before


def _dimension_style(document: Drawing, size: float) -> None:
    """Dimensions by ISO 129: text above the line, in its direction, filled arrows."""
    variables: dict[str, float | int] = {
        "DIMLFAC": 1.0,
        "DIMSCALE": size,
        "DIMTXT": 2.5,
        "DIMASZ": 2.5,
        "DIMEXO": 0.6,
        "DIMEXE": 1.5,
        "DIMGAP": 0.7,
        "DIMTAD": 1,
        "DIMTIH": 0,
        "DIMTOH": 0,
        "DIMDEC": 3,
        "DIMTDEC": 3,
        "DIMADEC": 2,
        "DIMZIN": 8,
        "DIMAZIN": 2,
        "DIMDSEP": ord("."),
        "DIMLUNIT": 2,
        "DIMAUNIT": 0,
        "DIMTOL": 0,
        "DIMLIM": 0,
        "DIMTOFL": 1,
        "DIMTIX": 0,
        "DIMTMOVE": 2,
        "DIMCLRD": 7,
        "DIMCLRE": 7,
        "DIMCLRT": 7,
        "DIMLWD": 18,
        "DIMLWE": 18,
    }
    style = document.dimstyles.duplicate_entry("Standard", STYLE)
    for name, value in variables.items():
        document.header[f"${name}"] = value
        style.dxf.set(name.lower(), value)
    style.dxf.set("dimtxsty", TEXT_STYLE)
    style.dxf.set("dimblk", "")
    document.header["$DIMSTYLE"] = STYLE
    document.header["$DIMTXSTY"] = TEXT_STYLE
