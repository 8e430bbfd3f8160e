"""A solid as bytes, for another process of the same program."""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportUnknownParameterType=false
# The kernel's binding carries no type stubs; only its own names are let off.

from io import BytesIO

from OCP.BinTools import BinTools, BinTools_FormatVersion
from OCP.TopoDS import TopoDS_Shape

from tapmodel.geometry.kernel.topology import Solid, solids


def to_bytes(solid: Solid) -> bytes:
    """A solid without its triangles.

    Numbers are kept bit for bit; directions, which the reader makes of length one again, to the
    last digit or two.
    """
    stream = BytesIO()
    version = BinTools_FormatVersion.BinTools_FormatVersion_CURRENT
    BinTools.Write_s(solid.wrapped, stream, False, False, version)
    return stream.getvalue()


def from_bytes(content: bytes) -> Solid:
    """The solid again, its parts in the same order."""
    shape = TopoDS_Shape()
    BinTools.Read_s(shape, BytesIO(content))
    (found,) = solids(shape)
    return found
