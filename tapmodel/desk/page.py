"""The page of a run."""

from collections.abc import Mapping

from tapmodel.checks.proof import MeshProof, ModelProof
from tapmodel.geometry.triangles import Mesh
from tapmodel.record import SIMPLIFICATIONS
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.page.solid import Model
from tapmodel.report.page.write import PageContent, write_page
from tapmodel.report.papers import stills
from tapmodel.report.sections import proof as proof_section
from tapmodel.wish import Order


def write(
    order: Order,
    drawings: Mapping[str, Drawing],
    pictures: Mapping[str, bytes],
    proved: tuple[Mesh, MeshProof, ModelProof],
) -> None:
    """Write the page of a proved model.

    Raises:
        InputError: when nothing can be written there.
    """
    mesh, mesh_proof, model_proof = proved
    content = PageContent(
        drawings,
        Model(mesh.vertices, mesh.triangles, f"Proved model, chord {mesh_proof.chord_mm:g} mm"),
        stills(order.design, pictures),
        proof_section.section(model_proof, mesh_proof, SIMPLIFICATIONS),
    )
    write_page(order.file(".html"), order.design, content, order.wish.look.units)
