"""Lists of the distinct faces, edges and corners of a shape, with types."""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportUnknownParameterType=false
# The kernel's binding carries no type stubs; only its own names are let off.

from dataclasses import dataclass

from OCP.TopAbs import TopAbs_Orientation, TopAbs_ShapeEnum
from OCP.TopExp import TopExp, TopExp_Explorer
from OCP.TopoDS import TopoDS, TopoDS_Edge, TopoDS_Face, TopoDS_Shape, TopoDS_Solid
from OCP.TopTools import TopTools_IndexedMapOfShape

SOLID = TopAbs_ShapeEnum.TopAbs_SOLID
SHELL = TopAbs_ShapeEnum.TopAbs_SHELL
FACE = TopAbs_ShapeEnum.TopAbs_FACE
WIRE = TopAbs_ShapeEnum.TopAbs_WIRE
EDGE = TopAbs_ShapeEnum.TopAbs_EDGE
VERTEX = TopAbs_ShapeEnum.TopAbs_VERTEX


@dataclass(frozen=True, slots=True)
class Solid:
    """The kernel's solid, under the name by which the rooms outside may hold it.

    `cadquery.Solid(solid.wrapped)` makes a modelling package's object of it, which takes a second
    to load and is not needed here; such an object serves as well wherever a `Solid` is asked for.
    """

    wrapped: TopoDS_Solid


def distinct(shape: TopoDS_Shape, kind: TopAbs_ShapeEnum) -> TopTools_IndexedMapOfShape:
    """Every part of one kind once, numbered from 1, however often it is used."""
    found = TopTools_IndexedMapOfShape()
    TopExp.MapShapes_s(shape, kind, found)
    return found


def solids(shape: TopoDS_Shape) -> list[Solid]:
    """All solids in a shape."""
    found = distinct(shape, SOLID)
    return [Solid(TopoDS.Solid_s(found.FindKey(n))) for n in range(1, found.Extent() + 1)]


def faces(shape: TopoDS_Shape) -> list[TopoDS_Face]:
    """Faces in the order of the shell."""
    found = distinct(shape, FACE)
    return [TopoDS.Face_s(found.FindKey(n)) for n in range(1, found.Extent() + 1)]


def edge_uses(face: TopoDS_Face) -> list[TopoDS_Edge]:
    """Edges of a face as often as it uses them, in the sense with the face at their left."""
    explorer = TopExp_Explorer(face, EDGE)
    uses: list[TopoDS_Edge] = []
    while explorer.More():
        uses.append(TopoDS.Edge_s(explorer.Current()))
        explorer.Next()
    return uses


def is_forward(shape: TopoDS_Shape) -> bool:
    """Whether a face or edge has the sense of its own surface or curve."""
    return bool(shape.Orientation() == TopAbs_Orientation.TopAbs_FORWARD)
