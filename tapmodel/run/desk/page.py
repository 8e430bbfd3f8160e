"""The page of a run."""

from collections.abc import Mapping
from dataclasses import dataclass

from tapmodel.checks.proof.record import MeshProof, ModelProof
from tapmodel.geometry.triangles import Mesh
from tapmodel.report.chapters import proof as proof_chapter
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.page.solid import Model
from tapmodel.report.page.stills import stills
from tapmodel.report.page.templates import loaded
from tapmodel.report.page.write import PageContent, packed_stations, write_page
from tapmodel.run.record.parts import SIMPLIFICATIONS
from tapmodel.run.wish import Order


@dataclass(frozen=True, slots=True)
class Prepared:
    """What of a page needs no model: the drawings, and the sections along the tap."""

    drawings: Mapping[str, Drawing]
    stations: str


def prepare(order: Order, drawings: Mapping[str, Drawing]) -> Prepared:
    """Make what needs no model, and load what fills the page, while there is time."""
    loaded()
    return Prepared(drawings, packed_stations(order.design))


def write(
    order: Order,
    prepared: Prepared,
    pictures: Mapping[str, bytes],
    proved: tuple[Mesh, MeshProof, ModelProof],
) -> None:
    """Write the page of a proved model.

    Raises:
        InputError: when nothing can be written there.
    """
    mesh, mesh_proof, model_proof = proved
    content = PageContent(
        prepared.drawings,
        Model(mesh.vertices, mesh.triangles, f"Proved model, chord {mesh_proof.chord_mm:g} mm"),
        stills(order.design, pictures),
        proof_chapter.chapter(model_proof, mesh_proof, SIMPLIFICATIONS),
        prepared.stations,
    )
    write_page(order.file(".html"), order.design, content, order.wish.look.units)
