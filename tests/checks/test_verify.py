"""A solid that misses its design in any feature must not pass, and the honest one must."""

from collections.abc import Callable
from dataclasses import fields, replace
from typing import Any

import pytest

from tapmodel.checks.proof.mesh import prove_mesh
from tapmodel.checks.proof.record import MeshProof, ModelProof
from tapmodel.checks.proof.solid import prove_solid
from tapmodel.checks.proof.verdict import FOREIGN, differences, faults
from tapmodel.geometry.kernel.build import build_solid
from tapmodel.geometry.kernel.mesh.tessellation import tessellate, tessellated
from tapmodel.geometry.kernel.mesh.triangulation import Facets
from tapmodel.geometry.kernel.solid import shapes as kernel
from tapmodel.geometry.kernel.topology import Solid, faces
from tapmodel.tap.tap import Blank, Chamfer, Flutes, Relief, TapThread
from tapmodel.design.record import TapDesign
from tapmodel.words import Hand, ReliefKind, ReliefPlace

Change = Callable[[TapDesign], TapDesign]
MICROMETRE = 0.001


def _with(tap: TapDesign, path: str, change: Callable[[Any], Any]) -> TapDesign:
    """The tap with the field at a dotted path changed."""
    *parents, field = path.split(".")
    records: list[Any] = [tap]
    for name in parents:
        records.append(getattr(records[-1], name))
    made = replace(records[-1], **{field: change(getattr(records[-1], field))})
    for name, record in zip(reversed(parents), reversed(records[:-1]), strict=True):
        made = replace(record, **{name: made})
    return made


def _longer(path: str) -> Change:
    return lambda tap: _with(tap, path, lambda length: length + MICROMETRE)


def _more(*paths: str) -> Change:
    def change(tap: TapDesign) -> TapDesign:
        for path in paths:
            tap = _with(tap, path, lambda value: 1.01 * value)
        return tap

    return change


def _other(path: str, value: object) -> Change:
    return lambda tap: _with(tap, path, lambda _value: value)


LENGTHS = {
    "thread": ("pitch", "lead", "major", "pitch_diameter", "minor", "first_z"),
    "chamfer": ("point_diameter",),
    "flutes": ("cutter_diameter", "offset", "centre_radius", "full_depth_length"),
    "blank": (
        "overall_length",
        "thread_length",
        "neck_diameter",
        "neck_length",
        "shank_diameter",
        "square_across_flats",
        "square_start",
        "rear_chamfer",
        "front_centre",
        "rear_centre",
    ),
}
# A drop is the difference of two reaches of one arc, which 1 µm on its offset hardly changes.
SHARES = {
    "thread": ("flank_angle",),
    "chamfer": ("angle",),
    "blank": ("shoulder_angle",),
    "relief.thread": ("arc_offset", "arc_direction"),
    "relief.chamfer": ("arc_offset", "arc_direction"),
}
CHANGES: dict[str, Change] = {
    **{f"{part}.{name}": _longer(f"{part}.{name}") for part in LENGTHS for name in LENGTHS[part]},
    **{f"{part}.{name}": _more(f"{part}.{name}") for part in SHARES for name in SHARES[part]},
    # the arc leaves the margin tangentially, so its direction is that of the margin's end
    "relief.thread.margin_angle": _more(
        "relief.thread.margin_angle", "relief.thread.arc_direction"
    ),
    "flutes.angles": lambda tap: _with(tap, "flutes.angles", lambda a: (a[0], 1.01 * a[1], a[2])),
    "thread.hand": _other("thread.hand", Hand.LEFT),
    "relief.thread.kind": _other("relief.thread.kind", ReliefKind.CONCENTRIC),
    "relief.chamfer.kind": _other("relief.chamfer.kind", ReliefKind.CONCENTRIC),
    "relief.thread.applies_to": _other("relief.thread.applies_to", ReliefPlace.CREST),
}

# Fields that say again, for readers of the record, what others define; and which.
DERIVED = {
    TapThread: {
        "starts": "lead / pitch",
        "tap_class": "text",
        "major_min": "limit",
        "pitch_min": "limit",
        "pitch_max": "limit",
        "crest_flat": "major, pitch_diameter, flank_angle",
        "root_flat": "minor, pitch_diameter, flank_angle",
        "crest_radius": "0 on this tap; see the rounded one",
        "root_radius": "0 on this tap; see the rounded one",
    },
    Chamfer: {
        "length": "angle, point_diameter, thread.major",
        "pitches": "length, thread.pitch",
        "teeth": "length, flutes",
        "chip_thickness": "angle, thread.lead, flutes.count",
    },
    Flutes: {
        "count": "angles",
        "depth_from_top": "centre_radius, cutter_diameter, thread.major",
        "core_diameter": "centre_radius, offset, cutter_diameter",
        "rake_crest": "offset, cutter_diameter, centre_radius, thread",
        "rake_pitch": "offset, cutter_diameter, centre_radius, thread",
        "rake_root": "offset, cutter_diameter, centre_radius, thread",
        "chordal_hook": "offset, cutter_diameter, centre_radius, thread",
        "land_angle": "offset, cutter_diameter, centre_radius, thread",
        "land_width": "land_angle, thread.major",
        "area": "offset, cutter_diameter, centre_radius, thread",
        "runout_end": "full_depth_length, cutter_diameter, blank",
    },
    Relief: {
        "arc_radius": "thread.major, arc_offset, kind",
        "edge_angle": "arc",
        "heel_drop": "arc",
    },
    Blank: {"square_length": "overall_length, square_start"},
}


@pytest.fixture(scope="module")
def mesh_proof(small_solid: Solid) -> MeshProof:
    return prove_mesh(tessellate(small_solid, 0.02), 0.02)


@pytest.fixture(scope="module")
def proof(small_tap: TapDesign, small_solid: Solid) -> ModelProof:
    return prove_solid(small_tap, small_solid)


def test_the_honest_solid_passes_with_margin(proof: ModelProof, mesh_proof: MeshProof) -> None:
    assert faults(proof, mesh_proof) == []
    assert max(proof.deviation_um_max, proof.ideal_um_max) < 1e-3
    assert abs(proof.volume_relative_error) < 1e-7
    assert proof.sliver_faces == 0


def test_the_triangles_of_the_mesh_show_the_way_as_well_as_coarse_ones(
    proof: ModelProof, small_tap: TapDesign, small_solid: Solid
) -> None:
    fine = prove_solid(small_tap, small_solid, tessellated(small_solid, 0.01)[1])
    assert (fine.unmeasured, fine.sliver_faces) == ((), 0)
    assert fine.ideal_points == proof.ideal_points
    assert fine.deviation_points == pytest.approx(proof.deviation_points, rel=0.01)
    assert max(fine.deviation_um_max, fine.ideal_um_max) < 1e-3


def test_every_feature_is_looked_for(proof: ModelProof) -> None:
    assert set(proof.ideal_um_by_feature) == {
        *("thread", "profile corners", "cutting edges", "heel edges", "chamfer"),
        *("flute", "flute rim", "run-out", "run-out rim", "front", "front centre", "thread end"),
        *("neck", "shoulder", "shank", "square", "corners of the square", "square shoulder"),
        *("rear chamfer", "rear face", "rear centre"),
    }
    assert proof.ideal_points > 2500


@pytest.mark.parametrize("name", CHANGES)
def test_a_solid_for_another_design_is_found_out(
    name: str, small_tap: TapDesign, small_solid: Solid
) -> None:
    assert differences(prove_solid(CHANGES[name](small_tap), small_solid), FOREIGN)


@pytest.mark.parametrize("record", DERIVED, ids=lambda record: record.__name__)
def test_every_field_is_changed_above_or_derived(record: type) -> None:
    changed = {path.rsplit(".", 1)[1] for path in CHANGES}
    names = {field.name for field in fields(record)}
    assert names <= changed | set(DERIVED[record])
    assert not changed & set(DERIVED[record])


MISSING: dict[str, dict[str, float]] = {
    "front centre": {"front_centre": 0.5},
    "rear chamfer": {"rear_chamfer": 0.1},
    "rear centre": {"rear_centre": 1.0},
    "neck": {"neck_diameter": 6.98, "neck_length": 5.0},  # 10 µm deep
}


@pytest.fixture(scope="module")
def plain(small_tap: TapDesign) -> tuple[TapDesign, Solid, Facets]:
    """A tap thirty times as large as its smallest feature might be, and none of those."""
    bare = dict.fromkeys(("front_centre", "rear_chamfer", "rear_centre", "neck_length"), 0.0)
    tap = replace(small_tap, blank=replace(small_tap.blank, **bare))
    solid = build_solid(tap)
    return tap, solid, tessellated(solid, 0.01)[1]


@pytest.mark.parametrize("fine", [False, True], ids=["coarse", "fine"])
@pytest.mark.parametrize("name", MISSING)
def test_a_small_feature_left_out_is_missed(
    name: str, plain: tuple[TapDesign, Solid, Facets], *, fine: bool
) -> None:
    tap, solid, facets = plain
    asked = replace(tap, blank=replace(tap.blank, **MISSING[name]))
    wrong = differences(prove_solid(asked, solid, facets if fine else None), FOREIGN)
    assert any(f"{name}: missing on the solid" in text for text in wrong)


def test_faces_turned_inwards_are_the_only_fault(small_tap: TapDesign, small_solid: Solid) -> None:
    turned = Solid(small_solid.wrapped.Complemented())
    wrong = differences(prove_solid(small_tap, turned))
    assert len(wrong) == 1
    assert "the faces look inwards" in wrong[0]


def test_a_hole_in_the_shell_is_a_finding_not_a_failure(
    small_tap: TapDesign, small_solid: Solid
) -> None:
    leaking = Solid(kernel.solid(faces(small_solid.wrapped)[:-1]))
    wrong = " ".join(differences(prove_solid(small_tap, leaking)))
    assert "the shell is not closed" in wrong
    assert "inconsistent" in wrong
    assert "missing on the solid" in wrong


@pytest.mark.parametrize(
    "wrong",
    [{"watertight": False}, {"genus": 1}, {"self_intersecting": True}],
    ids=lambda wrong: next(iter(wrong)),
)
def test_a_bad_mesh_is_a_fault(
    wrong: dict[str, object], proof: ModelProof, mesh_proof: MeshProof
) -> None:
    assert faults(proof, replace(mesh_proof, **wrong))
