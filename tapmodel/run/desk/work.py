"""The order of work at the desk, the process beside the kernel's.

It makes papers from the design, proves the mesh, and makes everything of it. The parts have heavy
libraries of their own: one is loaded only where it is wanted, and while the desk would wait.
"""

from importlib import import_module
from typing import TYPE_CHECKING

from tapmodel.export.formats import DRAWN_FORMATS, MESH_FORMATS, PAPER_FORMATS, Format
from tapmodel.run.crew import Line
from tapmodel.run.desk.handover import MeshFile, SolidFile, take
from tapmodel.run.desk.without import without
from tapmodel.run.wish import Order, Wish
from tapmodel.stages import Stage

if TYPE_CHECKING:
    from tapmodel.checks.proof.record import MeshProof, ModelProof
    from tapmodel.geometry.triangles import Mesh
    from tapmodel.run.desk.page import Prepared


def write(line: Line, wish: Wish) -> "MeshProof":
    """Write and read back every file but, where there are others, the STEP file; prove the mesh.

    Args:
        line: on which come the order, perhaps solids, the mesh and the model's proof.
        wish: the files wanted.

    Returns:
        What was measured on the mesh; the kernel's process, which hears it too, judges it.

    Raises:
        KernelError: when a file fails its proof.
    """
    order, prepared = _from_design(line, wish)
    mesh, proof, pictures = _from_mesh(line, order)
    model_proof: ModelProof = line.hear()
    if prepared:
        from tapmodel.run.desk import page

        line.stage(Stage.PAGE)
        page.write(order, prepared, pictures, (mesh, proof, model_proof))
    return proof


def _from_design(line: Line, wish: Wish) -> "tuple[Order, Prepared | None]":
    """What needs no model; returns what is prepared of the page."""
    if not wish.any_of(PAPER_FORMATS):
        return line.hear(), None
    from tapmodel.report.sheet.papers import write_papers

    order: Order = line.hear()
    line.stage(Stage.PAPERS)
    drawings = write_papers(order.design, order.folder, wish.formats, order.wish.look)
    if Format.PAGE not in wish.formats:
        return order, None
    from tapmodel.run.desk import page

    line.stage(Stage.PAGE)
    return order, page.prepare(order, drawings)


def _from_mesh(line: Line, order: Order) -> "tuple[Mesh, MeshProof, dict[str, bytes]]":
    """What needs the mesh; returns it with its proof, and the pictures for the page."""
    line.stage(Stage.LOADING)
    with without("scipy"):
        from tapmodel.checks.proof.mesh import prove_mesh
    _load_for_mesh(order.wish)

    handed = _from_solid(line, order)
    line.stage(Stage.MESH_PROOF)
    mesh = take(handed)
    proof = prove_mesh(mesh, handed.chord)
    line.pass_on(proof)
    if order.wish.any_of(MESH_FORMATS):
        from tapmodel.run.desk import mesh_files

        line.stage(Stage.MESH_FILES)
        mesh_files.write(order, mesh, proof)
    if not order.wish.any_of(DRAWN_FORMATS):
        return mesh, proof, {}
    from tapmodel.report.pictures.graphics import hindrance
    from tapmodel.run.desk import pictures

    line.stage(Stage.PICTURES)
    line.leave_out("pictures", hindrance())
    return mesh, proof, pictures.write(order, mesh)


def _from_solid(line: Line, order: Order) -> MeshFile:
    """The STEP file, and part of the model's proof, if the solid comes; returns what comes then."""
    handed = line.hear()
    if not isinstance(handed, SolidFile):
        return handed
    from tapmodel.run.desk import step_file

    solid = step_file.write(order, handed, line.stage)
    # A later solid takes the place of one that could not be meshed.
    while isinstance(handed := line.hear(), SolidFile):
        solid = step_file.write(order, handed, line.stage)
    line.stage(Stage.PROOF)
    line.pass_on(step_file.is_valid(solid))
    return handed


def _load_for_mesh(wish: Wish) -> None:
    """Load while solid and mesh are being made."""
    if wish.step_at_desk:
        import_module("tapmodel.run.desk.step_file")
    if wish.any_of(MESH_FORMATS):
        import_module("tapmodel.run.desk.mesh_files")
    if wish.any_of(DRAWN_FORMATS):
        import_module("tapmodel.run.desk.pictures")
        import_module("tapmodel.report.pictures.still").warm_up()
