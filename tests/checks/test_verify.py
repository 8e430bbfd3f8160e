"""A solid that misses its definition in any field must not pass, and the honest one must."""

from collections.abc import Iterator
from dataclasses import asdict, fields, replace
from functools import cache
from operator import attrgetter
from typing import Any

import designs
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
from tapmodel.tap.tap import Blank, Chamfer, Flutes, Relief, Tap, TapThread
from tapmodel.words import Hand, ReliefKind, ReliefPlace

MICROMETRE = 0.001
PARTS = {
    "thread": TapThread,
    "chamfer": Chamfer,
    "flutes": Flutes,
    "relief.thread": Relief,
    "relief.chamfer": Relief,
    "blank": Blank,
}
FIELDS = [f"{part}.{field.name}" for part, record in PARTS.items() for field in fields(record)]
ANGLES = {"flank_angle", "angle", "shoulder_angle", "margin_angle"}
# A drop is the difference of two reaches of one arc, which 1 µm on its offset hardly changes.
# A back taper is a ratio, whatever unit it is told in.
SHARES = ANGLES | {"arc_offset", "back_taper"}

# Fields in which the small tap can be no other, and why.
MOOT = {
    "thread.back_taper": "0, of which 1 % is none: see ELSEWHERE",
    "relief.chamfer.margin_angle": "0 on an eccentric relief, which has no margin: see ELSEWHERE",
    "relief.chamfer.applies_to": "the cone has no crest and flanks to part: one word on every tap",
}
# Fields that mean more on another tap: an arc at crest and root, a margin on the chamfer.
ELSEWHERE = [
    ("m18", "relief.chamfer.margin_angle"),
    ("m18", "relief.chamfer.arc_offset"),
    ("rounded", "thread.flank_angle"),
    ("rounded", "thread.major"),
    ("rounded", "thread.pitch_diameter"),
    ("rounded", "thread.rounded_crest"),
    ("rounded", "thread.minor"),
    ("rounded", "thread.rounded_root"),
    ("tapered", "thread.back_taper"),
]
# What the surface does not depend on at all: which is the cone's relief.
NOWHERE = [("m18", "relief.chamfer.applies_to")]


def _with(tap: Tap, path: str, value: object) -> Tap:
    """The tap with another value in the field at a dotted path."""
    *parents, field = path.split(".")
    records: list[Any] = [tap]
    for name in parents:
        records.append(getattr(records[-1], name))
    made = replace(records[-1], **{field: value})
    for name, record in zip(reversed(parents), reversed(records[:-1]), strict=True):
        made = replace(record, **{name: made})
    return made


def _others(tap: Tap, path: str) -> list[Tap]:
    """The tap with one field off: every other word, the next number, 1 µm or 1 % more."""
    value = attrgetter(path)(tap)
    if isinstance(value, bool | Hand | ReliefKind | ReliefPlace):
        words = [False, True] if isinstance(value, bool) else list(type(value))
        values = [word for word in words if word is not value]
    elif isinstance(value, int):
        values = [value + 1]
    else:
        share = path.rpartition(".")[2] in SHARES
        values = [1.01 * value if share else value + MICROMETRE]
    others = [_with(tap, path, other) for other in values]
    assert tap not in others
    return others


@pytest.fixture(scope="module")
def mesh_proof(small_solid: Solid) -> MeshProof:
    return prove_mesh(tessellate(small_solid, 0.02), 0.02)


@pytest.fixture(scope="module")
def proof(small_tap: Tap, small_solid: Solid) -> ModelProof:
    return prove_solid(small_tap, small_solid)


def test_the_honest_solid_passes_with_margin(proof: ModelProof, mesh_proof: MeshProof) -> None:
    assert faults(proof, mesh_proof) == []
    assert max(proof.deviation_um_max, proof.ideal_um_max) < 1e-3
    assert abs(proof.volume_relative_error) < 1e-7
    assert proof.sliver_faces == 0


def test_the_triangles_of_the_mesh_show_the_way_as_well_as_coarse_ones(
    proof: ModelProof, small_tap: Tap, small_solid: Solid
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


@pytest.mark.parametrize("path", [path for path in FIELDS if path not in MOOT])
def test_a_solid_of_another_definition_is_found_out(
    path: str, small_tap: Tap, small_solid: Solid
) -> None:
    for other in _others(small_tap, path):
        assert differences(prove_solid(other, small_solid), FOREIGN), other


# Turns that these taps are made without.
SPARED = {"m18": 20, "rounded": 2, "tapered": 4}


@cache
def _built(name: str) -> tuple[Tap, Solid, ModelProof]:
    """One of the hand-built taps with its solid, which is its own, as the proof says."""
    tap = designs.shortened(getattr(designs, name)(), SPARED[name])
    solid = build_solid(tap)
    proof = prove_solid(tap, solid)
    assert differences(proof) == []
    return tap, solid, proof


@pytest.mark.parametrize(("name", "path"), ELSEWHERE)
def test_so_is_one_of_another_tap(name: str, path: str) -> None:
    tap, solid, _ = _built(name)
    for other in _others(tap, path):
        assert differences(prove_solid(other, solid), FOREIGN), other


@pytest.mark.parametrize(("name", "path"), NOWHERE)
def test_what_no_surface_shows_changes_no_measure(name: str, path: str) -> None:
    tap, solid, proof = _built(name)
    for other in _others(tap, path):
        assert prove_solid(other, solid) == proof


def _leaves(table: dict[str, Any], before: str = "") -> Iterator[str]:
    for name, value in table.items():
        if isinstance(value, dict):
            yield from _leaves(value, f"{before}{name}.")
        else:
            yield before + name


def test_every_field_of_the_definition_is_tried(small_tap: Tap) -> None:
    assert list(_leaves(asdict(small_tap))) == FIELDS
    tried = (set(FIELDS) - set(MOOT)) | {path for _, path in ELSEWHERE}
    assert set(FIELDS) - tried == {"relief.chamfer.applies_to"}


# What follows from the fields, so that none can contradict another.
FOLLOWS: dict[str, tuple[str, ...]] = {
    "thread": (
        "lead",
        "narrowing",
        "flanks",
        "crest_flat",
        "crest_radius",
        "root_flat",
        "root_radius",
    ),
    "flutes": ("core_diameter", "angles"),
    "blank": ("has_neck", "square_start"),
    "": ("chamfer_length",),
}


@pytest.mark.parametrize(("part", "name"), [(part, n) for part in FOLLOWS for n in FOLLOWS[part]])
def test_what_follows_cannot_be_set(part: str, name: str, small_tap: Tap) -> None:
    record = attrgetter(part)(small_tap) if part else small_tap
    value = getattr(record, name)
    with pytest.raises(TypeError, match=name):
        replace(record, **{name: value})
    with pytest.raises(AttributeError, match=name):
        object.__setattr__(record, name, value)


@pytest.mark.parametrize("part", ["", *PARTS])
def test_nothing_else_follows(part: str) -> None:
    record = PARTS.get(part, Tap)
    found = {name for name, kind in vars(record).items() if isinstance(kind, property)}
    assert found == set(FOLLOWS.get(part, ()))


MISSING: dict[str, dict[str, float]] = {
    "front centre": {"front_centre": 0.5},
    "rear chamfer": {"rear_chamfer": 0.1},
    "rear centre": {"rear_centre": 1.0},
    "neck": {"neck_diameter": 6.98, "neck_length": 5.0},  # 10 µm deep
}


@pytest.fixture(scope="module")
def plain(small_tap: Tap) -> tuple[Tap, Solid, Facets]:
    """A tap thirty times as large as its smallest feature might be, and none of those."""
    bare = dict.fromkeys(("front_centre", "rear_chamfer", "rear_centre", "neck_length"), 0.0)
    tap = replace(small_tap, blank=replace(small_tap.blank, **bare))
    solid = build_solid(tap)
    return tap, solid, tessellated(solid, 0.01)[1]


@pytest.mark.parametrize("fine", [False, True], ids=["coarse", "fine"])
@pytest.mark.parametrize("name", MISSING)
def test_a_small_feature_left_out_is_missed(
    name: str, plain: tuple[Tap, Solid, Facets], *, fine: bool
) -> None:
    tap, solid, facets = plain
    asked = replace(tap, blank=replace(tap.blank, **MISSING[name]))
    wrong = differences(prove_solid(asked, solid, facets if fine else None), FOREIGN)
    assert any(f"{name}: missing on the solid" in text for text in wrong)


def test_faces_turned_inwards_are_the_only_fault(small_tap: Tap, small_solid: Solid) -> None:
    turned = Solid(small_solid.wrapped.Complemented())
    wrong = differences(prove_solid(small_tap, turned))
    assert len(wrong) == 1
    assert "the faces look inwards" in wrong[0]


def test_a_hole_in_the_shell_is_a_finding_not_a_failure(small_tap: Tap, small_solid: Solid) -> None:
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
