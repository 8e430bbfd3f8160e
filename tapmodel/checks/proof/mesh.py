"""The proof of a mesh; apart from the solid's, so that it loads no kernel."""

from tapmodel.checks.proof.mesh_report import check_mesh
from tapmodel.checks.proof.record import MeshProof
from tapmodel.checks.proof.self_intersection import self_intersections
from tapmodel.geometry.triangles import Mesh


def prove_mesh(mesh: Mesh, chord: float) -> MeshProof:
    """Measure a mesh; judges nothing."""
    report = check_mesh(mesh.vertices, mesh.triangles)
    return MeshProof(
        triangles=report.triangles,
        watertight=report.watertight,
        volume=report.volume,
        genus=report.genus,
        chord_mm=chord,
        self_intersecting=self_intersections(mesh.vertices, mesh.triangles) > 0,
    )
