"""From the design to the solid: the order of the work on one screen."""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportUnknownParameterType=false
# The kernel's binding carries no type stubs; only its own names are let off.

from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np
from OCP.BRepBuilderAPI import BRepBuilderAPI_Transform
from OCP.gp import gp_Ax2, gp_Dir, gp_Pnt, gp_Trsf
from OCP.TopoDS import TopoDS_Face, TopoDS_Wire

from tapmodel.errors import KernelError
from tapmodel.geometry.kernel.mesh.tessellation import tessellated
from tapmodel.geometry.kernel.mesh.triangulation import Facets
from tapmodel.geometry.kernel.solid import shapes as kernel
from tapmodel.geometry.kernel.solid.centre import front_centre
from tapmodel.geometry.kernel.solid.faces import FaceMaker, KernelEdges, kernel_edges
from tapmodel.geometry.kernel.solid.ring import rear_faces
from tapmodel.geometry.kernel.topology import Solid, solids
from tapmodel.geometry.surfaces.carriers import Carriers
from tapmodel.geometry.trace.keys import FaceKind
from tapmodel.geometry.trace.skin import CLEAR, Skin, first_skin, skin_of, skins
from tapmodel.geometry.triangles import Mesh
from tapmodel.shape.form import Form
from tapmodel.shape.parting import Parting
from tapmodel.stages import OnStage, Stage
from tapmodel.tap.tap import Tap
from tapmodel.words import Hand


@dataclass(frozen=True, slots=True)
class Built:
    """A solid, its mesh, and what was moved to make them.

    Attributes:
        solid: of the tap, of its own hand.
        mesh: closed, of the solid.
        facets: its triangles face by face; None where the mesh is of a stand-in.
        parting: lengths moved where surfaces meet; none as a rule.
        stand_in: by how much neck and shank are thicker in the mesh, in radius; 0 as a rule [mm].
    """

    solid: Solid
    mesh: Mesh
    facets: Facets | None
    parting: Parting
    stand_in: float = 0.0


def build(
    tap: Tap,
    chord: float,
    stage: OnStage = lambda _stage: None,
    made: Callable[[Solid], None] = lambda _solid: None,
) -> Built:
    """The solid of a design and its mesh, in the first way in which both can be made.

    Args:
        tap: every number of the tap; must have passed the design rules.
        chord: largest distance between a triangle and its surface [mm].
        stage: told each stage as it begins.
        made: handed each solid before its mesh is made; the last is the one that is returned.

    Raises:
        KernelError: when every way failed; what it says is of the first.
    """
    failure: KernelError | None = None
    stage(Stage.EDGES)
    for skin in skins(tap):
        try:
            solid = _solid(skin, stage)
            stage(Stage.MESH)
            made(solid)
            return _meshed(solid, skin.form, chord)
        except KernelError as error:
            failure = failure or error
    raise failure or KernelError(Stage.EDGES, "no edges")


def _meshed(solid: Solid, form: Form, chord: float) -> Built:
    """The solid with its mesh, or with that of a stand-in where parting has left a hairline."""
    parting = form.parting
    if parting.turned and _is_hairline(form):
        # Neck and shank are moved on until the mesher can see the ring between them and the thread;
        # with a chord of the other half the mesh stays within the whole one of the solid.
        apart = np.copysign(chord / 2, parting.turned)
        try:
            stand_in = _solid(skin_of(Form(form.tap, replace(parting, turned=apart))))
            return Built(solid, tessellated(stand_in, chord / 2)[0], None, parting, float(apart))
        except KernelError:
            pass
    return Built(solid, *tessellated(solid, chord), parting)


def _is_hairline(form: Form) -> bool:
    """Whether the thread ends nanometres beside the blank that follows it."""
    step = form.turned[0].start_radius + form.narrowed_at_end
    return min(abs(step - form.crest_radius), abs(step - form.root_radius)) < CLEAR


def build_solid(tap: Tap, stage: OnStage = lambda _stage: None) -> Solid:
    """The solid of a design without a mesh, in the first way.

    Raises:
        KernelError: when a stage failed.
    """
    stage(Stage.EDGES)
    return _solid(first_skin(tap), stage)


def _solid(skin: Skin, stage: OnStage = lambda _stage: None) -> Solid:
    form = skin.form
    stage(Stage.FACES)
    edges = kernel_edges(skin)
    pit, rim = front_centre(form.tap.blank.front_centre)
    skin_faces = _skin_faces(form, skin, edges, rim)
    stage(Stage.REAR)
    solid = Solid(kernel.solid([*skin_faces, *pit, *rear_faces(form, skin, edges)]))
    if form.tap.thread.hand is Hand.LEFT:
        stage(Stage.MIRROR)
        solid = _mirrored(solid)
    return solid


def _mirrored(solid: Solid) -> Solid:
    """The image in the x-z plane."""
    mirror = gp_Trsf()
    mirror.SetMirror(gp_Ax2(gp_Pnt(0, 0, 0), gp_Dir(0, 1, 0)))
    (image,) = solids(BRepBuilderAPI_Transform(solid.wrapped, mirror).Shape())
    return image


def _skin_faces(
    form: Form, skin: Skin, edges: KernelEdges, rim: tuple[TopoDS_Wire, ...]
) -> list[TopoDS_Face]:
    carriers = Carriers(form)
    maker = FaceMaker(skin, edges)
    made: list[TopoDS_Face] = []
    for key, cycles in skin.loops.items():
        if key.kind is not FaceKind.RING:
            holes = rim if key.kind is FaceKind.FRONT else ()
            made += maker.faces(carriers.shared(key), carriers.carrier(key), cycles, holes)
    return made
