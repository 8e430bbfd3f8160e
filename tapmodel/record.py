"""The record of one run, as numbers: what other parts and outside checks read.

Lengths in mm, angles in degrees, areas in mm², volumes in mm³, unless the key says otherwise. The
frame and every law needed to recompute a point of the surface stand in
`tapmodel.design.tap_design` and `tapmodel.design.relief`.
"""

from dataclasses import asdict
from typing import Any

from tapmodel.checks.proof import MeshProof, ModelProof
from tapmodel.design.tap_design import TapDesign
from tapmodel.export.manifest import FileRecord

SCHEMA = "tapmodel.record/1"

# What the model leaves out of a real tap, named in every record.
SIMPLIFICATIONS = (
    "the thread ends in a plane square to the axis; on the lathe the tool is withdrawn there",
    "corners of the profile are sharp; a real tool leaves its nose radius",
)


def design_record(design: TapDesign) -> dict[str, Any]:
    """The record without model, mesh and files: what the design alone settles."""
    parts = asdict(design)
    head = {"schema": SCHEMA, "name": parts.pop("name"), "designation": parts.pop("designation")}
    return head | parts


def full_record(
    design: TapDesign,
    proof: ModelProof,
    mesh: MeshProof,
    run: dict[str, Any],
) -> dict[str, Any]:
    """The whole record but its list of files.

    `run` is how the run went: the only part that differs from one run of a design to the next.
    """
    model = asdict(proof) | {
        "self_intersecting": mesh.self_intersecting,
        "simplifications": list(SIMPLIFICATIONS),
    }
    measured = asdict(mesh)
    del measured["self_intersecting"]
    return design_record(design) | {"model": model, "mesh": measured, "run": run}


def with_files(record: dict[str, Any], files: list[FileRecord]) -> dict[str, Any]:
    """The record with its list of files."""
    return record | {"files": [asdict(file) for file in files]}
