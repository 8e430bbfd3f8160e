"""A solid that misses its design by one per cent in any feature must not pass."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from tapmodel.checks.proof import MeshProof
from tapmodel.checks.verify import faults, prove_mesh, prove_solid
from tapmodel.design.tap_design import TapDesign
from tapmodel.geometry.mesh import tessellate
from tapmodel.geometry.topology import Solid


@pytest.fixture(scope="module")
def mesh_proof(small_solid: Solid) -> MeshProof:
    return prove_mesh(tessellate(small_solid, 0.02), 0.02)


def test_the_honest_solid_has_no_faults(
    small_tap: TapDesign, small_solid: Solid, mesh_proof: MeshProof
) -> None:
    assert faults(prove_solid(small_tap, small_solid), mesh_proof) == []


def _part(name: str, field: str, factor: float = 1.01) -> Callable[[TapDesign], TapDesign]:
    def change(tap: TapDesign) -> TapDesign:
        part = getattr(tap, name)
        return replace(tap, **{name: replace(part, **{field: getattr(part, field) * factor})})

    return change


def _relief(name: str, field: str) -> Callable[[TapDesign], TapDesign]:
    def change(tap: TapDesign) -> TapDesign:
        relief = getattr(tap.relief, name)
        moved = replace(relief, **{field: getattr(relief, field) * 1.01})
        return replace(tap, relief=replace(tap.relief, **{name: moved}))

    return change


CHANGES = {
    "major": _part("thread", "major", 1.0003),
    "minor": _part("thread", "minor", 0.999),
    "lead": _part("thread", "lead", 1.001),
    "helix": _part("thread", "first_z"),
    "chamfer angle": _part("chamfer", "angle"),
    "point": _part("chamfer", "point_diameter", 1.001),
    "cutter": _part("flutes", "cutter_diameter"),
    "offset": _part("flutes", "offset"),
    "depth": _part("flutes", "centre_radius"),
    "full depth": _part("flutes", "full_depth_length"),
    "thread relief": _relief("thread", "arc_offset"),
    "chamfer relief": _relief("chamfer", "arc_offset"),
    "neck": _part("blank", "neck_diameter"),
    "shank": _part("blank", "shank_diameter"),
    "square": _part("blank", "square_across_flats"),
    "front centre": _part("blank", "front_centre"),
}


@pytest.mark.parametrize("name", CHANGES)
def test_a_solid_for_another_design_is_found_out(
    name: str, small_tap: TapDesign, small_solid: Solid, mesh_proof: MeshProof
) -> None:
    asked = CHANGES[name](small_tap)
    assert faults(prove_solid(asked, small_solid), mesh_proof)


@pytest.mark.parametrize(
    "wrong",
    [{"watertight": False}, {"genus": 1}, {"self_intersecting": True}],
    ids=lambda wrong: next(iter(wrong)),
)
def test_a_bad_mesh_is_a_fault(
    wrong: dict[str, object], small_tap: TapDesign, small_solid: Solid, mesh_proof: MeshProof
) -> None:
    assert faults(prove_solid(small_tap, small_solid), replace(mesh_proof, **wrong))
